package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * So many of so many successive points in a zone.
 *
 * <p>Signals at every point that completes the pattern and itself lies in the zone; windows are cut short at the start;
 * patterns may overlap. A point exactly on a line is neither beyond it nor within it; exactly on the centre line it is on neither side.
 */
record ZoneRule(String id, Zone zone, int needed, int window, Set<PanelNature> natures) implements RunRule {
    /** The most points a window may span: each takes a bit. */
    private static final int WIDEST = 31;

    /** Where a point must lie. */
    enum Zone {
        /** On one side, anywhere. */
        SIDE(1, 5, true),
        /** Beyond one sigma on one side. */
        ONE_SIGMA(3, 5, true),
        /** Beyond two sigma on one side. */
        TWO_SIGMA(4, 5, true),
        /** Beyond a control limit, of whatever kind. */
        LIMIT(5, 5, true),
        /** Within one sigma. */
        INNER(0, 1, false),
        /** Beyond one sigma, on any side. */
        OUTER(3, 5, false);

        private final int least;
        private final int most;
        private final boolean sided;

        Zone(int least, int most, boolean sided) {
            this.least = least;
            this.most = most;
            this.sided = sided;
        }

        /** Such points in words; where their side is told beside it, without saying that it is the same for all. */
        Remark remark(Remark points, boolean sideIsTold) {
            return switch (this) {
                case SIDE -> Remark.of("test.side", "{0}{1|| on the same side of the centre line}", points, sideIsTold);
                case ONE_SIGMA ->
                    Remark.of("test.one-sigma", "{0} beyond one sigma{1|| on the same side}", points, sideIsTold);
                case TWO_SIGMA ->
                    Remark.of("test.two-sigma", "{0} beyond two sigma{1|| on the same side}", points, sideIsTold);
                case LIMIT -> Remark.of("test.three-sigma", "{0} beyond three sigma", points);
                case INNER ->
                    Remark.of(
                            "test.within-one-sigma", "{0} within one sigma of the centre line, on either side", points);
                case OUTER -> Remark.of("test.beyond-one-sigma", "{0} beyond one sigma, on either side", points);
            };
        }

        /** 1 or −1 if the point lies in the zone (always 1 where sides do not matter), else 0. */
        int hit(int cell) {
            int distance = Math.abs(cell);
            if (distance < least || distance > most) {
                return 0;
            }
            return sided ? Integer.signum(cell) : 1;
        }
    }

    ZoneRule {
        natures = Set.copyOf(natures);
        if (needed < 1 || needed > window || window > WIDEST) {
            throw new IllegalArgumentException("a test of zones takes 1 to " + WIDEST
                    + " points and at most as many as its" + " window spans, not " + needed + " of " + window);
        }
    }

    @Override
    public Remark remark() {
        return zone.remark(points(), false);
    }

    @Override
    public Remark remark(Side side) {
        return zone.remark(points(), side == Side.ABOVE || side == Side.BELOW);
    }

    /** How many points of how many. */
    private Remark points() {
        if (window == 1) {
            return Remark.of("test.one-point", "one point");
        }
        return needed == window
                ? Remark.of("test.successive-points", "{0} successive points", Words.number(window))
                : Remark.of(
                        "test.of-successive-points",
                        "{0} of {1} successive points",
                        Words.number(needed),
                        Words.number(window));
    }

    @Override
    public boolean judges(PanelNature points) {
        return natures.contains(points);
    }

    @Override
    public int span() {
        return window;
    }

    @Override
    public RunRule withWindow(int newNeeded, int newWindow) {
        return new ZoneRule(id, zone, newNeeded, newWindow, natures);
    }

    @Override
    public Watch watch(PanelKind panel) {
        return new ZoneWatch(this, panel);
    }

    @Override
    public Optional<ZoneMemory> memory() {
        return Optional.of(new Bits(this));
    }

    /** One bit for each of the last points and each side, the newest lowest; the side above in the lower half. */
    private record Bits(ZoneRule rule) implements ZoneMemory {
        private static final int HALF = 32;

        @Override
        public long next(long memory, int cell) {
            int hit = rule.zone.hit(cell);
            long mask = (1L << rule.window) - 1;
            long above = (above(memory) << 1 | (hit > 0 ? 1 : 0)) & mask;
            long below = (below(memory) << 1 | (hit < 0 ? 1 : 0)) & mask;
            return below << HALF | above;
        }

        @Override
        public boolean signals(long memory) {
            return full(above(memory)) || full(below(memory));
        }

        @Override
        public long essence(long memory) {
            return living(below(memory)) << HALF | living(above(memory));
        }

        private boolean full(long bits) {
            return (bits & 1) != 0 && Long.bitCount(bits) >= rule.needed;
        }

        /** Without points that cannot be part of a pattern any more, even if all that follow lie in the zone. */
        private long living(long bits) {
            long result = 0;
            for (int age = 0; age < rule.window - 1; age++) {
                long upToAge = bits & ((2L << age) - 1);
                int toCome = rule.window - 1 - age;
                if ((bits >> age & 1) != 0 && Long.bitCount(upToAge) + toCome >= rule.needed) {
                    result |= 1L << age;
                }
            }
            return result;
        }

        static long above(long memory) {
            return memory & 0xFFFFFFFFL;
        }

        static long below(long memory) {
            return memory >>> HALF;
        }
    }

    private static final class ZoneWatch implements Watch {
        private final ZoneRule rule;
        private final PanelKind panel;
        private final Bits bits;
        private final PointNumbers numbers;
        private long memory;

        ZoneWatch(ZoneRule rule, PanelKind panel) {
            this.rule = rule;
            this.panel = panel;
            bits = new Bits(rule);
            numbers = new PointNumbers(rule.window);
        }

        @Override
        public void next(Panel chunk, int i, Consumer<Signal> signals) {
            memory = bits.next(memory, chunk.cell(i));
            numbers.add(chunk.number(i));
            if (!bits.signals(memory)) {
                return;
            }
            boolean above = bits.full(Bits.above(memory));
            long points = above ? Bits.above(memory) : Bits.below(memory);
            Side side = rule.zone.sided ? (above ? Side.ABOVE : Side.BELOW) : Side.EITHER;
            signals.accept(new Signal(rule.id, panel, side, chunk.number(i), numbers.of(points)));
        }

        @Override
        public void restart() {
            memory = 0;
        }
    }
}
