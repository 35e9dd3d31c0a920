package io.github.firstoff.report.model;

/** One cell of a table row. Any cell may stand in any column; the column decides the alignment, the cell its content. */
public sealed interface Cell {
    /** An empty cell. */
    Cell EMPTY = new Words(Text.NONE);

    /** A cell of ordinary text. */
    static Cell text(String text) {
        return new Words(Text.of(text));
    }

    /** A figure, as it is to be printed. */
    static Cell figure(String figure) {
        return new Figure(figure, Tone.PLAIN);
    }

    /** A verdict phrase. */
    static Cell verdict(String phrase, Tone tone) {
        return new Verdict(phrase, tone);
    }

    /**
     * Running text.
     *
     * @param text the text
     */
    record Words(Text text) implements Cell {}

    /**
     * A feature's name with its requirement under it; either may be empty.
     *
     * @param feature     name of the feature
     * @param requirement the requirement as the drawing sets it
     */
    record Requirement(String feature, Notation requirement) implements Cell {}

    /**
     * A figure. Text without a decimal mark ends where the mark would be; "—" or a word stands in the middle of the column.
     *
     * @param figure the text to print, sign included
     * @param tone   {@link Tone#OUT} for a figure outside its limits: it is set in bold
     */
    record Figure(String figure, Tone tone) implements Cell {}

    /**
     * A tolerance strip.
     *
     * @param strip the strip
     */
    record Line(Strip strip) implements Cell {}

    /**
     * A verdict: a phrase with its amount, such as "over by 0.004".
     *
     * @param phrase the phrase
     * @param tone   what it amounts to
     */
    record Verdict(String phrase, Tone tone) implements Cell {}
}
