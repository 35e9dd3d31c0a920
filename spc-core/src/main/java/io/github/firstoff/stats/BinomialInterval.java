package io.github.firstoff.stats;

/**
 * The interval of Clopper and Pearson for a share, from {@code found} among {@code n}.
 *
 * <p>With F quantiles: lower = x/(x + (n − x + 1)F(1 − α/2; 2(n − x + 1), 2x)), upper alike (Clopper and Pearson 1934, Biometrika
 * 26, 404–413; NIST/SEMATECH e-Handbook 7.2.4.1). Never covers less than its level.
 *
 * @param lower 0 if nothing was found
 * @param upper 1 if all were found
 */
public record BinomialInterval(double lower, double upper) {
    /**
     * The two-sided interval.
     *
     * @throws IllegalArgumentException unless 0 ≤ found ≤ n, n ≥ 1 and 0 &lt; level &lt; 1
     */
    public static BinomialInterval clopperPearson(long found, long n, double level) {
        double tail = (1 - Obstacles.probability(level)) / 2;
        return new BinomialInterval(found == 0 ? 0 : lower(found, n, tail), upper(found, n, tail));
    }

    /** The upper bound that covers with probability 1 − {@code tail}. */
    public static double upper(long found, long n, double tail) {
        check(found, n);
        if (found == n) {
            return 1;
        }
        double f = 1 / Distributions.fisherFQuantile(tail, 2.0 * (n - found), 2.0 * (found + 1));
        return (found + 1) * f / (n - found + (found + 1) * f);
    }

    private static double lower(long found, long n, double tail) {
        check(found, n);
        double f = Distributions.fisherFQuantile(tail, 2.0 * found, 2.0 * (n - found + 1));
        return found * f / (n - found + 1 + found * f);
    }

    private static void check(long found, long n) {
        if (n < 1 || found < 0 || found > n) {
            throw new IllegalArgumentException(found + " found among " + n);
        }
    }
}
