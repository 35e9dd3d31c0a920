package io.github.firstoff.stats;

import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The test of Anderson and Darling: how far values lie from a fitted distribution, the tails weighing most.
 *
 * <p>A² = −n − (1/n) Σ(2i − 1)(ln F(x₍ᵢ₎) + ln(1 − F(x₍ₙ₊₁₋ᵢ₎))) (Anderson and Darling 1954; NIST/SEMATECH e-Handbook 1.3.5.14). Its
 * distribution depends on the family and on what was estimated from the same values:
 *
 * <ul>
 *   <li>normal, mean and s estimated (case 3), and lognormal by its logarithms: A* = A²(1 + 0.75/n + 2.25/n²) and the formulas of
 *       D'Agostino and Stephens 1986, Goodness-of-Fit Techniques, table 4.9, for 8 or more values;
 *   <li>Weibull, shape and scale estimated: A* = A²(1 + 0.2/√n), p = 1/(1 + exp(−0.1 + 1.24 ln A* + 4.48 A*)) (MIL-HDBK-17-1F,
 *       8.3.4.1, from memory; agrees with table 4.17 of D'Agostino and Stephens);
 *   <li>any other family: no formula; {@link ParametricBootstrap}.
 * </ul>
 *
 * <p>{@link #known} is for a distribution given beforehand, with nothing estimated (case 0).
 */
public final class AndersonDarling {
    /** The fewest values for which the formulas hold. */
    public static final int FEWEST = 8;

    /** Beyond this A* the formula for the normal distribution is below any p-value that could matter and turns up again later. */
    private static final double FAR = 10;

    private static final int TERMS = 40;
    /** Beyond this statistic a given distribution is refuted beyond 1e-20. */
    private static final double VANISHED = 50;

    private static final double REACH = 7;
    private static final int PANELS = 8;
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(20);

    private AndersonDarling() {}

    /**
     * A².
     *
     * @param sorted the values in ascending order; at least one
     * @param distribution what they are held against
     * @return infinite if a value is impossible under the distribution
     */
    public static double statistic(double[] sorted, FittedDistribution distribution) {
        int n = sorted.length;
        if (n == 0) {
            throw new IllegalArgumentException("the test needs at least one value");
        }
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += (2 * i + 1)
                    * (logOf(distribution.probability(sorted[i])) + logOf(distribution.survival(sorted[n - 1 - i])));
        }
        return -n - sum / n;
    }

    private static double logOf(double probability) {
        return probability > 0 ? Math.log(probability) : Double.NEGATIVE_INFINITY;
    }

    /**
     * The p-value where a formula is published for the family and the number of values; else empty.
     *
     * <p>A² of a normal fit must come from the mean and s with divisor n − 1; {@link #normal} does that.
     */
    public static OptionalDouble p(double statistic, DistributionFamily family, int n) {
        if (n < FEWEST) {
            return OptionalDouble.empty();
        }
        if (family == NormalFamily.INSTANCE || family == LognormalFamily.INSTANCE) {
            return OptionalDouble.of(normalP(statistic, n));
        }
        if (family == WeibullFamily.INSTANCE) {
            double adjusted = statistic * (1 + 0.2 / Math.sqrt(n));
            return OptionalDouble.of(1 / (1 + Math.exp(-0.1 + 1.24 * Math.log(adjusted) + 4.48 * adjusted)));
        }
        return OptionalDouble.empty();
    }

    /** A² of values held against the normal distribution with their own mean and s (divisor n − 1). */
    public static double normal(double[] sorted) {
        Moments m = Moments.of(sorted);
        return statistic(sorted, NormalFamily.INSTANCE.of(m.mean(), m.standardDeviation()));
    }

    /** A² in the form that the published p-value of the family belongs to: with divisor n − 1 for normal and lognormal. */
    public static double forFormula(double[] sorted, FittedDistribution fitted) {
        if (fitted.family() == NormalFamily.INSTANCE) {
            return normal(sorted);
        }
        if (fitted.family() == LognormalFamily.INSTANCE) {
            double[] logs = new double[sorted.length];
            for (int i = 0; i < logs.length; i++) {
                logs[i] = Math.log(sorted[i]);
            }
            return normal(logs);
        }
        return statistic(sorted, fitted);
    }

    private static double normalP(double statistic, int n) {
        double a = statistic * (1 + 0.75 / n + 2.25 / ((double) n * n));
        if (a >= 0.6) {
            double far = Math.min(a, FAR);
            return Math.exp(1.2937 - 5.709 * far + 0.0186 * far * far);
        }
        if (a >= 0.34) {
            return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
        }
        if (a >= 0.2) {
            return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
        }
        return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
    }

    /**
     * P(A² &gt; statistic) in large samples for a distribution given beforehand: the series of Anderson and Darling 1954 (Journal of
     * the American Statistical Association 49, 765–769), absolute error below 1e-11.
     */
    public static double known(double statistic) {
        if (!(statistic > 0)) {
            return 1;
        }
        if (statistic > VANISHED) {
            return 0;
        }
        double z = statistic;
        double coefficient = 1;
        double sum = 0;
        for (int j = 0; j < TERMS; j++) {
            double m = 4.0 * j + 1;
            double t = m * m * Math.PI * Math.PI / (8 * z);
            // (−1)ʲ Γ(j + ½)/(Γ(½) j!) = product of −(i − ½)/i
            coefficient *= j == 0 ? 1 : -(j - 0.5) / j;
            sum += coefficient * m * Math.exp(-t) * integral(z, t);
        }
        double below = Math.sqrt(2 * Math.PI) / z * sum;
        return Math.max(0, Math.min(1, 1 - below));
    }

    /** ∫₀^∞ exp(z/(8(w² + 1)) − t w²)dw. */
    private static double integral(double z, double t) {
        double width = REACH / PANELS;
        double sum = 0;
        for (int panel = 0; panel < PANELS; panel++) {
            for (int k = 0; k < RULE.getNumberOfPoints(); k++) {
                double v = width * (panel + (1 + RULE.getPoint(k)) / 2);
                sum += RULE.getWeight(k) * width / 2 * Math.exp(z / (8 * (v * v / t + 1)) - v * v);
            }
        }
        return sum / Math.sqrt(t);
    }
}
