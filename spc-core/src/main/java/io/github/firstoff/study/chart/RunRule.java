package io.github.firstoff.study.chart;

import java.util.function.Consumer;

/**
 * A test for patterns on a panel.
 *
 * <p>A rule is watched point by point, so that a pattern that lies across the cut between two chunks of points is found as if
 * there were no cut: feed the chunks in order to one {@link Watch}.
 */
public interface RunRule {
    /** The name in results, for example {@code western-electric-3}. */
    String id();

    /** What the test looks for, as a sheet prints it. */
    String description();

    /** Whether the test may judge that panel. */
    boolean judges(PanelKind panel);

    /** How many points the longest pattern of the test spans. */
    int span();

    /** Starts watching a panel. */
    Watch watch(PanelKind panel);

    /** One panel under watch by one rule; has state and belongs to one thread. */
    interface Watch {
        /** Looks at point {@code i} of a chunk, which must follow the one looked at before. */
        void next(Panel chunk, int i, Consumer<Signal> signals);
    }
}
