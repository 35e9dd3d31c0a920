package io.github.firstoff.stats;

import java.util.function.DoubleSupplier;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The run length of a two-sided exponentially weighted moving average of normal points, by carrying its density from point to
 * point on Gauss and Legendre nodes between the limits (the integral equation of Crowder 1987, Technometrics 29, 401–407, solved
 * forwards, which allows limits that vary in time). Relative error about 1e-9 or better for weights from 0.01 to 1.
 *
 * <p>z<sub>t</sub> = λx<sub>t</sub> + (1 − λ)z<sub>t−1</sub>, z<sub>0</sub> = 0, x normal with mean {@code shift} and standard
 * deviation 1; limits ±L√(λ/(2−λ)) or, exactly, ±L√(λ/(2−λ) (1 − (1−λ)<sup>2t</sup>)).
 */
public final class EwmaRunLength {
    private EwmaRunLength() {}

    /**
     * The run length.
     *
     * @param lambda the weight of the newest point, above 0, at most 1
     * @param width L, above 0
     * @param shift of the mean, in standard deviations of the points
     * @param exactLimits whether limits widen from point to point to their final width, or have it from the start
     * @throws IllegalArgumentException outside these ranges
     */
    public static RunLength of(double lambda, double width, double shift, boolean exactLimits) {
        if (!(lambda > 0 && lambda <= 1) || !(width > 0) || Double.isInfinite(width) || !Double.isFinite(shift)) {
            throw new IllegalArgumentException("a weight above 0 and at most 1 and a width above 0, not " + lambda
                    + " and " + width + ", with a finite shift, not " + shift);
        }
        double limit = width * Math.sqrt(lambda / (2 - lambda));
        // the kernel is as wide as λ: half a dozen nodes across it, and never fewer than forty
        int nodes = Math.min(600, Math.max(40, (int) Math.ceil(6 * limit / lambda)));
        return RunLength.of(new Carrier(lambda, limit, shift, exactLimits, nodes));
    }

    private static final class Carrier implements DoubleSupplier {
        private final double lambda;
        private final double finalLimit;
        private final double shift;
        private final boolean exactLimits;
        private final double[] node;
        private final double[] weight;
        private final double[][] kernel;
        private double[] density;
        private double limit;
        private boolean settled;
        private int t;

        Carrier(double lambda, double limit, double shift, boolean exactLimits, int nodes) {
            this.lambda = lambda;
            this.finalLimit = limit;
            this.shift = shift;
            this.exactLimits = exactLimits;
            GaussIntegrator rule = new GaussIntegratorFactory().legendre(nodes);
            node = new double[nodes];
            weight = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                node[i] = rule.getPoint(i);
                weight[i] = rule.getWeight(i);
            }
            kernel = new double[nodes][nodes];
            density = new double[nodes];
        }

        @Override
        public double getAsDouble() {
            t++;
            double before = limit;
            limit = exactLimits ? finalLimit * Math.sqrt(-Math.expm1(2.0 * t * Math.log1p(-lambda))) : finalLimit;
            double[] next = new double[node.length];
            if (t == 1) {
                for (int j = 0; j < next.length; j++) {
                    next[j] = bell(limit * node[j] / lambda - shift) / lambda;
                }
            } else {
                fillKernel(before);
                for (int j = 0; j < next.length; j++) {
                    double sum = 0;
                    for (int i = 0; i < next.length; i++) {
                        sum += kernel[j][i] * density[i];
                    }
                    next[j] = sum;
                }
            }
            density = next;
            double left = 0;
            for (int i = 0; i < next.length; i++) {
                left += weight[i] * limit * next[i];
            }
            return left;
        }

        private void fillKernel(double before) {
            if (settled) {
                return;
            }
            settled = before == limit;
            for (int j = 0; j < node.length; j++) {
                for (int i = 0; i < node.length; i++) {
                    double y = limit * node[j];
                    double x = before * node[i];
                    kernel[j][i] = weight[i] * before * bell((y - (1 - lambda) * x) / lambda - shift) / lambda;
                }
            }
        }
    }

    private static double bell(double z) {
        return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
    }
}
