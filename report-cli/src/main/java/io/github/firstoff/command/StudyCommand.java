package io.github.firstoff.command;

import io.github.firstoff.inspection.House;
import io.github.firstoff.intake.Fault;
import io.github.firstoff.intake.HouseFile;
import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.pdf.HeadlessFonts;
import io.github.firstoff.report.pdf.PdfRenderer;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.words.Labels;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What the commands that study something have in common: files in, a sheet and a result out. */
abstract class StudyCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private @Nullable CommandSpec spec;

    @Option(names = "--out", paramLabel = "FILE.pdf", description = "Where the sheet goes. Without it no PDF is made.")
    private @Nullable Path out;

    @Mixin
    private final StationeryOptions stationery = new StationeryOptions();

    @Option(names = "--json", description = "Put the result on standard output as one JSON document.")
    private boolean json;

    StudyCommand(Console console) {
        this.console = console;
    }

    final Console console() {
        return console;
    }

    /** Notices as they stand on a sheet that travels: without the folders of this machine. */
    static List<String> lines(List<Notice> notices) {
        return notices.stream()
                .map(notice -> new Notice(
                                new Fault.Where(
                                        Inputs.nameOf(notice.where().file()),
                                        notice.where().line(),
                                        notice.where().column(),
                                        notice.where().field()),
                                notice.message())
                        .line())
                .distinct()
                .toList();
    }

    /** Where a result comes from: the names of its files and one hash over theirs. */
    Provenance provenance(List<String> files, List<String> hashes, long rows) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String hash : hashes) {
                digest.update(hash.getBytes(StandardCharsets.US_ASCII));
                digest.update((byte) '\n');
            }
            return new Provenance(
                    ProgramVersion.text(),
                    Clock.now(command().commandLine()),
                    HexFormat.of().formatHex(digest.digest()),
                    files.stream().map(Inputs::nameOf).toList(),
                    rows);
        } catch (NoSuchAlgorithmException fault) {
            throw new IllegalStateException("every Java has SHA-256", fault);
        }
    }

    final CommandSpec command() {
        return java.util.Objects.requireNonNull(spec);
    }

    /** Whether standard output is to hold one document and nothing else. */
    final boolean isJson() {
        return json;
    }

    /** Refuses to write the sheet over something that is read. */
    void keep(List<Path> inputs) {
        keep(inputs, Optional.ofNullable(out), "--out");
    }

    /** The same of another file that an option names. */
    final void keep(List<Path> inputs, Optional<Path> written, String option) {
        written.filter(path -> inputs.stream()
                        .anyMatch(input -> path.toAbsolutePath()
                                .normalize()
                                .equals(input.toAbsolutePath().normalize())))
                .ifPresent(path -> {
                    throw new ParameterException(
                            command().commandLine(), option + " " + path + " would overwrite an input");
                });
    }

    /** Tells the result: notices, the sheet where it is wanted, and then JSON or a few lines. */
    int tell(
            List<String> notices,
            Function<PaperSize, ReportModel> model,
            Consumer<java.io.Writer> document,
            List<String> lines,
            boolean accepted) {
        notices.forEach(notice -> console.message("note: " + notice));
        if (out != null) {
            print(onStationery(model), out);
        }
        if (json) {
            document.accept(console.outWriter());
        } else {
            lines.forEach(console::result);
            if (out != null) {
                console.result("Written: " + out);
            }
        }
        console.flush();
        return accepted ? ExitCodes.ACCEPTED : ExitCodes.NOT_ACCEPTED;
    }

    /** The sheet on the firm's paper; those that are not translated speak English whatever the house speaks. */
    private ReportModel onStationery(Function<PaperSize, ReportModel> model) {
        Optional<House> house = stationery
                .house()
                .map(path ->
                        HouseFile.read(Input.file(path), Labels.languages()).house());
        Stationery chosen = StationeryOptions.stationery(house, stationery.options());
        Stationery spoken = isTranslated() ? chosen : new Stationery(chosen.paper(), Labels.ENGLISH, house);
        return spoken.on(() -> model.apply(spoken.paper()));
    }

    /** Whether its sheet speaks other languages than English. */
    boolean isTranslated() {
        return false;
    }

    private void print(ReportModel model, Path target) {
        try {
            HeadlessFonts.prepare();
        } catch (IOException fault) {
            throw new OutputFault("the fonts of the sheet cannot be unpacked: " + Faults.reason(fault), fault);
        }
        List<String> messages = new ArrayList<>();
        OutputFile.write(
                target,
                stream ->
                        messages.addAll(new PdfRenderer().render(model, stream).messages()));
        messages.forEach(message -> console.message("note: " + message));
    }
}
