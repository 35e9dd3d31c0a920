package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** The measured sizes of one part, for the requirements that depend on them. Supplied by what was measured. */
@FunctionalInterface
public interface PartSizes {

    /** A part of which no size is known. */
    PartSizes NONE = number -> Optional.empty();

    /** The measured size of the numbered characteristic on this part; empty if it was not measured. */
    Optional<Size> sizeOf(String characteristicNumber);

    /**
     * A measured size.
     *
     * @param value the exact value as read
     * @param unit its unit
     */
    record Size(BigDecimal value, Unit unit) {}
}
