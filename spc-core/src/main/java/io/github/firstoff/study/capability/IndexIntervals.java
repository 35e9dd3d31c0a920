package io.github.firstoff.study.capability;

import io.github.firstoff.stats.Distributions;

/** The formulas of the intervals. */
final class IndexIntervals {
    private IndexIntervals() {}

    /**
     * Cp √(χ²<sub>α/2;ν</sub>/ν) to Cp √(χ²<sub>1−α/2;ν</sub>/ν): exact for s of a normal sample with ν = n − 1
     * (NIST/SEMATECH e-Handbook 6.1.6; Kushler and Hurley 1992, Journal of Quality Technology 24), and with effective ν for
     * other estimators.
     */
    static Interval chiSquared(double index, double df, double level) {
        double tail = (1 - level) / 2;
        return new Interval(
                index * Math.sqrt(Distributions.chiSquaredQuantile(tail, df) / df),
                index * Math.sqrt(Distributions.chiSquaredQuantile(1 - tail, df) / df),
                level,
                "chi-squared");
    }

    /** Cpk ± z √(1/(9n) + Cpk²/(2ν)) (Bissell 1990, Applied Statistics 39, 331–340). */
    static Interval bissell(double index, long n, double df, double level) {
        double half =
                Distributions.normalQuantile((1 + level) / 2) * Math.sqrt(1 / (9.0 * n) + index * index / (2 * df));
        return new Interval(index - half, index + half, level, "Bissell");
    }

    /**
     * The chi-squared interval of Cpm with ν = n(1+ξ²)²/(1+2ξ²), ξ = (x̄ − T)/s (Boyles 1991, Journal of Quality Technology
     * 23, 17–26).
     */
    static Interval boyles(double index, double xi, long n, double level) {
        double xi2 = xi * xi;
        double df = n * (1 + xi2) * (1 + xi2) / (1 + 2 * xi2);
        Interval interval = chiSquared(index, df, level);
        return new Interval(interval.lower(), interval.upper(), level, "Boyles");
    }
}
