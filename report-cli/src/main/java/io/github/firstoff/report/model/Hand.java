package io.github.firstoff.report.model;

/** The hand of a part: which side it is made for. Printed as a bar along the edge of every page. */
public enum Hand {
    /** Not a handed part; no bar. */
    NONE(""),
    /** The port part of a pair; bar along the left edge. */
    PORT("port"),
    /** The starboard part of a pair; bar along the right edge. */
    STARBOARD("starboard"),
    /** The left part of a pair that is not a vessel's; bar along the left edge. */
    LEFT("left"),
    /** The right part of such a pair; bar along the right edge. */
    RIGHT("right");

    private final String word;

    Hand(String word) {
        this.word = word;
    }

    /** The word that stands in the bar, in small letters; empty for a part without a hand. */
    public String word() {
        return word;
    }

    /** Whether the bar stands along the left edge. */
    public boolean isLeft() {
        return this == PORT || this == LEFT;
    }
}
