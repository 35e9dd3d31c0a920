package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;

/**
 * The two limit deviations of a tolerance class at a nominal size, in millimetres: what is added to the nominal.
 *
 * @param upper ES of a hole, es of a shaft
 * @param lower EI of a hole, ei of a shaft
 */
public record LimitDeviations(BigDecimal upper, BigDecimal lower) {

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException if the lower is above the upper
     */
    public LimitDeviations {
        if (lower.compareTo(upper) > 0) {
            throw new IllegalArgumentException(
                    "the lower deviation " + lower.toPlainString() + " is above the upper " + upper.toPlainString());
        }
    }

    /** The limits of size in millimetres about a nominal in millimetres. */
    public Limits about(BigDecimal nominal) {
        return Limits.between(nominal.add(lower), nominal.add(upper), Unit.MILLIMETRE);
    }
}
