package io.github.firstoff.sample;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;

/**
 * The readings of one characteristic in production order, as whole steps of their finest decimal resolution.
 *
 * <p>Readings 12.48, 12.513, 12.5 of nominal 12.5 are held as the deviations −20, 13, 0 in steps of 0.001. Sums of
 * deviations are exact whole numbers, so a mean is exact to its last rounding and nothing cancels, however large the nominal
 * and however small the spread. Immutable.
 *
 * <p>A reading more than 2<sup>53</sup> steps from the reference is refused: nine thousand million million steps are no
 * resolution of a gauge but a mistake in a file.
 */
public final class Sample {
    private static final long FURTHEST = 1L << 53;
    private static final BigInteger MOST_STEPS = BigInteger.valueOf(FURTHEST);
    private static final int MOST_WHOLE_DIGITS = 40;

    private final Scale scale;
    private final long[] deviations;

    private Sample(Scale scale, long[] deviations) {
        this.scale = scale;
        this.deviations = deviations;
    }

    /**
     * Holds readings as deviations from a reference, usually the nominal.
     *
     * @param values the readings in production order, in {@code unit}; may be empty
     * @param reference the value from which deviations count, in {@code unit}
     * @param unit the unit of readings and reference
     * @throws IllegalArgumentException if a reading has more than {@link Scale#MOST_PLACES} decimal places, more than 40
     *     digits before the decimal point, or lies more than 2<sup>53</sup> steps of the finest reading from the reference
     */
    public static Sample of(List<BigDecimal> values, BigDecimal reference, Unit unit) {
        requireMeasurable(reference);
        int places = Math.max(0, reference.scale());
        for (BigDecimal value : values) {
            requireMeasurable(value);
            places = Math.max(places, value.scale());
        }
        if (places > Scale.MOST_PLACES) {
            // 1.50000…0 states a resolution nobody has; only places that carry a digit are worth a complaint
            places = Math.max(0, reference.stripTrailingZeros().scale());
            for (BigDecimal value : values) {
                places = Math.max(places, value.stripTrailingZeros().scale());
            }
            if (places > Scale.MOST_PLACES) {
                throw new IllegalArgumentException("a reading with " + places + " decimal places; at most "
                        + Scale.MOST_PLACES + " can be a measurement");
            }
        }
        Scale scale = new Scale(atMost(reference, places), places, unit);
        long[] deviations = new long[values.size()];
        for (int i = 0; i < deviations.length; i++) {
            deviations[i] = deviation(values.get(i), scale);
        }
        return new Sample(scale, deviations);
    }

    /**
     * Holds readings as deviations from the first of them; for characteristics without a nominal.
     *
     * @throws IllegalArgumentException as {@link #of(List, BigDecimal, Unit)}
     */
    public static Sample of(List<BigDecimal> values, Unit unit) {
        return of(values, values.isEmpty() ? BigDecimal.ZERO : values.get(0), unit);
    }

    /**
     * Holds deviations that were already counted in steps, for example by a reader of large files.
     *
     * @throws IllegalArgumentException if one is more than 2<sup>53</sup> steps from the reference
     */
    public static Sample ofDeviations(long[] deviations, Scale scale) {
        for (long deviation : deviations) {
            if (deviation < -FURTHEST || deviation > FURTHEST) {
                throw tooFar(Long.toString(deviation) + " steps", scale);
            }
        }
        return new Sample(scale, deviations.clone());
    }

    /** The same deviations counted from elsewhere. */
    Sample withScale(Scale other) {
        return new Sample(other, deviations);
    }

    /** Refuses powers of ten that nobody measures, before any arithmetic writes them out in digits. */
    private static void requireMeasurable(BigDecimal value) {
        if (value.signum() != 0 && (long) value.precision() - value.scale() > MOST_WHOLE_DIGITS) {
            throw new IllegalArgumentException("the reading " + value + " has more than " + MOST_WHOLE_DIGITS
                    + " digits before the decimal point and lies too far from anything that can be measured");
        }
    }

    private static BigDecimal atMost(BigDecimal value, int places) {
        return value.scale() > places ? value.setScale(places) : value;
    }

    private static long deviation(BigDecimal value, Scale scale) {
        BigDecimal difference = value.subtract(scale.reference());
        BigInteger steps = difference.setScale(scale.places()).unscaledValue();
        if (steps.abs().compareTo(MOST_STEPS) > 0) {
            throw tooFar(value.toString(), scale);
        }
        return steps.longValue();
    }

    private static IllegalArgumentException tooFar(String what, Scale scale) {
        return new IllegalArgumentException("the reading " + what + " lies too far from "
                + scale.reference().toPlainString() + " to be counted in steps of "
                + scale.step().toPlainString() + " " + scale.unit().symbol() + " (at most 2^53 steps)");
    }

    /** How many readings. */
    public int size() {
        return deviations.length;
    }

    /** Reference, step and unit. */
    public Scale scale() {
        return scale;
    }

    /** The unit of the readings. */
    public Unit unit() {
        return scale.unit();
    }

    /** The deviation of reading {@code index} (from 0) from the reference, in whole steps. */
    public long deviation(int index) {
        return deviations[index];
    }

    /** A copy of all deviations in production order, in whole steps. */
    public long[] deviations() {
        return deviations.clone();
    }

    /** The exact value of reading {@code index} (from 0), in the unit. */
    public BigDecimal exactValue(int index) {
        return scale.exactValue(deviations[index]);
    }

    /** The value of reading {@code index} (from 0), in the unit, rounded once. */
    public double value(int index) {
        return scale.value(deviations[index]);
    }

    /** Every reading by itself. */
    public Subgroups asIndividuals() {
        return inSubgroupsOf(1);
    }

    /**
     * Consecutive readings in subgroups of {@code size}; an incomplete last subgroup is left over.
     *
     * @throws IllegalArgumentException if {@code size} is less than 1
     */
    public Subgroups inSubgroupsOf(int size) {
        if (size < 1) {
            throw new IllegalArgumentException("a subgroup holds at least one reading, not " + size);
        }
        int count = deviations.length / size;
        int[] starts = new int[count + 1];
        for (int g = 0; g <= count; g++) {
            starts[g] = g * size;
        }
        return new Subgroups(
                this, null, starts, List.of(), Subgroups.LeftOver.last(deviations.length - count * size), List.of());
    }

    /**
     * Readings in subgroups by label, in the order in which the labels first appear; sizes may differ.
     *
     * <p>When all subgroups but the last have one size and the last is smaller, the last is incomplete and left over, as
     * with consecutive subgroups.
     *
     * @param labels one label per reading
     * @throws IllegalArgumentException if there is not one label per reading
     */
    public Subgroups inSubgroups(List<String> labels) {
        if (labels.size() != deviations.length) {
            throw new IllegalArgumentException("one subgroup label per reading: " + labels.size() + " labels for "
                    + deviations.length + " readings");
        }
        return Grouping.labelled(labels).of(this);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Sample that && scale.equals(that.scale) && Arrays.equals(deviations, that.deviations);
    }

    @Override
    public int hashCode() {
        return 31 * scale.hashCode() + Arrays.hashCode(deviations);
    }

    @Override
    public String toString() {
        return deviations.length + " readings in steps of " + scale.step().toPlainString() + " "
                + scale.unit().symbol() + " about " + scale.reference().toPlainString();
    }
}
