package io.github.firstoff.report.figure;

import java.util.List;
import java.util.Optional;

/**
 * A histogram with its limits and, where one was fitted, a curve.
 *
 * @param name  what is measured
 * @param unit  its unit, or empty
 * @param bins  the bins, in ascending order, without gaps
 * @param lines limits, target and mean to mark
 * @param curve fitted distribution, if any
 * @param scale ends of the axis of values; chosen from bins and lines when empty
 */
public record HistogramFigure(
        String name, String unit, List<Bin> bins, List<LevelLine> lines, Optional<Curve> curve, Optional<Scale> scale)
        implements Figure {
    /** Copies the lists; refuses a histogram without bins. */
    public HistogramFigure {
        bins = List.copyOf(bins);
        lines = List.copyOf(lines);
        if (bins.isEmpty()) {
            throw new IllegalArgumentException("a histogram has at least one bin");
        }
    }

    /**
     * One bin.
     *
     * @param from  lower edge
     * @param to    upper edge, above the lower
     * @param count how many values it holds, not negative
     */
    public record Bin(double from, double to, long count) {
        /** Refuses edges out of order and negative counts. */
        public Bin {
            if (!(from < to) || count < 0) {
                throw new IllegalArgumentException("a bin runs upwards and holds no fewer than 0 values");
            }
        }
    }

    /**
     * A fitted distribution, scaled to the bins.
     *
     * @param name   its name, such as "normal"
     * @param points value and expected count per bin, in ascending order of value
     */
    public record Curve(String name, List<CurvePoint> points) {
        /** Copies the list. */
        public Curve {
            points = List.copyOf(points);
        }
    }

    /**
     * One point of a curve.
     *
     * @param at    the value
     * @param count expected count in a bin of the histogram's width around it
     */
    public record CurvePoint(double at, double count) {}
}
