package io.github.firstoff.stats;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.jspecify.annotations.Nullable;

/**
 * The factors of control charts for subgroups of n readings from a normal distribution, computed, not tabulated.
 *
 * <p>With R the range and s the standard deviation (n − 1) of a subgroup, and σ = 1: d2 = E(R) = ∫(1 − F(w))dw and
 * d3² = 2∫w(1 − F(w))dw − d2², with the distribution of the range F(w) = n∫φ(x)(Φ(x+w) − Φ(x))<sup>n−1</sup>dx (Tippett
 * 1925, Biometrika 17; Harter 1960, Annals of Mathematical Statistics 31); c4 = E(s) = √(2/(n−1)) Γ(n/2)/Γ((n−1)/2). The
 * other factors follow from these three (ASTM E2587, annex; Montgomery, Introduction to Statistical Quality Control,
 * appendix VI). Lower factors are cut at 0.
 *
 * <p>Accuracy: 12 significant digits or better for n from 2 to {@link #LARGEST}. Computed once for each n and kept.
 */
public final class ChartConstants {
    /** The largest subgroup for which factors are computed. */
    public static final int LARGEST = 1000;

    private static final AtomicReferenceArray<@Nullable ChartConstants> KNOWN = new AtomicReferenceArray<>(LARGEST + 1);

    private final int n;
    private final double d2;
    private final double d3;
    private final double c4;

    private ChartConstants(int n, double d2, double d3, double c4) {
        this.n = n;
        this.d2 = d2;
        this.d3 = d3;
        this.c4 = c4;
    }

    /**
     * The factors for subgroups of {@code n}.
     *
     * @throws IllegalArgumentException if {@code n} is not 2 to {@link #LARGEST}
     */
    public static ChartConstants of(int n) {
        if (n < 2 || n > LARGEST) {
            throw new IllegalArgumentException(
                    "control chart factors exist for subgroups of 2 to " + LARGEST + " readings, not " + n);
        }
        ChartConstants known = KNOWN.get(n);
        if (known == null) {
            known = compute(n);
            KNOWN.set(n, known);
        }
        return known;
    }

    static ChartConstants compute(int n) {
        if (n == 2) {
            // closed forms: the range of two is √2 times a half-normal variable
            return new ChartConstants(2, 2 / Math.sqrt(Math.PI), Math.sqrt(2 - 4 / Math.PI), Math.sqrt(2 / Math.PI));
        }
        double[] moments = RangeDistribution.moments(n);
        return new ChartConstants(n, moments[0], Math.sqrt(moments[1] - moments[0] * moments[0]), c4OfWhole(n));
    }

    private static double c4OfWhole(int n) {
        // g(m) = Γ(m/2)/Γ((m−1)/2); g(m) g(m+1) = (m−1)/2, so the ratio follows without large gamma values
        double g = 1 / Math.sqrt(Math.PI);
        for (int m = 2; m < n; m++) {
            g = (m - 1) / 2.0 / g;
        }
        return g * Math.sqrt(2.0 / (n - 1));
    }

    /**
     * E(s)/σ of a standard deviation with {@code df} degrees of freedom, for example a pooled one: √(2/ν) Γ((ν+1)/2)/Γ(ν/2).
     *
     * @throws IllegalArgumentException if {@code df} is less than 1
     */
    public static double c4OfDegrees(long df) {
        if (df < 1) {
            throw new IllegalArgumentException("a standard deviation has at least 1 degree of freedom, not " + df);
        }
        if (df < LARGEST) {
            return c4OfWhole((int) df + 1);
        }
        // ln Γ(x+1/2)/Γ(x) = ln(x)/2 − 1/(8x) + 1/(192x³) − 1/(640x⁵) + …, x = ν/2
        double x = df / 2.0;
        return Math.exp((-1 / 8.0 + (1 / 192.0 - 1 / (640 * x * x)) / (x * x)) / x);
    }

    /** The subgroup size. */
    public int n() {
        return n;
    }

    /** E(R)/σ. */
    public double d2() {
        return d2;
    }

    /** Standard deviation of R over σ. */
    public double d3() {
        return d3;
    }

    /** E(s)/σ. */
    public double c4() {
        return c4;
    }

