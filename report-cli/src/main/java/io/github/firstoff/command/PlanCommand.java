package io.github.firstoff.command;

import io.github.firstoff.intake.DecimalMark;
import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.PlanDraft;
import io.github.firstoff.intake.PlanFact;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code firstoff plan}: a plan file from a table or from QIF, with every limit in figures for a person to check. */
@Command(
        name = "plan",
        description = {
            "Makes a plan from a table (number, feature, requirement, class, gauge, study) or from QIF,",
            "and lists what it understood with the limits in figures, to be checked against the drawing."
        },
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class PlanCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "SOURCE",
            description = {
                "The table (CSV, .xlsx or .ods) or the QIF document with the characteristics;",
                "- is standard input."
            })
    private @Nullable Path source;

    @Parameters(
            index = "1..*",
            paramLabel = "DOCUMENT",
            arity = "0..*",
            description = "QIF documents to which the source refers.")
    private List<Path> companions = new ArrayList<>();

    @Option(
            names = "--out",
            paramLabel = "PLAN.json",
            description = "Where the plan goes. Without it the characteristics are only listed.")
    private @Nullable Path out;

    @Option(names = "--part", paramLabel = "NUMBER", description = "The part number.")
    private @Nullable String part;

    @Option(names = "--revision", paramLabel = "REVISION", description = "The drawing's revision.")
    private @Nullable String revision;

    @Option(names = "--name", paramLabel = "NAME", description = "What the part is called.")
    private @Nullable String name;

    @Option(names = "--drawing", paramLabel = "NUMBER", description = "The drawing's number.")
    private @Nullable String drawing;

    @Option(names = "--unit", paramLabel = "UNIT", description = "The unit of the sizes: mm, inch or degree.")
    private @Nullable String unit;

    @Option(names = "--hand", paramLabel = "HAND", description = "The hand: port, starboard, left or right.")
    private @Nullable String hand;

    @Option(
            names = "--general-tolerance",
            paramLabel = "TEXT",
            description = "The general tolerance of the title block, such as \"ISO 2768-m\".")
    private @Nullable String generalTolerance;

    @Option(names = "--material", paramLabel = "MATERIAL", description = "The material of the part.")
    private @Nullable String material;

    @Option(
            names = "--sheet",
            paramLabel = "NAME",
            description = "Which sheet of a workbook holds the characteristics, where several could.")
    private @Nullable String sheet;

    @Option(
            names = "--decimal-mark",
            paramLabel = "MARK",
            description = "The decimal mark of the requirements in a table, point or comma; found out if not stated.")
    private @Nullable DecimalMark decimalMark;

    @Option(names = "--json", description = "Put what was understood on standard output as one JSON document.")
    private boolean json;

    PlanCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        CommandSpec command = Objects.requireNonNull(spec);
        Path from = Objects.requireNonNull(source);
        List<Path> inputs = new ArrayList<>(companions);
        inputs.add(from);
        Overwriting.refuse(command.commandLine(), "--out", out, inputs);
        PlanDraft draft = PlanDraft.of(
                input(from),
                companions.stream().map(this::input).toList(),
                stated(),
                Optional.ofNullable(sheet),
                Optional.ofNullable(decimalMark));
        draft.notices().forEach(notice -> console.message("note: " + notice));
        if (out != null) {
            OutputFile.write(out, stream -> stream.write(draft.text().getBytes(StandardCharsets.UTF_8)));
        }
        PlanListing listing = new PlanListing(draft, out);
        if (json) {
            listing.json(console.outWriter());
        } else {
            listing.lines().forEach(console::result);
        }
        console.flush();
        return ExitCodes.ACCEPTED;
    }

    private Input input(Path path) {
        return path.toString().equals("-") ? Input.stream("standard input", console.in()) : Input.file(path);
    }

    private Map<PlanFact, String> stated() {
        Map<PlanFact, String> stated = new EnumMap<>(PlanFact.class);
        put(stated, PlanFact.PART, part);
        put(stated, PlanFact.REVISION, revision);
        put(stated, PlanFact.NAME, name);
        put(stated, PlanFact.DRAWING, drawing);
        put(stated, PlanFact.UNIT, unit);
        put(stated, PlanFact.HAND, hand);
        put(stated, PlanFact.GENERAL_TOLERANCE, generalTolerance);
        put(stated, PlanFact.MATERIAL, material);
        return stated;
    }

    private static void put(Map<PlanFact, String> stated, PlanFact fact, @Nullable String text) {
        if (text != null) {
            stated.put(fact, text.strip());
        }
    }
}
