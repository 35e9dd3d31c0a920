package io.github.firstoff.study.chart;

import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Optional;

/** The standard deviation of all readings that set limits, whatever their subgroup. */
final class OverallDeviationEstimator implements SpreadEstimator {
    @Override
    public String name() {
        return "overall-standard-deviation";
    }

    @Override
    public Optional<SigmaEstimate> estimate(Basis basis) {
        DeviationTally tally = basis.tally();
        if (tally.count() < 2) {
            return Optional.empty();
        }
        return Optional.of(SigmaEstimators.sample(tally.standardDeviation(), tally.count()));
    }
}
