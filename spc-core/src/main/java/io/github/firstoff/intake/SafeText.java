package io.github.firstoff.intake;

import java.util.regex.Pattern;

/**
 * Makes text from files harmless where it is shown: control characters and characters that change the direction of writing must not move a
 * terminal, and a spreadsheet must not take text for a formula.
 */
public final class SafeText {
    private static final Pattern FORMULA = Pattern.compile("(?s)'*[=+\\-@].*");

    private SafeText() {}

    /**
     * The text as one line for a terminal: what would move the cursor, change colours or the direction of writing is written out.
     *
     * @param text any text
     */
    public static String line(String text) {
        return Echo.plain(text);
    }

    /**
     * The text as a field of a CSV file (RFC 4180) that a spreadsheet may open: in quotation marks where need be, and with an apostrophe
     * before what a spreadsheet would reckon out (texts that begin with =, +, - or @ and are no plain numbers).
     *
     * @param text any text
     */
    public static String csvField(String text) {
        String line = Echo.plain(text);
        // One more apostrophe where some stand there already, so that one taken away gives what there was.
        if (FORMULA.matcher(line).matches() && !isNumber(line)) {
            line = "'" + line;
        }
        boolean quoted = line.chars().anyMatch(c -> c == ',' || c == ';' || c == '"') || !line.equals(line.strip());
        return quoted ? '"' + line.replace("\"", "\"\"") + '"' : line;
    }

    private static boolean isNumber(String text) {
        return text.length() < ExactNumber.LONGEST && text.matches("[+-]?\\d+([.,]\\d+)?");
    }
}
