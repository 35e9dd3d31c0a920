package io.github.firstoff.study.chart;

/** Which of the (at most two) panels of a chart. */
public enum PanelKind {
    /** Where the process is: individuals, means, proportions, counts. */
    LOCATION("location"),
    /** How widely it spreads: ranges, standard deviations. */
    DISPERSION("dispersion");

    private final String word;

    PanelKind(String word) {
        this.word = word;
    }

    /** The word that results print: {@code location} or {@code dispersion}. */
    public String word() {
        return word;
    }
}
