package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Subgroups;
import java.util.AbstractList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.RandomAccess;
import java.util.function.IntFunction;

/**
 * One panel of a control chart: points, each with its own centre and limits, and for each the decision on which side of which
 * line it lies. Immutable; held in columns, so that a long chart costs little.
 *
 * <p>The decisions are made when the panel is built, by the chart's method, in whole numbers where the lines allow it (see
 * {@link LineJudge}); the tests of a {@link RuleSet} look only at them. Points count from 0 here; {@link #number(int)} gives
 * the number that people use.
 */
public final class Panel {
    /** A panel without sigma zones gives this for every point. */
    public static final int NO_ZONES = -1;

    private static final double[] NO_NUMBERS = {};
    private static final int[] NO_WHOLES = {};
    private static final byte[] NO_DECISIONS = {};

    private final PanelKind kind;
    private final PanelNature nature;
    private final String statistic;
    private final int firstNumber;
    private final int[] numbers;
    private final int[] segments;
    private final BitSet excluded;
    private final double[] values;
    private final double[] seconds;
    private final int[] sizes;
    private final double[] centres;
    private final double[] lowers;
    private final double[] uppers;
    private final double[] sigmas;
    private final byte[] sides;
    private final byte[] zones;
    private final byte[] beyond;
    private final IntFunction<String> labels;

    private Panel(Builder b) {
        kind = b.kind;
        nature = b.nature;
        statistic = b.statistic;
        if (b.count != b.values.length) {
            throw new IllegalStateException(b.count + " points where " + b.values.length + " were announced");
        }
        // the builder is used once and hands its columns over
        firstNumber = b.count == 0 ? 1 : b.numbers[0];
        numbers = b.successive ? NO_WHOLES : b.numbers;
        segments = b.segmented ? b.segments : NO_WHOLES;
        excluded = b.excluded;
        values = b.values;
        seconds = b.paired ? b.seconds : NO_NUMBERS;
        sizes = b.sizes;
        centres = b.lined ? b.centres : NO_NUMBERS;
        lowers = b.lined ? b.lowers : NO_NUMBERS;
        uppers = b.lined ? b.uppers : NO_NUMBERS;
        sigmas = b.zoned ? b.sigmas : NO_NUMBERS;
        sides = b.lined ? b.sides : NO_DECISIONS;
        zones = b.zoned ? b.zones : NO_DECISIONS;
        beyond = b.lined ? b.beyond : NO_DECISIONS;
        labels = b.labels;
    }

    private Panel(Panel whole, int from, int to) {
        kind = whole.kind;
        nature = whole.nature;
        statistic = whole.statistic;
        firstNumber = from < whole.count() ? whole.number(from) : whole.firstNumber;
        numbers = part(whole.numbers, from, to);
        segments = part(whole.segments, from, to);
        excluded = whole.excluded.get(from, to);
        values = part(whole.values, from, to);
        seconds = part(whole.seconds, from, to);
        sizes = part(whole.sizes, from, to);
        centres = part(whole.centres, from, to);
        lowers = part(whole.lowers, from, to);
        uppers = part(whole.uppers, from, to);
        sigmas = part(whole.sigmas, from, to);
        sides = part(whole.sides, from, to);
        zones = part(whole.zones, from, to);
        beyond = part(whole.beyond, from, to);
        labels = whole.labels;
    }

