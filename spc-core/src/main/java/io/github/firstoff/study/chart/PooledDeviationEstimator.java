package io.github.firstoff.study.chart;

import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Optional;

/** Pooled s, made unbiased by c4 of all its degrees of freedom. */
final class PooledDeviationEstimator implements SpreadEstimator {
    @Override
    public String name() {
        return "pooled-standard-deviation";
    }

    @Override
    public Optional<SigmaEstimate> estimate(Basis basis) {
        if (!basis.hasSizes(2)) {
            return Optional.empty();
        }
        double squares = 0;
        long df = 0;
        for (int i = 0; i < basis.count(); i++) {
            int n = basis.data().size(basis.group(i));
            squares += (n - 1) * Spread.variance(basis.data(), basis.group(i));
            df += n - 1;
        }
        return Optional.of(SigmaEstimators.pooledUnbiased(Math.sqrt(squares / df), df));
    }
}
