package io.github.firstoff.sample;

/** What a control chart says of a process; here because charts find it and capability must respect it. */
public enum ControlState {
    /** No test gives a signal. */
    IN_CONTROL("in-control"),
    /** At least one test gives a signal on a panel of the chart. */
    OUT_OF_CONTROL("out-of-control"),
    /** There is no chart, or it has too few points to tell. */
    NOT_ASSESSED("not-assessed");

    private final String word;

    ControlState(String word) {
        this.word = word;
    }

    /** The word that results print: {@code in-control}, {@code out-of-control}, {@code not-assessed}. */
    public String word() {
        return word;
    }
}
