package io.github.firstoff.study.chart;

import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Optional;
import java.util.OptionalInt;

/** Median moving range of individuals over d4; a few odd readings hardly move it. */
final class MedianMovingRangeEstimator implements SpreadEstimator {
    @Override
    public String name() {
        return "median-moving-range";
    }

    @Override
    public Optional<SigmaEstimate> estimate(Basis basis) {
        if (!basis.commonSize().equals(OptionalInt.of(1)) || basis.movingRanges().length == 0) {
            return Optional.empty();
        }
        long[] ranges = basis.movingRanges();
        return Optional.of(SigmaEstimators.medianMovingRange(Spread.median(ranges), ranges.length));
    }
}
