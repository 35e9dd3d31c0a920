package io.github.firstoff.command;

import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.proof.Evidence;
import io.github.firstoff.report.kind.ReportCatalogue;
import io.github.firstoff.report.model.Attachment;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.pdf.HeadlessFonts;
import io.github.firstoff.report.pdf.PdfRenderer;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetJson;
import io.github.firstoff.sheet.SheetKind;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What the commands that make a sheet have in common: inputs in, one sheet out, an exit code that says how it went. */
abstract class SheetCommand implements Callable<Integer> {
    private final SheetKind kind;
    private final Console console;

    @Spec
    private @Nullable CommandSpec spec;

    @Option(
            names = "--plan",
            required = true,
            paramLabel = "PLAN",
            description = "What the drawing requires (JSON, see docs/inputs.md).")
    private @Nullable Path plan;

    @Option(names = "--job", paramLabel = "JOB", description = "Order, batch, material and people (JSON).")
    private @Nullable Path job;

    @Option(names = "--out", paramLabel = "FILE.pdf", description = "Where the sheet goes. Without it no PDF is made.")
    private @Nullable Path out;

    @Option(names = "--json", description = "Put the result on standard output as one JSON document.")
    private boolean json;

    @Parameters(paramLabel = "READINGS", arity = "1..*", description = "What was measured (CSV or JSON).")
    private List<Path> readings = new ArrayList<>();

    SheetCommand(SheetKind kind, Console console) {
        this.kind = kind;
        this.console = console;
    }

    @Override
    public Integer call() {
        CommandSpec command = java.util.Objects.requireNonNull(spec);
        Path planPath = java.util.Objects.requireNonNull(plan);
        if (kind == SheetKind.CERTIFICATE && job == null) {
            throw new ParameterException(
                    command.commandLine(),
                    "a certificate needs --job JOB: issuer, customer, order and batch stand in it");
        }
        FileShelf shelf = new FileShelf(out != null);
        Inputs inputs = new Inputs(planPath, job, readings, shelf);
        refuseToOverwriteInputs(command, inputs);
        Sheet sheet = inputs.sheet(kind, Clock.now(command.commandLine()));
        refuseToOverwriteInputs(command, inputs);
        sheet.notices().forEach(notice -> console.message("note: " + notice));
        boolean refused = !sheet.refusals().isEmpty();
        if (out != null && !refused) {
            print(sheet, Evidence.of(sheet, shelf.kept(), Map.of()), out);
        }
        if (json) {
            SheetJson.write(sheet, console.outWriter());
        } else {
            new TextSummary(sheet, refused ? null : out).lines().forEach(console::result);
        }
        console.flush();
        boolean accepted = sheet.result().verdict() == SheetVerdict.ACCEPTED && !refused;
        return accepted ? ExitCodes.ACCEPTED : ExitCodes.NOT_ACCEPTED;
    }

    private void print(Sheet sheet, List<Attachment> attachments, Path target) {
        prepareFonts();
        ReportModel model = ReportCatalogue.compose(sheet);
        List<String> messages = new ArrayList<>();
        OutputFile.write(
                target,
                stream -> messages.addAll(
                        new PdfRenderer().render(model, attachments, stream).messages()));
        messages.forEach(message -> console.message("note: " + message));
    }

    private static void prepareFonts() {
        try {
            HeadlessFonts.prepare();
        } catch (IOException fault) {
            throw new OutputFault("the fonts of the sheet cannot be unpacked: " + Faults.reason(fault), fault);
        }
    }

    private void refuseToOverwriteInputs(CommandSpec command, Inputs inputs) {
        if (out == null) {
            return;
        }
        for (Path input : inputs.paths()) {
            if (out.toAbsolutePath().normalize().equals(input.toAbsolutePath().normalize())) {
                throw new ParameterException(command.commandLine(), "--out " + out + " would overwrite an input");
            }
        }
    }
}
