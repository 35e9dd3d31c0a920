package io.github.firstoff.stats;

import java.util.Optional;

/**
 * The test of Shapiro and Wilk for normality, as extended by Royston.
 *
 * <p>W = (Σ aᵢ x₍ᵢ₎)²/Σ(x − x̄)². The weights approximate those of Shapiro and Wilk 1965 by polynomials in 1/√n, and a transform of
 * 1 − W is referred to the normal distribution (Royston 1995, Applied Statistics 44, 547–551, algorithm AS R94). n = 3 is exact.
 *
 * <p>For 3 to {@link #MOST} values; beyond, the approximation of the p-value was not made for.
 */
public final class ShapiroWilk {
    /** The most values for which there is a p-value. */
    public static final int MOST = 5000;

    private static final double[] C1 = {0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056};
    private static final double[] C2 = {0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633};
    private static final double[] C3 = {0.544, -0.39978, 0.025054, -6.714e-4};
    private static final double[] C4 = {1.3822, -0.77857, 0.062767, -0.0020322};
    private static final double[] C5 = {-1.5861, -0.31082, -0.083751, 0.0038915};
    private static final double[] C6 = {-0.4803, -0.082676, 0.0030302};
    private static final double[] G = {-2.273, 0.459};

    private ShapiroWilk() {}

    /**
     * W and its p-value.
     *
     * @param w the statistic, above 0, at most 1
     * @param p the probability of a W as small or smaller from a normal sample
     */
    public record Result(double w, double p) {}

    /**
     * The test; empty for fewer than 3 or more than {@link #MOST} values, or for values that do not spread.
     *
     * @param sorted the values in ascending order
     */
    public static Optional<Result> test(double[] sorted) {
        int n = sorted.length;
        if (n < 3 || n > MOST || sorted[0] == sorted[n - 1]) {
            return Optional.empty();
        }
        double w = w(weights(n), sorted);
        return Optional.of(new Result(w, p(w, n)));
    }

    /** The weights of the upper half, the greatest first. */
    static double[] weights(int n) {
        int half = n / 2;
        double[] a = new double[half];
        if (n == 3) {
            a[0] = Math.sqrt(0.5);
            return a;
        }
        double sum = 0;
        for (int i = 0; i < half; i++) {
            a[i] = -Distributions.normalQuantile((i + 1 - 0.375) / (n + 0.25));
            sum += 2 * a[i] * a[i];
        }
        double root = Math.sqrt(sum);
        double u = 1 / Math.sqrt(n);
        double first = polynomial(C1, u) + a[0] / root;
        int from;
        double factor;
        if (n > 5) {
            double second = polynomial(C2, u) + a[1] / root;
            factor = Math.sqrt(
                    (sum - 2 * a[0] * a[0] - 2 * a[1] * a[1]) / (1 - 2 * first * first - 2 * second * second));
            a[1] = second;
            from = 2;
        } else {
            factor = Math.sqrt((sum - 2 * a[0] * a[0]) / (1 - 2 * first * first));
            from = 1;
        }
        a[0] = first;
        for (int i = from; i < half; i++) {
            a[i] /= factor;
        }
        return a;
    }

    static double w(double[] weights, double[] sorted) {
        int n = sorted.length;
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * (sorted[n - 1 - i] - sorted[i]);
        }
        return Math.min(1, sum * sum / Moments.of(sorted).m2());
    }

    private static double p(double w, int n) {
        if (n == 3) {
            double p = 6 / Math.PI * (Math.asin(Math.sqrt(w)) - Math.asin(Math.sqrt(0.75)));
            return Math.max(0, Math.min(1, p));
        }
        double y = Math.log(1 - w);
        double log = Math.log(n);
        double mean;
        double spread;
        if (n <= 11) {
            double gamma = polynomial(G, n);
            if (y >= gamma) {
                return 0;
            }
            y = -Math.log(gamma - y);
            mean = polynomial(C3, n);
            spread = Math.exp(polynomial(C4, n));
        } else {
            mean = polynomial(C5, log);
            spread = Math.exp(polynomial(C6, log));
        }
        return Distributions.normalAbove((y - mean) / spread);
    }

    private static double polynomial(double[] c, double x) {
        double sum = 0;
        for (int i = c.length - 1; i >= 0; i--) {
            sum = sum * x + c[i];
        }
        return sum;
    }
}
