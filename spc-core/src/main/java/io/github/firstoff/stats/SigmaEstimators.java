package io.github.firstoff.stats;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;

/**
 * Estimators of a standard deviation from subgroups, with their effective degrees of freedom.
 *
 * <p>An unbiased estimator of σ whose coefficient of variation is V is treated as if it were proportional to χ/√ν, with the ν
 * that gives a χ variable the same coefficient of variation: (1 − c4²(ν+1))/c4²(ν+1) = V² (Patnaik 1950, Biometrika 37,
 * 78–87; tabulated as ν and d2* by Duncan, Quality Control and Industrial Statistics, table D3). For one subgroup and s this
 * gives n − 1 exactly.
 */
public final class SigmaEstimators {
    /** The name of the estimator from the mean range. */
    public static final String MEAN_RANGE = "R̄/d2";
    /** The name of the estimator from the mean standard deviation. */
    public static final String MEAN_STANDARD_DEVIATION = "s̄/c4";
    /** The name of the estimator from the pooled standard deviation. */
    public static final String POOLED = "pooled s";
    /** The name of the estimator from the pooled standard deviation, made unbiased. */
    public static final String POOLED_UNBIASED = "pooled s/c4";
    /** The name of the estimator from the median range. */
    public static final String MEDIAN_RANGE = "median R/d4";
    /** The name of the estimator from the median moving range. */
    public static final String MEDIAN_MOVING_RANGE = "median MR/d4";
    /** The name of the estimator from the mean moving range. */
    public static final String MEAN_MOVING_RANGE = "MR̄/d2";
    /** The name of the plain sample standard deviation. */
    public static final String SAMPLE = "s";

    private SigmaEstimators() {}

    /** σ = R̄/d2 from {@code subgroups} ranges of {@code n} values each; V² = d3²/(k d2²). */
    public static SigmaEstimate meanRange(double meanRange, int n, int subgroups) {
        requirePositive(subgroups);
        ChartConstants c = ChartConstants.of(n);
        double v2 = c.d3() * c.d3() / (subgroups * c.d2() * c.d2());
        return new SigmaEstimate(meanRange / c.d2(), MEAN_RANGE, effectiveDegreesOfFreedom(v2));
    }

    /**
     * σ = mean of Rᵢ/d2(nᵢ) from ranges of subgroups of unequal size (common practice); V² = Σ(d3/d2)²/k².
     *
     * @param ranges the ranges
     * @param sizes the subgroup sizes, one per range
     */
    public static SigmaEstimate meanRange(double[] ranges, int[] sizes) {
        requirePositive(ranges.length);
        double sum = 0;
        double v2 = 0;
        for (int i = 0; i < ranges.length; i++) {
            ChartConstants c = ChartConstants.of(sizes[i]);
            sum += ranges[i] / c.d2();
            v2 += c.d3() * c.d3() / (c.d2() * c.d2());
        }
        double k = ranges.length;
        return new SigmaEstimate(sum / k, MEAN_RANGE, effectiveDegreesOfFreedom(v2 / (k * k)));
    }

    /** σ = s̄/c4 from {@code subgroups} standard deviations of {@code n} values each; V² = (1 − c4²)/(k c4²). */
    public static SigmaEstimate meanStandardDeviation(double meanS, int n, int subgroups) {
        requirePositive(subgroups);
        ChartConstants c = ChartConstants.of(n);
        double v2 = c.c5() * c.c5() / (subgroups * c.c4() * c.c4());
        return new SigmaEstimate(meanS / c.c4(), MEAN_STANDARD_DEVIATION, effectiveDegreesOfFreedom(v2));
    }

    /** σ = pooled s, the root of the mean square within subgroups; Σ(nᵢ − 1) degrees of freedom, exactly. */
    public static SigmaEstimate pooled(double pooledS, long degreesOfFreedom) {
        return new SigmaEstimate(pooledS, POOLED, degreesOfFreedom);
    }

    /**
     * σ = mean of sᵢ/c4(nᵢ) from standard deviations of subgroups of unequal size (common practice);
     * V² = Σ(1 − c4²)/c4²/k².
     *
     * @param deviations the standard deviations
     * @param sizes the subgroup sizes, one per standard deviation
     */
    public static SigmaEstimate meanStandardDeviation(double[] deviations, int[] sizes) {
        requirePositive(deviations.length);
        double sum = 0;
        double v2 = 0;
        for (int i = 0; i < deviations.length; i++) {
            ChartConstants c = ChartConstants.of(sizes[i]);
            sum += deviations[i] / c.c4();
            v2 += c.c5() * c.c5() / (c.c4() * c.c4());
        }
        double k = deviations.length;
        return new SigmaEstimate(sum / k, MEAN_STANDARD_DEVIATION, effectiveDegreesOfFreedom(v2 / (k * k)));
    }

    /** σ = pooled s / c4(ν + 1), unbiased, with ν = Σ(nᵢ − 1) degrees of freedom. */
    public static SigmaEstimate pooledUnbiased(double pooledS, long degreesOfFreedom) {
        return new SigmaEstimate(
                pooledS / ChartConstants.c4OfDegrees(degreesOfFreedom), POOLED_UNBIASED, degreesOfFreedom);
    }

