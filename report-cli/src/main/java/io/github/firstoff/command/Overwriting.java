package io.github.firstoff.command;

import java.nio.file.Path;
import java.util.Collection;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Keeps a command from writing over what it reads. */
final class Overwriting {
    private Overwriting() {}

    /**
     * Refuses the command line if what an option names to be written is one of the inputs.
     *
     * @param written nothing where the option is not stated
     */
    static void refuse(CommandLine line, String option, @Nullable Path written, Collection<Path> inputs) {
        if (written != null && inputs.stream().anyMatch(input -> isSame(input, written))) {
            throw new ParameterException(line, option + " " + written + " would overwrite an input");
        }
    }

    /** Refuses the command line if sheet and table would go to one file. */
    static void refuseOneFile(CommandLine line, @Nullable Path out, @Nullable Path csv) {
        if (out != null && csv != null && isSame(out, csv)) {
            throw new ParameterException(line, "--csv and --out name one file");
        }
    }

    /** Whether two names mean one place; links are not followed. */
    static boolean isSame(Path one, Path other) {
        return one.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
    }
}
