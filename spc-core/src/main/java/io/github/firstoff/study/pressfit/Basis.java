package io.github.firstoff.study.pressfit;

/** What a fit was reckoned from. */
public enum Basis {
    /** Limits of both parts: minimum and maximum are the worst cases. */
    LIMITS("limits"),
    /** Measured sizes of both parts that may meet in any pair. */
    MEASURED("measured"),
    /** Measured sizes of one part, limits of the other. */
    MIXED("measured and limits"),
    /** Measured pairs. */
    PAIRED("measured pairs");

    private final String word;

    Basis(String word) {
        this.word = word;
    }

    /** The word in results. */
    public String word() {
        return word;
    }
}
