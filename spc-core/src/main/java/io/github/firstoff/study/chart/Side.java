package io.github.firstoff.study.chart;

/** On which side of a line. */
public enum Side {
    /** Above the line. */
    ABOVE("above"),
    /** Below the line. */
    BELOW("below");

    private final String word;

    Side(String word) {
        this.word = word;
    }

    /** The word that results print: {@code above} or {@code below}. */
    public String word() {
        return word;
    }
}
