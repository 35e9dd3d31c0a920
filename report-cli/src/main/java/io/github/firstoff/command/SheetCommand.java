package io.github.firstoff.command;

import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.intake.InputRefused;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetJson;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.TableCsv;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What the commands that make a sheet have in common: inputs in, one sheet out, an exit code that says how it went. */
abstract class SheetCommand implements Callable<Integer> {
    private final SheetKind kind;
    private final Console console;
    private final Set<String> noticesSaid = new HashSet<>();

    @Spec
    private @Nullable CommandSpec spec;

    @Mixin
    private final PlanOption plan = new PlanOption();

    @Mixin
    private final JobOption job = new JobOption();

    @Option(names = "--out", paramLabel = "FILE.pdf", description = "Where the sheet goes. Without it no PDF is made.")
    private @Nullable Path out;

    @Mixin
    private final StationeryOptions stationery = new StationeryOptions();

    @Mixin
    private final SigningOptions signing = new SigningOptions();

    @Option(
            names = "--csv",
            paramLabel = "FILE.csv",
            description = "Write the table of characteristics as CSV, with the figures of the JSON result.")
    private @Nullable Path csv;

    @Option(names = "--json", description = "Put the result on standard output as one JSON document.")
    private boolean json;

    @Mixin
    private final ReadingOptions reading = new ReadingOptions();

    @Option(
            names = "--keep-going",
            description = {
                "Judge the good rows although others were refused. Each refused row is written with its reason to NAME.refused.csv,",
                "the sheet says how many there are, and is at best incomplete."
            })
    private boolean keepGoing;

    @Parameters(
            paramLabel = "READINGS",
            arity = "0..*",
            description = "What was measured (see docs/intake.md); - is standard input.")
    private List<Path> readings = new ArrayList<>();

    SheetCommand(SheetKind kind, Console console) {
        this.kind = kind;
        this.console = console;
    }

    @Override
    public Integer call() {
        CommandSpec command = Objects.requireNonNull(spec);
        if (kind == SheetKind.CERTIFICATE && job.path().isEmpty()) {
            throw new ParameterException(
                    command.commandLine(),
                    "a certificate needs --job JOB: issuer, customer, order and batch stand in it");
        }
        return run(command);
    }

    /** Makes the sheet; a command that makes it again and again does so here. */
    Integer run(CommandSpec command) {
        requireReadings(command, readings);
        return sheetOf(command, readings);
    }

    /** Files of readings that the command line names. */
    List<Path> readings() {
        return readings;
    }

