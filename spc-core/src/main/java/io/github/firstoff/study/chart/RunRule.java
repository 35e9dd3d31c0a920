package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import java.util.Optional;
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
    default String description() {
        return remark().english();
    }

    /** What the test looks for, to be worded in the language of a sheet. */
    Remark remark();

    /** What was found, where the side or the direction is told beside it. */
    Remark remark(Side side);

    /** Whether the test may judge points of that nature, as its source says. */
    boolean judges(PanelNature points);

    /** How many points the longest pattern of the test spans. */
    int span();

    /**
     * The same test with other lengths: {@code needed} of {@code window} successive points.
     *
     * @throws IllegalArgumentException if the test has no such form
     */
    RunRule withWindow(int needed, int window);

    /** The same test over {@code length} successive points. */
    default RunRule withLength(int length) {
        return withWindow(length, length);
    }

    /** Starts watching a panel. */
    Watch watch(PanelKind panel);

    /** What the test must remember, where that is a matter of sides and zones only; for exact run lengths. */
    default Optional<ZoneMemory> memory() {
        return Optional.empty();
    }

    /** What the test must remember, where that is a matter of steps up and down only; for exact run lengths. */
    default Optional<StepMemory> steps() {
        return Optional.empty();
    }

    /** One panel under watch by one rule; has state and belongs to one thread. */
    interface Watch {
        /** Looks at point {@code i} of a chunk, which must follow the one looked at before. */
        void next(Panel chunk, int i, Consumer<Signal> signals);

        /** Forgets all points: what follows a break begins anew. */
        void restart();
    }

    /**
     * A finite memory of sides and zones, in a {@code long}; 0 is the memory of nothing. A cell is 0 on the centre line, else one
     * of the numbers below, negative under the centre line; a panel without zones knows only 1 and 5.
     */
    interface ZoneMemory {
        /** Within one sigma. */
        int WITHIN_ONE_SIGMA = 1;
        /** Exactly on the line at one sigma: neither within nor beyond. */
        int ON_ONE_SIGMA = 2;
        /** Beyond one sigma, not beyond two. */
        int BEYOND_ONE_SIGMA = 3;
        /** Beyond two sigma, not beyond the limit. */
        int BEYOND_TWO_SIGMA = 4;
        /** Beyond the limit. */
        int BEYOND_LIMIT = 5;

        /** The memory after one more point. */
        long next(long memory, int cell);

        /** Whether the point remembered last completes the pattern. */
        boolean signals(long memory);

        /** The same memory without what cannot matter any more, so that equal futures have equal memories. */
        long essence(long memory);
    }

    /** A finite memory of steps from point to point; 0 is the memory of nothing. */
    interface StepMemory {
        /** The memory after one more point: 1 if it lies above the one before, −1 below, 0 level with it or the first. */
        int next(int memory, int step);

        /** Whether the point remembered last completes the pattern. */
        boolean signals(int memory);

        /** The direction of a pattern that is complete. */
        Side side(int memory);
    }
}
