package io.github.firstoff.intake;

import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One thing that is wrong with an input, for the person who can put it right.
 *
 * @param kind what sort of fault it is
 * @param where where it is
 * @param message what is wrong, where found and expected do not say it all; may be empty
 * @param found what stands there, harmless to print; empty if nothing does
 * @param expected what would be understood; may be empty
 * @param excerpt the line itself with a mark under the place, where that helps
 */
public record Fault(
        FaultKind kind, Where where, String message, String found, String expected, Optional<Excerpt> excerpt) {

    /**
     * A place in an input: a line and a column of a text, or a cell of a sheet.
     *
     * @param file the file's name as the user gave it
     * @param sheet the sheet of a workbook; empty in a text
     * @param line the line or the sheet's row, counted from 1; 0 if the fault is about the file as a whole
     * @param column the character in the line or the column of the sheet, counted from 1; 0 if it does not matter
     * @param field the column, key or entry in words, for example {@code column value}; may be empty
     */
    public record Where(String file, String sheet, long line, int column, String field) {

        /** A place in a text. */
        public Where(String file, long line, int column, String field) {
            this(file, "", line, column, field);
        }

        /** The file as a whole. */
        public static Where inFile(String file) {
            return new Where(file, 0, 0, "");
        }

        /** For example {@code readings.csv:2, column value} or {@code readings.xlsx, sheet "Lot 7", cell C12, column value}. */
        @Override
        public String toString() {
            return place().english();
        }

        /** The same, to be worded in the language of a sheet; the name of the field stands as the input has it. */
        public Remark place() {
            List<Remark> parts = new ArrayList<>();
            String start = Echo.plain(file);
            if (sheet.isEmpty() && line > 0) {
                start += ":" + line + (column > 0 ? ":" + column : "");
            }
            parts.add(Remark.verbatim(start));
            if (!sheet.isEmpty()) {
                parts.add(Remark.of("place.sheet", "sheet {0}", Echo.quoted(sheet)));
                if (line > 0) {
                    parts.add(
                            column > 0
                                    ? Remark.of("place.cell", "cell {0}", letters(column) + line)
                                    : Remark.of("place.row", "row {0}", line));
                }
            }
            if (!field.isEmpty()) {
                parts.add(Remark.verbatim(field));
            }
            return Remark.joined(", ", parts);
        }

        /** The place without file and field: {@code line 12}, {@code cell C12} or {@code row 12}; empty for a file as a whole. */
        public String spot() {
            if (line == 0) {
                return "";
            }
            if (sheet.isEmpty()) {
                return "line " + line;
            }
            return column > 0 ? "cell " + letters(column) + line : "row " + line;
        }

        /** The letters of a column of a sheet: 1 is A, 26 is Z, 27 is AA. */
        static String letters(int column) {
            StringBuilder letters = new StringBuilder();
            for (int left = column; left > 0; left = (left - 1) / 26) {
                letters.insert(0, (char) ('A' + (left - 1) % 26));
            }
            return letters.toString();
        }
    }

    /**
     * A line of the file and the place in it.
     *
     * @param line the line, or the part of it around the place, harmless to print
     * @param caret how many characters stand before the place
     */
    public record Excerpt(String line, int caret) {}

    /** A fault without an excerpt. */
    static Fault of(FaultKind kind, Where where, String message, String found, String expected) {
        return new Fault(kind, where, message, found, expected, Optional.empty());
    }

    Fault with(Excerpt line) {
        return new Fault(kind, where, message, found, expected, Optional.of(line));
    }

    /** One line, for example {@code readings.csv:2, column value: found "forty"; expected a decimal number such as 12.5}. */
    public String line() {
        StringBuilder text = new StringBuilder(where.toString()).append(": ");
        String separator = "";
        if (!message.isEmpty()) {
            text.append(message);
            separator = "; ";
        }
        if (!found.isEmpty()) {
            text.append(separator).append("found ").append(found);
            separator = "; ";
        }
        if (!expected.isEmpty()) {
            text.append(separator).append("expected ").append(expected);
        }
        return text.toString();
    }

    @Override
    public String toString() {
        return line();
    }
}
