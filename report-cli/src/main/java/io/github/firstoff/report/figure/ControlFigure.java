package io.github.firstoff.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A control chart: a location panel and, beneath it on the same axis, the panels of spread that the method has; at the right,
 * where wanted, the histogram on the scale of the location panel.
 *
 * @param panels    the panels from the top, the location first, each with as many points
 * @param labels    one label per point (subgroup number, part number or time); those with room are printed
 * @param axisName  what the labels are, such as "subgroup"
 * @param breaks    where a new phase starts, in order
 * @param bands     stretches of points that belong together, such as those of one part number; named under the axis
 * @param histogram individual values at the right of the location panel, on its scale, if wanted. Only where both have the
 *                  same scale; otherwise put the histogram beside this figure as a figure of its own.
 */
public record ControlFigure(
        List<Panel> panels,
        List<String> labels,
        String axisName,
        List<PhaseBreak> breaks,
        List<Band> bands,
        Optional<HistogramFigure> histogram)
        implements Figure {
    /** Copies the lists; refuses panels and labels of different lengths. */
    public ControlFigure {
        panels = List.copyOf(panels);
        labels = List.copyOf(labels);
        breaks = List.copyOf(breaks);
        bands = List.copyOf(bands);
        if (panels.isEmpty()) {
            throw new IllegalArgumentException("a control chart has at least one panel");
        }
        int count = panels.get(0).points().size();
        if (labels.size() != count
                || panels.stream().anyMatch(panel -> panel.points().size() != count)) {
            throw new IllegalArgumentException("all panels and the labels of a control chart have the same length");
        }
        if (count == 0) {
            throw new IllegalArgumentException("a control chart has at least one point");
        }
    }

    /**
     * A chart of one or two panels, without bands.
     *
     * @param location   upper (or only) panel
     * @param dispersion lower panel with as many points, if any
     * @param labels     one label per point
     * @param axisName   what the labels are
     * @param breaks     where a new phase starts
     * @param histogram  the histogram at the right, if wanted
     */
    public ControlFigure(
            Panel location,
            Optional<Panel> dispersion,
            List<String> labels,
            String axisName,
            List<PhaseBreak> breaks,
            Optional<HistogramFigure> histogram) {
        this(both(location, dispersion), labels, axisName, breaks, List.of(), histogram);
    }

    private static List<Panel> both(Panel location, Optional<Panel> dispersion) {
        List<Panel> panels = new ArrayList<>(List.of(location));
        dispersion.ifPresent(panels::add);
        return panels;
    }

    /** The first panel. */
    public Panel location() {
        return panels.get(0);
    }

    /** The last panel, where there are several. */
    public Optional<Panel> dispersion() {
        return panels.size() > 1 ? Optional.of(panels.get(panels.size() - 1)) : Optional.empty();
    }

    /**
     * One panel.
     *
     * @param name   what is plotted, such as "mean" or "range"
     * @param unit   its unit, or empty
     * @param points the points, in order
     * @param second a second line of points in the same panel (the lower sum of a two-sided cumulative sum), or empty; its
     *               limits and centres are not drawn
     * @param zones  whether thirds between centre and limits are drawn faintly
     * @param lines  what is labelled at the right end. Control limits and centre are drawn from the points and only labelled
     *               from here; specification limits and targets are drawn across.
     * @param scale  ends of the axis; chosen from the data and lines when empty
     * @param trends straight lines through stretches of points, such as one per tool life
     */
    public record Panel(
            String name,
            String unit,
            List<Point> points,
            List<Point> second,
            boolean zones,
            List<LevelLine> lines,
            Optional<Scale> scale,
            List<Trend> trends) {
        /** Copies the lists; refuses a second line of another length. */
        public Panel {
            points = List.copyOf(points);
            second = List.copyOf(second);
            lines = List.copyOf(lines);
            trends = List.copyOf(trends);
            if (!second.isEmpty() && second.size() != points.size()) {
                throw new IllegalArgumentException("the second line of a panel has as many points as the first");
            }
        }

        /**
         * A panel without trends.
         *
         * @param name   what is plotted
         * @param unit   its unit, or empty
         * @param points the points, in order
         * @param second a second line of points, or empty
         * @param zones  whether thirds between centre and limits are drawn faintly
         * @param lines  what is labelled at the right end
         * @param scale  ends of the axis, if not chosen from the data
         */
        public Panel(
                String name,
                String unit,
                List<Point> points,
                List<Point> second,
                boolean zones,
                List<LevelLine> lines,
                Optional<Scale> scale) {
            this(name, unit, points, second, zones, lines, scale, List.of());
        }

        /** This panel with ends of its axis. */
        public Panel on(Scale ends) {
            return new Panel(name, unit, points, second, zones, lines, Optional.of(ends), trends);
        }
    }

    /**
     * One point with the limits that hold for it. {@code NaN} means "none": no point (a gap), no limit, no centre.
     *
     * @param value  where it lies
     * @param lower  its lower control limit
     * @param centre its centre line
     * @param upper  its upper control limit
     * @param marks  numbers of the signals this point completes, as in the list under the chart, or empty; a marked point is
     *               ringed
     * @param shape  how it is drawn
     */
    public record Point(double value, double lower, double centre, double upper, String marks, Shape shape) {
        /** No point at all: a gap. */
        public static final Point NONE = of(Double.NaN, Double.NaN, Double.NaN, Double.NaN);

        /** An ordinary point under limits. */
        public static Point of(double value, double lower, double centre, double upper) {
            return new Point(value, lower, centre, upper, "", Shape.ORDINARY);
        }

        /** This point, ringed and numbered. */
        public Point marked(String numbers) {
            return new Point(value, lower, centre, upper, numbers, shape);
        }

        /** This point in another shape. */
        public Point shaped(Shape other) {
            return new Point(value, lower, centre, upper, marks, other);
        }

        /** This point, shaped as one outside the specification. */
        public Point outOfSpecification() {
            return shaped(Shape.OUT_OF_SPECIFICATION);
        }

        /** Whether the point says something by itself, so that it is drawn on the longest chart. */
        public boolean speaks() {
            return shape != Shape.ORDINARY || !marks.isEmpty();
        }
    }

    /** How a point is drawn. */
    public enum Shape {
        /** A dot. */
        ORDINARY,
        /** A diamond: completes the pattern of a test. */
        SIGNAL,
        /** A larger open square: outside what the drawing allows. */
        OUT_OF_SPECIFICATION,
        /** A cross: shown, but left out of the limits. */
        EXCLUDED
    }

    /**
     * Where a new phase starts.
     *
     * @param before number of the first point of the new phase, counted from 1
     * @param word   what changed, such as "new insert"
     * @param gap    whether the run of points is interrupted there; else a mere mark, as at the end of the points that set the
     *               limits
     */
    public record PhaseBreak(int before, String word, boolean gap) {
        /**
         * A break that interrupts the run of points.
         *
         * @param before number of the first point of the new phase, counted from 1
         * @param word   what changed
         */
        public PhaseBreak(int before, String word) {
            this(before, word, true);
        }
    }

    /**
     * Points that belong together.
     *
     * @param from number of the first, counted from 1
     * @param to   number of the last
     * @param word what they share, such as a part number
     */
    public record Band(int from, int to, String word) {}

    /**
     * A straight line through a stretch of points.
     *
     * @param from  number of the first point, counted from 1
     * @param to    number of the last
     * @param start its height at the first
     * @param end   its height at the last
     */
    public record Trend(int from, int to, double start, double end) {}
}
