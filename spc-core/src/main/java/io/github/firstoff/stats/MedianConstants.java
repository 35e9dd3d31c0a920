package io.github.firstoff.stats;

import java.util.concurrent.atomic.AtomicReferenceArray;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;
import org.jspecify.annotations.Nullable;

/**
 * Factors of charts of medians, and of median ranges, for n readings from a normal distribution, computed, not tabulated.
 *
 * <p>With σ = 1: the standard deviation of the median (of an even number: of the mean of the middle two), from the density
 * n!/(m!)² Φᵐφ(1−Φ)ᵐ of the middle of n = 2m + 1, and from the joint density of the middle two of n = 2m; the median d4 of
 * the range, P(R ≤ d4) = 1/2 (Ferrell 1953, Industrial Quality Control 9; both tabulated in ASTM STP 15D, part 3, and by
 * Montgomery and others as the factors Ã2 = A6 and d4). Accuracy: 11 significant digits or better.
 */
public final class MedianConstants {
    /** The largest subgroup for which factors are computed. */
    public static final int LARGEST = 100;

    private static final double FURTHEST = 9;
    /** The trapezium rule on a bell over the whole line converges faster than any power of its step. */
    private static final double STEP = 0.0625;

    private static final AtomicReferenceArray<@Nullable MedianConstants> KNOWN =
            new AtomicReferenceArray<>(LARGEST + 1);

    private final int n;
    private final double standardDeviation;
    private final double d4;
    private final double rangeDensity;

    private MedianConstants(int n, double standardDeviation, double d4, double rangeDensity) {
        this.n = n;
        this.standardDeviation = standardDeviation;
        this.d4 = d4;
        this.rangeDensity = rangeDensity;
    }

    /**
     * The factors for {@code n} readings.
     *
     * @throws IllegalArgumentException if {@code n} is not 2 to {@link #LARGEST}
     */
    public static MedianConstants of(int n) {
        if (n < 2 || n > LARGEST) {
            throw new IllegalArgumentException(
                    "factors of medians exist for subgroups of 2 to " + LARGEST + " readings, not " + n);
        }
        MedianConstants known = KNOWN.get(n);
        if (known == null) {
            known = compute(n);
            KNOWN.set(n, known);
        }
        return known;
    }

    static MedianConstants compute(int n) {
        double d4 = medianRange(n);
        return new MedianConstants(n, Math.sqrt(n % 2 == 1 ? oddVariance(n) : evenVariance(n)), d4, density(n, d4));
    }

    /** The standard deviation of the median over σ. */
    public double standardDeviation() {
        return standardDeviation;
    }

    /** The median of the range over σ. */
    public double d4() {
        return d4;
    }

    /** The density of the range over σ at its median. */
    double rangeDensity() {
        return rangeDensity;
    }

    /** 3 × standard deviation of the median / d2: limits of medians from the mean range (Ã2, also A6). */
    public double a6() {
        return 3 * standardDeviation / ChartConstants.of(n).d2();
    }

    private static double phi(double x) {
        return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
    }

    private static double oddVariance(int n) {
        int m = n / 2;
        double logFactor = Gamma.logGamma(n + 1) - 2 * Gamma.logGamma(m + 1);
        double sum = 0;
        for (int i = 1; i * STEP <= FURTHEST; i++) {
            double x = i * STEP;
            double log = logFactor + m * (Math.log(Distributions.normal(x)) + Math.log(Distributions.normalAbove(x)));
            // the density is even
            sum += 2 * STEP * x * x * phi(x) * Math.exp(log);
        }
        return sum;
    }

    private static double evenVariance(int n) {
        int m = n / 2;
        double logFactor = Gamma.logGamma(n + 1) - 2 * Gamma.logGamma(m);
        GaussIntegrator rule = new GaussIntegratorFactory().legendre(32);
        double sum = 0;
        for (int i = (int) (-FURTHEST / STEP); i * STEP <= FURTHEST; i++) {
            double a = i * STEP;
            double logBelow = (m - 1) * Math.log(Distributions.normal(a));
            for (int panel = 0; panel < 8; panel++) {
                for (int k = 0; k < rule.getNumberOfPoints(); k++) {
                    double w = 2.0 * panel + 1 + rule.getPoint(k);
                    double b = a + w;
                    double log = logFactor + logBelow + (m - 1) * Math.log(Distributions.normalAbove(b));
                    double middle = a + w / 2;
                    sum += STEP * rule.getWeight(k) * middle * middle * phi(a) * phi(b) * Math.exp(log);
                }
            }
        }
        return sum;
    }

    private static double medianRange(int n) {
        return new BrentSolver(1e-15, 1e-14).solve(200, w -> rangeBelow(n, w) - 0.5, 0.1, 12);
    }

    /** P(R ≤ w) = n∫φ(x)(Φ(x+w) − Φ(x))ⁿ⁻¹dx. */
    private static double rangeBelow(int n, double w) {
        double sum = 0;
        for (double x = -FURTHEST; x <= FURTHEST; x += STEP) {
            sum += STEP * n * phi(x) * Math.pow(Distributions.normal(x + w) - Distributions.normal(x), n - 1);
        }
        return sum;
    }

    private static double density(int n, double w) {
        double sum = 0;
        for (double x = -FURTHEST; x <= FURTHEST; x += STEP) {
            double between = Distributions.normal(x + w) - Distributions.normal(x);
            sum += STEP * n * (n - 1) * phi(x) * phi(x + w) * Math.pow(between, n - 2);
        }
        return sum;
    }
}
