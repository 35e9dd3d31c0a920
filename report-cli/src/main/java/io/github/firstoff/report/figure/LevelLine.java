package io.github.firstoff.report.figure;

/**
 * A line across a picture, labelled at its right end with name and value.
 *
 * @param kind  what it is; decides how it is drawn
 * @param name  short name, such as "UCL" or "upper limit"
 * @param value the value as printed
 * @param at    where it lies, finite, in the unit of the axis
 */
public record LevelLine(Kind kind, String name, String value, double at) {
    /** Refuses a line without a place. */
    public LevelLine {
        if (!Double.isFinite(at)) {
            throw new IllegalArgumentException("the line " + name + " needs a finite place");
        }
    }

    /** What a line is. */
    public enum Kind {
        /** Centre line of a control chart, or the mean. */
        CENTRE,
        /** Control limit: what the process does. */
        CONTROL_LIMIT,
        /** Specification limit: what the drawing allows. */
        SPECIFICATION_LIMIT,
        /** Target. */
        TARGET,
        /** The name of a line of points, set at the height of its last point; nothing is drawn. */
        NAME
    }
}
