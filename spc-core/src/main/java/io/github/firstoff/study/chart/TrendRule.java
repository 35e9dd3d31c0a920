package io.github.firstoff.study.chart;

import java.util.Set;
import java.util.function.Consumer;

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
        return new Watch() {
            private final PointNumbers numbers = new PointNumbers(length);
            private boolean any;
            private double last;
            private int rising;
            private int falling;

            @Override
            public void next(Panel chunk, int i, Consumer<Signal> signals) {
                double value = chunk.value(i);
                numbers.add(chunk.number(i));
                // how many points, this one included, have risen (fallen) without interruption
                rising = any && value > last ? rising + 1 : 1;
                falling = any && value < last ? falling + 1 : 1;
                any = true;
                last = value;
                if (rising >= length || falling >= length) {
                    Side side = rising >= length ? Side.RISING : Side.FALLING;
                    signals.accept(new Signal(id, panel, side, chunk.number(i), numbers.last(length)));
                }
            }

            @Override
            public void restart() {
                any = false;
                rising = 0;
                falling = 0;
            }
        };
    }
}
