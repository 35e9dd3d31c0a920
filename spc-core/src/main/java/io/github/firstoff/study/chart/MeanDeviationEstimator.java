package io.github.firstoff.study.chart;

import io.github.firstoff.stats.Moments;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Optional;

/** s̄/c4; of subgroups of unequal size the mean of sᵢ/c4(nᵢ). */
final class MeanDeviationEstimator implements SpreadEstimator {
    @Override
    public String name() {
        return "mean-standard-deviation";
    }

    @Override
    public Optional<SigmaEstimate> estimate(Basis basis) {
        if (!basis.hasSizes(2)) {
            return Optional.empty();
        }
        double[] deviations = basis.standardDeviations();
        return Optional.of(
                basis.commonSize().isPresent()
                        ? SigmaEstimators.meanStandardDeviation(
                                Moments.of(deviations).mean(),
                                basis.commonSize().getAsInt(),
                                deviations.length)
                        : SigmaEstimators.meanStandardDeviation(deviations, basis.sizes()));
    }
}
