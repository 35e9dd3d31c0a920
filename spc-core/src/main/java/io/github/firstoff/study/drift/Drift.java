package io.github.firstoff.study.drift;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.stats.ConfidenceInterval;
import io.github.firstoff.stats.FittedLine;
import io.github.firstoff.stats.ParallelLines;
import io.github.firstoff.stats.RunsTest;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How one characteristic drifts. Lines are in steps of the readings' resolution over piece numbers; everything else is in the unit.
 *
 * @param data what was studied
 * @param settings how
 * @param segments the stretches, in order
 * @param pooled one slope through all stretches that have a line; empty without one
 * @param residuals of each reading from the line of its stretch, in steps; NaN where there is no line
 * @param spread the standard deviation about the lines of all stretches, pooled, in the unit; empty without a line
 * @param forecast when the limit will be reached
 * @param advice what to do
 * @param remarks what a reader must know, in sentences
 */
public record Drift(
        DriftData data,
        DriftSettings settings,
        List<Segment> segments,
        Optional<Pooled> pooled,
        List<Double> residuals,
        OptionalDouble spread,
        Forecast forecast,
        Advice advice,
        List<Remark> remarks) {
    /** Copies the lists. */
    public Drift {
        segments = List.copyOf(segments);
        residuals = List.copyOf(residuals);
        remarks = List.copyOf(remarks);
    }

    /** What a reader must know, in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }

    /** The last stretch: what the process does now. */
    public Segment current() {
        return segments.get(segments.size() - 1);
    }

    /**
     * A stretch between two things that were done to the process.
     *
     * @param start where and why it begins
     * @param from its first reading, from 0
     * @param to one past its last
     * @param firstPiece the number of its first piece
     * @param lastPiece the number of its last
     * @param trend its line; empty for fewer than three pieces
     * @param jump how far its line begins above the end of the one before; empty unless both have lines
     */
    public record Segment(
            Start start,
            int from,
            int to,
            long firstPiece,
            long lastPiece,
            Optional<Trend> trend,
            Optional<Jump> jump) {
        /** How many readings. */
        public int count() {
            return to - from;
        }
    }

    /**
     * A line through a stretch, with what it leaves unexplained.
     *
     * @param line the line, in steps
     * @param slope change per piece, in the unit
     * @param slopeInterval its confidence interval, by Student's t
     * @param significance of the slope, two-sided
     * @param residualStandardDeviation in the unit
     * @param runs runs of the residuals' signs
     * @param lagOne the autocorrelation of neighbouring residuals; empty where they do not spread
     */
    public record Trend(
            FittedLine line,
            double slope,
            ConfidenceInterval slopeInterval,
            double significance,
            double residualStandardDeviation,
            RunsTest runs,
            OptionalDouble lagOne) {}

    /**
     * How far the level moved from one stretch to the next.
     *
     * @param amount upwards positive, in the unit
     * @param interval its confidence interval, by Student's t
     * @param significance of the amount, two-sided
     */
    public record Jump(double amount, ConfidenceInterval interval, double significance) {}

    /**
     * One slope for all stretches.
     *
     * @param lines the lines, in steps
     * @param slope change per piece, in the unit
     * @param interval its confidence interval
     * @param significance of the slope, two-sided
     * @param residualStandardDeviation about the parallel lines, in the unit
     */
    public record Pooled(
            ParallelLines lines,
            double slope,
            ConfidenceInterval interval,
            double significance,
            double residualStandardDeviation) {}
}
