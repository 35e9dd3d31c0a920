package io.github.firstoff.command;

import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.Intake;
import io.github.firstoff.intake.MappingDraft;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.SafeText;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code firstoff mapping}: proposes how the lines of a measuring machine's text are understood, and shows what that would give. */
@Command(
        name = "mapping",
        description = {
            "Proposes a mapping for the text that a measuring machine writes, from an example, and shows the table",
            "that it would give: every reading, how its name was matched, and whatever was not understood."
        },
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class MappingCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "FILE",
            description = "An export with readings of the plan's part; - is standard input.")
    private @Nullable Path example;

    @Mixin
    private final PlanOption plan = new PlanOption();

    @Option(
            names = "--out",
            paramLabel = "MAPPING.json",
            description = "Where the mapping goes. Without it only the table is shown.")
    private @Nullable Path out;

    @Option(
            names = "--json",
            description = {
                "Put the mapping, the table that it gives and what was not understood on standard output as one JSON",
                "document."
            })
    private boolean json;

    MappingCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Path from = Objects.requireNonNull(example);
        Path planPath = plan.path();
        Overwriting.refuse(Objects.requireNonNull(spec).commandLine(), "--out", out, List.of(from, planPath));
        PlanFile planFile = PlanFile.read(planPath);
        MappingDraft draft = MappingDraft.of(input(from), planFile.resolve());
        Intake intake = draft.intake();
        intake.notices().forEach(notice -> console.message("note: " + notice));
        intake.refused().lines().forEach(console::message);
        if (out != null) {
            OutputFile.write(out, stream -> stream.write(draft.text().getBytes(StandardCharsets.UTF_8)));
        }
        if (json) {
            new MappingListing(draft, out).json(console.outWriter());
        } else {
            table(draft).forEach(console::result);
        }
        console.flush();
        return draft.isComplete() ? ExitCodes.ACCEPTED : ExitCodes.NOT_ACCEPTED;
    }

    private Input input(Path path) {
        return path.toString().equals(Inputs.STANDARD_INPUT)
                ? Input.stream(Inputs.STANDARD_INPUT_NAME, console.in())
                : Input.file(path);
    }

    private List<String> table(MappingDraft draft) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("line", "piece", "name in the file", "characteristic", "value", "matched by"));
        for (MappingDraft.Entry each : draft.entries()) {
            rows.add(List.of(
                    Long.toString(each.line()),
                    SafeText.line(each.part()),
                    SafeText.line(each.name()),
                    SafeText.line(each.characteristic().number() + " "
                            + each.characteristic().characteristic().feature() + ", "
                            + each.characteristic().characteristic().printed()),
                    each.value(),
                    each.matchedBy()));
        }
        List<String> lines = new ArrayList<>(aligned(rows));
        lines.add("");
        lines.add(draft.intake().rows().toString());
        if (!draft.saysPiece()) {
            lines.add(
                    "Not found: which piece each row is of. Say under \"part\" where that stands: behind a label, or in a line of"
                            + " each piece.");
        }
        draft.unmatchedNames()
                .forEach(name -> lines.add("Not matched: " + SafeText.line(name)
                        + ". Put it under \"names\" with its number, or under \"notInPlan\"."));
        draft.notFound()
                .forEach(each -> lines.add("Not in the file: characteristic " + SafeText.line(each.number()) + " ("
                        + SafeText.line(each.characteristic().feature()) + ", "
                        + SafeText.line(each.characteristic().printed()) + ")."));
        lines.add(
                out == null
                        ? "Nothing was written; --out MAPPING.json writes the mapping."
                        : "The mapping is in " + out
                                + ". Check every line above against the file before you use it with --mapping.");
        return lines;
    }

    private static List<String> aligned(List<List<String>> rows) {
        int columns = rows.get(0).size();
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int i = 0; i < columns; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < columns; i++) {
                String form = i == 0 ? "%" + widths[i] + "s" : "%-" + widths[i] + "s";
                line.append(i == 0 ? "" : "  ").append(String.format(Locale.ROOT, form, row.get(i)));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }
}