    /** Files that are no readings: plan, job and sheet. */
    Set<Path> otherFiles() {
        return Stream.of(
                        Optional.of(plan.path()),
                        job.path(),
                        stationery.house(),
                        reading.mapping(),
                        Optional.ofNullable(out),
                        Optional.ofNullable(csv))
                .flatMap(Optional::stream)
                .map(path -> path.toAbsolutePath().normalize())
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Whether a sheet is to be set as PDF. */
    final boolean makesPdf() {
        return out != null;
    }

    Console console() {
        return console;
    }

    private static void requireReadings(CommandSpec command, List<Path> files) {
        if (files.isEmpty()) {
            throw new ParameterException(command.commandLine(), "READINGS are missing: name at least one file, or -");
        }
        long pipes = files.stream().filter(Inputs::isStandardInput).count();
        if (pipes > 1) {
            throw new ParameterException(command.commandLine(), "- can be read only once");
        }
    }

    /** Reads these files, and writes and says what they come to. */
    final Integer sheetOf(CommandSpec command, List<Path> files) {
        Instant now = Clock.now(command.commandLine());
        Optional<SigningOptions.Pen> pen = signing.penFor(command.commandLine(), out, now);
        ReadingChoices choices = reading.choices(keepGoing);
        FileShelf shelf = new FileShelf(out != null, console.in());
        Inputs inputs = new Inputs(plan.path(), job.path(), files, shelf).choosing(choices);
        stationery.house().map(Path::toString).ifPresent(inputs::ofHouse);
        reading.mapping().map(Path::toString).ifPresent(inputs::byMapping);
        stationery.requireKnownLanguage(command.commandLine());
        refuseToOverwriteInputs(command, inputs);
        try (RefusedFiles refusedRows = new RefusedFiles(out, inputs.paths())) {
            if (choices.keepGoing()) {
                inputs.handingRefusedRowsTo(refusedRows);
            }
            Progress progress = console.progress();
            Sheet sheet;
            try {
                progress.at("reading", 0, 0);
                sheet = inputs.watchedBy((done, all) -> progress.at("characteristic", done, all))
                        .sheet(kind, now);
            } catch (InputRefused refused) {
                progress.end();
                Integer code = refused(refused, inputs);
                if (inputs.intake()
                        .filter(intake ->
                                intake.faultsOfFiles() == 0 && intake.parts().isEmpty())
                        .isPresent()) {
                    // No row was good, but each can be put right.
                    tellOf(refusedRows.write());
                }
                return code;
            } finally {
                progress.end();
            }
            refuseToOverwriteInputs(command, inputs);
            inputs.intake().ifPresent(intake -> intake.refused().lines().forEach(console::message));
            tellOf(refusedRows.write());
            Optional<SheetPress> press = out == null || !sheet.refusals().isEmpty()
                    ? Optional.empty()
                    : Optional.of(press(sheet, inputs, shelf, choices));
            return put(sheet, () -> print(press, pen, progress));
        }
    }

    private void tellOf(List<Path> refusedRows) {
        refusedRows.forEach(path -> console.message("note: the refused rows are in " + path));
    }

    /** Says what is wrong with the inputs, and how many rows are not. */
    private Integer refused(InputRefused refused, Inputs inputs) {
        refused.lines().forEach(console::message);
        inputs.intake().ifPresent(intake -> {
            console.message(intake.rows().toString());
            boolean mayGoOn = intake.faultsOfFiles() == 0 && intake.rows().used() > 0;
            console.message(
                    mayGoOn
                            ? "Nothing was judged; --keep-going judges the good rows and writes the others to a file."
                            : "Nothing was judged.");
        });
        return ExitCodes.INPUT;
    }

    private SheetPress press(Sheet sheet, Inputs inputs, FileShelf shelf, ReadingChoices choices) {
        Map<String, String> options = new LinkedHashMap<>(choices.options());
        options.putAll(stationery.options());
        return new SheetPress(new InspectionRecipe.Made(sheet, inputs.house()), shelf.kept(), options);
    }

    private Integer put(Sheet sheet, Runnable printing) {
        // A sheet that is renewed again and again says the same of the same files; once is enough.
        sheet.notices().stream().filter(noticesSaid::add).forEach(notice -> console.message("note: " + notice));
        boolean refused = !sheet.refusals().isEmpty();
        OutputFile.writeTogether(csv, () -> TableCsv.characteristics(sheet), printing);
        if (json) {
            SheetJson.write(sheet, console.outWriter());
        } else {
            new TextSummary(sheet, refused ? null : out).lines().forEach(console::result);
        }
        console.flush();
        boolean accepted = sheet.result().verdict() == SheetVerdict.ACCEPTED && !refused;
        return accepted ? ExitCodes.ACCEPTED : ExitCodes.NOT_ACCEPTED;
    }

    private void print(Optional<SheetPress> press, Optional<SigningOptions.Pen> pen, Progress progress) {
        if (out != null && press.isPresent()) {
            progress.at("setting the sheet", 0, 0);
            press.get().print(pen, out).forEach(message -> console.message("note: " + message));
        }
        progress.end();
    }

    private void refuseToOverwriteInputs(CommandSpec command, Inputs inputs) {
        Overwriting.refuse(command.commandLine(), "--out", out, inputs.paths());
        Overwriting.refuse(command.commandLine(), "--csv", csv, inputs.paths());
        Overwriting.refuseOneFile(command.commandLine(), out, csv);
    }
}
