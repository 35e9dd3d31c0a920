package io.github.firstoff.study.chart;

import io.github.firstoff.stats.SigmaEstimate;
import java.util.Optional;

/** A way to estimate the standard deviation of single readings from the subgroups that set limits. */
public interface SpreadEstimator {
    /** The name in plans and results, for example {@code mean-range}. */
    String name();

    /**
     * The estimate, in steps of the readings; empty where these subgroups cannot give one, as ranges of single readings or
     * moving ranges of subgroups.
     */
    Optional<SigmaEstimate> estimate(Basis basis);
}