    private Panel(List<Panel> parts, Subgroups data) {
        Panel first = parts.get(0);
        kind = first.kind;
        nature = first.nature;
        statistic = first.statistic;
        int count = parts.stream().mapToInt(Panel::count).sum();
        boolean lined = parts.stream().anyMatch(Panel::hasLines);
        boolean zoned = parts.stream().anyMatch(Panel::hasZones);
        boolean paired = parts.stream().anyMatch(Panel::hasSecond);
        numbers = new int[count];
        segments = new int[count];
        excluded = new BitSet();
        values = new double[count];
        seconds = paired ? new double[count] : NO_NUMBERS;
        sizes = new int[count];
        centres = lined ? new double[count] : NO_NUMBERS;
        lowers = lined ? new double[count] : NO_NUMBERS;
        uppers = lined ? new double[count] : NO_NUMBERS;
        sigmas = zoned ? new double[count] : NO_NUMBERS;
        sides = lined ? new byte[count] : NO_DECISIONS;
        zones = zoned ? new byte[count] : NO_DECISIONS;
        beyond = lined ? new byte[count] : NO_DECISIONS;
        int at = 0;
        for (Panel part : parts) {
            for (int i = 0; i < part.count(); i++, at++) {
                numbers[at] = part.number(i);
                segments[at] = part.segment(i);
                excluded.set(at, part.isExcluded(i));
                values[at] = part.values[i];
                sizes[at] = part.sizes[i];
                if (paired) {
                    seconds[at] = part.seconds[i];
                }
                if (lined) {
                    centres[at] = part.hasLines() ? part.centres[i] : Double.NaN;
                    lowers[at] = part.hasLines() ? part.lowers[i] : Double.NaN;
                    uppers[at] = part.hasLines() ? part.uppers[i] : Double.NaN;
                    sides[at] = part.hasLines() ? part.sides[i] : 0;
                    beyond[at] = part.hasLines() ? part.beyond[i] : 0;
                }
                if (zoned) {
                    sigmas[at] = part.hasZones() ? part.sigmas[i] : Double.NaN;
                    zones[at] = part.hasZones() ? part.zones[i] : 0;
                }
            }
        }
        firstNumber = count == 0 ? 1 : numbers[0];
        labels = number -> data.label(number - data.number(0));
    }

    private Panel(Panel whole, String statistic) {
        kind = whole.kind;
        nature = whole.nature;
        this.statistic = statistic;
        firstNumber = whole.firstNumber;
        numbers = whole.numbers;
        segments = whole.segments;
        excluded = whole.excluded;
        values = whole.values;
        seconds = whole.seconds;
        sizes = whole.sizes;
        centres = whole.centres;
        lowers = whole.lowers;
        uppers = whole.uppers;
        sigmas = whole.sigmas;
        sides = whole.sides;
        zones = whole.zones;
        beyond = whole.beyond;
        labels = whole.labels;
    }

    private static double[] part(double[] column, int from, int to) {
        return column.length == 0 ? column : Arrays.copyOfRange(column, from, to);
    }

    private static int[] part(int[] column, int from, int to) {
        return column.length == 0 ? column : Arrays.copyOfRange(column, from, to);
    }

    private static byte[] part(byte[] column, int from, int to) {
        return column.length == 0 ? column : Arrays.copyOfRange(column, from, to);
    }

    /** Panels of successive parts of {@code data} as one; they keep their numbers, lines and decisions. */
    static Panel join(List<Panel> parts, Subgroups data) {
        return new Panel(parts, data);
    }

    /** The points {@code from} (inclusive) to {@code to} (exclusive), counted from 0; they keep their numbers. */
    public Panel part(int from, int to) {
        if (from < 0 || to > count() || from > to) {
            throw new IndexOutOfBoundsException("from " + from + " to " + to + " of " + count());
        }
        return new Panel(this, from, to);
    }

    /** The same panel with another name for what is plotted. */
    Panel plotting(String otherStatistic) {
        return new Panel(this, otherStatistic);
    }

    /** Location, between or dispersion. */
    public PanelKind kind() {
        return kind;
    }

    /** What the points are to a test. */
    public PanelNature nature() {
        return nature;
    }

    /** What is plotted, as a sheet prints it: {@code mean}, {@code range}, {@code moving range}, … */
    public String statistic() {
        return statistic;
    }

    /** How many points. */
    public int count() {
        return values.length;
    }

    /** The number of point {@code i} as people count, from 1; a moving range has the number of its later reading. */
    public int number(int i) {
        return numbers.length == 0 ? firstNumber + i : numbers[i];
    }

    /** In which stretch between two breaks point {@code i} lies, counted from 0; patterns do not reach across a break. */
    public int segment(int i) {
        return segments.length == 0 ? 0 : segments[i];
    }

