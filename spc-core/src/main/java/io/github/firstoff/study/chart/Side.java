package io.github.firstoff.study.chart;

/** On which side of a line, or in which direction, a pattern lies. */
public enum Side {
    /** Above the line. */
    ABOVE("above"),
    /** Below the line. */
    BELOW("below"),
    /** On both sides, or without regard to the side. */
    EITHER("either"),
    /** Rising from point to point. */
    RISING("rising"),
    /** Falling from point to point. */
    FALLING("falling");

    private final String word;

    Side(String word) {
        this.word = word;
    }

    /** The word that results print: {@code above}, {@code below}, {@code either}, {@code rising} or {@code falling}. */
    public String word() {
        return word;
    }
}
