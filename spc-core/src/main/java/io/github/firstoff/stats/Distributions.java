package io.github.firstoff.stats;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Probabilities and quantiles of the distributions of normal samples.
 *
 * <p>Computed by Apache Commons Statistics. Probabilities outside [0, 1] and degrees of freedom not above 0 are refused with
 * an {@link IllegalArgumentException}.
 */
public final class Distributions {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private Distributions() {}

    /** P(Z ≤ z) of the standard normal distribution. */
    public static double normal(double z) {
        return NORMAL.cumulativeProbability(z);
    }

    /** P(Z &gt; z) of the standard normal distribution, accurate far out. */
    public static double normalAbove(double z) {
        return NORMAL.survivalProbability(z);
    }

    /** The z with P(Z ≤ z) = p. */
    public static double normalQuantile(double p) {
        return NORMAL.inverseCumulativeProbability(p);
    }

    /** P(χ² ≤ x) with {@code df} degrees of freedom, not necessarily whole. */
    public static double chiSquared(double x, double df) {
        return ChiSquaredDistribution.of(df).cumulativeProbability(x);
    }

    /** The x with P(χ² ≤ x) = p. */
    public static double chiSquaredQuantile(double p, double df) {
        return ChiSquaredDistribution.of(df).inverseCumulativeProbability(p);
    }

    /** P(T ≤ t) of Student's distribution. */
    public static double studentT(double t, double df) {
        return TDistribution.of(df).cumulativeProbability(t);
    }

    /** The t with P(T ≤ t) = p. */
    public static double studentTQuantile(double p, double df) {
        return TDistribution.of(df).inverseCumulativeProbability(p);
    }

    /** P(F ≤ x) of Fisher's distribution. */
    public static double fisherF(double x, double df1, double df2) {
        return FDistribution.of(df1, df2).cumulativeProbability(x);
    }

    /** The x with P(F ≤ x) = p. */
    public static double fisherFQuantile(double p, double df1, double df2) {
        return FDistribution.of(df1, df2).inverseCumulativeProbability(p);
    }
}
