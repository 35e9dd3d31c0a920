package io.github.firstoff.quantity;

import java.math.BigDecimal;

/**
 * An expanded measurement uncertainty as a calibration states it: {@code U = constant + perLength · L} with its coverage factor
 * (JCGM 100:2008, 6.2.1 for the expanded uncertainty; the length-dependent form is how length gauges are specified, for example
 * in ISO 3611 and ISO 13385-1).
 *
 * @param constant the part that does not depend on the length, in {@code unit}; not negative
 * @param perLength the part per unit of measured length, dimensionless; not negative
 * @param coverageFactor the factor k by which the standard uncertainty was multiplied; positive
 * @param unit the unit of the constant part and of the result
 */
public record Uncertainty(BigDecimal constant, BigDecimal perLength, BigDecimal coverageFactor, Unit unit) {

    private static final BigDecimal USUAL_COVERAGE_FACTOR = new BigDecimal("2");

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if a part is negative or the coverage factor is not positive
     */
    public Uncertainty {
        if (constant.signum() < 0 || perLength.signum() < 0) {
            throw new IllegalArgumentException("an uncertainty is not negative");
        }
        if (coverageFactor.signum() <= 0) {
            throw new IllegalArgumentException("a coverage factor is positive, not " + coverageFactor.toPlainString());
        }
    }

    /** An expanded uncertainty with the usual coverage factor 2 that does not depend on the length. */
    public static Uncertainty expanded(BigDecimal constant, Unit unit) {
        return new Uncertainty(constant, BigDecimal.ZERO, USUAL_COVERAGE_FACTOR, unit);
    }

    /** The expanded uncertainty at a measured length of the same unit; the sign of the length does not matter. */
    public BigDecimal at(BigDecimal length) {
        return perLength.signum() == 0 ? constant : constant.add(perLength.multiply(length.abs()));
    }
}
