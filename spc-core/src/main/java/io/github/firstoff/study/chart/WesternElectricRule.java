package io.github.firstoff.study.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * The four zone tests (Western Electric, Statistical Quality Control Handbook, 1956, pages 25–28).
 *
 * <p>A test signals at every point that completes its pattern and itself lies in the zone. Windows are cut short at the start;
 * patterns may overlap, and one point may complete several. A point exactly on a line is not beyond it; a point exactly on
 * the centre line is on neither side. Test 1 judges both panels (on a dispersion panel: beyond a control limit); tests 2 to
 * 4, which need a symmetric distribution, judge the location panel only.
 */
public enum WesternElectricRule implements RunRule {
    /** One point beyond a control limit (three sigma). */
    BEYOND_LIMIT(1, 1, 1, 3, "one point beyond three sigma"),
    /** Two of three successive points beyond two sigma on one side. */
    TWO_OF_THREE(2, 2, 3, 2, "two of three successive points beyond two sigma on the same side"),
    /** Four of five successive points beyond one sigma on one side. */
    FOUR_OF_FIVE(3, 4, 5, 1, "four of five successive points beyond one sigma on the same side"),
    /** Eight successive points on one side of the centre line. */
    EIGHT_ON_ONE_SIDE(4, 8, 8, 0, "eight successive points on the same side of the centre line");

    private final String id;
    private final int needed;
    private final int window;
    private final int zone;
    private final String description;

    WesternElectricRule(int number, int needed, int window, int zone, String description) {
        this.id = "western-electric-" + number;
        this.needed = needed;
        this.window = window;
        this.zone = zone;
        this.description = description;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public String description() {
        return description;
    }

    @Override
    public boolean judges(PanelKind panel) {
        return panel == PanelKind.LOCATION || this == BEYOND_LIMIT;
    }

    @Override
    public int span() {
        return window;
    }

    @Override
    public Watch watch(PanelKind panel) {
        return new ZoneWatch(this, panel);
    }

    /** Remembers, for each side, which of the last points lie in the zone: one bit each, the newest lowest. */
    private static final class ZoneWatch implements Watch {
        private final WesternElectricRule rule;
        private final PanelKind panel;
        private final int mask;
        private int above;
        private int below;

        ZoneWatch(WesternElectricRule rule, PanelKind panel) {
            this.rule = rule;
            this.panel = panel;
            this.mask = (1 << rule.window) - 1;
        }

        @Override
        public void next(Panel chunk, int i, Consumer<Signal> signals) {
            int side = side(chunk, i);
            above = (above << 1 | (side > 0 ? 1 : 0)) & mask;
            below = (below << 1 | (side < 0 ? 1 : 0)) & mask;
            if (side > 0 && Integer.bitCount(above) >= rule.needed) {
                signals.accept(signal(Side.ABOVE, above, chunk.number(i)));
            } else if (side < 0 && Integer.bitCount(below) >= rule.needed) {
                signals.accept(signal(Side.BELOW, below, chunk.number(i)));
            }
        }

        /** On which side the point lies in the zone; 0 if in none. */
        private int side(Panel chunk, int i) {
            if (rule == BEYOND_LIMIT) {
                return chunk.beyondLimit(i);
            }
            return rule.zone == 0 || chunk.zone(i) >= rule.zone ? chunk.side(i) : 0;
        }

        private Signal signal(Side side, int bits, int at) {
            List<Integer> points = new ArrayList<>(rule.window);
            for (int back = rule.window - 1; back >= 0; back--) {
                if ((bits >> back & 1) != 0) {
                    points.add(at - back);
                }
            }
            return new Signal(rule.id, panel, side, at, points);
        }
    }
}
