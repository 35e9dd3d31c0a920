package io.github.firstoff.report.figure;

import java.util.List;

/**
 * The ordered values against the share of values at or below them, with the fitted distribution as a line: where it fits, the
 * points follow it. The axis of shares is stretched as normal probabilities are, so that the tails can be read.
 *
 * @param name   what is measured
 * @param unit   its unit, or empty
 * @param points the values in ascending order
 * @param fitted the line of the fitted distribution, in ascending order
 * @param curve  the name of the line, such as "lognormal"
 * @param lines  limits to mark
 */
public record ProbabilityFigure(
        String name, String unit, List<Place> points, List<Place> fitted, String curve, List<LevelLine> lines)
        implements Figure {
    /** Copies the lists; refuses fewer than two points. */
    public ProbabilityFigure {
        points = List.copyOf(points);
        fitted = List.copyOf(fitted);
        lines = List.copyOf(lines);
        if (points.size() < 2) {
            throw new IllegalArgumentException("a probability plot has at least two points");
        }
    }

    /**
     * A place in the picture.
     *
     * @param value the value
     * @param score the standard normal quantile of the share of values at or below it
     */
    public record Place(double value, double score) {}
}
