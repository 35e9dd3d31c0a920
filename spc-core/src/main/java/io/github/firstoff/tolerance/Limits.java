package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * The values that conform: from the lower to the upper limit, both included (a reading on a limit conforms; JCGM 106:2012,
 * 3.3.6 to 3.3.9: the tolerance interval contains its limits).
 *
 * @param lower the least value that conforms; empty if there is none
 * @param upper the greatest value that conforms; empty if there is none
 * @param naturalLower whether the lower limit is not a requirement but a bound of nature (a flatness cannot be negative)
 * @param unit the unit of both
 */
public record Limits(Optional<BigDecimal> lower, Optional<BigDecimal> upper, boolean naturalLower, Unit unit) {

    /**
     * Checks that the limits are in order.
     *
     * @throws IllegalArgumentException if the lower limit is above the upper, or a natural bound is claimed but absent
     */
    public Limits {
        if (lower.isPresent() && upper.isPresent() && lower.get().compareTo(upper.get()) > 0) {
            throw new IllegalArgumentException("the lower limit " + lower.get().toPlainString()
                    + " is above the upper limit " + upper.get().toPlainString());
        }
        if (naturalLower && lower.isEmpty()) {
            throw new IllegalArgumentException("a natural bound must be stated");
        }
    }

    /** Both limits. */
    public static Limits between(BigDecimal lower, BigDecimal upper, Unit unit) {
        return new Limits(Optional.of(lower), Optional.of(upper), false, unit);
    }

    /** Only a least value. */
    public static Limits atLeast(BigDecimal lower, Unit unit) {
        return new Limits(Optional.of(lower), Optional.empty(), false, unit);
    }

    /** Only a greatest value. */
    public static Limits atMost(BigDecimal upper, Unit unit) {
        return new Limits(Optional.empty(), Optional.of(upper), false, unit);
    }

    /** A greatest value of something that cannot be negative. */
    public static Limits fromZeroTo(BigDecimal upper, Unit unit) {
        return new Limits(Optional.of(BigDecimal.ZERO), Optional.of(upper), true, unit);
    }

    /** No limits at all. */
    public static Limits none(Unit unit) {
        return new Limits(Optional.empty(), Optional.empty(), false, unit);
    }

    /** Whether there is nothing to judge by. */
    public boolean isOpen() {
        return lower.isEmpty() && upper.isEmpty();
    }

    /** Whether the value lies within, exactly, whatever its trailing zeros and its unit of length. */
    public boolean contains(BigDecimal value, Unit valueUnit) {
        return contains(Found.of(value, valueUnit));
    }

    /** Whether what was found lies within, the limits included. */
    public boolean contains(Found found) {
        return !isBelow(found) && !isAbove(found);
    }

    /** Whether what was found lies below the lower limit. */
    public boolean isBelow(Found found) {
        return lower.isPresent() && found.compareTo(lower.get(), unit) < 0;
    }

    /** Whether what was found lies above the upper limit. */
    public boolean isAbove(Found found) {
        return upper.isPresent() && found.compareTo(upper.get(), unit) > 0;
    }

    /** The width between two limits; empty if one is missing. */
    public Optional<BigDecimal> width() {
        return lower.flatMap(low -> upper.map(high -> high.subtract(low)));
    }

    /** Limits moved inwards (positive) at every bound that is a requirement; natural bounds stay. */
    public Optional<Limits> narrowedBy(BigDecimal guard) {
        Optional<BigDecimal> low = naturalLower ? lower : lower.map(limit -> limit.add(guard));
        Optional<BigDecimal> high = upper.map(limit -> limit.subtract(guard));
        if (low.isPresent() && high.isPresent() && low.get().compareTo(high.get()) > 0) {
            return Optional.empty();
        }
        return Optional.of(new Limits(low, high, naturalLower, unit));
    }
}
