package io.github.firstoff.sample;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Objects;

/**
 * How whole steps and user units belong together: value = reference + deviation × 10<sup>-places</sup>.
 *
 * <p>Every conversion into {@code double} rounds once, from the exact value.
 *
 * @param reference the value from which deviations count, in {@code unit}
 * @param places decimal places of one step, 0 to 30: the step is 10<sup>-places</sup> of the unit
 * @param unit the unit of the readings
 */
public record Scale(BigDecimal reference, int places, Unit unit) {
    /** The most decimal places a reading may have. */
    public static final int MOST_PLACES = 30;

    /** Beyond this, whole numbers are no longer exact in a double. */
    private static final long EXACT = 1L << 53;

    /** Powers of ten up to this one are exact in a double. */
    private static final int EXACT_POWER = 22;

    private static final double[] POWERS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    private static final MathContext AMPLE = new MathContext(60);

    /** Checks that the reference lies on a step. */
    public Scale {
        Objects.requireNonNull(unit, "unit");
        if (places < 0 || places > MOST_PLACES) {
            throw new IllegalArgumentException("a step has 0 to " + MOST_PLACES + " decimal places, not " + places);
        }
        if (reference.scale() > places) {
            throw new IllegalArgumentException("the reference " + reference.toPlainString() + " has more than " + places
                    + " decimal places, the finest of the readings");
        }
    }

    /** One step, in the unit, exact. */
    public BigDecimal step() {
        return BigDecimal.ONE.movePointLeft(places);
    }

    /** The exact value of a deviation, in the unit, with as many places as the step. */
    public BigDecimal exactValue(long deviation) {
        return reference.add(BigDecimal.valueOf(deviation, places)).setScale(places);
    }

    /** The value of a whole deviation, in the unit, rounded once. */
    public double value(long deviation) {
        return mean(deviation, 1);
    }

    /** The value of a computed (not whole) deviation, in the unit, rounded once; for centres and limits. */
    public double value(double deviation) {
        if (!Double.isFinite(deviation)) {
            throw new IllegalArgumentException("a deviation must be finite, not " + deviation);
        }
        return reference.add(new BigDecimal(deviation).movePointLeft(places)).doubleValue();
    }

    /** The mean of {@code count} readings whose deviations sum to {@code sum}, in the unit, rounded once. */
    public double mean(long sum, long count) {
        return means().of(sum, count);
    }

    /** Means of this scale, prepared for many. */
    public Means means() {
        return new Means(this);
    }

    /** Means of many sums on one scale; each rounded once, most without allocating. */
    public static final class Means {
        private final Scale scale;
        private final boolean quick;
        private final long wholeReference;
        private final double power;

        private Means(Scale scale) {
            this.scale = scale;
            BigInteger whole = scale.reference.setScale(scale.places).unscaledValue();
            quick = scale.places <= EXACT_POWER && whole.bitLength() < 53;
            wholeReference = quick ? whole.longValue() : 0;
            power = quick ? POWERS[scale.places] : 1;
        }

        /**
         * The value of a computed (not whole) deviation, as {@link Scale#value(double)} gives it or, one time in some thousand, the
         * neighbour of that in {@code double}; without allocating.
         */
        public double value(double deviation) {
            if (!quick || !(Math.abs(deviation) < EXACT)) {
                return scale.value(deviation);
            }
            // the sum as two doubles, exactly (Knuth 1969, 4.2.2), then one step of division with remainder
            double whole = wholeReference;
            double sum = whole + deviation;
            double part = sum - whole;
            double lost = (whole - (sum - part)) + (deviation - part);
            double quotient = sum / power;
            return quotient + (Math.fma(-quotient, power, sum) + lost) / power;
        }

        /** The mean of {@code count} readings whose deviations sum to {@code sum}, in the unit, rounded once. */
        public double of(long sum, long count) {
            requirePositive(count);
            if (quick && count < EXACT && sum > -EXACT && sum < EXACT) {
                long high = Math.multiplyHigh(wholeReference, count);
                long low = wholeReference * count;
                boolean fits = (high == 0 && low >= 0) || (high == -1 && low < 0);
                if (fits && Math.abs(low) < EXACT) {
                    double numerator = low + sum;
                    double denominator = count * power;
                    // both exact below 2^53: then the division is the only rounding
                    if (Math.abs(numerator) < EXACT && denominator < EXACT) {
                        return numerator / denominator;
                    }
                }
            }
            return scale.mean(BigInteger.valueOf(sum), count);
        }
    }

    /** The mean of {@code count} readings whose deviations sum to {@code sum}, in the unit, rounded once. */
    public double mean(BigInteger sum, long count) {
        requirePositive(count);
        BigDecimal total = reference.multiply(BigDecimal.valueOf(count)).add(new BigDecimal(sum, places));
        return total.divide(BigDecimal.valueOf(count), AMPLE).doubleValue();
    }

    /** A difference of computed steps as a length in the unit; for ranges, standard deviations. */
    public double length(double steps) {
        if (!Double.isFinite(steps)) {
            throw new IllegalArgumentException("a number of steps must be finite, not " + steps);
        }
        if (places <= EXACT_POWER) {
            return steps / POWERS[places];
        }
        return new BigDecimal(steps).movePointLeft(places).doubleValue();
    }

    /** A length in the unit as a number of steps, not necessarily whole. */
    public double steps(double length) {
        if (!Double.isFinite(length)) {
            throw new IllegalArgumentException("a length must be finite, not " + length);
        }
        return places <= EXACT_POWER
                ? length * POWERS[places]
                : new BigDecimal(length).movePointRight(places).doubleValue();
    }

    /**
     * The deviation of a given value from the reference, in steps and rounded once; a value such as a frozen centre line
     * need not lie on a step.
     */
    public double deviation(double value) {
        return deviation(new BigDecimal(value));
    }

    /** The deviation of an exact value from the reference, in steps, rounded once. */
    public double deviation(BigDecimal value) {
        return value.subtract(reference).movePointRight(places).doubleValue();
    }

    /**
     * How far an exact value lies above the mean of {@code count} readings whose deviations sum to {@code sum}: in steps,
     * rounded once, so that nothing cancels.
     */
    public double aboveMean(BigDecimal value, BigInteger sum, long count) {
        requirePositive(count);
        BigDecimal steps = value.subtract(reference).movePointRight(places);
        return steps.multiply(BigDecimal.valueOf(count))
                .subtract(new BigDecimal(sum))
                .divide(BigDecimal.valueOf(count), AMPLE)
                .doubleValue();
    }

    /** The exact distance from one value up to another, in steps, rounded once. */
    public double stepsBetween(BigDecimal from, BigDecimal to) {
        return to.subtract(from).movePointRight(places).doubleValue();
    }

    private static void requirePositive(long count) {
        if (count < 1) {
            throw new IllegalArgumentException("a mean needs at least one reading, not " + count);
        }
    }
}
