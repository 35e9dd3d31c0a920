package io.github.firstoff.command;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import picocli.CommandLine.ParameterException;

/** The only place that asks what time it is. */
final class Clock {
    private Clock() {}

    /** Now, to the second; or what {@code SOURCE_DATE_EPOCH} says, so that a sheet can be made again to the last byte. */
    static Instant now(picocli.CommandLine line) {
        String fixed = System.getenv("SOURCE_DATE_EPOCH");
        if (fixed == null || fixed.isBlank()) {
            return Instant.now().truncatedTo(ChronoUnit.SECONDS);
        }
        try {
            return Instant.ofEpochSecond(Long.parseLong(fixed.strip()));
        } catch (NumberFormatException | java.time.DateTimeException fault) {
            throw new ParameterException(
                    line,
                    "SOURCE_DATE_EPOCH is \"" + fixed + "\"; it must be a whole number of seconds since 1970",
                    fault);
        }
    }
}
