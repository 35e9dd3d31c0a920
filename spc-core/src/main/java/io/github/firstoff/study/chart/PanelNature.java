package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;

/** What the points of a panel are to a test: which tests may judge them depends on it. */
public enum PanelNature {
    /** Independent points that are nearly normal: individuals, means, medians, standardised deviations. */
    NORMAL("independent and nearly normal"),
    /** Independent points that are counts or shares of counts, with a skew that grows as they become rare. */
    COUNTED("counts"),
    /** Independent measures of spread, skewed to the right: ranges, standard deviations. */
    SPREAD("measures of spread, which are skewed"),
    /** Points that share readings with their neighbours: moving ranges, moving averages, cumulative sums. */
    DEPENDENT("points that share readings with their neighbours");

    private final String words;

    PanelNature(String words) {
        this.words = words;
    }

    /** What the points are, as a sentence says it. */
    public Remark remark() {
        return Remark.word("nature", words);
    }
}
