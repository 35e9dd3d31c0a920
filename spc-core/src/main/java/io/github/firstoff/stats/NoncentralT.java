package io.github.firstoff.stats;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The noncentral t distribution: (Z + δ)/√(χ²<sub>ν</sub>/ν).
 *
 * <p>P(T ≤ t) = E Φ(t S − δ) with S = √(χ²<sub>ν</sub>/ν), integrated over the density of S by Gauss and Legendre on the range
 * that holds all but 1e-20 of it. Accuracy: absolute 1e-12 for ν from 1 to 10,000.
 *
 * <p>For exact one-sided bounds of capability indices (Chou, Owen and Borrego 1990) and one-sided tolerance factors (Natrella
 * 1963; ISO 16269-6).
 */
public final class NoncentralT {
    private static final int PANELS = 24;
    /** Beyond so many standard deviations Φ is 0 or 1 to 16 digits. */
    private static final double STEEP = 9;

    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(20);

    private NoncentralT() {}

    /**
     * P(T ≤ t).
     *
     * @param t any finite number
     * @param df degrees of freedom, at least 1
     * @param noncentrality δ, any finite number
     * @throws IllegalArgumentException outside these ranges
     */
    public static double probability(double t, double df, double noncentrality) {
        if (!(df >= 1) || Double.isInfinite(df)) {
            throw new IllegalArgumentException("degrees of freedom are finite and at least 1, not " + df);
        }
        if (!Double.isFinite(t) || !Double.isFinite(noncentrality)) {
            throw new IllegalArgumentException("t and noncentrality are finite, not " + t + " and " + noncentrality);
        }
        // over u = ln S, where the density is smooth for every ν: ν(u − e²ᵘ/2) with its greatest value at 0; left of
        // −1/2 − 45/ν it has fallen by e⁻⁴⁵, and near the peak S spreads by 1/√(2ν)
        double spread = 1 / Math.sqrt(2 * df);
        double near = 1 - 12 * spread;
        double from = Math.max(-0.5 - 45 / df, near > 0 ? Math.log(near) - 2 * spread : Double.NEGATIVE_INFINITY);
        double to = Math.log1p(14 * spread);
        // Φ rises from 0 to 1 while S passes (δ ± STEEP)/t: for large t that is a narrow step, and it gets panels of
        // its own
        double[] ends = {from, to, to, to};
        if (t != 0) {
            double one = (noncentrality - STEEP) / t;
            double other = (noncentrality + STEEP) / t;
            ends[1] = within(from, Math.min(one, other), to);
            ends[2] = within(from, Math.max(one, other), to);
        }
        double[] sums = new double[2];
        for (int part = 0; part < 3; part++) {
            if (ends[part] < ends[part + 1]) {
                integrate(t, df, noncentrality, ends[part], ends[part + 1], sums);
            }
        }
        // the constant of the density is its own integral
        return Math.min(1, sums[0] / sums[1]);
    }

    private static double within(double from, double s, double to) {
        return s > 0 ? Math.max(from, Math.min(Math.log(s), to)) : from;
    }

    /** Adds the integral of Φ times the density, and that of the density, from one u to another. */
    private static void integrate(double t, double df, double noncentrality, double from, double to, double[] sums) {
        double width = (to - from) / PANELS;
        for (int panel = 0; panel < PANELS; panel++) {
            for (int k = 0; k < RULE.getNumberOfPoints(); k++) {
                double u = from + width * (panel + (1 + RULE.getPoint(k)) / 2);
                double weighted = width * RULE.getWeight(k) * Math.exp(df * (u - Math.expm1(2 * u) / 2));
                sums[1] += weighted;
                sums[0] += weighted * Distributions.normal(t * Math.exp(u) - noncentrality);
            }
        }
    }

    /**
     * The noncentrality δ for which P(T ≤ t) = p: the exact confidence bound of δ when t was observed.
     *
     * @throws IllegalArgumentException if {@code p} is not between 0 and 1
     */
    public static double noncentralityFor(double t, double df, double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a probability strictly between 0 and 1, not " + p);
        }
        // T − δ is about normal with variance 1 + t²/(2ν): a guess good to a few hundredths for all but the smallest ν
        double spread = Math.sqrt(1 + t * t / (2 * df));
        double guess = t * (1 - 1 / (4 * df)) - Distributions.normalQuantile(p) * spread;
        double step = 0.1 * spread;
        double low = guess - step;
        double high = guess + step;
        while (probability(t, df, low) < p) {
            step *= 2;
            low -= step;
        }
        while (probability(t, df, high) > p) {
            step *= 2;
            high += step;
        }
        return new BrentSolver(1e-13, 1e-12).solve(500, delta -> probability(t, df, delta) - p, low, high);
    }

    /** The t with P(T ≤ t) = p, for example √n times a one-sided tolerance factor. */
    public static double quantile(double p, double df, double noncentrality) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a probability strictly between 0 and 1, not " + p);
        }
        double low = noncentrality - 1;
        double high = noncentrality + 1;
        double step = 1 + Math.abs(noncentrality);
        while (probability(low, df, noncentrality) > p) {
            low -= step;
            step *= 2;
        }
        step = 1 + Math.abs(noncentrality);
        while (probability(high, df, noncentrality) < p) {
            high += step;
            step *= 2;
        }
        return new BrentSolver(1e-13, 1e-12).solve(500, t -> probability(t, df, noncentrality) - p, low, high);
    }
}
