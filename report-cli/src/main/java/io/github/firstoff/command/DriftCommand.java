package io.github.firstoff.command;

import io.github.firstoff.intake.Input;
import io.github.firstoff.intake.InputRefused;
import io.github.firstoff.intake.RowCounts;
import io.github.firstoff.intake.WholeLines;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.proof.CarriedFile;
import io.github.firstoff.sheet.DriftFollower;
import io.github.firstoff.sheet.DriftOptions;
import io.github.firstoff.sheet.DriftRefused;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.study.drift.DriftSettings;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code firstoff drift}. */
@Command(
        name = "drift",
        description = {
            "Follow a size that drifts: when it meets its limit, what offset to enter now,",
            "and how long a tool may go on."
        },
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class DriftCommand extends StudyCommand {
    private static final long GLANCE_MILLIS = 200;
    private static final int MOST_NAMED = 15;

    private final Console terminal;

    @Mixin
    private final PlanOption plan = new PlanOption();

    @Mixin
    private final JobOption job = new JobOption();

    @Option(
            names = "--characteristic",
            paramLabel = "N",
            description = "Follow this one; may be given again. Without it all that can be followed are.")
    private List<String> characteristics = new ArrayList<>();

    @Option(
            names = "--every",
            paramLabel = "N",
            defaultValue = "1",
            description =
                    "One piece in N was measured (default ${DEFAULT-VALUE}); slopes and forecasts count all pieces.")
    private int every;

    @Option(
            names = "--sigma",
            paramLabel = "K",
            defaultValue = "3",
            description = "How many standard deviations must stay inside the limit (default ${DEFAULT-VALUE}).")
    private double sigmas;

    @Option(
            names = "--index",
            paramLabel = "C",
            description =
                    "The index that a tool life must keep; without it what the plan demands of the class, else 1.33.")
    private @Nullable Double index;

    @Option(
            names = "--increment",
            paramLabel = "STEP",
            description = "The step of the machine's offset, in the unit of the plan (default 0.001; 0.0001 inch).")
    private @Nullable BigDecimal increment;

    @Option(
            names = "--across-batches",
            description =
                    "Let a line go on from one file of readings to the next; without it each file is a batch of its own.")
    private boolean acrossBatches;

    @Mixin
    private final ReadingOptions reading = new ReadingOptions();

    @Option(
            names = "--follow",
            paramLabel = "FILE",
            description = {
                "Read this file of readings, after READINGS, again whenever it has grown: a line for each subgroup, with its",
                "forecast, and one for each signal. Ends with Ctrl-C, or see the next two."
            })
    private @Nullable Path followed;

    @Option(
            names = "--stop-on-signal",
            description = "With --follow: end with exit code 1 the moment a zone test fires, for a cell to act on.")
    private boolean stopOnSignal;

    @Option(
            names = "--until-idle",
            paramLabel = "SECONDS",
            description = "With --follow: end when the file has not grown for so long.")
    private int idle;

    @Option(
            names = "--subgroup",
            paramLabel = "N",
            description = "With --follow: readings to a line; without it what the plan's study says, else five.")
    private @Nullable Integer subgroup;

    @Parameters(
            paramLabel = "READINGS",
            arity = "0..*",
            description = "What was measured (see docs/intake.md); - is standard input. Each file is a batch.")
    private List<Path> readings = new ArrayList<>();

    DriftCommand(Console console) {
        super(new DriftRecipe(), console);
        terminal = console;
    }

    @Override
    public Integer call() {
        DriftOptions options = options();
        if (readings.stream().filter(Inputs::isStandardInput).count() > 1) {
            throw usage("- can be read only once");
        }
        Path follow = followed;
        if (follow != null) {
            if (readings.stream().anyMatch(Inputs::isStandardInput)) {
                throw usage("- can be read only once, and --follow reads again and again");
            }
            return follow(follow, from(options.withoutDetection(), follow));
        }
        if (stopOnSignal || idle != 0 || subgroup != null) {
            throw usage("--stop-on-signal, --until-idle and --subgroup need --follow FILE");
        }
        if (readings.isEmpty()) {
            throw usage("READINGS are missing: name at least one file, or -");
        }
        Instant now = Clock.now(line());
        Optional<SigningOptions.Pen> pen = pen(now);
        Ingredients from = from(options, null);
        FileShelf shelf = shelf();
        try {
            DriftRecipe.Made made = study(from, shelf, now);
            keep(shelf.opened());
            return tell(made, shelf.kept(), from, pen);
        } catch (DriftRefused refused) {
            return refused(refused);
        }
    }

    private ParameterException usage(String message) {
        return new ParameterException(line(), message);
    }

    private DriftOptions options() {
        if (every < 1) {
            throw usage("--every " + every + ": one piece in at least 1 was measured");
        }
        if (idle < 0) {
            throw usage("--until-idle needs a number of seconds above 0");
        }
        if (subgroup != null && subgroup < 1) {
            throw usage("--subgroup " + subgroup + ": a subgroup has at least one reading");
        }
        try {
            DriftSettings settings = DriftSettings.withDefaults().withSigmas(sigmas);
            if (increment != null) {
                settings = settings.withIncrement(increment);
            }
            if (index != null) {
                settings = settings.withRequiredIndex(index);
            }
            return new DriftOptions(
                    characteristics,
                    every,
                    acrossBatches,
                    true,
                    index == null ? OptionalDouble.empty() : OptionalDouble.of(index),
                    settings);
        } catch (IllegalArgumentException fault) {
            throw usage(String.valueOf(fault.getMessage()));
        }
    }

    @Override
    Ingredients ingredients() {
        Ingredients from =
                Ingredients.NONE.with(CarriedFile.Role.PLAN, plan.path()).with(CarriedFile.Role.JOB, job.path());
        for (Path each : readings) {
            from = from.with(CarriedFile.Role.READINGS, each);
        }
        return reading.on(from);
    }

    /** Everything that the study is made from, with a file that grows behind the others. */
    private Ingredients from(DriftOptions options, @Nullable Path growing) {
        return onStationery(ingredients()
                .with(CarriedFile.Role.READINGS, Optional.ofNullable(growing))
                .choosing(DriftRecipe.options(options)));
    }

    private DriftRecipe.Made study(Ingredients from, Inputs.Shelf shelf, Instant now) {
        keep(from);
        InspectionRecipe.Made inspection = DriftRecipe.inspection(from, shelf, now);
        requireKnown(inspection.sheet());
        return DriftRecipe.study(inspection, DriftRecipe.asked(from.options()));
    }

    /** A characteristic that the plan does not have is a slip on the command line. */
    private void requireKnown(Sheet sheet) {
        for (String wanted : characteristics) {
            if (sheet.plan().find(wanted).isPresent()) {
                continue;
            }
            String folded = wanted.toLowerCase(Locale.ROOT);
            List<ResolvedCharacteristic> all = sheet.plan().characteristics();
            Optional<String> meant = all.stream()
                    .filter(each -> folded.replaceFirst("^[#0]+", "")
                                    .equals(each.number().toLowerCase(Locale.ROOT))
                            || each.characteristic()
                                    .feature()
                                    .toLowerCase(Locale.ROOT)
                                    .contains(folded))
                    .map(DriftCommand::named)
                    .findFirst();
            throw usage("--characteristic " + wanted + ": the plan has no such characteristic; "
                    + meant.map(name -> "did you mean " + name + "?")
                            .orElseGet(() -> "it has "
                                    + String.join(
                                            ", ",
                                            all.stream()
                                                    .limit(MOST_NAMED)
                                                    .map(DriftCommand::named)
                                                    .toList())
                                    + (all.size() > MOST_NAMED ? " and " + (all.size() - MOST_NAMED) + " more" : "")));
        }
    }

    private static String named(ResolvedCharacteristic characteristic) {
        return characteristic.number() + " (" + characteristic.characteristic().feature() + ")";
    }

    private int refused(DriftRefused refused) {
        terminal.message("firstoff: " + refused.reason());
        return ExitCodes.INPUT;
    }

    /** What was seen at the last look, and the files as they were then. */
    private record Looked(DriftRecipe.Made made, GrowingFile shelf) {}

    /** What a file was like when it was looked at. */
    private record State(long size, FileTime changed) {}

    /** Ctrl-C ends the program only when its last words are out. */
    private int follow(Path file, Ingredients from) {
        Optional<SigningOptions.Pen> pen = pen(Clock.now(line()));
        if (makesPdf()) {
            SheetPress.prepare();
        }
        return UntilInterrupted.run(
                terminal, "the last sheet was not finished", asked -> watch(file, from, pen, asked));
    }

    private DriftFollower follower(Path file) {
        return new DriftFollower(file.toString(), subgroup == null ? OptionalInt.empty() : OptionalInt.of(subgroup));
    }

    private int watch(Path file, Ingredients from, Optional<SigningOptions.Pen> pen, CountDownLatch asked) {
        DriftFollower follower = follower(file);
        Optional<State> before = Optional.empty();
        Looked last = null;
        String toldOff = "";
        boolean missing = false;
        long lastChange = System.nanoTime();
        try {
            while (true) {
                Optional<State> now = state(file);
                if (now.isEmpty() != missing) {
                    missing = now.isEmpty();
                    terminal.message(file + (missing ? " is not there; waiting for it" : " is there"));
                    terminal.flush();
                }
                boolean shorter = now.isPresent()
                        && before.filter(then -> then.size() > now.get().size()).isPresent();
                if (shorter) {
                    terminal.message(
                            "note: " + file + " is shorter than it was, so it is followed anew from its beginning");
                    follower = follower(file);
                }
                if (now.isPresent() && !now.equals(before)) {
                    before = now;
                    lastChange = System.nanoTime();
                    String fault = "";
                    try {
                        GrowingFile shelf = new GrowingFile(file, shelf());
                        last = new Looked(study(from, shelf, Clock.now(line())), shelf);
                        DriftFollower.News news = follower.look(last.made().sheet());
                        news.lines().forEach(this::say);
                        terminal.flush();
                        if (news.signalled() && stopOnSignal) {
                            finish(last, from, pen);
                            return ExitCodes.NOT_ACCEPTED;
                        }
                    } catch (DriftRefused tooFew) {
                        fault = "waiting: " + tooFew.reason();
                    } catch (InputRefused refused) {
                        List<String> lines = new ArrayList<>(refused.lines());
                        refused.rows().map(RowCounts::toString).ifPresent(lines::add);
                        fault = String.join(System.lineSeparator(), lines);
                    }
                    if (!fault.isEmpty() && !fault.equals(toldOff)) {
                        fault.lines().forEach(terminal::message);
                    }
                    toldOff = fault;
                }
                boolean wasIdle = idle > 0 && System.nanoTime() - lastChange > TimeUnit.SECONDS.toNanos(idle);
                if (wasIdle || asked.await(GLANCE_MILLIS, TimeUnit.MILLISECONDS)) {
                    if (last == null) {
                        terminal.message("firstoff: no readings came that could be followed");
                        return ExitCodes.INPUT;
                    }
                    return finish(last, from, pen);
                }
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return ExitCodes.NOT_ACCEPTED;
        }
    }

    /** Lines are the result, unless that is to be a document. */
    private void say(String line) {
        String plain = line.replace('\u00A0', ' ');
        if (isJson()) {
            terminal.message(plain);
        } else {
            terminal.result(plain);
        }
    }

    private int finish(Looked last, Ingredients from, Optional<SigningOptions.Pen> pen) {
        keep(last.shelf().files.opened());
        Instant now = Clock.now(line());
        return tell(last.made(), last.shelf().files.kept(), from, pen.map(each -> each.at(now)));
    }

    private static Optional<State> state(Path file) {
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            return Optional.of(new State(attributes.size(), attributes.lastModifiedTime()));
        } catch (IOException notThere) {
            // It may come yet, or be put in place anew at this moment; the next look tells.
            return Optional.empty();
        }
    }

    /** Files as they are, but of the one that grows only whole lines: its last may still be written. */
    private static final class GrowingFile implements Inputs.Shelf {
        private final FileShelf files;
        private final Path growing;

        GrowingFile(Path growing, FileShelf files) {
            this.growing = growing;
            this.files = files;
        }

        @Override
        public void wasRead(CarriedFile.Role role, int place, String sha256) {
            files.wasRead(role, place, sha256);
        }

        @Override
        public Input open(CarriedFile.Role role, int place, String name) {
            if (role != CarriedFile.Role.READINGS || !name.equals(growing.toString())) {
                return files.open(role, place, name);
            }
            try {
                byte[] bytes = Files.readAllBytes(growing);
                return files.open(role, place, name, Arrays.copyOf(bytes, WholeLines.length(bytes)));
            } catch (IOException unreadable) {
                // Whoever reads it says in its own words what is wrong with it.
                return files.open(role, place, name);
            }
        }
    }
}
