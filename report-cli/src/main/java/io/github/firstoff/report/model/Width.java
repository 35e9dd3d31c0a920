package io.github.firstoff.report.model;

/**
 * How wide a column of a table is.
 *
 * @param kind  what the figure means
 * @param value millimetres for {@link Kind#FIXED}, weight for {@link Kind#SHARE}, unused for {@link Kind#NATURAL}
 */
public record Width(Kind kind, double value) {
    /** As wide as its widest content, as long as the table has room. */
    public static final Width NATURAL = new Width(Kind.NATURAL, 0);

    /** Refuses widths that are not positive. */
    public Width {
        if (kind != Kind.NATURAL && !(value > 0)) {
            throw new IllegalArgumentException("a column's width is positive, not " + value);
        }
    }

    /** A fixed width in millimetres. */
    public static Width mm(double millimetres) {
        return new Width(Kind.FIXED, millimetres);
    }

    /** A share of what the other columns leave; text wraps inside. */
    public static Width share(double weight) {
        return new Width(Kind.SHARE, weight);
    }

    /** The three ways to give a width. */
    public enum Kind {
        /** Millimetres. */
        FIXED,
        /** By content. */
        NATURAL,
        /** By weight, from what is left. */
        SHARE
    }
}
