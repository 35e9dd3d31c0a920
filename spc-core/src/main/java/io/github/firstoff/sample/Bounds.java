package io.github.firstoff.sample;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * What a requirement asks of a process: limits and the value it should aim at, in the unit of the readings.
 *
 * @param lower the lower limit, if the requirement has one
 * @param upper the upper limit, if the requirement has one
 * @param target where the process should aim, if that is stated; without it the middle of two limits
 * @param naturalLower whether the lower limit is a bound that nature sets (flatness cannot be less than 0) and not a
 *     requirement that the process could fail
 */
public record Bounds(
        Optional<BigDecimal> lower, Optional<BigDecimal> upper, Optional<BigDecimal> target, boolean naturalLower) {
    /** No limits at all. */
    public static final Bounds NONE = new Bounds(Optional.empty(), Optional.empty(), Optional.empty(), false);

    /** Checks the order of the limits. */
    public Bounds {
        if (lower.isPresent() && upper.isPresent() && lower.get().compareTo(upper.get()) > 0) {
            throw new IllegalArgumentException("the lower limit " + lower.get().toPlainString()
                    + " is above the upper limit " + upper.get().toPlainString());
        }
        if (naturalLower && lower.isEmpty()) {
            throw new IllegalArgumentException("a natural lower bound needs its value");
        }
    }

    /** Two limits. */
    public static Bounds between(BigDecimal lower, BigDecimal upper) {
        return new Bounds(Optional.of(lower), Optional.of(upper), Optional.empty(), false);
    }

    /** A lower limit only. */
    public static Bounds atLeast(BigDecimal lower) {
        return new Bounds(Optional.of(lower), Optional.empty(), Optional.empty(), false);
    }

    /** An upper limit only. */
    public static Bounds atMost(BigDecimal upper) {
        return new Bounds(Optional.empty(), Optional.of(upper), Optional.empty(), false);
    }

    /** An upper limit above the natural bound 0, as for roughness and geometric deviations. */
    public static Bounds fromZeroTo(BigDecimal upper) {
        return new Bounds(Optional.of(BigDecimal.ZERO), Optional.of(upper), Optional.empty(), true);
    }

    /** The same limits with a stated target. */
    public Bounds aimingAt(BigDecimal aim) {
        return new Bounds(lower, upper, Optional.of(aim), naturalLower);
    }

    /** The lower limit that is a requirement: empty where it is only a natural bound. */
    public Optional<BigDecimal> requiredLower() {
        return naturalLower ? Optional.empty() : lower;
    }

    /** Whether the process could miss on both sides. */
    public boolean isTwoSided() {
        return requiredLower().isPresent() && upper.isPresent();
    }

    /** The stated target, else the middle of two required limits (exact), else none. */
    public Optional<BigDecimal> aim() {
        if (target.isPresent() || !isTwoSided()) {
            return target;
        }
        return Optional.of(lower.orElseThrow().add(upper.orElseThrow()).multiply(new BigDecimal("0.5")));
    }
}
