package io.github.firstoff.report.figure;

import java.util.List;
import java.util.Optional;

/**
 * A control chart: a location panel and, beneath it on the same axis, a dispersion panel where the method has one; at the
 * right, where wanted, the histogram on the scale of the location panel.
 *
 * @param location   upper (or only) panel
 * @param dispersion lower panel with as many points, if any
 * @param labels     one label per point (subgroup number, part number or time); those with room are printed
 * @param axisName   what the labels are, such as "subgroup"
 * @param breaks     where a new phase starts, in order
 * @param histogram  individual values at the right of the location panel, on its scale, if wanted. Only where both have the
 *                   same scale; otherwise put the histogram beside this figure as a figure of its own.
 */
public record ControlFigure(
        Panel location,
        Optional<Panel> dispersion,
        List<String> labels,
        String axisName,
        List<PhaseBreak> breaks,
        Optional<HistogramFigure> histogram)
        implements Figure {
    /** Copies the lists; refuses panels and labels of different lengths. */
    public ControlFigure {
        labels = List.copyOf(labels);
        breaks = List.copyOf(breaks);
        int count = location.points().size();
        if (labels.size() != count
                || dispersion.map(panel -> panel.points().size() != count).orElse(false)) {
            throw new IllegalArgumentException("both panels and the labels of a control chart have the same length");
        }
        if (count == 0) {
            throw new IllegalArgumentException("a control chart has at least one point");
        }
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
     */
    public record Panel(
            String name,
            String unit,
            List<Point> points,
            List<Point> second,
            boolean zones,
            List<LevelLine> lines,
            Optional<Scale> scale) {
        /** Copies the lists; refuses a second line of another length. */
        public Panel {
            points = List.copyOf(points);
            second = List.copyOf(second);
            lines = List.copyOf(lines);
            if (!second.isEmpty() && second.size() != points.size()) {
                throw new IllegalArgumentException("the second line of a panel has as many points as the first");
            }
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
        /** An ordinary point under limits. */
        public static Point of(double value, double lower, double centre, double upper) {
            return new Point(value, lower, centre, upper, "", Shape.ORDINARY);
        }

        /** This point, ringed and numbered. */
        public Point marked(String numbers) {
            return new Point(value, lower, centre, upper, numbers, shape);
        }

        /** This point, shaped as one outside the specification. */
        public Point outOfSpecification() {
            return new Point(value, lower, centre, upper, marks, Shape.OUT_OF_SPECIFICATION);
        }
    }

    /** How a point is drawn. */
    public enum Shape {
        /** A dot. */
        ORDINARY,
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
     */
    public record PhaseBreak(int before, String word) {}
}