    /** Whether point {@code i} was excluded: it is drawn, but no test looks at it. */
    public boolean isExcluded(int i) {
        return excluded.get(i);
    }

    /** The plotted value of point {@code i}. */
    public double value(int i) {
        return values[i];
    }

    /** Whether every point has a second value: the lower sum of a two-sided cumulative sum. */
    public boolean hasSecond() {
        return values.length > 0 && seconds.length == values.length;
    }

    /** The second value of point {@code i}, where there is one. */
    public OptionalDouble second(int i) {
        return hasSecond() ? OptionalDouble.of(seconds[i]) : OptionalDouble.empty();
    }

    /** Whether any point has lines; without, there is nothing to test. */
    public boolean hasLines() {
        return values.length > 0 && centres.length == values.length;
    }

    /** Whether point {@code i} has lines. */
    public boolean hasLines(int i) {
        return hasLines() && !Double.isNaN(centres[i]);
    }

    /** Whether the panel has sigma zones. */
    public boolean hasZones() {
        return hasLines() && sigmas.length == values.length;
    }

    /** The lines of point {@code i}; empty while the data give none. */
    public Optional<Lines> lines(int i) {
        if (!hasLines(i)) {
            return Optional.empty();
        }
        return Optional.of(new Lines(
                centres[i], lowers[i], uppers[i], hasZones() ? OptionalDouble.of(sigmas[i]) : OptionalDouble.empty()));
    }

    /** The lines if all points share them; empty when they vary by point or there are none. */
    public Optional<Lines> commonLines() {
        if (!hasLines()) {
            return Optional.empty();
        }
        for (int i = 1; i < values.length; i++) {
            if (centres[i] != centres[0] || lowers[i] != lowers[0] || uppers[i] != uppers[0]) {
                return Optional.empty();
            }
        }
        return lines(0);
    }

    /** On which side of its centre line point {@code i} lies: 1 above, −1 below, 0 exactly on it. */
    public int side(int i) {
        return sides[i];
    }

    /**
     * How many of the lines at one, two and three sigma point {@code i} lies beyond, 0 to 3, on its side; a point exactly on
     * a line is not beyond it. {@link #NO_ZONES} on a panel without zones.
     */
    public int zone(int i) {
        return hasZones() ? zones[i] & 3 : NO_ZONES;
    }

    /** Whether point {@code i} lies beyond a control limit: 1 above the upper, −1 below the lower, 0 beyond none. */
    public int beyondLimit(int i) {
        return beyond[i];
    }

    /** Side and zone of point {@code i} in one number, as tests remember it; see {@link RunRule.ZoneMemory}. */
    int cell(int i) {
        if (beyond[i] != 0) {
            return RunRule.ZoneMemory.BEYOND_LIMIT * beyond[i];
        }
        return hasZones() ? cell(sides[i], zones[i]) : RunRule.ZoneMemory.WITHIN_ONE_SIGMA * sides[i];
    }

    /** Side and zone, as {@link LineJudge} finds them, in one number. */
    static int cell(int side, int zone) {
        int distance = switch (zone) {
            case 0 -> RunRule.ZoneMemory.WITHIN_ONE_SIGMA;
            case LineJudge.ON_ONE_SIGMA -> RunRule.ZoneMemory.ON_ONE_SIGMA;
            case 1 -> RunRule.ZoneMemory.BEYOND_ONE_SIGMA;
            case 2 -> RunRule.ZoneMemory.BEYOND_TWO_SIGMA;
            default -> RunRule.ZoneMemory.BEYOND_LIMIT;
        };
        return distance * side;
    }

    /** Point {@code i} as one value. */
    public ChartPoint point(int i) {
        return new ChartPoint(number(i), labels.apply(number(i)), sizes[i], values[i], lines(i));
    }

    /** All points in order; a view, made as it is read. */
    public List<ChartPoint> points() {
        return new PointList();
    }

