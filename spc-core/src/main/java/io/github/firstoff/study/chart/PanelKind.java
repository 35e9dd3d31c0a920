package io.github.firstoff.study.chart;

/** Which of the panels of a chart. */
public enum PanelKind {
    /** Where the process is: individuals, means, medians, averages, cumulative sums, proportions, counts. */
    LOCATION("location"),
    /** How far the means of subgroups move from one to the next; on charts of within and between only. */
    BETWEEN("between"),
    /** How widely readings spread: ranges, standard deviations, moving ranges. */
    DISPERSION("dispersion");

    private final String word;

    PanelKind(String word) {
        this.word = word;
    }

    /** The word that results print: {@code location}, {@code between} or {@code dispersion}. */
    public String word() {
        return word;
    }
}
