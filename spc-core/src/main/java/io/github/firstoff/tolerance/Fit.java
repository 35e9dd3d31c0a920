package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;

/**
 * What a hole and a shaft of given limits come to when they are joined (ISO 286-1:2010, 3.3): the greatest and the least clearance.
 *
 * <p>Clearance is hole minus shaft; where it is negative its amount is interference. Exact; in the unit of the limits, and in
 * millimetres when those differ.
 *
 * @param maximumClearance greatest hole minus least shaft
 * @param minimumClearance least hole minus greatest shaft
 * @param unit of both
 */
public record Fit(BigDecimal maximumClearance, BigDecimal minimumClearance, Unit unit) {

    /** The three kinds of ISO 286-1:2010, 3.3.2 to 3.3.4. */
    public enum Kind {
        /** Never an interference; at the extreme, sizes are equal. */
        CLEARANCE,
        /** Either, depending on the actual sizes. */
        TRANSITION,
        /** Never a clearance; at the extreme, sizes are equal. */
        INTERFERENCE
    }

    /**
     * The fit of two features, whatever their limits come from.
     *
     * @throws IllegalArgumentException if a limit is missing on either, or the units are not both lengths
     */
    public static Fit of(Limits hole, Limits shaft) {
        Unit unit = hole.unit() == shaft.unit() ? hole.unit() : Unit.MILLIMETRE;
        BigDecimal greatest = limit(hole, true, unit).subtract(limit(shaft, false, unit));
        BigDecimal least = limit(hole, false, unit).subtract(limit(shaft, true, unit));
        return new Fit(greatest, least, unit);
    }

    private static BigDecimal limit(Limits limits, boolean upper, Unit unit) {
        BigDecimal value = (upper ? limits.upper() : limits.lower())
                .orElseThrow(() -> new IllegalArgumentException("a fit needs both limits of both features"));
        return limits.unit().convert(value, unit);
    }

    /**
     * The fit of two tolerance classes at a nominal size in millimetres.
     *
     * @throws IllegalArgumentException if the first is no hole or the second no shaft
     * @throws RequirementFault if the standard does not define one of them for that size
     */
    public static Fit of(BigDecimal nominal, ToleranceClass hole, ToleranceClass shaft) {
        if (!hole.isHole() || shaft.isHole()) {
            throw new IllegalArgumentException("a fit is a hole and a shaft, not " + hole + " and " + shaft);
        }
        return of(
                hole.deviationsAt(nominal).about(nominal),
                shaft.deviationsAt(nominal).about(nominal));
    }

    /** Clearance, transition or interference. */
    public Kind kind() {
        if (minimumClearance.signum() >= 0) {
            return Kind.CLEARANCE;
        }
        return maximumClearance.signum() <= 0 ? Kind.INTERFERENCE : Kind.TRANSITION;
    }

    /** The greatest interference: shaft minus hole at its greatest; negative in a clearance fit with room to spare. */
    public BigDecimal maximumInterference() {
        return minimumClearance.negate();
    }

    /** The least interference; negative where the parts may be loose. */
    public BigDecimal minimumInterference() {
        return maximumClearance.negate();
    }

    /** The span of the fit: the sum of both size tolerances (ISO 286-1:2010, 3.3.9). */
    public BigDecimal span() {
        return maximumClearance.subtract(minimumClearance);
    }
}
