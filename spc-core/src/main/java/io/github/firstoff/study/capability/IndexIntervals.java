package io.github.firstoff.study.capability;

import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.NoncentralT;

/** The formulas of the intervals. */
final class IndexIntervals {
    /** Up to here {@link NoncentralT} holds its accuracy; beyond, the approximation of Bissell agrees to four digits. */
    private static final double MOST_EXACT = 10_000;

    private IndexIntervals() {}

    /**
     * Cp √(χ²<sub>α/2;ν</sub>/ν) to Cp √(χ²<sub>1−α/2;ν</sub>/ν): exact for s of a normal sample with ν = n − 1
     * (NIST/SEMATECH e-Handbook 6.1.6; Kushler and Hurley 1992, Journal of Quality Technology 24), and with effective ν for
     * other estimators.
     */
    static Interval chiSquared(double index, double df, double level) {
        double tail = (1 - level) / 2;
        return new Interval(
                chiSquaredBound(index, df, tail), chiSquaredBound(index, df, 1 - tail), level, "chi-squared");
    }

    /** The lower bound that the true index exceeds with probability 1 − {@code tail}. */
    static double chiSquaredBound(double index, double df, double tail) {
        return index * Math.sqrt(Distributions.chiSquaredQuantile(tail, df) / df);
    }

    /** Cpk ± z √(1/(9n) + Cpk²/(2ν)) (Bissell 1990, Applied Statistics 39, 331–340). */
    static Interval bissell(double index, double n, double df, double level) {
        double tail = (1 - level) / 2;
        return new Interval(bissellBound(index, n, df, tail), bissellBound(index, n, df, 1 - tail), level, "Bissell");
    }

    static double bissellBound(double index, double n, double df, double tail) {
        return index + Distributions.normalQuantile(tail) * Math.sqrt(1 / (9.0 * n) + index * index / (2 * df));
    }

    /**
     * The exact interval of a one-sided index: 3√n CPU follows the noncentral t distribution with ν degrees of freedom and
     * noncentrality 3√n times the true index (Chou, Owen and Borrego 1990, Journal of Quality Technology 22, 223–229). With
     * effective ν an approximation; where ν is below 1 or above 10,000 that of Bissell stands in.
     *
     * @param n how many readings the location is a mean of; of a location with variance hσ², 1/h
     */
    static Interval oneSided(double index, double n, double df, double level) {
        if (!isExact(df)) {
            return bissell(index, n, df, level);
        }
        double tail = (1 - level) / 2;
        return new Interval(
                oneSidedBound(index, n, df, tail), oneSidedBound(index, n, df, 1 - tail), level, "noncentral t");
    }

    static double oneSidedBound(double index, double n, double df, double tail) {
        if (!isExact(df)) {
            return bissellBound(index, n, df, tail);
        }
        double scale = 3 * Math.sqrt(n);
        return NoncentralT.noncentralityFor(scale * index, df, 1 - tail) / scale;
    }

    private static boolean isExact(double df) {
        return df >= 1 && df <= MOST_EXACT;
    }

    /**
     * The chi-squared interval of Cpm with ν = n(1+ξ²)²/(1+2ξ²), ξ = (x̄ − T)/s (Boyles 1991, Journal of Quality Technology
     * 23, 17–26).
     */
    static Interval boyles(double index, double xi, long n, double level) {
        Interval interval = chiSquared(index, boylesDegreesOfFreedom(xi, n), level);
        return new Interval(interval.lower(), interval.upper(), level, "Boyles");
    }

    static double boylesDegreesOfFreedom(double xi, long n) {
        double xi2 = xi * xi;
        return n * (1 + xi2) * (1 + xi2) / (1 + 2 * xi2);
    }

    /**
     * The standard error of the normal score of the share outside two limits that lie {@code below} and {@code above} standard
     * deviations from the mean, by the delta method: the scores a, b have variance 1/n + a²/(2ν) and covariance −1/n + ab/(2ν), and
     * the score z of the whole share changes with a by φ(a)/φ(z).
     */
    static double scoreError(double below, double above, double score, long n, double df) {
        // φ(a)/φ(z) = exp((z² − a²)/2)
        double a = Math.exp((score * score - below * below) / 2);
        double b = Math.exp((score * score - above * above) / 2);
        double varianceA = 1.0 / n + below * below / (2 * df);
        double varianceB = 1.0 / n + above * above / (2 * df);
        double covariance = -1.0 / n + below * above / (2 * df);
        return Math.sqrt(a * a * varianceA + b * b * varianceB + 2 * a * b * covariance);
    }
}
