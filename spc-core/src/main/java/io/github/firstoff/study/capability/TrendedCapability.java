package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A process whose location drifts along a straight line from one tool change to the next, stated in three ways side by side.
 *
 * @param segments one line per tool life
 * @param withinTrend the standard deviation about the lines, pooled, in the unit; empty if no segment has enough readings
 * @param degreesOfFreedom of {@code withinTrend}: readings less two per segment; 0 without it
 * @param potential Cp and Cpk from the spread about the lines alone, as if the offset followed the tool without delay and the process were
 *     held at its mean: what frequent compensation could reach
 * @param wholeLife Pp and Ppk of the readings as they come over whole tool lives: percentiles of the mixture of normal
 *     distributions along the lines
 * @param worst Cpk at the worst moment: the fitted location nearest to a limit, with the spread about the lines
 * @param expected the share outside over whole tool lives, in parts per million
 * @param remarks what a reader must know
 */
public record TrendedCapability(
        List<Segment> segments,
        OptionalDouble withinTrend,
        long degreesOfFreedom,
        List<Index> potential,
        List<Index> wholeLife,
        Index worst,
        Index expected,
        List<Remark> remarks) {
    /** Copies the lists. */
    public TrendedCapability {
        segments = List.copyOf(segments);
        potential = List.copyOf(potential);
        wholeLife = List.copyOf(wholeLife);
        remarks = List.copyOf(remarks);
    }

    /** The same in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }

    /**
     * One tool life.
     *
     * @param from its first reading (from 0)
     * @param to one past its last
     * @param line its line; empty for fewer than three readings
     */
    public record Segment(int from, int to, Optional<Line> line) {}

    /**
     * A line by least squares through readings in their order.
     *
     * @param start its height at the first reading, in the unit
     * @param end its height at the last
     * @param slope change per reading, in the unit
     * @param slopeInterval its confidence interval, by Student's t with the pooled spread
     */
    public record Line(double start, double end, double slope, Interval slopeInterval) {}
}
