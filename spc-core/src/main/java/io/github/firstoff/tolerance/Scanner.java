package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Reads a requirement from left to right. Typographic variants are levelled character by character, so that every position is
 * also a position in the text as written.
 */
final class Scanner {
    private final String original;
    private final String text;
    private int position;
    private Optional<Unit> unit = Optional.empty();

    Scanner(String original) {
        this.original = original;
        StringBuilder levelled = new StringBuilder(original.length());
        for (int i = 0; i < original.length(); i++) {
            levelled.append(level(original.charAt(i)));
        }
        this.text = levelled.toString();
    }

    private static char level(char written) {
        return switch (written) {
            case '\u00a0', '\u2007', '\u2009', '\u202f', '\u200a', '\u2002', '\u2003', '\u3000', '\t' -> ' ';
            case '−', '–', '‐', '‑', '﹣', '－' -> '-';
            case '×', '✕', '⨯' -> 'x';
            case '⌀', '∅', 'ø', 'φ', 'Φ', 'ϕ' -> 'Ø';
            case '′', '’', '‘', '´' -> '\'';
            case '″', '”', '“' -> '"';
            case 'º', '˚' -> '°';
            case 'μ' -> 'µ';
            case '…' -> '…';
            case '＋' -> '+';
            case '⁄', '∕' -> '/';
            case '◻', '▫', '☐' -> '□';
            default -> written;
        };
    }

    String original() {
        return original;
    }

    int position() {
        return position;
    }

    void back(int to) {
        position = to;
    }

    /** The unit written somewhere on the requirement, if any so far. */
    Optional<Unit> unit() {
        return unit;
    }

    RequirementFault fault(int at, String message, String expected) {
        return new RequirementFault(original, at, message, expected);
    }

    RequirementFault fault(String message, String expected) {
        return fault(position, message, expected);
    }

    void skipSpace() {
        while (position < text.length() && text.charAt(position) == ' ') {
            position++;
        }
    }

    boolean atEnd() {
        skipSpace();
        return position >= text.length();
    }

    /** The next character without moving; a line feed, which no requirement contains, at the end. */
    char peek() {
        return peek(0);
    }

    char peek(int ahead) {
        return position + ahead < text.length() ? text.charAt(position + ahead) : '\n';
    }

    boolean isNext(String wanted) {
        return text.startsWith(wanted, position);
    }

    /** Steps over the wanted text, after spaces, if it stands there. */
    boolean accept(String wanted) {
        int start = position;
        skipSpace();
        if (isNext(wanted)) {
            position += wanted.length();
            return true;
        }
        position = start;
        return false;
    }

    /** Steps over a whole word, after spaces, whatever its letter case. */
    boolean acceptWord(String wanted) {
        int start = position;
        skipSpace();
        int end = position + wanted.length();
        boolean there = text.regionMatches(true, position, wanted, 0, wanted.length())
                && (end >= text.length() || !Character.isLetterOrDigit(text.charAt(end)));
        position = there ? end : start;
        return there;
    }

    /** Steps over a word that a number may follow without a space, after spaces, whatever its letter case. */
    boolean acceptBefore(String wanted) {
        int start = position;
        skipSpace();
        int end = position + wanted.length();
        boolean there = text.regionMatches(true, position, wanted, 0, wanted.length())
                && end < text.length()
                && !Character.isLetter(text.charAt(end));
        position = there ? end : start;
        return there;
    }

    /** The letters that stand here; may be empty. */
    String letters() {
        int start = position;
        while (Character.isLetter(peek())) {
            position++;
        }
        return text.substring(start, position);
    }

    /** The digits that stand here; may be empty. */
    String digits() {
        int start = position;
        while (isDigit(peek())) {
            position++;
        }
        return text.substring(start, position);
    }

    /** What is left, as written. */
    String rest() {
        return original.substring(position);
    }

    /** What is left up to the next space or the end, for messages. */
    String nextWord() {
        int end = position;
        while (end < text.length() && text.charAt(end) != ' ') {
            end++;
        }
        return original.substring(position, end);
    }

    static boolean isDigit(char character) {
        return character >= '0' && character <= '9';
    }

    boolean startsNumber() {
        skipSpace();
        return isDigit(peek()) || (peek() == '.' && isDigit(peek(1)));
    }

    /**
     * An unsigned decimal: digits with at most one point. A comma is never taken for a decimal mark, and never for anything
     * else: the fault shows the text with points.
     */
    BigDecimal number() {
        skipSpace();
        int start = position;
        while (isDigit(peek())) {
            position++;
        }
        if (peek() == '.' && isDigit(peek(1))) {
            position++;
            while (isDigit(peek())) {
                position++;
            }
        } else if (peek() == '.' && peek(1) != '.' && position > start) {
            throw fault(
                    "the number " + text.substring(start, position) + ". ends in a point",
                    text.substring(start, position) + " or " + text.substring(start, position) + ".0");
        }
        if (peek() == ',') {
            throw commaFault(start);
        }
        if (position == start) {
            throw fault(
                    atEnd()
                            ? "the requirement ends where a number should stand"
                            : "a number should stand here, not " + quoted(nextWord()),
                    "");
        }
        if ((peek() == 'e' || peek() == 'E') && isDigit(peek(1))) {
            throw fault("a drawing writes numbers in full, without powers of ten", "");
        }
        return new BigDecimal(text.substring(start, position));
    }

    private RequirementFault commaFault(int start) {
        int comma = position;
        int end = comma + 1;
        while (end < text.length() && isDigit(text.charAt(end))) {
            end++;
        }
        String found = text.substring(start, end);
        if (end == comma + 1) {
            return fault("a comma has no meaning here", "");
        }
        return fault(
                "a comma is not read as a decimal mark: " + found + " may be " + found.replace(',', '.')
                        + " or a number with its thousands set off",
                withPoints());
    }

    /** The text with points for commas, if that would be understood. */
    private String withPoints() {
        String pointed = original.replace(',', '.');
        try {
            return RequirementNotation.parse(pointed).text();
        } catch (RequirementFault stillNotUnderstood) {
            return "decimals with a point";
        }
    }

    /** Steps over a unit of length, if one stands here, and remembers it; two different ones contradict each other. */
    void acceptUnit() {
        int start = position;
        skipSpace();
        int at = position;
        Optional<Unit> found;
        if (peek() == '"') {
            position++;
            found = Optional.of(Unit.INCH);
        } else {
            String word = letters();
            found = word.isEmpty() || "M".equals(word) ? Optional.empty() : Unit.parse(word);
            found = found.filter(any -> any.kind() == Unit.Kind.LENGTH);
            if (found.isPresent() && isDigit(peek())) {
                found = Optional.empty();
            }
        }
        if (found.isEmpty()) {
            position = start;
            return;
        }
        if (unit.isPresent() && unit.get() != found.get()) {
            throw fault(
                    at,
                    "one requirement has one unit, not both " + unit.get().word() + " and "
                            + found.get().word(),
                    "");
        }
        unit = found;
    }

    void expectEnd(UnaryOperator<String> understood) {
        if (!atEnd()) {
            String before = original.substring(0, position).strip();
            throw fault(quoted(nextWord()) + " is not understood after " + quoted(before), understood.apply(before));
        }
    }

    static String quoted(String found) {
        return "“" + found + "”";
    }
}
