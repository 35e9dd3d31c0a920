package io.github.firstoff.report.figure;

import java.util.List;
import java.util.Optional;

/**
 * A level that drifts from piece to piece: readings, the line of each stretch with its band, and the last line with its band continued to
 * the limit.
 *
 * @param name what is measured
 * @param unit its unit
 * @param points the readings, ascending by piece
 * @param stretches the lines
 * @param continued the continuation of the last line; empty where nothing is forecast
 * @param lines limits, target
 */
public record DriftFigure(
        String name,
        String unit,
        List<Point> points,
        List<Stretch> stretches,
        Optional<Continued> continued,
        List<LevelLine> lines)
        implements Figure {
    /** Copies the lists; refuses a picture of nothing. */
    public DriftFigure {
        points = List.copyOf(points);
        stretches = List.copyOf(stretches);
        lines = List.copyOf(lines);
        if (points.isEmpty()) {
            throw new IllegalArgumentException("a drift has at least one reading");
        }
    }

    /**
     * A reading.
     *
     * @param piece the number of its piece
     * @param value the value
     * @param mark the number of its signal, to be ringed; empty for none
     */
    public record Point(double piece, double value, String mark) {}

    /**
     * A stretch with its line.
     *
     * @param from its first piece
     * @param to its last
     * @param label what it is called
     * @param start the height of the line at the first piece; NaN without a line
     * @param end the height at the last
     * @param band how far the control limits lie beside it; 0 without
     */
    public record Stretch(double from, double to, String label, double start, double end, double band) {}

    /**
     * The last line goes on.
     *
     * @param from where it is known to
     * @param start its height there
     * @param slope per piece
     * @param band how far the band that must stay inside lies beside it
     * @param limit the limit that it will meet
     * @param piece where it does
     * @param low the earliest, with confidence
     * @param high the latest; may be infinite
     * @param words what to write there
     */
    public record Continued(
            double from,
            double start,
            double slope,
            double band,
            double limit,
            double piece,
            double low,
            double high,
            String words) {}
}
