package io.github.firstoff.command;

import io.github.firstoff.proof.CarriedFile;
import java.nio.file.Path;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code firstoff stack}. */
@Command(
        name = "stack",
        description = {"A loop of dimensions: the gap it leaves at worst and usually, and which member matters."},
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class)
final class StackCommand extends StudyCommand {
    @Parameters(paramLabel = "MEMBERS", description = "The members of the loop (JSON, see docs/stack.md).")
    private @Nullable Path members;

    StackCommand(Console console) {
        super(new StackRecipe(), console);
    }

    @Override
    Ingredients ingredients() {
        return Ingredients.NONE.with(CarriedFile.Role.STACK, Objects.requireNonNull(members));
    }
}
