package io.github.firstoff.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Ordered values against the quantiles of a fitted distribution at their plotting positions: a straight line if the fit is right.
 *
 * @param points in ascending order
 * @param correlation the correlation of values and quantiles (NIST/SEMATECH e-Handbook 1.3.3.22); 1 for a perfect line
 * @param positions which plotting positions
 */
public record ProbabilityPlot(List<Point> points, double correlation, PlottingPosition positions) {
    /** Copies the points. */
    public ProbabilityPlot {
        points = List.copyOf(points);
    }

    /**
     * One value.
     *
     * @param value the value
     * @param probability its plotting position
     * @param quantile what the fitted distribution has there
     * @param score the standard normal quantile there, for a plot on a normal scale
     */
    public record Point(double value, double probability, double quantile, double score) {}

    /**
     * The plot.
     *
     * @param sorted the values in ascending order, at least 2, not all equal
     * @throws IllegalArgumentException otherwise
     */
    public static ProbabilityPlot of(double[] sorted, FittedDistribution fitted, PlottingPosition positions) {
        int n = sorted.length;
        if (n < 2 || sorted[0] == sorted[n - 1]) {
            throw new IllegalArgumentException("a probability plot needs values that spread");
        }
        List<Point> points = new ArrayList<>(n);
        double[] quantiles = new double[n];
        for (int i = 0; i < n; i++) {
            double p = positions.of(i + 1, n);
            quantiles[i] = fitted.quantile(p);
            points.add(new Point(sorted[i], p, quantiles[i], Distributions.normalQuantile(p)));
        }
        return new ProbabilityPlot(points, correlation(sorted, quantiles), positions);
    }

    private static double correlation(double[] x, double[] y) {
        Moments mx = Moments.of(x);
        Moments my = Moments.of(y);
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += (x[i] - mx.mean()) * (y[i] - my.mean());
        }
        return sum / Math.sqrt(mx.m2() * my.m2());
    }
}
