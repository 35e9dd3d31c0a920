package io.github.firstoff.command;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import io.github.firstoff.proof.Finding;
import io.github.firstoff.proof.SheetFile;
import io.github.firstoff.proof.SignatureReport;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a check of a sheet found, in lines and as JSON (docs/schemas/verify.schema.json). */
final class VerifyReport {
    private final String name;
    private final SheetFile sheet;
    private final List<SignatureReport> signatures;
    private final List<Finding> findings;

    VerifyReport(String name, SheetFile sheet, List<SignatureReport> signatures, List<Finding> findings) {
        this.name = name;
        this.sheet = sheet;
        this.signatures = signatures;
        this.findings = findings;
    }

    boolean holds() {
        return all().noneMatch(each -> each.holds() == Finding.Holds.NO);
    }

    private Stream<Finding> all() {
        return Stream.concat(findings.stream(), signatures.stream().flatMap(each -> each.findings().stream()));
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(name + ": " + sheet.manifest().command() + ", made "
                + sheet.manifest().madeAt() + " by " + sheet.manifest().program());
        findings.forEach(each -> lines.add(line(each)));
        int number = 0;
        for (SignatureReport signature : signatures) {
            number++;
            lines.add("Signature " + number + ", \u201C" + signature.role() + "\u201D: "
                    + signature.signer().orElse("signer not known")
                    + signature.claimedTime().map(time -> ", " + time).orElse(""));
            signature.findings().forEach(each -> lines.add(line(each)));
        }
        long wrong = all().filter(each -> each.holds() == Finding.Holds.NO).count();
        lines.add(
                wrong == 0
                        ? "Everything that was checked holds."
                        : wrong == 1 ? "One thing does not hold." : wrong + " things do not hold.");
        return lines;
    }

    private static String line(Finding finding) {
        return String.format(Locale.ROOT, "  %-13s  %s", finding.holds().words(), finding.says());
    }

    void write(Writer target) {
        JsonFactory factory = JsonFactory.builder()
                .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
                .build();
        try (JsonGenerator out = factory.createGenerator(target)) {
            DefaultIndenter lines = new DefaultIndenter("  ", "\n");
            out.setPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
            out.writeStartObject();
            out.writeStringField("command", "verify");
            out.writeStringField("sheet", sheet.manifest().command());
            out.writeStringField("program", sheet.manifest().program());
            out.writeStringField("madeAt", sheet.manifest().madeAt().toString());
            out.writeBooleanField("holds", holds());
            out.writeArrayFieldStart("signatures");
            for (SignatureReport signature : signatures) {
                signature(out, signature);
            }
            out.writeEndArray();
            findings(out, findings);
            out.writeEndObject();
            out.flush();
            target.write('\n');
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static void signature(JsonGenerator out, SignatureReport signature) throws IOException {
        out.writeStartObject();
        out.writeStringField("field", signature.field());
        out.writeStringField("role", signature.role());
        text(out, "signer", signature.signer());
        text(out, "issuer", signature.issuer());
        text(out, "claimedTime", signature.claimedTime().map(Object::toString));
        out.writeBooleanField("coversWholeFile", signature.wholeFile());
        if (signature.trusted().isPresent()) {
            out.writeBooleanField("trusted", signature.trusted().get());
        } else {
            out.writeNullField("trusted");
        }
        out.writeBooleanField("holds", signature.holds());
        findings(out, signature.findings());
        out.writeEndObject();
    }

    private static void findings(JsonGenerator out, List<Finding> findings) throws IOException {
        out.writeArrayFieldStart("findings");
        for (Finding finding : findings) {
            out.writeStartObject();
            out.writeStringField("area", finding.area().word());
            out.writeStringField("holds", finding.holds().words());
            out.writeStringField("says", finding.says());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private static void text(JsonGenerator out, String name, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(name, value.get());
        } else {
            out.writeNullField(name);
        }
    }
}
