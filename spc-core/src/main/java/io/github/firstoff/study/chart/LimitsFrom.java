package io.github.firstoff.study.chart;

import java.util.Optional;

/**
 * Where the limits of a chart come from: all its points, some of them, limits set before, or each stretch between two breaks for
 * itself.
 *
 * @param baseline which points set the limits
 * @param phase the label of the break that opens the stretch which sets the limits, in place of numbers
 * @param frozen limits set before, which no point sets
 * @param recalculation why limits are recalculated at every break; empty if they are not
 */
public record LimitsFrom(
        Baseline baseline, Optional<String> phase, Optional<FrozenLimits> frozen, Optional<String> recalculation) {
    /** Refuses a blank reason and two sources at once. */
    public LimitsFrom {
        if (recalculation.filter(String::isBlank).isPresent()) {
            throw new IllegalArgumentException("limits are not recalculated without a written reason");
        }
        int sources = (baseline.equals(Baseline.ALL) ? 0 : 1)
                + (phase.isPresent() ? 1 : 0)
                + (frozen.isPresent() ? 1 : 0)
                + (recalculation.isPresent() ? 1 : 0);
        if (sources > 1) {
            throw new IllegalArgumentException("limits come from one source, not from " + sources);
        }
    }

    /** From all points that are not excluded. */
    public static LimitsFrom allPoints() {
        return baseline(Baseline.ALL);
    }

    /** From the points of a baseline, then applied to all. */
    public static LimitsFrom baseline(Baseline points) {
        return new LimitsFrom(points, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** From one stretch between two breaks, then applied to all: that which a break of this label opens. */
    public static LimitsFrom phase(String label) {
        return new LimitsFrom(Baseline.ALL, Optional.of(label), Optional.empty(), Optional.empty());
    }

    /** Limits set before. */
    public static LimitsFrom frozen(FrozenLimits limits) {
        return new LimitsFrom(Baseline.ALL, Optional.empty(), Optional.of(limits), Optional.empty());
    }

    /**
     * Every stretch between two breaks sets its own.
     *
     * @param reason why; printed at every recalculation
     */
    public static LimitsFrom eachPhase(String reason) {
        return new LimitsFrom(Baseline.ALL, Optional.empty(), Optional.empty(), Optional.of(reason));
    }
}
