package io.github.firstoff.study.chart;

import io.github.firstoff.quantity.Unit;

/**
 * What a chart of known readings hands to the charts that follow: centre and spread, from which every line is drawn.
 *
 * @param kind the kind of chart, by its name in the {@link ChartCatalogue}
 * @param centre the centre line of the location panel, in {@code unit}
 * @param sigma the standard deviation of single readings within subgroups, in {@code unit}; not below 0
 * @param estimator how sigma was estimated, as a sheet prints it
 * @param degreesOfFreedom the effective degrees of freedom of sigma
 * @param unit the unit of both
 */
public record FrozenLimits(
        String kind, double centre, double sigma, String estimator, double degreesOfFreedom, Unit unit) {
    /** Checks ranges. */
    public FrozenLimits {
        if (!Double.isFinite(centre)) {
            throw new IllegalArgumentException("a centre line is finite, not " + centre);
        }
        if (!(sigma >= 0) || Double.isInfinite(sigma)) {
            throw new IllegalArgumentException("a standard deviation is finite and not below 0, not " + sigma);
        }
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("degrees of freedom are above 0, not " + degreesOfFreedom);
        }
    }
}
