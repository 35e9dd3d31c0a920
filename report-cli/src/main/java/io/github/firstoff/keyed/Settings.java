package io.github.firstoff.keyed;

import io.github.firstoff.intake.KeyedOrder;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What the command line says of a session.
 *
 * @param order the order in which is asked; empty to leave it as it was begun
 * @param pieces the pieces, where they are known beforehand
 * @param operator who measures
 * @param decimalComma whether the comma is the decimal mark
 * @param jobStatements what the job says that could name a hand, each with the name of its key
 * @param time what time it is
 */
public record Settings(
        Optional<KeyedOrder> order,
        List<String> pieces,
        Optional<String> operator,
        boolean decimalComma,
        List<String> jobStatements,
        Supplier<OffsetDateTime> time) {

    /** Copies the lists. */
    public Settings {
        pieces = List.copyOf(pieces);
        jobStatements = List.copyOf(jobStatements);
    }
}
