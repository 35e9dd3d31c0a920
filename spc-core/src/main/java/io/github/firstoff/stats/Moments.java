package io.github.firstoff.stats;

/**
 * Count, mean and central moments up to the fourth of real values, in one pass and mergeable.
 *
 * <p>With δ = x − mean: mean += δ/n, M₂ += δ²(n−1)/n, and the corresponding updates of M₃ and M₄ (Welford 1962; Chan, Golub
 * and LeVeque 1983 for merging; Pébay 2008, Sandia report SAND2008-6212, for third and fourth moments).
 *
 * <p>Accuracy: the path in {@code double} for values that are no whole steps. Merging in another order changes the last
 * bits; about 1e-12 relative. Readings go through {@link DeviationTally}, which is exact.
 *
 * @param count how many values
 * @param mean their mean; 0 of none
 * @param m2 Σ(x − mean)²
 * @param m3 Σ(x − mean)³
 * @param m4 Σ(x − mean)⁴
 * @param minimum the least; positive infinity of none
 * @param maximum the greatest; negative infinity of none
 */
public record Moments(long count, double mean, double m2, double m3, double m4, double minimum, double maximum) {
    /** The moments of nothing. */
    public static final Moments EMPTY = new Moments(0, 0, 0, 0, 0, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);

    /**
     * The moments of all of an array, by two passes (mean with a correction, then powers of deviations), which is more
     * accurate than one; the result merges as any other.
     */
    public static Moments of(double... values) {
        if (values.length == 0) {
            return EMPTY;
        }
        double shift = values[0];
        double sum = 0;
        double carry = 0;
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (double x : values) {
            requireFinite(x);
            min = Math.min(min, x);
            max = Math.max(max, x);
            // compensated (Kahan) summation of the distances from the first value
            double y = (x - shift) - carry;
            double t = sum + y;
            carry = (t - sum) - y;
            sum = t;
        }
        double mean = shift + sum / values.length;
        double m2 = 0;
        double m3 = 0;
        double m4 = 0;
        double rest = 0;
        for (double x : values) {
            double d = x - mean;
            rest += d;
            m2 += d * d;
            m3 += d * d * d;
            m4 += d * d * d * d;
        }
        return new Moments(values.length, mean, m2 - rest * rest / values.length, m3, m4, min, max);
    }

    /** These moments and one more value, which must be finite. */
    public Moments plus(double x) {
        requireFinite(x);
        double n = count + 1.0;
        double delta = x - mean;
        double deltaN = delta / n;
        double deltaN2 = deltaN * deltaN;
        double term = delta * deltaN * count;
        return new Moments(
                count + 1,
                mean + deltaN,
                m2 + term,
                m3 + term * deltaN * (n - 2) - 3 * deltaN * m2,
                m4 + term * deltaN2 * (n * n - 3 * n + 3) + 6 * deltaN2 * m2 - 4 * deltaN * m3,
                Math.min(minimum, x),
                Math.max(maximum, x));
    }

    /** Both as one. */
    public Moments merge(Moments other) {
        if (count == 0) {
            return other;
        }
        if (other.count == 0) {
            return this;
        }
        double a = count;
        double b = other.count;
        double n = a + b;
        double delta = other.mean - mean;
        double delta2 = delta * delta;
        return new Moments(
                count + other.count,
                mean + delta * (b / n),
                m2 + other.m2 + delta2 * (a * b / n),
                m3 + other.m3 + delta * delta2 * a * b * (a - b) / (n * n) + 3 * delta * (a * other.m2 - b * m2) / n,
                m4
                        + other.m4
                        + delta2 * delta2 * a * b * (a * a - a * b + b * b) / (n * n * n)
                        + 6 * delta2 * (a * a * other.m2 + b * b * m2) / (n * n)
                        + 4 * delta * (a * other.m3 - b * m3) / n,
                Math.min(minimum, other.minimum),
                Math.max(maximum, other.maximum));
    }

    /** The sample variance with n − 1; refused for fewer than two values. */
    public double variance() {
        if (count < 2) {
            throw new IllegalStateException("a variance needs at least 2 values, not " + count);
        }
        return m2 / (count - 1);
    }

    /** The sample standard deviation with n − 1. */
    public double standardDeviation() {
        return Math.sqrt(variance());
    }

    private static void requireFinite(double x) {
        if (!Double.isFinite(x)) {
            throw new IllegalArgumentException("a value must be finite, not " + x);
        }
    }
}
