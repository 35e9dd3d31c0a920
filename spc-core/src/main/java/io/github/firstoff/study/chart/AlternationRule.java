package io.github.firstoff.study.chart;

import java.util.Set;
import java.util.function.Consumer;

/** So many successive points, each on the other side of the one before: up, down, up, down; equal neighbours end it. */
record AlternationRule(String id, int length, Set<PanelNature> natures) implements RunRule {
    private static final int LONGEST = 62;

    AlternationRule {
        natures = Set.copyOf(natures);
        if (length < 3 || length > LONGEST) {
            throw new IllegalArgumentException("an alternation has 3 to " + LONGEST + " points, not " + length);
        }
    }

    @Override
    public String description() {
        return Words.number(length) + " successive points alternating up and down";
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
            throw new IllegalArgumentException("all points alternate, not " + needed + " of " + window);
        }
        return new AlternationRule(id, window, natures);
    }

    @Override
    public Watch watch(PanelKind panel) {
        return new Watch() {
            private final PointNumbers numbers = new PointNumbers(length);
            private boolean any;
            private double last;
            private int direction;
            private int alternating;

            @Override
            public void next(Panel chunk, int i, Consumer<Signal> signals) {
                double value = chunk.value(i);
                numbers.add(chunk.number(i));
                int step = any ? Double.compare(value, last) : 0;
                if (step == 0) {
                    alternating = 1;
                } else if (step == -direction) {
                    alternating++;
                } else {
                    alternating = 2;
                }
                direction = step;
                any = true;
                last = value;
                if (alternating >= length) {
                    signals.accept(new Signal(id, panel, Side.EITHER, chunk.number(i), numbers.last(length)));
                }
            }

            @Override
            public void restart() {
                any = false;
                direction = 0;
                alternating = 0;
            }
        };
    }
}
