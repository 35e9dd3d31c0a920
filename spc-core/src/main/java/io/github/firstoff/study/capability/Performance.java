package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.FittedDistribution;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Pp, PPL, PPU and Ppk in this order, and the expected shares outside.
 *
 * @param indices the four
 * @param expected the whole share outside, in parts per million
 * @param below the share below the lower limit
 * @param above the share above the upper limit
 */
record Performance(List<Index> indices, Index expected, Index below, Index above) {
    private static final Remark NO_PERCENTILE = Remark.of(
            "no-index.no-percentile", "The fitted distribution has no finite percentile there: no index exists.");

    /** All of them without a value. */
    static Performance none(Remark reason) {
        return new Performance(
                List.of(
                        Index.none("Pp", reason),
                        Index.none("PPL", reason),
                        Index.none("PPU", reason),
                        Index.none("Ppk", reason)),
                Index.none(Outside.EXPECTED, reason),
                Index.none(Outside.BELOW, reason),
                Index.none(Outside.ABOVE, reason));
    }

    /** By the percentiles of the chosen distribution. */
    static Performance byPercentiles(Sample sample, Bounds bounds, DistributionChoice choice, double level) {
        if (choice.fitted().isEmpty()) {
            return none(choice.chosen().map(DistributionCandidate::hindrance).orElse(NormalIndices.NO_READINGS));
        }
        Optional<BigDecimal> lower = bounds.requiredLower();
        Optional<BigDecimal> upper = bounds.upper();
        if (lower.isEmpty() && upper.isEmpty()) {
            return none(NormalIndices.oneSided(bounds));
        }
        FittedDistribution fitted = choice.fitted().get();
        PercentileIndices percentiles = new PercentileIndices(
                distance(sample.scale(), choice, lower),
                distance(sample.scale(), choice, upper),
                PercentileIndices.USUAL_TAIL);
        PercentileIndices.Uncertain found = new PercentileIndices.Uncertain(
                fitted, DistributionChoice.Distances.sorted(sample, choice.origin()), level, percentiles.functions());
        Index both = bounds.isTwoSided() ? index("Pp", found, 0) : Index.none("Pp", NormalIndices.oneSided(bounds));
        Index low = lower.isPresent() ? index("PPL", found, 1) : NormalIndices.noLower("PPL", bounds);
        Index high = upper.isPresent() ? index("PPU", found, 2) : NormalIndices.noUpper("PPU");
        Index least = leastOf(
                low,
                high,
                index("Ppk", found, 3),
                fitted.covariance(sample.size()).isPresent());
        Index expected = Outside.expected(
                Outside.EXPECTED,
                found.value(4),
                found.interval(4).map(i -> new double[] {i.lower(), i.upper()}),
                level,
                found.interval(4).map(Interval::method).orElse(""));
        return new Performance(
                List.of(both, low, high, least),
                expected,
                lower.isPresent()
                        ? Index.of(
                                Outside.BELOW,
                                Scores.MILLION
                                        * fitted.probability(percentiles.lower().getAsDouble()))
                        : NormalIndices.noLower(Outside.BELOW, bounds),
                upper.isPresent()
                        ? Index.of(
                                Outside.ABOVE,
                                Scores.MILLION
                                        * fitted.survival(percentiles.upper().getAsDouble()))
                        : NormalIndices.noUpper(Outside.ABOVE));
    }

    /** The derivative of a minimum is that of the lesser: with the delta method its interval is that of the lesser side. */
    private static Index leastOf(Index low, Index high, Index least, boolean byDelta) {
        if (!byDelta || least.value().isEmpty()) {
            return least;
        }
        Index lesser =
                low.value().orElse(Double.POSITIVE_INFINITY) <= high.value().orElse(Double.POSITIVE_INFINITY)
                        ? low
                        : high;
        return least.with(lesser.interval(), lesser.lowerBound());
    }

    private static Index index(String name, PercentileIndices.Uncertain found, int function) {
        double value = found.value(function);
        // a percentile at infinity makes the index 0 or undefined: no statement about the process
        if (!Double.isFinite(value) || value == 0) {
            return Index.none(name, NO_PERCENTILE);
        }
        Optional<Interval> interval =
                found.interval(function).filter(ends -> Double.isFinite(ends.lower()) && Double.isFinite(ends.upper()));
        return Index.of(name, value).with(interval, found.lowerBound(function));
    }

    private static OptionalDouble distance(Scale scale, DistributionChoice choice, Optional<BigDecimal> limit) {
        return limit.map(value -> OptionalDouble.of(scale.length(scale.stepsBetween(choice.origin(), value))))
                .orElseGet(OptionalDouble::empty);
    }
}
