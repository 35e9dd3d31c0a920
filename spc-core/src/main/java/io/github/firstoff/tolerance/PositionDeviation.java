package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * The position of a point or axis as the diameter of the zone that it needs, from its offsets along the axes of the datum system.
 *
 * <p>The diameter is 2·√(x² + y² + z²) (ASME Y14.5.1-2019, 4.3 by way of the actual value of position; ISO 1101:2017, 17.12), in the
 * unit of the offsets. The root is hardly ever a finite decimal, so the value is kept as its exact square: comparing squares
 * decides exactly, and only {@link #rounded} rounds, for display.
 */
public final class PositionDeviation {
    private static final BigDecimal FOUR = new BigDecimal(4);

    private final BigDecimal squaredDiameter;

    private PositionDeviation(BigDecimal squaredDiameter) {
        this.squaredDiameter = squaredDiameter;
    }

    /** In a zone of diameter: two offsets square to the axis. */
    public static PositionDeviation of(BigDecimal x, BigDecimal y) {
        return new PositionDeviation(x.multiply(x).add(y.multiply(y)).multiply(FOUR));
    }

    /** In a spherical zone: three offsets. */
    public static PositionDeviation of(BigDecimal x, BigDecimal y, BigDecimal z) {
        return new PositionDeviation(
                x.multiply(x).add(y.multiply(y)).add(z.multiply(z)).multiply(FOUR));
    }

    /** Between two parallel planes or lines: one offset; the width needed is twice its amount. */
    public static PositionDeviation across(BigDecimal offset) {
        return new PositionDeviation(offset.multiply(offset).multiply(FOUR));
    }

    /**
     * Whether the deviation is beyond the tolerance, exactly; on the tolerance it is not.
     *
     * @throws IllegalArgumentException if the tolerance is negative
     */
    public boolean exceeds(BigDecimal tolerance) {
        if (tolerance.signum() < 0) {
            throw new IllegalArgumentException("a tolerance is never negative: " + tolerance.toPlainString());
        }
        return squaredDiameter.compareTo(tolerance.multiply(tolerance)) > 0;
    }

    /** The exact square of the deviation. */
    public BigDecimal squared() {
        return squaredDiameter;
    }

    /**
     * The deviation to so many decimal places, halves up; correctly rounded from the exact square, for display only.
     *
     * @throws IllegalArgumentException if the number of places is negative
     */
    public BigDecimal rounded(int places) {
        if (places < 0) {
            throw new IllegalArgumentException("the number of decimal places cannot be negative: " + places);
        }
        // floor(2·√n) = floor(√(4n)); halves up of √n is floor((floor(2·√n) + 1) / 2)
        BigInteger fourfold =
                squaredDiameter.scaleByPowerOfTen(2 * places).multiply(FOUR).toBigInteger();
        BigInteger units = fourfold.sqrt().add(BigInteger.ONE).shiftRight(1);
        return new BigDecimal(units, places);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PositionDeviation that && squaredDiameter.compareTo(that.squaredDiameter) == 0;
    }

    @Override
    public int hashCode() {
        return squaredDiameter.stripTrailingZeros().hashCode();
    }

    /** The deviation to six places. */
    @Override
    public String toString() {
        return rounded(6).toPlainString();
    }
}
