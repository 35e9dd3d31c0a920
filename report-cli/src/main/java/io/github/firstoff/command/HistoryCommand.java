package io.github.firstoff.command;

import io.github.firstoff.proof.CarriedFile;
import io.github.firstoff.sheet.TableCsv;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code firstoff history}. */
@Command(
        name = "history",
        description = "One characteristic across several batches, on one page: each file of readings is a batch.",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class HistoryCommand extends StudyCommand {
    @Mixin
    private final PlanOption plan = new PlanOption();

    @Option(
            names = "--characteristic",
            required = true,
            paramLabel = "NUMBER",
            description = "The number of the characteristic in the plan.")
    private @Nullable String number;

    @Option(names = "--csv", paramLabel = "FILE.csv", description = "Write the table of batches as CSV.")
    private @Nullable Path csv;

    @Mixin
    private final ReadingOptions reading = new ReadingOptions();

    @Parameters(
            paramLabel = "READINGS",
            arity = "1..*",
            description = {
                "What was measured, a file for each batch, the oldest first. A job NAME.job.json beside NAME.csv",
                "names the batch; else the file does."
            })
    private List<Path> readings = new ArrayList<>();

    HistoryCommand(Console console) {
        super(new HistoryRecipe(), console);
    }

    @Override
    Ingredients ingredients() {
        Ingredients from = Ingredients.NONE
                .with(CarriedFile.Role.PLAN, plan.path())
                .choosing(HistoryRecipe.options(Objects.requireNonNull(number)));
        for (Path file : readings) {
            from = HistoryRecipe.with(from, file.toString(), job(file).map(Path::toString));
        }
        return reading.on(from);
    }

    @Override
    public Integer call() {
        Instant now = Clock.now(line());
        Optional<SigningOptions.Pen> pen = pen(now);
        FileShelf shelf = shelf();
        Ingredients from = onStationery(ingredients());
        keep(from.paths(), csv);
        HistoryRecipe.Made made = history(from, shelf, now);
        keep(shelf.opened(), csv);
        OutputFile.writeTogether(csv, () -> TableCsv.batches(made.sheet()), () -> print(made, shelf.kept(), from, pen));
        return tell(made);
    }

    private HistoryRecipe.Made history(Ingredients from, Inputs.Shelf shelf, Instant now) {
        try {
            return HistoryRecipe.history(from, shelf, now);
        } catch (HistoryRecipe.NotJudged asked) {
            throw new ParameterException(line(), "--characteristic " + asked.says());
        }
    }

    /** The job that lies beside the readings under their name. */
    private static Optional<Path> job(Path file) {
        String own = Inputs.nameOf(file.toString()).replaceFirst("\\.[^.]*$", "") + ".job.json";
        return Optional.of(file.resolveSibling(own)).filter(Files::isRegularFile);
    }
}
