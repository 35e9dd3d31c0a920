package io.github.firstoff.report.pdf;

/** Where the decimal mark of a printed figure stands. */
final class DecimalMark {
    private DecimalMark() {}

    /**
     * The place of the decimal mark, or of the end of the figure when it has none. A figure may be followed by a unit or a
     * remark: the first mark between two digits counts, otherwise the end of the first row of digits.
     */
    static int in(String figure) {
        int lastOfRow = figure.length();
        boolean seen = false;
        for (int i = 0; i < figure.length(); i++) {
            char c = figure.charAt(i);
            boolean digit = c >= '0' && c <= '9';
            if (digit) {
                seen = true;
                lastOfRow = i + 1;
            } else if (seen) {
                return lastOfRow;
            }
        }
        return lastOfRow;
    }

    /** Whether the text holds a digit at all. */
    static boolean isFigure(String text) {
        return text.chars().anyMatch(c -> c >= '0' && c <= '9');
    }
}
