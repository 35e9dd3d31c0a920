package io.github.firstoff.command;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The job: what the order is about. */
final class JobOption {
    @Option(names = "--job", paramLabel = "JOB", description = "Order, batch, material and people (JSON).")
    private @Nullable Path job;

    /** The job's file, if the command line names one. */
    Optional<Path> path() {
        return Optional.ofNullable(job);
    }
}
