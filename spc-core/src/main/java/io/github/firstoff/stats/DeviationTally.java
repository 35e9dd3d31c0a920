package io.github.firstoff.stats;

import java.math.BigInteger;

/**
 * Count, sum, sum of squares and extremes of whole deviations, all exact.
 *
 * <p>Mean and variance are quotients of whole numbers and rounded once; the standard deviation is the root of the rounded
 * variance, and so within one unit in the last place. Merging is associative and commutative to the last bit: however a run
 * of readings is cut, shuffled and merged, equal tallies result.
 *
 * <p>Edges: the mean of nothing and the variance of fewer than two values have no right to exist and are refused with an
 * {@link IllegalStateException}; ask {@link #count()} first.
 *
 * @param count how many deviations
 * @param sum their sum
 * @param sumOfSquares the sum of their squares
 * @param minimum the least; {@link Long#MAX_VALUE} of none
 * @param maximum the greatest; {@link Long#MIN_VALUE} of none
 */
public record DeviationTally(long count, BigInteger sum, BigInteger sumOfSquares, long minimum, long maximum) {
    /** The tally of nothing. */
    public static final DeviationTally EMPTY =
            new DeviationTally(0, BigInteger.ZERO, BigInteger.ZERO, Long.MAX_VALUE, Long.MIN_VALUE);

    /** Checks what can be checked of a tally that comes from elsewhere. */
    public DeviationTally {
        if (count < 0 || sumOfSquares.signum() < 0 || (count > 0 && minimum > maximum)) {
            throw new IllegalArgumentException("no tally has count " + count + ", sum of squares " + sumOfSquares
                    + ", extremes " + minimum + " and " + maximum);
        }
    }

    /** Tallies all of an array. */
    public static DeviationTally of(long... deviations) {
        return of(deviations, 0, deviations.length);
    }

    /** Tallies the part {@code from} (inclusive) to {@code to} (exclusive) of an array; allocates nothing per value. */
    public static DeviationTally of(long[] deviations, int from, int to) {
        if (from < 0 || to > deviations.length || from > to) {
            throw new IndexOutOfBoundsException("from " + from + " to " + to + " of " + deviations.length);
        }
        if (from == to) {
            return EMPTY;
        }
        long min = Long.MAX_VALUE;
        long max = Long.MIN_VALUE;
        // sum in 128 bits, squares in 192: neither can overflow for any array
        long sumLow = 0;
        long sumHigh = 0;
        long squaresLow = 0;
        long squaresMiddle = 0;
        long squaresHigh = 0;
        for (int i = from; i < to; i++) {
            long d = deviations[i];
            min = Math.min(min, d);
            max = Math.max(max, d);
            sumLow += d;
            sumHigh += (d >> 63) + (Long.compareUnsigned(sumLow, d) < 0 ? 1 : 0);
            long low = d * d;
            long high = Math.multiplyHigh(d, d);
            squaresLow += low;
            if (Long.compareUnsigned(squaresLow, low) < 0) {
                high++;
            }
            squaresMiddle += high;
            if (Long.compareUnsigned(squaresMiddle, high) < 0) {
                squaresHigh++;
            }
        }
        return new DeviationTally(
                to - from, wide(sumHigh, sumLow), wide(squaresHigh, squaresMiddle, squaresLow), min, max);
    }

    private static BigInteger wide(long... wordsFromHighest) {
        BigInteger result = BigInteger.valueOf(wordsFromHighest[0]);
        for (int i = 1; i < wordsFromHighest.length; i++) {
            long word = wordsFromHighest[i];
            result = result.shiftLeft(32).add(BigInteger.valueOf(word >>> 32));
            result = result.shiftLeft(32).add(BigInteger.valueOf(word & 0xFFFFFFFFL));
        }
        return result;
    }

    /** This tally and one more deviation. */
    public DeviationTally plus(long deviation) {
        BigInteger d = BigInteger.valueOf(deviation);
        return new DeviationTally(
                Math.addExact(count, 1),
                sum.add(d),
                sumOfSquares.add(d.multiply(d)),
                Math.min(minimum, deviation),
                Math.max(maximum, deviation));
    }

    /** Both tallies as one. */
    public DeviationTally merge(DeviationTally other) {
        return new DeviationTally(
                Math.addExact(count, other.count),
                sum.add(other.sum),
                sumOfSquares.add(other.sumOfSquares),
                Math.min(minimum, other.minimum),
                Math.max(maximum, other.maximum));
    }

    /** The mean deviation, rounded once. */
    public double mean() {
        requireAtLeast(1, "a mean");
        return ExactRatio.of(sum, BigInteger.valueOf(count));
    }

    /** The sum of squares about the mean times the count, exact: n Σd² − (Σd)². */
    public BigInteger countTimesSquaresAboutMean() {
        return sumOfSquares.multiply(BigInteger.valueOf(count)).subtract(sum.multiply(sum));
    }

    /** The sample variance with n − 1, rounded once. */
    public double variance() {
        requireAtLeast(2, "a variance");
        return ExactRatio.of(
                countTimesSquaresAboutMean(), BigInteger.valueOf(count).multiply(BigInteger.valueOf(count - 1)));
    }

    /** The sample standard deviation with n − 1. */
    public double standardDeviation() {
        return Math.sqrt(variance());
    }

    /** Greatest minus least, exact; refused when it does not fit a {@code long}. */
    public long range() {
        requireAtLeast(1, "a range");
        return Math.subtractExact(maximum, minimum);
    }

    private void requireAtLeast(int least, String what) {
        if (count < least) {
            throw new IllegalStateException(what + " needs at least " + least + " values, not " + count);
        }
    }
}
