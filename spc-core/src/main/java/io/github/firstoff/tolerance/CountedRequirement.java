package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * How many nonconformities a piece (or a stated size of it) may have: {@code nonconformities 3 max}, {@code nonconformities 0}, with
 * what is counted if the drawing says so: {@code nonconformities 3 max: scratches on the flange}.
 *
 * <p>A reading is a whole number from 0; 0 is the bound of nature. "Nonconformity" is the word of ISO 9000 and of the charts c and u
 * (ISO 7870-2); the form of the text is this program's own.
 *
 * @param upper the greatest number that conforms, a whole number from 0
 * @param what what is counted; empty if the drawing does not say
 */
public record CountedRequirement(BigDecimal upper, Optional<String> what) implements Requirement {
    /** The word with which such a requirement begins. */
    static final String WORD = "nonconformities";

    /** Refuses numbers that are not whole, or below 0. */
    public CountedRequirement {
        if (upper.signum() < 0 || upper.stripTrailingZeros().scale() > 0) {
            throw new IllegalArgumentException(
                    "nonconformities are counted in whole numbers from 0, not " + upper.toPlainString());
        }
    }

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(text()));
    }

    @Override
    public String text() {
        return WORD + " " + upper.toPlainString() + " max"
                + what.map(text -> ": " + text).orElse("");
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return Unit.NONE;
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        return ToleranceZone.fixed(Limits.fromZeroTo(upper, Unit.NONE), Optional.empty());
    }
}