    /**
     * σ = median of {@code subgroups} ranges of {@code n} values each, over d4. Degrees of freedom from the variance of a sample
     * median for many subgroups, 1/(4 k f²) with the density f of the range at its median.
     */
    public static SigmaEstimate medianRange(double medianRange, int n, int subgroups) {
        requirePositive(subgroups);
        MedianConstants c = MedianConstants.of(n);
        double sd = 1 / (2 * c.rangeDensity() * c.d4());
        return new SigmaEstimate(medianRange / c.d4(), MEDIAN_RANGE, effectiveDegreesOfFreedom(sd * sd / subgroups));
    }

    /**
     * σ = median of the moving ranges (of two) over d4 = √2 Φ⁻¹(3/4) = 0.9539; a few odd readings hardly move it.
     *
     * <p>Degrees of freedom from the variance of a sample median for many readings, with the covariance of neighbouring ranges,
     * which share a reading (Bahadur 1966): (1/4 + 2(P(both above) − 1/4))/(k f²).
     */
    public static SigmaEstimate medianMovingRange(double medianRange, int ranges) {
        requirePositive(ranges);
        MedianConstants c = MedianConstants.of(2);
        double v2 = MEDIAN_MOVING_RANGE_VARIANCE / (c.rangeDensity() * c.rangeDensity() * c.d4() * c.d4() * ranges);
        return new SigmaEstimate(medianRange / c.d4(), MEDIAN_MOVING_RANGE, effectiveDegreesOfFreedom(v2));
    }

    /** 1/4 + 2(P(|X₁−X₂| &gt; d4 and |X₂−X₃| &gt; d4) − 1/4), by integration over the reading they share. */
    private static final double MEDIAN_MOVING_RANGE_VARIANCE = medianMovingRangeVariance();

    private static double medianMovingRangeVariance() {
        double d4 = MedianConstants.of(2).d4();
        double both = 0;
        double step = 0.0625;
        for (double x = -9; x <= 9; x += step) {
            double outside = Distributions.normal(x - d4) + Distributions.normalAbove(x + d4);
            both += step * Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI) * outside * outside;
        }
        return 0.25 + 2 * (both - 0.25);
    }

    /**
     * σ = MR̄/d2 from the moving ranges (of two) of {@code values} values in order.
     *
     * <p>Neighbouring ranges share a value, so V² is not d3²/(k d2²): with k = values − 1 ranges it is
     * (k d3² + 2(k − 1)γ)/(k² d2²), where γ = (4/π)(√3/2 + π/12) − 4/π is the covariance of neighbouring ranges. This
     * is (0.8264 N − 1.0821)/(N − 1)², as Cryer and Ryan print it (Journal of Quality Technology 22, 1990, 187–192).
     */
    public static SigmaEstimate meanMovingRange(double meanRange, long values) {
        if (values < 2) {
            throw new IllegalArgumentException("moving ranges need at least 2 values, not " + values);
        }
        return new SigmaEstimate(
                meanRange / ChartConstants.of(2).d2(),
                MEAN_MOVING_RANGE,
                effectiveDegreesOfFreedom(movingRangeVariance(values)));
    }

    /** Var(MR̄/d2)/σ² for the moving ranges of {@code values} normal values. */
    static double movingRangeVariance(long values) {
        double k = values - 1.0;
        double d2Squared = 4 / Math.PI;
        double covariance = 4 / Math.PI * (Math.sqrt(3) / 2 + Math.PI / 12) - d2Squared;
        return (k * (2 - d2Squared) + 2 * (k - 1) * covariance) / (k * k * d2Squared);
    }

    /** The plain standard deviation of {@code count} values, with n − 1 degrees of freedom. */
    public static SigmaEstimate sample(double s, long count) {
        return new SigmaEstimate(s, SAMPLE, count - 1);
    }

    /**
     * The ν for which a χ<sub>ν</sub> variable has the squared coefficient of variation {@code v2}.
     *
     * @throws IllegalArgumentException unless {@code v2} is above 0 and finite
     */
    public static double effectiveDegreesOfFreedom(double v2) {
        if (!(v2 > 0) || Double.isInfinite(v2)) {
            throw new IllegalArgumentException("a squared coefficient of variation is above 0, not " + v2);
        }
        // large ν: v² = 1/(2ν) + 1/(8ν²) − 1/(16ν³) …, inverted; there log-gamma no longer resolves the difference
        double large = 1 / (2 * v2);
        if (large > 1000) {
            return large + 0.25 - 3 / (16 * large);
        }
        double guess = Math.max(1e-3, large);
        return new BrentSolver(1e-12, 1e-12)
                .solve(200, nu -> coefficientOfVariationSquared(nu) / v2 - 1, guess / 4, guess * 2 + 2);
    }

    private static double coefficientOfVariationSquared(double nu) {
        // c4²(ν+1) = (2/ν) (Γ((ν+1)/2)/Γ(ν/2))²
        double c4Squared = 2 / nu * Math.exp(2 * (Gamma.logGamma((nu + 1) / 2) - Gamma.logGamma(nu / 2)));
        return 1 / c4Squared - 1;
    }

    private static void requirePositive(int subgroups) {
        if (subgroups < 1) {
            throw new IllegalArgumentException("an estimate needs at least one subgroup, not " + subgroups);
        }
    }
}
