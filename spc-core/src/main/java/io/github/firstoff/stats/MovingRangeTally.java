package io.github.firstoff.stats;

import java.math.BigInteger;

/**
 * Moving ranges |x<sub>i</sub> − x<sub>i−1</sub>| of whole deviations in order, exact and mergeable between neighbours.
 *
 * <p>A tally carries the first and last deviation of its segment, so that merging two neighbouring segments adds the one
 * range that lies across the cut. Merging is associative, not commutative: order is what moving ranges are about.
 *
 * @param count how many deviations (there is one range fewer)
 * @param first the first deviation; 0 of none
 * @param last the last deviation; 0 of none
 * @param sum the sum of the ranges
 * @param maximum the greatest range; 0 of none
 */
public record MovingRangeTally(long count, long first, long last, BigInteger sum, long maximum) {
    /** The tally of nothing. */
    public static final MovingRangeTally EMPTY = new MovingRangeTally(0, 0, 0, BigInteger.ZERO, 0);

    /** Tallies all of an array in its order. */
    public static MovingRangeTally of(long... deviations) {
        MovingRangeTally tally = EMPTY;
        if (deviations.length == 0) {
            return tally;
        }
        long partial = 0;
        long maximum = 0;
        BigInteger sum = BigInteger.ZERO;
        for (int i = 1; i < deviations.length; i++) {
            long range = range(deviations[i - 1], deviations[i]);
            maximum = Math.max(maximum, range);
            if (partial > Long.MAX_VALUE - range) {
                sum = sum.add(BigInteger.valueOf(partial));
                partial = 0;
            }
            partial += range;
        }
        return new MovingRangeTally(
                deviations.length,
                deviations[0],
                deviations[deviations.length - 1],
                sum.add(BigInteger.valueOf(partial)),
                maximum);
    }

    /** This segment and the deviation that follows it. */
    public MovingRangeTally plus(long deviation) {
        return merge(new MovingRangeTally(1, deviation, deviation, BigInteger.ZERO, 0));
    }

    /** This segment and the one that follows it. */
    public MovingRangeTally merge(MovingRangeTally next) {
        if (count == 0) {
            return next;
        }
        if (next.count == 0) {
            return this;
        }
        long across = range(last, next.first);
        return new MovingRangeTally(
                Math.addExact(count, next.count),
                first,
                next.last,
                sum.add(next.sum).add(BigInteger.valueOf(across)),
                Math.max(across, Math.max(maximum, next.maximum)));
    }

    /** How many ranges. */
    public long ranges() {
        return Math.max(0, count - 1);
    }

    /** The mean range, rounded once; refused for fewer than two deviations. */
    public double mean() {
        if (count < 2) {
            throw new IllegalStateException("a moving range needs at least 2 values, not " + count);
        }
        return ExactRatio.of(sum, BigInteger.valueOf(count - 1));
    }

    private static long range(long a, long b) {
        return Math.abs(Math.subtractExact(a, b));
    }
}
