package io.github.firstoff.study.chart;

import java.util.Optional;
import java.util.Set;

/** So many successive points, each above (or each below) the one before; equal neighbours end a trend. */
record TrendRule(String id, int length, Set<PanelNature> natures) implements RunRule {
    private static final int LONGEST = 62;

    TrendRule {
        natures = Set.copyOf(natures);
        if (length < 3 || length > LONGEST) {
            throw new IllegalArgumentException("a trend has 3 to " + LONGEST + " points, not " + length);
        }
    }

    @Override
    public String description() {
        return Words.number(length) + " successive points steadily rising or falling";
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
            throw new IllegalArgumentException("all points of a trend rise or fall, not " + needed + " of " + window);
        }
        return new TrendRule(id, window, natures);
    }

    @Override
    public Watch watch(PanelKind panel) {
        return new StepWatch(id, panel, new Steps(length), length);
    }

    @Override
    public Optional<StepMemory> steps() {
        return Optional.of(new Steps(length));
    }

    /** How many points belong together, times the direction of the last step; 1 where there was no step. */
    private record Steps(int length) implements StepMemory {
        @Override
        public int next(int memory, int step) {
            if (step == 0) {
                return 1;
            }
            boolean goesOn = Math.abs(memory) > 1 && Integer.signum(memory) == step;
            // no longer than the pattern: what follows a signal is signalled too
            return step * (goesOn ? Math.min(length, Math.abs(memory) + 1) : 2);
        }

        @Override
        public boolean signals(int memory) {
            return Math.abs(memory) >= length;
        }

        @Override
        public Side side(int memory) {
            return memory > 0 ? Side.RISING : Side.FALLING;
        }
    }
}
