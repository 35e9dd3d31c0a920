package io.github.firstoff.study.chart;

import java.util.List;
import java.util.Optional;

/** The estimators of spread, by the names that plans use. A new one is one class and one line here. */
public final class SpreadEstimators {
    static final SpreadEstimator MEAN_RANGE = new MeanRangeEstimator();
    static final SpreadEstimator MEAN_STANDARD_DEVIATION = new MeanDeviationEstimator();
    static final SpreadEstimator POOLED_STANDARD_DEVIATION = new PooledDeviationEstimator();
    static final SpreadEstimator MEAN_MOVING_RANGE = new MeanMovingRangeEstimator();

    private static final List<SpreadEstimator> ALL = List.of(
            MEAN_RANGE,
            MEAN_STANDARD_DEVIATION,
            POOLED_STANDARD_DEVIATION,
            new MedianRangeEstimator(),
            MEAN_MOVING_RANGE,
            new MedianMovingRangeEstimator(),
            new OverallDeviationEstimator());

    private SpreadEstimators() {}

    /** All of them. */
    public static List<SpreadEstimator> all() {
        return ALL;
    }

    /** The estimator of that name; empty if there is none. */
    public static Optional<SpreadEstimator> named(String name) {
        return ALL.stream().filter(estimator -> estimator.name().equals(name)).findFirst();
    }

    /** What is usual for single readings, or for subgroups: MR̄/d2, or pooled s/c4. */
    static SpreadEstimator usual(boolean singles) {
        return singles ? MEAN_MOVING_RANGE : POOLED_STANDARD_DEVIATION;
    }
}
