package io.github.firstoff.intake;

/** Space around what a person typed: also the spaces that hold a line together, which web pages and text processors leave behind unseen. */
final class Blanks {
    private Blanks() {}

    /** The text without space before and behind it. */
    static String strip(String text) {
        int from = 0;
        int end = text.length();
        while (from < end && isSpace(text.charAt(from))) {
            from++;
        }
        while (end > from && isSpace(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(from, end);
    }

    private static boolean isSpace(char c) {
        return c <= ' '
                ? Character.isWhitespace(c)
                : c >= '\u0080' && (Character.isSpaceChar(c) || Character.isWhitespace(c));
    }
}
