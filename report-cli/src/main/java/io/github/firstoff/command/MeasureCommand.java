package io.github.firstoff.command;

import io.github.firstoff.inspection.Job;
import io.github.firstoff.intake.DecimalMark;
import io.github.firstoff.intake.JobFile;
import io.github.firstoff.intake.KeyedOrder;
import io.github.firstoff.intake.KeyedReadings;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.keyed.Dialogue;
import io.github.firstoff.keyed.Lines;
import io.github.firstoff.keyed.MeasureSummary;
import io.github.firstoff.keyed.Screen;
import io.github.firstoff.keyed.Settings;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code firstoff measure}. */
@Command(
        name = "measure",
        description = {
            "Asks for one reading after the other, says the verdict at once and keeps each on the disk before the next.",
            "Called again with the same file, it goes on where it stood."
        },
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class MeasureCommand implements Callable<Integer> {
    private static final int MOST_PIECES = 100_000;

    private final Console console;

    @Spec
    private @Nullable CommandSpec spec;

    @Mixin
    private final PlanOption plan = new PlanOption();

    @Mixin
    private final JobOption job = new JobOption();

    @Option(
            names = "--out",
            required = true,
            paramLabel = "READINGS.csv",
            description = "Where the readings go; READINGS.csv.journal beside it remembers the session.")
    private @Nullable Path out;

    @Option(
            names = "--by",
            paramLabel = "ORDER",
            description = "piece: all of one piece, then the next (at first); characteristic: one on all pieces.")
    private @Nullable String by;

    @Option(names = "--pieces", split = ",", paramLabel = "A,B,...", description = "The pieces, by name.")
    private List<String> pieces = new ArrayList<>();

    @Option(names = "--count", paramLabel = "N", description = "So many pieces, numbered from 1 behind --prefix.")
    private @Nullable Integer count;

    @Option(names = "--prefix", paramLabel = "TEXT", description = "What stands before the numbers of --count.")
    private @Nullable String prefix;

    @Option(
            names = "--repeats",
            paramLabel = "N",
            description = "How many readings are taken of what the plan measures repeatedly; otherwise Enter goes on.")
    private @Nullable Integer repeats;

    @Option(names = "--operator", paramLabel = "NAME", description = "Who measures; stands beside each reading.")
    private @Nullable String operator;

    @Option(
            names = "--decimal-mark",
            paramLabel = "MARK",
            description = "The decimal mark of what is keyed, point (at first) or comma.")
    private @Nullable DecimalMark decimalMark;

    @Option(names = "--json", description = "At the end, put a summary on standard output as one JSON document.")
    private boolean json;

    MeasureCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Path planPath = plan.path();
        Path target = Objects.requireNonNull(out);
        List<String> named = pieces();
        Optional<KeyedOrder> order = order();
        requireName(operator, "--operator");
        if (repeats != null && (repeats < 1 || repeats > KeyedReadings.MOST_REPEATS)) {
            throw wrong("--repeats is " + repeats + "; it must be from 1 to " + KeyedReadings.MOST_REPEATS);
        }
        refuseToOverwrite(target, planPath);
        PlanFile planFile = PlanFile.read(planPath);
        planFile.counterpart().map(Path::of).ifPresent(other -> refuseToOverwrite(target, other));
        ResolvedPlan resolved = planFile.resolve();
        planFile.notices().forEach(this::note);
        List<String> statements = jobStatements(resolved, target);
        Settings settings = new Settings(
                order,
                repeats == null ? OptionalInt.empty() : OptionalInt.of(repeats),
                Optional.ofNullable(decimalMark),
                named,
                Optional.ofNullable(operator).map(String::strip),
                statements,
                () -> Clock.now(command().commandLine())
                        .atZone(ZoneId.systemDefault())
                        .toOffsetDateTime());
        try {
            Path folder = target.toAbsolutePath().normalize().getParent();
            if (folder != null) {
                Files.createDirectories(folder);
            }
            return measure(resolved, planFile.sha256(), target, settings);
        } catch (FileAlreadyExistsException notAFolder) {
            throw new OutputFault(target + " cannot be kept: " + notAFolder.getFile() + " is no folder.", notAFolder);
        } catch (IOException fault) {
            console.flush();
            throw new OutputFault(
                    target + " cannot be kept: " + Faults.reason(fault) + ". What was confirmed before is kept.",
                    fault);
        }
    }

    private int measure(ResolvedPlan resolved, String planHash, Path target, Settings settings) throws IOException {
        Screen screen = new Screen(console.errWriter(), TerminalKind.abilities(console.in()));
        Lines lines = new Lines(console.in(), TerminalKind.charset(console.in()));
        try (KeyedReadings session = KeyedReadings.open(resolved, planHash, target)) {
            int before = session.count();
            Dialogue.End end = new Dialogue(session, lines, screen, settings).run();
            session.requireUntouched();
            MeasureSummary summary = MeasureSummary.of(session, end, session.count() - before);
            if (json) {
                summary.writeJson(console.outWriter());
            } else {
                Screen result = new Screen(console.outWriter(), TerminalKind.abilitiesOfOutput(console.in()));
                summary.lines().forEach(result::line);
            }
            console.flush();
            return summary.isAccepted() ? ExitCodes.ACCEPTED : ExitCodes.NOT_ACCEPTED;
        }
    }

    /** What the job says that could name a hand; the job is refused if it names another part. */
    private List<String> jobStatements(ResolvedPlan resolved, Path target) {
        Optional<Path> path = job.path();
        if (path.isEmpty()) {
            return List.of();
        }
        refuseToOverwrite(target, path.get());
        JobFile file = JobFile.read(path.get());
        file.requireFor(resolved);
        file.notices().forEach(this::note);
        Job stated = file.job();
        List<String> statements = new ArrayList<>();
        stated.job().ifPresent(text -> statements.add("job " + text));
        stated.batch().ifPresent(text -> statements.add("batch " + text));
        stated.program().ifPresent(text -> statements.add("program " + text));
        return statements;
    }

    private void note(Notice notice) {
        console.message("note: " + notice.line());
    }

    private Optional<KeyedOrder> order() {
        if (by == null) {
            return Optional.empty();
        }
        Optional<KeyedOrder> order = KeyedOrder.parse(by);
        if (order.isEmpty()) {
            throw wrong("--by is \"" + by + "\"; it must be piece or characteristic");
        }
        return order;
    }

    private List<String> pieces() {
        if (count == null) {
            if (prefix != null) {
                throw wrong("--prefix goes with --count");
            }
            List<String> named = pieces.stream().map(String::strip).toList();
            Set<String> seen = new HashSet<>();
            for (String each : named) {
                KeyedReadings.refusalOfPieceName(each).ifPresent(why -> {
                    throw wrong("--pieces: " + why);
                });
                if (!seen.add(each)) {
                    throw wrong("--pieces names " + each + " twice");
                }
            }
            return named;
        }
        if (!pieces.isEmpty()) {
            throw wrong("--pieces and --count both name the pieces; use one of them");
        }
        if (count < 1 || count > MOST_PIECES) {
            throw wrong("--count is " + count + "; it must be from 1 to " + MOST_PIECES);
        }
        String before = prefix == null ? "" : prefix.strip();
        int digits = String.valueOf(count).length();
        List<String> named = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            String number = String.valueOf(i);
            named.add(before + "0".repeat(digits - number.length()) + number);
        }
        requireName(named.get(0), "--prefix");
        return named;
    }

    private void requireName(@Nullable String name, String option) {
        if (name != null) {
            KeyedReadings.refusalOfName(name).ifPresent(why -> {
                throw wrong(option + ": " + why);
            });
        }
    }

    /** The readings file is named by the person; its journal lies beside it and is written too. */
    private void refuseToOverwrite(Path target, Path input) {
        Path journal = target.resolveSibling(target.getFileName() + ".journal");
        if (Overwriting.isSame(target, input) || Overwriting.isSame(journal, input)) {
            throw wrong("--out " + target + " would overwrite an input");
        }
    }

    private CommandSpec command() {
        return Objects.requireNonNull(spec);
    }

    private ParameterException wrong(String message) {
        return new ParameterException(command().commandLine(), message);
    }
}
