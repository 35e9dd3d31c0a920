package io.github.firstoff.study.chart;

/** What a chart of attributes does when counts spread more, or less, than their distribution says. */
public enum DispersionPolicy {
    /** Limits of the binomial or Poisson distribution, whatever the check says; the check is reported. */
    DISTRIBUTION("distribution"),
    /** Limits are widened (or narrowed) where the check finds that counts spread otherwise; said on the chart. */
    CHECK("check"),
    /** Limits always from the spread that the counts show (Laney's p' and u' charts). */
    OBSERVED("observed");

    private final String word;

    DispersionPolicy(String word) {
        this.word = word;
    }

    /** The word that plans use: {@code distribution}, {@code check} or {@code observed}. */
    public String word() {
        return word;
    }
}
