package io.github.firstoff.report.model;

/** The hand of a part: which side of the vessel it is made for. Printed as a bar along the edge of every page. */
public enum Hand {
    /** Not a handed part; no bar. */
    NONE(""),
    /** Left-hand part; bar along the left edge. */
    PORT("port"),
    /** Right-hand part; bar along the right edge. */
    STARBOARD("starboard");

    private final String word;

    Hand(String word) {
        this.word = word;
    }

    /** The word that stands in the bar, in small letters; empty for a part without a hand. */
    public String word() {
        return word;
    }
}
