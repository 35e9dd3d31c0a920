package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import java.util.Optional;

/**
 * A stretch of a chart with limits of its own, where limits were recalculated.
 *
 * @param name what the stretch is called: the label of the break that opens it, {@code start} for the first
 * @param from the number of its first point
 * @param to the number of its last point
 * @param limitsFrom how many points set its limits; 0 if too few
 * @param frozen its limits; empty if it has none
 * @param reason why limits were recalculated; empty for the first stretch
 */
public record Stage(
        Remark name, int from, int to, int limitsFrom, Optional<FrozenLimits> frozen, Optional<String> reason) {
    /** What the stretch is called, in English. */
    public String label() {
        return name.english();
    }
}
