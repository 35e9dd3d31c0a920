package io.github.firstoff.command;

import io.github.firstoff.proof.CarriedFile;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code firstoff fit}. */
@Command(
        name = "fit",
        description = {
            "Two parts pressed into one another: does the joint hold hot, do the parts stay whole cold,",
            "what does the bearing keep, and which bore goes with which ring."
        },
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class FitCommand extends StudyCommand {
    @Parameters(paramLabel = "ASSEMBLY", description = "The joint, its parts and temperatures (JSON, see docs/fit.md).")
    private @Nullable Path assembly;

    @Option(
            names = "--bores",
            paramLabel = "READINGS",
            description = "Measured bores of the outer part (see docs/intake.md).")
    private @Nullable Path bores;

    @Option(
            names = "--rings",
            paramLabel = "READINGS",
            description = "Measured sizes of what goes in (see docs/intake.md).")
    private @Nullable Path rings;

    @Mixin
    private final ReadingOptions reading = new ReadingOptions();

    FitCommand(Console console) {
        super(new FitRecipe(), console);
    }

    @Override
    Ingredients ingredients() {
        return reading.on(Ingredients.NONE
                .with(CarriedFile.Role.ASSEMBLY, Objects.requireNonNull(assembly))
                .with(CarriedFile.Role.BORES, Optional.ofNullable(bores))
                .with(CarriedFile.Role.RINGS, Optional.ofNullable(rings)));
    }
}
