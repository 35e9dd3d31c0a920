package io.github.firstoff.study.chart;

import java.util.AbstractList;
import java.util.Arrays;
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
    private static final byte[] NO_DECISIONS = {};

    private final PanelKind kind;
    private final String statistic;
    private final int firstNumber;
    private final double[] values;
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
        statistic = b.statistic;
        firstNumber = b.firstNumber;
        if (b.count != b.values.length) {
            throw new IllegalStateException(b.count + " points where " + b.values.length + " were announced");
        }
        // the builder is used once and hands its columns over
        values = b.values;
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
        statistic = whole.statistic;
        firstNumber = whole.firstNumber + from;
        values = Arrays.copyOfRange(whole.values, from, to);
        sizes = Arrays.copyOfRange(whole.sizes, from, to);
        centres = part(whole.centres, whole.hasLines(), from, to);
        lowers = part(whole.lowers, whole.hasLines(), from, to);
        uppers = part(whole.uppers, whole.hasLines(), from, to);
        sigmas = part(whole.sigmas, whole.hasZones(), from, to);
        sides = part(whole.sides, whole.hasLines(), from, to);
        zones = part(whole.zones, whole.hasZones(), from, to);
        beyond = part(whole.beyond, whole.hasLines(), from, to);
        labels = i -> whole.labels.apply(from + i);
    }

    private static double[] part(double[] column, boolean filled, int from, int to) {
        return filled ? Arrays.copyOfRange(column, from, to) : column;
    }

    private static byte[] part(byte[] column, boolean filled, int from, int to) {
        return filled ? Arrays.copyOfRange(column, from, to) : column;
    }

    /** The points {@code from} (inclusive) to {@code to} (exclusive), counted from 0; they keep their numbers. */
    public Panel part(int from, int to) {
        if (from < 0 || to > count() || from > to) {
            throw new IndexOutOfBoundsException("from " + from + " to " + to + " of " + count());
        }
        return new Panel(this, from, to);
    }

    /** Location or dispersion. */
    public PanelKind kind() {
        return kind;
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
        return firstNumber + i;
    }

    /** The plotted value of point {@code i}. */
    public double value(int i) {
        return values[i];
    }

    /** Whether the points have lines; without, there is nothing to test. */
    public boolean hasLines() {
        return values.length > 0 && centres.length == values.length;
    }

    /** Whether the panel has sigma zones. */
    public boolean hasZones() {
        return hasLines() && sigmas.length == values.length;
    }

    /** The lines of point {@code i}; empty while the data give none. */
    public Optional<Lines> lines(int i) {
        if (!hasLines()) {
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
        return hasZones() ? zones[i] : NO_ZONES;
    }

    /** Whether point {@code i} lies beyond a control limit: 1 above the upper, −1 below the lower, 0 beyond none. */
    public int beyondLimit(int i) {
        return beyond[i];
    }

    /** Point {@code i} as one value. */
    public ChartPoint point(int i) {
        return new ChartPoint(number(i), labels.apply(i), sizes[i], values[i], lines(i));
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
        private final String statistic;
        private final int firstNumber;
        private final IntFunction<String> labels;
        private final double[] values;
        private final int[] sizes;
        private final double[] centres;
        private final double[] lowers;
        private final double[] uppers;
        private final double[] sigmas;
        private final byte[] sides;
        private final byte[] zones;
        private final byte[] beyond;
        private int count;
        private boolean lined;
        private boolean zoned;

        Builder(PanelKind kind, String statistic, int firstNumber, int capacity, IntFunction<String> labels) {
            this.kind = kind;
            this.statistic = statistic;
            this.firstNumber = firstNumber;
            this.labels = labels;
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

        /** A point without lines. */
        void add(double value, int size) {
            values[count] = value;
            sizes[count] = size;
            count++;
        }

        /** A point with lines but without zones. */
        void add(double value, int size, double centre, double lower, double upper, int side, int beyondLimit) {
            centres[count] = centre;
            lowers[count] = lower;
            uppers[count] = upper;
            sides[count] = (byte) side;
            beyond[count] = (byte) beyondLimit;
            lined = true;
            add(value, size);
        }

        /** A point with three-sigma limits and zones; {@code side} times {@code zone} says beyond which lines it lies. */
        void addZoned(double value, int size, Lines lines, int side, int zone) {
            zones[count] = (byte) zone;
            sigmas[count] = lines.sigma().orElseThrow();
            zoned = true;
            add(value, size, lines.centre(), lines.lower(), lines.upper(), side, zone == 3 ? side : 0);
        }

        Panel build() {
            return new Panel(this);
        }
    }
}
