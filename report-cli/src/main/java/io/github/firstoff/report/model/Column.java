package io.github.firstoff.report.model;

/**
 * One column of a table. The head is repeated on every page the table reaches.
 *
 * @param head  what the column holds
 * @param unit  the unit of its figures, printed once under the head, or empty
 * @param kind  how its cells are set
 * @param width how wide it is
 */
public record Column(String head, String unit, Kind kind, Width width) {
    /** A column of wrapped text that takes a share of the room. */
    public static Column text(String head, double weight) {
        return new Column(head, "", Kind.TEXT, Width.share(weight));
    }

    /** A column as wide as its content, for short words and numbers of characteristics. */
    public static Column narrow(String head) {
        return new Column(head, "", Kind.TEXT, Width.NATURAL);
    }

    /** A column of figures aligned on the decimal mark. */
    public static Column figure(String head, String unit) {
        return new Column(head, unit, Kind.FIGURE, Width.NATURAL);
    }

    /** A column of tolerance strips, wide enough for the 28 mm line and the excess figures at its ends. */
    public static Column strip(String head) {
        return new Column(head, "", Kind.STRIP, Width.mm(36));
    }

    /** A column of verdict phrases. */
    public static Column verdict(String head, double weight) {
        return new Column(head, "", Kind.VERDICT, Width.share(weight));
    }

    /** How cells are set. */
    public enum Kind {
        /** Left, wrapped. */
        TEXT,
        /** Left, as the drawing sets it, with the feature's name above it where the cell gives one. */
        NOTATION,
        /** On the decimal mark. */
        FIGURE,
        /** A tolerance strip, centred. */
        STRIP,
        /** Left, wrapped, in the weight of its tone. */
        VERDICT
    }
}
