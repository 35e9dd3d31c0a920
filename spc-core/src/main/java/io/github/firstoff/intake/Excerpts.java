package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Excerpt;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Place;

/** Cuts the line of a fault out of its text, and finds places within a text's literal. */
final class Excerpts {
    private static final int WIDEST = 100;

    private Excerpts() {}

    /** The line of the place, cut to a width that a terminal shows, with the number of characters before the place. */
    static Excerpt of(SourceText source, Where where) {
        String line = source.line(where.line());
        int at = Math.min(where.column() - 1, line.length());
        int from = Math.max(0, Math.min(at - WIDEST / 2, line.length() - WIDEST));
        while (from < at && Character.isWhitespace(line.charAt(from))) {
            from++;
        }
        int to = Math.min(line.length(), from + WIDEST);
        String before =
                (from > 0 && !line.substring(0, from).isBlank() ? "…" : "") + Echo.plain(line.substring(from, at));
        String after = Echo.plain(line.substring(at, Math.max(at, to))) + (to < line.length() ? "…" : "");
        return new Excerpt(before + after, before.codePointCount(0, before.length()));
    }

    /**
     * The column of a character of a JSON text.
     *
     * @param line the line that the text stands in
     * @param literal where its opening quotation mark stands
     * @param index which character of the text, after escapes were resolved
     */
    static int columnWithin(String line, Place literal, int index) {
        int at = literal.column(); // the zero-based place after the quotation mark, whose column counts from 1
        for (int passed = 0; passed < index && at < line.length(); passed++) {
            if (line.charAt(at) == '\\') {
                at += at + 1 < line.length() && line.charAt(at + 1) == 'u' ? 6 : 2;
            } else {
                at++;
            }
        }
        return at + 1;
    }
}
