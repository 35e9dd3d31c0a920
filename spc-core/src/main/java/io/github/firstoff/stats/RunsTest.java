package io.github.firstoff.stats;

import org.apache.commons.math3.special.Gamma;

/**
 * Runs of equal sign in a series, against a random order: Wald and Wolfowitz 1940, Annals of Mathematical Statistics 11, 147–162
 * (NIST/SEMATECH e-Handbook 1.3.5.13). With m values above and n below zero the number of runs R has
 *
 * <p>P(R = 2k) = 2 C(m−1, k−1) C(n−1, k−1)/C(m+n, m), P(R = 2k+1) = (C(m−1, k) C(n−1, k−1) + C(m−1, k−1) C(n−1, k))/C(m+n, m).
 *
 * <p>Zeros are passed over. Two-sided: twice the smaller tail, at most 1. Residuals of a fitted line are not quite independent, so that for few
 * points the probability is approximate there.
 *
 * @param above how many values lie above zero
 * @param below how many below
 * @param runs how many runs
 * @param significance the probability of a number of runs at least as far out; 1 where all values have one sign
 */
public record RunsTest(long above, long below, long runs, double significance) {
    /** Tests a series in its order. */
    public static RunsTest of(double... values) {
        long above = 0;
        long below = 0;
        long runs = 0;
        double before = 0;
        for (double value : values) {
            if (value == 0 || Double.isNaN(value)) {
                continue;
            }
            if (value > 0) {
                above++;
            } else {
                below++;
            }
            if (before == 0 || before > 0 != value > 0) {
                runs++;
            }
            before = value;
        }
        return new RunsTest(above, below, runs, above == 0 || below == 0 ? 1 : significance(above, below, runs));
    }

    /** (2mn)/(m + n) + 1. */
    public double expected() {
        return above + below == 0 ? 0 : 2.0 * above * below / (above + below) + 1;
    }

    /** Whether there are fewer runs than expected: neighbours are alike. */
    public boolean isSlow() {
        return runs < expected();
    }

    private static double significance(long m, long n, long runs) {
        double few = 0;
        double many = 0;
        for (long r = 2; r <= 2 * Math.min(m, n) + 1; r++) {
            double p = probability(m, n, r);
            few += r <= runs ? p : 0;
            many += r >= runs ? p : 0;
        }
        return Math.min(1, 2 * Math.min(few, many));
    }

    private static double probability(long m, long n, long runs) {
        double all = choose(m + n, m);
        long k = runs / 2;
        if (runs % 2 == 0) {
            return 2 * Math.exp(choose(m - 1, k - 1) + choose(n - 1, k - 1) - all);
        }
        return Math.exp(choose(m - 1, k) + choose(n - 1, k - 1) - all)
                + Math.exp(choose(m - 1, k - 1) + choose(n - 1, k) - all);
    }

    /** ln C(n, k). */
    private static double choose(long n, long k) {
        if (k < 0 || k > n) {
            return Double.NEGATIVE_INFINITY;
        }
        return Gamma.logGamma(n + 1.0) - Gamma.logGamma(k + 1.0) - Gamma.logGamma(n - k + 1.0);
    }
}
