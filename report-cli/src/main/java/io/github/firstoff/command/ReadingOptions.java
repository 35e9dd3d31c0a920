package io.github.firstoff.command;

import io.github.firstoff.intake.DecimalMark;
import io.github.firstoff.proof.CarriedFile;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How readings are read: the same for every command that reads any. */
final class ReadingOptions {
    @Option(
            names = "--decimal-mark",
            paramLabel = "MARK",
            description = "Which decimal mark the numbers have, point or comma, where a file does not show it.")
    private @Nullable DecimalMark decimalMark;

    @Option(
            names = "--sheet",
            paramLabel = "NAME",
            description = "Which sheet of a workbook holds the readings, where several could.")
    private @Nullable String sheet;

    @Option(
            names = "--mapping",
            paramLabel = "MAPPING.json",
            description = "How the lines of a measuring machine's text are understood (see firstoff mapping).")
    private @Nullable Path mapping;

    /** The mapping by which texts are read, if the command line names one. */
    Optional<Path> mapping() {
        return Optional.ofNullable(mapping);
    }

    /** What the options say, and whether good rows are judged although others were refused. */
    ReadingChoices choices(boolean keepGoing) {
        return new ReadingChoices(Optional.ofNullable(decimalMark), Optional.ofNullable(sheet), keepGoing);
    }

    /** These ingredients, the mapping and what the options say. */
    Ingredients on(Ingredients from) {
        return from.with(CarriedFile.Role.MAPPING, mapping())
                .choosing(choices(false).options());
    }
}
