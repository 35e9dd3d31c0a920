package io.github.firstoff.report.pdf;

/**
 * A setting of type.
 *
 * @param size    size in points
 * @param leading distance of baselines in points
 * @param strong  whether plain runs are set in the strong weight
 * @param ink     the ink
 */
record Type(double size, double leading, boolean strong, Ink ink) {
    /** Points to a millimetre. */
    static final double MM = 72 / 25.4;

    /** The baseline unit of the grid: 4.2 mm. */
    static final double LINE = 4.2 * MM;

    /** Height of capitals and figures of the face, as a share of its size. */
    static final double CAPITALS = 0.72;

    static final Type BODY = new Type(8.5, LINE, false, Ink.BLACK);
    static final Type STRONG = new Type(8.5, LINE, true, Ink.BLACK);
    static final Type NOTE = new Type(7, 9.4, false, Ink.BLACK);
    static final Type LABEL = new Type(7, 9.4, false, Ink.GREY);
    static final Type HEADING = new Type(11, 15, true, Ink.BLACK);
    static final Type HEADLINE = new Type(17, 21.5, true, Ink.BLACK);

    Type in(Ink other) {
        return new Type(size, leading, strong, other);
    }

    Type heavy(boolean heavy) {
        return new Type(size, leading, heavy, ink);
    }

    /** This setting at another size, its leading in proportion. */
    Type scaled(double newSize) {
        return new Type(newSize, leading * newSize / size, strong, ink);
    }

    /** Distance from the top of a line to its baseline, so that capitals stand in the middle of the line. */
    double baseline() {
        return (leading + CAPITALS * size) / 2;
    }
}
