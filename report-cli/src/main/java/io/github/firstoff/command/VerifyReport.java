package io.github.firstoff.command;

import io.github.firstoff.proof.Finding;
import io.github.firstoff.proof.SheetFile;
import io.github.firstoff.proof.SignatureReport;
import io.github.firstoff.sheet.JsonDocument;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
        JsonDocument.write(target, out -> {
            out.text("command", "verify");
            out.text("sheet", sheet.manifest().command());
            out.text("program", sheet.manifest().program());
            out.text("madeAt", sheet.manifest().madeAt().toString());
            out.flag("holds", holds());
            out.array("signatures", () -> {
                for (SignatureReport signature : signatures) {
                    out.item(() -> signature(out, signature));
                }
            });
            findings(out, findings);
        });
    }

    private static void signature(JsonDocument out, SignatureReport signature) throws IOException {
        out.text("field", signature.field());
        out.text("role", signature.role());
        out.text("signer", signature.signer());
        out.text("issuer", signature.issuer());
        out.text("claimedTime", signature.claimedTime().map(Object::toString));
        out.flag("coversWholeFile", signature.wholeFile());
        if (signature.trusted().isPresent()) {
            out.flag("trusted", signature.trusted().get());
        } else {
            out.nothing("trusted");
        }
        out.flag("holds", signature.holds());
        findings(out, signature.findings());
    }

    private static void findings(JsonDocument out, List<Finding> findings) throws IOException {
        out.array("findings", () -> {
            for (Finding finding : findings) {
                out.item(() -> {
                    out.text("area", finding.area().word());
                    out.text("holds", finding.holds().words());
                    out.text("says", finding.says());
                });
            }
        });
    }
}
