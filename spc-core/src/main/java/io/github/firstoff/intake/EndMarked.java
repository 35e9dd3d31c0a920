package io.github.firstoff.intake;

import java.io.IOException;
import java.io.Reader;

/**
 * Puts a line of its own, holding one NUL, after a text in which NUL cannot occur. A CSV reader that meets the end of the text within
 * quotation marks says nothing; it then hands the mark on as part of a field, and so the lost quotation mark shows.
 */
final class EndMarked extends Reader {
    private static final String MARK = "\n\0";

    private final Reader text;
    private int marked;

    EndMarked(Reader text) {
        this.text = text;
    }

    /** Whether the field holds the mark. */
    static boolean isIn(String field) {
        return !field.isEmpty() && field.charAt(field.length() - 1) == '\0';
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
        if (marked == 0) {
            int count = text.read(buffer, offset, length);
            if (count >= 0) {
                return count;
            }
        }
        if (length == 0) {
            return 0;
        }
        if (marked < MARK.length()) {
            buffer[offset] = MARK.charAt(marked++);
            return 1;
        }
        return -1;
    }

    /** Leaves the text open: whoever opened it reads the rest and closes it. */
    @Override
    public void close() {}
}
