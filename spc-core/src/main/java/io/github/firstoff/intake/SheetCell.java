package io.github.firstoff.intake;

/**
 * A cell of a sheet that holds something.
 *
 * @param column its column, counted from 1
 * @param kind what it holds
 * @param text a text as it stands there, without surrounding space; a number as a plain decimal; a time as ISO 8601 writes it
 * @param formula whether it holds the stored result of a formula
 * @param rounded whether the number stands in the file with more digits than a spreadsheet keeps and shows
 */
record SheetCell(int column, Kind kind, String text, boolean formula, boolean rounded) {

    /** What cells hold. */
    enum Kind {
        /** Text. */
        TEXT,
        /** A number. */
        NUMBER,
        /** A date, or a date and a time of day. */
        TIME,
        /** A time of day without a date, or a duration. */
        DURATION,
        /** True or false. */
        TRUTH,
        /** An error of the spreadsheet, such as a division by zero. */
        ERROR,
        /** A formula whose result was not stored. */
        UNCALCULATED
    }

    /** Whether nothing stands in it. */
    boolean isBlank() {
        return text.isEmpty() && kind == Kind.TEXT;
    }

    SheetCell at(int other) {
        return new SheetCell(other, kind, text, formula, rounded);
    }
}
