package io.github.firstoff.stats;

/**
 * Whether several groups have one variance.
 *
 * <p>Bartlett's test (Bartlett 1937, Proceedings of the Royal Society A 160; NIST/SEMATECH e-Handbook 1.3.5.7): T =
 * ((N−k) ln sₚ² − Σ(nᵢ−1) ln sᵢ²)/(1 + (Σ1/(nᵢ−1) − 1/(N−k))/(3(k−1))), chi-squared with k − 1 degrees of freedom.
 * Assumes normal readings: it is sensitive to their distribution.
 */
public final class VarianceTests {
    private VarianceTests() {}

    /**
     * The result of a test.
     *
     * @param statistic the test statistic
     * @param degreesOfFreedom its degrees of freedom
     * @param p the probability of so large a statistic or a larger one, if the variances are equal
     */
    public record Result(double statistic, double degreesOfFreedom, double p) {}

    /**
     * Bartlett's test of variances with their degrees of freedom.
     *
     * @throws IllegalArgumentException if there are fewer than two groups, a variance is not above 0 or has less than 1 degree
     *     of freedom
     */
    public static Result bartlett(double[] variances, long[] degreesOfFreedom) {
        int k = variances.length;
        if (k < 2 || degreesOfFreedom.length != k) {
            throw new IllegalArgumentException("two or more variances, each with degrees of freedom, not " + k);
        }
        double all = 0;
        double pooled = 0;
        double logs = 0;
        double inverse = 0;
        for (int i = 0; i < k; i++) {
            if (!(variances[i] > 0) || degreesOfFreedom[i] < 1) {
                throw new IllegalArgumentException("a variance above 0 with at least 1 degree of freedom, not "
                        + variances[i] + " with " + degreesOfFreedom[i]);
            }
            all += degreesOfFreedom[i];
            pooled += degreesOfFreedom[i] * variances[i];
            logs += degreesOfFreedom[i] * Math.log(variances[i]);
            inverse += 1.0 / degreesOfFreedom[i];
        }
        double correction = 1 + (inverse - 1 / all) / (3 * (k - 1));
        double statistic = Math.max(0, (all * Math.log(pooled / all) - logs) / correction);
        return new Result(statistic, k - 1, 1 - Distributions.chiSquared(statistic, k - 1));
    }
}
