package io.github.firstoff.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/**
 * One line of an uncertainty budget.
 *
 * <p>Its standard uncertainty is the value over a divisor that is hardly ever a finite decimal (√3), so the divisor is kept as its exact
 * square: u = value/√divisorSquared. The squares are those of JCGM 100:2008: 1 for a standard uncertainty, k² for an expanded one
 * (4.3.3), 3 for a rectangular distribution (4.3.7), 6 for a triangular and 6/(1 + β²) for a trapezoidal one (4.3.9), 2 for a U-shaped
 * one (H.1.3.4).
 *
 * @param name what it is, ready to print
 * @param value the stated value; not negative
 * @param spread how it is spread, and with it what the value means
 * @param divisor of what kind the divisor is
 * @param sensitivity by how much the result changes per unit of the source, in the budget's unit per unit of the value (5.1.3)
 * @param degreesOfFreedom how well the value is known (G.3, G.4.2), at least 1 and not necessarily whole; empty if it is taken as
 *     exactly known, that is infinite
 */
public record UncertaintySource(
        String name,
        BigDecimal value,
        Spread spread,
        Divisor divisor,
        BigDecimal sensitivity,
        Optional<BigDecimal> degreesOfFreedom) {

    private static final BigDecimal TWO = new BigDecimal("2");
    private static final BigDecimal THREE = new BigDecimal("3");
    private static final BigDecimal SIX = new BigDecimal("6");

    /**
     * What the stated value is divided by, as an exact square: divisor² = numerator/denominator.
     *
     * @param numerator positive
     * @param denominator positive
     */
    public record Divisor(BigDecimal numerator, BigDecimal denominator) {
        /**
         * Checks the ranges.
         *
         * @throws IllegalArgumentException if one of the two is not positive
         */
        public Divisor {
            if (numerator.signum() <= 0 || denominator.signum() <= 0) {
                throw new IllegalArgumentException("a divisor is positive");
            }
        }

        /** The divisor to 34 digits, for display. */
        public BigDecimal value() {
            return numerator
                    .divide(denominator, UncertaintyBudget.WORKING)
                    .sqrt(MathContext.DECIMAL128)
                    .stripTrailingZeros();
        }
    }

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if the name is blank, the value negative, or the degrees of freedom below 1
     */
    public UncertaintySource {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a source of uncertainty has a name");
        }
        if (value.signum() < 0) {
            throw new IllegalArgumentException(
                    "the uncertainty of " + name + " is not negative, but stated as " + value.toPlainString());
        }
        degreesOfFreedom.ifPresent(degrees -> {
            if (degrees.compareTo(BigDecimal.ONE) < 0) {
                throw new IllegalArgumentException(
                        "degrees of freedom are at least 1; " + name + " has " + degrees.toPlainString());
            }
        });
    }

    /** A standard uncertainty, for example the standard deviation of a mean (type A). */
    public static UncertaintySource standard(String name, BigDecimal standardUncertainty) {
        return of(name, standardUncertainty, Spread.NORMAL, new Divisor(BigDecimal.ONE, BigDecimal.ONE));
    }

    /**
     * An expanded uncertainty, as a certificate of calibration states it.
     *
     * @throws IllegalArgumentException if the coverage factor is not positive
     */
    public static UncertaintySource expanded(String name, BigDecimal expanded, BigDecimal coverageFactor) {
        if (coverageFactor.signum() <= 0) {
            throw new IllegalArgumentException("a coverage factor is positive, not " + coverageFactor.toPlainString());
        }
        return of(name, expanded, Spread.NORMAL, new Divisor(coverageFactor.multiply(coverageFactor), BigDecimal.ONE));
    }

    /** The half-width of an interval in which the value lies anywhere. */
    public static UncertaintySource rectangular(String name, BigDecimal halfWidth) {
        return of(name, halfWidth, Spread.RECTANGULAR, new Divisor(THREE, BigDecimal.ONE));
    }

    /** The step of a display, whose half is the half-width of a rectangular distribution (F.2.2.1: u = 0.29 steps). */
    public static UncertaintySource resolution(String name, BigDecimal step) {
        return rectangular(name, step.divide(TWO));
    }

    /** The half-width of an interval whose middle is the most probable. */
    public static UncertaintySource triangular(String name, BigDecimal halfWidth) {
        return of(name, halfWidth, Spread.TRIANGULAR, new Divisor(SIX, BigDecimal.ONE));
    }

    /** The half-width of a swing, for example of a room's temperature. */
    public static UncertaintySource uShaped(String name, BigDecimal halfWidth) {
        return of(name, halfWidth, Spread.U_SHAPED, new Divisor(TWO, BigDecimal.ONE));
    }

    /**
     * The half-width of an interval with sloping sides.
     *
     * @param topToBase β, the width of the top over that of the base: from 0 (triangular) to 1 (rectangular)
     * @throws IllegalArgumentException if β lies outside
     */
    public static UncertaintySource trapezoidal(String name, BigDecimal halfWidth, BigDecimal topToBase) {
        if (topToBase.signum() < 0 || topToBase.compareTo(BigDecimal.ONE) > 0) {
            throw new IllegalArgumentException(
                    "the top of a trapezium is 0 to 1 of its base here, not " + topToBase.toPlainString());
        }
        return of(
                name,
                halfWidth,
                Spread.TRAPEZOIDAL,
                new Divisor(SIX, BigDecimal.ONE.add(topToBase.multiply(topToBase))));
    }

    private static UncertaintySource of(String name, BigDecimal value, Spread spread, Divisor divisor) {
        return new UncertaintySource(name, value, spread, divisor, BigDecimal.ONE, Optional.empty());
    }

    /** The same source with another sensitivity coefficient; its sign does not matter. */
    public UncertaintySource times(BigDecimal coefficient) {
        return new UncertaintySource(name, value, spread, divisor, coefficient, degreesOfFreedom);
    }

    /**
     * The same source with finite degrees of freedom.
     *
     * @throws IllegalArgumentException if they are below 1
     */
    public UncertaintySource withDegreesOfFreedom(BigDecimal degrees) {
        return new UncertaintySource(name, value, spread, divisor, sensitivity, Optional.of(degrees));
    }

    /** The square of the contribution |c|·u to the result, in the square of the budget's unit; to 60 digits. */
    BigDecimal variance() {
        BigDecimal scaled = value.multiply(sensitivity);
        return scaled.multiply(scaled)
                .multiply(divisor.denominator())
                .divide(divisor.numerator(), UncertaintyBudget.WORKING);
    }

    /** The standard uncertainty u of the source itself, in its own unit; to 34 digits. */
    public BigDecimal standardUncertainty() {
        return UncertaintyBudget.root(value.multiply(value)
                .multiply(divisor.denominator())
                .divide(divisor.numerator(), UncertaintyBudget.WORKING));
    }

    /** The contribution |c|·u to the combined uncertainty, in the unit of the budget; to 34 digits. */
    public BigDecimal contribution() {
        return UncertaintyBudget.root(variance());
    }
}
