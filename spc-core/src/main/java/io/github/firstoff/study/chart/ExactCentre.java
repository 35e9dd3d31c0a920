package io.github.firstoff.study.chart;

import io.github.firstoff.stats.ExactRatio;
import java.math.BigInteger;

/**
 * A centre line that is the mean of readings: sum / count, kept as whole numbers so that "exactly on the centre line" is a
 * fact and not a matter of rounding.
 */
final class ExactCentre {
    private final BigInteger sum;
    private final long count;
    private final boolean fits;
    private final long shortSum;
    private final double deviation;

    ExactCentre(BigInteger sum, long count) {
        this.sum = sum;
        this.count = count;
        this.fits = sum.bitLength() < 64;
        this.shortSum = fits ? sum.longValue() : 0;
        this.deviation = ExactRatio.of(sum, BigInteger.valueOf(count));
    }

    BigInteger sum() {
        return sum;
    }

    long count() {
        return count;
    }

    /** In steps, rounded once. */
    double deviation() {
        return deviation;
    }

    /** The sign of (partSum / size − centre). */
    int side(long partSum, long size) {
        if (!fits) {
            return BigInteger.valueOf(partSum)
                    .multiply(BigInteger.valueOf(count))
                    .compareTo(sum.multiply(BigInteger.valueOf(size)));
        }
        int high = Long.compare(Math.multiplyHigh(partSum, count), Math.multiplyHigh(shortSum, size));
        return high != 0 ? high : Integer.signum(Long.compareUnsigned(partSum * count, shortSum * size));
    }
}
