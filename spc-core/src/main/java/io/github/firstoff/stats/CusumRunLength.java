package io.github.firstoff.stats;

import java.util.function.DoubleSupplier;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Run lengths of the tabular cumulative sum of normal points.
 *
 * <p>One-sided, C<sub>t</sub> = max(0, C<sub>t−1</sub> + x<sub>t</sub> − k), signal beyond h: by carrying the probability of 0 and
 * the density between 0 and h on Gauss and Legendre nodes (the integral equation of Page 1954, Biometrika 41, solved
 * forwards). Two-sided, from the two one-sided averages A and B: with start 0, AB/(A + B); with a head start s,
 * (A(s)B(0) + A(0)B(s) − A(0)B(0))/(A(0) + B(0)) (Lucas and Crosier 1982, Technometrics 24, 199–205), exact while s ≤ h/2 because
 * then one sum is back at 0 when the other signals. Relative error about 1e-9 or better.
 */
public final class CusumRunLength {
    private CusumRunLength() {}

    /**
     * The run length of the upper sum alone.
     *
     * @param reference k, not below 0, in standard deviations of the points
     * @param interval h, above 0
     * @param start the sum before the first point, from 0 to h
     * @param shift of the mean, in standard deviations of the points
     * @throws IllegalArgumentException outside these ranges
     */
    public static RunLength upper(double reference, double interval, double start, double shift) {
        if (!(reference >= 0)
                || !(interval > 0)
                || !(start >= 0 && start <= interval)
                || !Double.isFinite(shift)
                || Double.isInfinite(reference)
                || Double.isInfinite(interval)) {
            throw new IllegalArgumentException(
                    "a reference value not below 0, an interval above 0 and a start within it, not " + reference + ", "
                            + interval + ", " + start + ", with a finite shift, not " + shift);
        }
        int nodes = Math.min(600, Math.max(40, (int) Math.ceil(8 * interval)));
        return RunLength.of(new Carrier(reference - shift, interval, start, nodes));
    }

    /**
     * The average run length of both sums.
     *
     * @param start the sums before the first point, from 0 to h/2
     * @throws IllegalArgumentException outside these ranges
     */
    public static double twoSidedAverage(double reference, double interval, double start, double shift) {
        if (start > interval / 2) {
            throw new IllegalArgumentException("a head start of at most half the interval, not " + start);
        }
        double upper = upper(reference, interval, 0, shift).average();
        double lower = upper(reference, interval, 0, -shift).average();
        if (start == 0) {
            return 1 / (1 / upper + 1 / lower);
        }
        double upperStarted = upper(reference, interval, start, shift).average();
        double lowerStarted = upper(reference, interval, start, -shift).average();
        return (upperStarted * lower + upper * lowerStarted - upper * lower) / (upper + lower);
    }

    private static final class Carrier implements DoubleSupplier {
        private final double drift;
        private final double[] x;
        private final double[] weight;
        private final double[][] kernel;
        private final double[] fall;
        private final double[] rise;
        private double[] density;
        private double atZero;
        private final double start;
        private boolean started;

        /** {@code drift}: what a point must exceed on average for the sum to rise, k − shift. */
        Carrier(double drift, double interval, double start, int nodes) {
            this.drift = drift;
            this.start = start;
            GaussIntegrator rule = new GaussIntegratorFactory().legendre(nodes);
            x = new double[nodes];
            weight = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                x[i] = interval * (1 + rule.getPoint(i)) / 2;
                weight[i] = interval * rule.getWeight(i) / 2;
            }
            kernel = new double[nodes][nodes];
            fall = new double[nodes];
            rise = new double[nodes];
            for (int j = 0; j < nodes; j++) {
                fall[j] = weight[j] * Distributions.normal(drift - x[j]);
                rise[j] = bell(x[j] + drift);
                for (int i = 0; i < nodes; i++) {
                    kernel[j][i] = weight[i] * bell(x[j] - x[i] + drift);
                }
            }
            density = new double[nodes];
        }

        @Override
        public double getAsDouble() {
            double[] next = new double[x.length];
            double zero;
            if (started) {
                zero = atZero * Distributions.normal(drift);
                for (int j = 0; j < x.length; j++) {
                    double sum = atZero * rise[j];
                    for (int i = 0; i < x.length; i++) {
                        sum += kernel[j][i] * density[i];
                    }
                    next[j] = sum;
                    zero += fall[j] * density[j];
                }
            } else {
                started = true;
                zero = Distributions.normal(drift - start);
                for (int j = 0; j < x.length; j++) {
                    next[j] = bell(x[j] - start + drift);
                }
            }
            atZero = zero;
            density = next;
            double left = zero;
            for (int j = 0; j < x.length; j++) {
                left += weight[j] * next[j];
            }
            return left;
        }
    }

    private static double bell(double z) {
        return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
    }
}
