package io.github.firstoff.command;

import io.github.firstoff.intake.DecimalMark;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How readings are read. */
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

    @Option(
            names = "--keep-going",
            description = {
                "Judge the good rows although others were refused. Each refused row is written with its reason to NAME.refused.csv,",
                "the sheet says how many there are, and is at best incomplete."
            })
    private boolean keepGoing;

    /** The mapping by which texts are read, if the command line names one. */
    Optional<Path> mapping() {
        return Optional.ofNullable(mapping);
    }

    ReadingChoices choices() {
        return new ReadingChoices(Optional.ofNullable(decimalMark), Optional.ofNullable(sheet), keepGoing);
    }
}
