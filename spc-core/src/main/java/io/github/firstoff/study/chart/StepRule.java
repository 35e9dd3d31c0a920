package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import java.util.Optional;
import java.util.Set;

/**
 * So many successive points whose steps follow one another in a stated way; equal neighbours end the pattern.
 *
 * @param id the test's name
 * @param shape how the steps follow one another
 * @param length how many points make the pattern, 3 to 62
 * @param natures the kinds of points that the test may judge
 */
record StepRule(String id, Shape shape, int length, Set<PanelNature> natures) implements RunRule {
    private static final int LONGEST = 62;

    /** How one step follows the other. */
    enum Shape {
        /** Each point above (or each below) the one before. */
        TREND("a trend", 1),
        /** Each step in the other direction than the one before: up, down, up, down. */
        ALTERNATION("an alternation", -1);

        private final String name;
        private final int turn;

        Shape(String name, int turn) {
            this.name = name;
            this.turn = turn;
        }
    }

    StepRule {
        natures = Set.copyOf(natures);
        if (length < 3 || length > LONGEST) {
            throw new IllegalArgumentException(shape.name + " has 3 to " + LONGEST + " points, not " + length);
        }
    }

    @Override
    public Remark remark() {
        return shape == Shape.TREND
                ? Remark.of("test.trend", "{0} successive points steadily rising or falling", Words.number(length))
                : Remark.of("test.alternation", "{0} successive points alternating up and down", Words.number(length));
    }

    @Override
    public Remark remark(Side side) {
        return switch (side) {
            case RISING -> Remark.of("test.rising", "{0} successive points steadily rising", Words.number(length));
            case FALLING -> Remark.of("test.falling", "{0} successive points steadily falling", Words.number(length));
            case ABOVE, BELOW, EITHER -> remark();
        };
    }

    @Override
    public boolean judges(PanelNature points) {
        return natures.contains(points);
    }

    @Override
    public int span() {
        return length;
    }

    @Override
    public RunRule withWindow(int needed, int window) {
        if (needed != window) {
            throw new IllegalArgumentException(
                    "all points of " + shape.name + " belong to it, not " + needed + " of " + window);
        }
        return new StepRule(id, shape, window, natures);
    }

    @Override
    public Watch watch(PanelKind panel) {
        return new StepWatch(id, panel, new Steps(shape, length), length);
    }

    @Override
    public Optional<StepMemory> steps() {
        return Optional.of(new Steps(shape, length));
    }

    /** How many points belong together, times the direction of the last step; 1 where there was no step. */
    private record Steps(Shape shape, int length) implements StepMemory {
        @Override
        public int next(int memory, int step) {
            if (step == 0) {
                return 1;
            }
            boolean goesOn = Math.abs(memory) > 1 && Integer.signum(memory) * shape.turn == step;
            // no longer than the pattern: what follows a signal is signalled too
            return step * (goesOn ? Math.min(length, Math.abs(memory) + 1) : 2);
        }

        @Override
        public boolean signals(int memory) {
            return Math.abs(memory) >= length;
        }

        @Override
        public Side side(int memory) {
            if (shape == Shape.ALTERNATION) {
                return Side.EITHER;
            }
            return memory > 0 ? Side.RISING : Side.FALLING;
        }
    }
}
