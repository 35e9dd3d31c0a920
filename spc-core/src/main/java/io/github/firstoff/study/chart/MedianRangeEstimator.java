package io.github.firstoff.study.chart;

import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Optional;

/** Median range over d4, for subgroups of one size; a few wild subgroups hardly move it. */
final class MedianRangeEstimator implements SpreadEstimator {
    @Override
    public String name() {
        return "median-range";
    }

    @Override
    public Optional<SigmaEstimate> estimate(Basis basis) {
        if (!basis.hasSizes(2) || basis.commonSize().isEmpty()) {
            return Optional.empty();
        }
        long[] ranges = basis.ranges();
        return Optional.of(SigmaEstimators.medianRange(
                Spread.median(ranges), basis.commonSize().getAsInt(), ranges.length));
    }
}