    /** Standard deviation of s over σ: √(1 − c4²). */
    public double c5() {
        return Math.sqrt((1 - c4) * (1 + c4));
    }

    /** 3/√n: limits of means about a known σ. */
    public double a() {
        return 3 / Math.sqrt(n);
    }

    /** 3/(d2 √n): limits of means from the mean range. */
    public double a2() {
        return 3 / (d2 * Math.sqrt(n));
    }

    /** 3/(c4 √n): limits of means from the mean standard deviation. */
    public double a3() {
        return 3 / (c4 * Math.sqrt(n));
    }

    /** Lower limit of s from the mean s. */
    public double b3() {
        return Math.max(0, 1 - 3 * c5() / c4);
    }

    /** Upper limit of s from the mean s. */
    public double b4() {
        return 1 + 3 * c5() / c4;
    }

    /** Lower limit of s from a known σ. */
    public double b5() {
        return Math.max(0, c4 - 3 * c5());
    }

    /** Upper limit of s from a known σ. */
    public double b6() {
        return c4 + 3 * c5();
    }

    /** Lower limit of R from a known σ. */
    public double bigD1() {
        return Math.max(0, d2 - 3 * d3);
    }

    /** Upper limit of R from a known σ. */
    public double bigD2() {
        return d2 + 3 * d3;
    }

    /** Lower limit of R from the mean range. */
    public double bigD3() {
        return Math.max(0, 1 - 3 * d3 / d2);
    }

    /** Upper limit of R from the mean range. */
    public double bigD4() {
        return 1 + 3 * d3 / d2;
    }

    /** 3/d2: limits of individuals from the mean moving range over n readings. */
    public double e2() {
        return 3 / d2;
    }

    /** 3/c4: limits of individuals from the mean standard deviation. */
    public double e3() {
        return 3 / c4;
    }

    @Override
    public String toString() {
        return "factors for subgroups of " + n + ": d2 " + d2 + ", d3 " + d3 + ", c4 " + c4;
    }

    /**
     * First and second moment of the range of n standard normal values.
     *
     * <p>1 − F(w) = n∫φ(x)(Q(x)ᵐ − (Q(x) − Q(x+w))ᵐ)dx with Q = 1 − Φ and m = n − 1, the difference of powers by logarithms,
     * so that the far tail keeps its digits: taken as 1 minus F it would be rounding noise, and the second moment weighs
     * the tail with w.
     */
    private static final class RangeDistribution {
        /** Nobody sees a range of 20σ: 1 − F(20) is below n² × 1e-44. */
        private static final double WIDEST = 20;

        private static final double FURTHEST = 10;
        /** The trapezium rule on a bell over the whole line converges faster than any power of its step. */
        private static final double STEP = 0.0625;

        private static final int PANELS = 10;
        private static final int NODES = 24;

        private RangeDistribution() {}

        static double[] moments(int n) {
            GaussIntegrator rule = new GaussIntegratorFactory().legendre(NODES);
            int points = (int) (2 * FURTHEST / STEP) + 1;
            double[] x = new double[points];
            double[] weightOfX = new double[points];
            double[] above = new double[points];
            for (int i = 0; i < points; i++) {
                x[i] = -FURTHEST + i * STEP;
                above[i] = Distributions.normalAbove(x[i]);
                weightOfX[i] =
                        n * STEP * Math.exp(-x[i] * x[i] / 2) / Math.sqrt(2 * Math.PI) * Math.pow(above[i], n - 1);
            }
            double first = 0;
            double second = 0;
            double width = WIDEST / PANELS;
            for (int panel = 0; panel < PANELS; panel++) {
                for (int k = 0; k < rule.getNumberOfPoints(); k++) {
                    double w = width * (panel + (1 + rule.getPoint(k)) / 2);
                    double wider = 0;
                    for (int i = 0; i < points; i++) {
                        double share = Distributions.normalAbove(x[i] + w) / above[i];
                        wider -= weightOfX[i] * Math.expm1((n - 1) * Math.log1p(-share));
                    }
                    double weighted = rule.getWeight(k) * width / 2 * wider;
                    first += weighted;
                    second += 2 * w * weighted;
                }
            }
            return new double[] {first, second};
        }
    }
}
