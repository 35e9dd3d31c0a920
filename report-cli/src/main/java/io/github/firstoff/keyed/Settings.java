package io.github.firstoff.keyed;

import io.github.firstoff.intake.DecimalMark;
import io.github.firstoff.intake.KeyedOrder;
import io.github.firstoff.intake.KeyedReadings;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;

/**
 * What the command line says of a session; what it leaves open is as the session was begun.
 *
 * @param order the order in which is asked
 * @param repeats how many readings close what is measured repeatedly, from 1 to {@link KeyedReadings#MOST_REPEATS}
 * @param decimalMark the decimal mark of what is keyed
 * @param pieces the pieces, where they are known beforehand
 * @param operator who measures
 * @param jobStatements what the job says that could name a hand, each with the name of its key
 * @param time what time it is
 */
public record Settings(
        Optional<KeyedOrder> order,
        OptionalInt repeats,
        Optional<DecimalMark> decimalMark,
        List<String> pieces,
        Optional<String> operator,
        List<String> jobStatements,
        Supplier<OffsetDateTime> time) {

    /** Copies the lists. */
    public Settings {
        pieces = List.copyOf(pieces);
        jobStatements = List.copyOf(jobStatements);
    }
}
