package io.github.firstoff.study.chart;

import io.github.firstoff.quantity.Unit;
import java.util.Collections;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What a chart of known readings hands to the charts that follow: centre and spread, from which every line is drawn.
 *
 * @param kind the kind of chart, by its name in the {@link ChartCatalogue}
 * @param centre the centre line of the location panel, in {@code unit}; for attributes the rate: the proportion, or the
 *     nonconformities on one unit of size
 * @param sigma the standard deviation of single readings within subgroups, in {@code unit}; not below 0; for attributes the
 *     factor by which the standard deviation of the binomial or Poisson distribution is widened, 1 where it is not
 * @param estimator how sigma was estimated, as a sheet prints it
 * @param degreesOfFreedom the effective degrees of freedom of sigma
 * @param unit the unit of both
 * @param pointSigma the standard deviation of the plotted points where it does not follow from sigma, as on charts of within and
 *     between
 * @param partSigmas the standard deviation of each part number, on standardised charts of short runs; else empty
 */
public record FrozenLimits(
        String kind,
        double centre,
        double sigma,
        String estimator,
        double degreesOfFreedom,
        Unit unit,
        OptionalDouble pointSigma,
        Map<String, Double> partSigmas) {
    /** Checks ranges and copies the map. */
    public FrozenLimits {
        if (!Double.isFinite(centre)) {
            throw new IllegalArgumentException("a centre line is finite, not " + centre);
        }
        requireSpread(sigma);
        pointSigma.ifPresent(FrozenLimits::requireSpread);
        partSigmas.values().forEach(FrozenLimits::requireSpread);
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("degrees of freedom are above 0, not " + degreesOfFreedom);
        }
        partSigmas = Collections.unmodifiableMap(new TreeMap<>(partSigmas));
    }

    /** Limits whose points have no spread of their own. */
    public FrozenLimits(
            String kind, double centre, double sigma, String estimator, double degreesOfFreedom, Unit unit) {
        this(kind, centre, sigma, estimator, degreesOfFreedom, unit, OptionalDouble.empty(), Map.of());
    }

    private static void requireSpread(double sigma) {
        if (!(sigma >= 0) || Double.isInfinite(sigma)) {
            throw new IllegalArgumentException("a standard deviation is finite and not below 0, not " + sigma);
        }
    }

    FrozenLimits withPointSigma(double spread) {
        return new FrozenLimits(
                kind, centre, sigma, estimator, degreesOfFreedom, unit, OptionalDouble.of(spread), partSigmas);
    }

    FrozenLimits withPartSigmas(Map<String, Double> spreads) {
        return new FrozenLimits(kind, centre, sigma, estimator, degreesOfFreedom, unit, pointSigma, spreads);
    }
}
