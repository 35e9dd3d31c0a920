package io.github.firstoff.study.chart;

import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Arrays;
import java.util.Optional;

/** R̄/d2; of subgroups of unequal size the mean of Rᵢ/d2(nᵢ). */
final class MeanRangeEstimator implements SpreadEstimator {
    @Override
    public String name() {
        return "mean-range";
    }

    @Override
    public Optional<SigmaEstimate> estimate(Basis basis) {
        if (!basis.hasSizes(2)) {
            return Optional.empty();
        }
        long[] ranges = basis.ranges();
        return Optional.of(
                basis.commonSize().isPresent()
                        ? SigmaEstimators.meanRange(
                                Spread.mean(ranges), basis.commonSize().getAsInt(), ranges.length)
                        : SigmaEstimators.meanRange(
                                Arrays.stream(ranges).asDoubleStream().toArray(), basis.sizes()));
    }
}
