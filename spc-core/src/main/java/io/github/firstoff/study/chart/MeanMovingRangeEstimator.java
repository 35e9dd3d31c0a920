package io.github.firstoff.study.chart;

import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Optional;
import java.util.OptionalInt;

/** MR̄/d2 of individuals. */
final class MeanMovingRangeEstimator implements SpreadEstimator {
    @Override
    public String name() {
        return "mean-moving-range";
    }

    @Override
    public Optional<SigmaEstimate> estimate(Basis basis) {
        if (!basis.commonSize().equals(OptionalInt.of(1)) || basis.movingRanges().length == 0) {
            return Optional.empty();
        }
        long[] ranges = basis.movingRanges();
        return Optional.of(SigmaEstimators.meanMovingRange(Spread.mean(ranges), ranges.length + 1L));
    }
}
