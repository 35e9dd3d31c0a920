package io.github.firstoff.command;

import java.nio.file.Path;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The plan, without which a command has nothing to hold readings against. */
final class PlanOption {
    @Option(
            names = "--plan",
            required = true,
            paramLabel = "PLAN",
            description = "What the drawing requires (JSON, see docs/inputs.md).")
    private @Nullable Path plan;

    /** The plan's file; the command line is refused without it before a command is called. */
    Path path() {
        return Objects.requireNonNull(plan);
    }
}