    private final class PointList extends AbstractList<ChartPoint> implements RandomAccess {
        @Override
        public ChartPoint get(int index) {
            return point(index);
        }

        @Override
        public int size() {
            return count();
        }
    }

    /** Collects exactly as many points as its capacity announces; used once. */
    static final class Builder {
        private final PanelKind kind;
        private final PanelNature nature;
        private final String statistic;
        private final Subgroups data;
        private final IntFunction<String> labels;
        private final int[] numbers;
        private final int[] segments;
        private final BitSet excluded = new BitSet();
        private final double[] values;
        private double[] seconds = NO_NUMBERS;
        private final int[] sizes;
        private final double[] centres;
        private final double[] lowers;
        private final double[] uppers;
        private final double[] sigmas;
        private final byte[] sides;
        private final byte[] zones;
        private final byte[] beyond;
        private final boolean anyExcluded;
        private int count;
        private boolean lined;
        private boolean zoned;
        private boolean paired;
        private boolean segmented;
        private boolean successive = true;

        Builder(PanelKind kind, PanelNature nature, String statistic, Subgroups data, int capacity) {
            this.kind = kind;
            this.nature = nature;
            this.statistic = statistic;
            this.data = data;
            labels = number -> data.label(number - data.number(0));
            anyExcluded = !data.exclusions().isEmpty();
            numbers = new int[capacity];
            segments = new int[capacity];
            values = new double[capacity];
            sizes = new int[capacity];
            centres = new double[capacity];
            lowers = new double[capacity];
            uppers = new double[capacity];
            sigmas = new double[capacity];
            sides = new byte[capacity];
            zones = new byte[capacity];
            beyond = new byte[capacity];
        }

        /** The point of subgroup {@code group} without lines. */
        void add(int group, double value, int size) {
            numbers[count] = data.number(group);
            segments[count] = data.segment(group);
            segmented |= segments[count] != 0;
            successive &= count == 0 || numbers[count] == numbers[count - 1] + 1;
            if (anyExcluded && data.isExcluded(group)) {
                excluded.set(count);
            }
            values[count] = value;
            sizes[count] = size;
            count++;
        }

        /** Marks the point added last as excluded, for one that rests on an excluded neighbour. */
        void exclude() {
            excluded.set(count - 1);
        }

        /** The lines of the point that is added next, where they differ at every point: not worth an object each. */
        Builder ruled(double centre, double lower, double upper) {
            centres[count] = centre;
            lowers[count] = lower;
            uppers[count] = upper;
            lined = true;
            return this;
        }

        /** A point whose lines were {@link #ruled} just before, without zones. */
        void addJudged(int group, double value, int size, int side, int beyondLimit) {
            sides[count] = (byte) side;
            beyond[count] = (byte) beyondLimit;
            add(group, value, size);
        }

        /** A point whose three-sigma limits were {@link #ruled} just before, with zones of that sigma. */
        void addZoned(int group, double value, int size, double sigma, int side, int zone) {
            zones[count] = (byte) zone;
            sigmas[count] = sigma;
            zoned = true;
            addJudged(group, value, size, side, zone == 3 ? side : 0);
        }

        /** A point with lines but without zones. */
        void add(int group, double value, int size, Lines lines, int side, int beyondLimit) {
            ruled(lines.centre(), lines.lower(), lines.upper()).addJudged(group, value, size, side, beyondLimit);
        }

        /** A point with two values and with lines but without zones. */
        void addPair(int group, double value, double second, int size, Lines lines, int side, int beyondLimit) {
            if (!paired) {
                seconds = new double[values.length];
                paired = true;
            }
            seconds[count] = second;
            add(group, value, size, lines, side, beyondLimit);
        }

        /** A point with three-sigma limits and zones; {@code side} times {@code zone} says beyond which lines it lies. */
        void addZoned(int group, double value, int size, Lines lines, int side, int zone) {
            ruled(lines.centre(), lines.lower(), lines.upper())
                    .addZoned(group, value, size, lines.sigma().orElseThrow(), side, zone);
        }

        Panel build() {
            return new Panel(this);
        }
    }
}
