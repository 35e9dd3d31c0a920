package io.github.firstoff.intake;

import java.math.BigDecimal;
import java.util.Optional;

/** What is known of the decimal mark of a file's numbers, and so how they are read. */
enum Marks {
    /** The point, by the format, whatever the user says. */
    FORMAT_POINT(DecimalMark.POINT, false),
    /** The point, by what the file shows. */
    POINT(DecimalMark.POINT, false),
    /** The comma, by what the file shows. */
    COMMA(DecimalMark.COMMA, false),
    /** The point, by the user's word; commas may then part thousands off. */
    STATED_POINT(DecimalMark.POINT, true),
    /** The comma, by the user's word; points may then part thousands off. */
    STATED_COMMA(DecimalMark.COMMA, true),
    /** Not known: a number that could be read in two ways is refused. */
    UNKNOWN(DecimalMark.POINT, false);

    private static final String SAY_WHICH = "--decimal-mark point or --decimal-mark comma to say which it is";

    private final DecimalMark mark;
    private final boolean stated;

    Marks(DecimalMark mark, boolean stated) {
        this.mark = mark;
        this.stated = stated;
    }

    static Marks shown(DecimalMark mark) {
        return mark == DecimalMark.POINT ? POINT : COMMA;
    }

    static Marks stated(DecimalMark mark) {
        return mark == DecimalMark.POINT ? STATED_POINT : STATED_COMMA;
    }

    /** The decimal mark; empty while it is not known. */
    Optional<DecimalMark> known() {
        return this == UNKNOWN ? Optional.empty() : Optional.of(mark);
    }

    /** A number that is written with a point, as texts beside it are written. */
    String written(String number) {
        return mark == DecimalMark.COMMA ? number.replace('.', ',') : number;
    }

    /** What a text shows of the decimal mark; empty if it holds no mark, is no number, or could have either. */
    static Optional<DecimalMark> shownBy(String text) {
        int point = text.indexOf('.');
        int comma = text.indexOf(',');
        if ((point < 0 && comma < 0) || !isOfDigits(text)) {
            return Optional.empty();
        }
        if (point >= 0 && comma >= 0) {
            DecimalMark last = text.lastIndexOf('.') > text.lastIndexOf(',') ? DecimalMark.POINT : DecimalMark.COMMA;
            return isGrouped(text, last) ? Optional.of(last) : Optional.empty();
        }
        DecimalMark only = point >= 0 ? DecimalMark.POINT : DecimalMark.COMMA;
        int at = Math.max(point, comma);
        if (text.indexOf(only.character(), at + 1) >= 0) {
            // Marks of thousands come more than once, decimal marks do not.
            return isGrouped(text, only.other()) ? Optional.of(only.other()) : Optional.empty();
        }
        return isGrouped(text, only.other()) ? Optional.empty() : Optional.of(only);
    }

    /** Whether the text could be a number with either mark, such as 1,234: one mark, and three digits behind it. */
    static boolean isOpen(String text) {
        int at = Math.max(text.indexOf('.'), text.indexOf(','));
        if (at < 0 || !isOfDigits(text) || text.indexOf('.', at + 1) >= 0 || text.indexOf(',', at + 1) >= 0) {
            return false;
        }
        return isGrouped(text, text.charAt(at) == '.' ? DecimalMark.COMMA : DecimalMark.POINT);
    }

    private static boolean isOfDigits(String text) {
        boolean digits = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean sign = i == 0 && (c == '+' || c == '-' || c == '\u2212');
            if (c >= '0' && c <= '9') {
                digits = true;
            } else if (c != '.' && c != ',' && !sign) {
                return false;
            }
        }
        return digits;
    }

    /** Whether the other mark parts groups of three digits off before the decimal mark, at least once; 0,123 has no such group. */
    private static boolean isGrouped(String text, DecimalMark decimal) {
        char group = decimal.other().character();
        int from = text.isEmpty() || isDigit(text.charAt(0)) ? 0 : 1;
        int end = text.indexOf(decimal.character());
        if (end >= 0 && (text.indexOf(decimal.character(), end + 1) >= 0 || text.indexOf(group, end) >= 0)) {
            return false;
        }
        String whole = text.substring(from, end < 0 ? text.length() : end);
        int first = whole.indexOf(group);
        if (first < 1 || first > 3 || whole.charAt(0) == '0') {
            return false;
        }
        for (int at = first; at < whole.length(); at += 4) {
            if (whole.charAt(at) != group || at + 4 > whole.length()) {
                return false;
            }
            for (int i = at + 1; i < at + 4; i++) {
                if (!isDigit(whole.charAt(i))) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** The number that a text states under what is known of the marks, exactly. */
    BigDecimal number(String text) throws NumberRefused {
        boolean marked = text.indexOf(',') >= 0 || (this != POINT && this != FORMAT_POINT && text.indexOf('.') >= 0);
        if (!marked || text.length() > ExactNumber.LONGEST) {
            return ExactNumber.written(text);
        }
        if (!isOfDigits(text)) {
            return ExactNumber.written(inPoints(text));
        }
        if (this == UNKNOWN) {
            if (isOpen(text)) {
                throw twoReadings(text);
            }
            Optional<DecimalMark> shown = shownBy(text);
            if (shown.isEmpty() && text.indexOf(',') < 0) {
                return ExactNumber.written(text);
            }
            return plain(text, shown.orElseThrow(this::noNumber));
        }
        int group = text.indexOf(mark.other().character());
        if (group < 0) {
            return plain(text, mark);
        }
        // With both marks in it, several groups, or the user's word, there is only one way to read it.
        boolean oneWay = stated
                || text.indexOf(mark.character()) >= 0
                || text.indexOf(mark.other().character(), group + 1) >= 0;
        if (oneWay && isGrouped(text, mark)) {
            return plain(text, mark);
        }
        if (this == FORMAT_POINT) {
            throw new NumberRefused(
                    FaultKind.AMBIGUOUS_NUMBER,
                    "the number has a comma, and here every decimal mark is a point",
                    "a number such as " + example());
        }
        if (stated) {
            throw noNumber();
        }
        throw isOpen(text) ? twoReadings(text) : otherMark(text);
    }

    /** A text that is more than a number, with the one comma that it has as a point, so that what is told of it is to the point. */
    private String inPoints(String text) {
        int comma = text.indexOf(',');
        boolean only = comma >= 0 && text.indexOf('.') < 0 && text.indexOf(',', comma + 1) < 0;
        return mark == DecimalMark.COMMA && only ? text.replace(',', '.') : text;
    }

    private NumberRefused noNumber() {
        return new NumberRefused(
                FaultKind.AMBIGUOUS_NUMBER,
                "the marks among the digits make no number",
                "a number such as " + example());
    }

    private String example() {
        return mark == DecimalMark.POINT ? "12.5" : "12,5";
    }

    private NumberRefused otherMark(String text) {
        Optional<DecimalMark> shown = shownBy(text);
        if (shown.isEmpty() || shown.get() == mark) {
            return noNumber();
        }
        return new NumberRefused(
                FaultKind.AMBIGUOUS_NUMBER,
                "the number has a decimal " + shown.get().word() + ", and the decimal mark here is the " + mark.word(),
                "a number such as " + example() + ", or --decimal-mark "
                        + shown.get().word());
    }

    private static NumberRefused twoReadings(String text) {
        return new NumberRefused(
                FaultKind.AMBIGUOUS_NUMBER,
                "this could mean " + plainText(text, DecimalMark.POINT) + " or " + plainText(text, DecimalMark.COMMA),
                SAY_WHICH);
    }

    private static BigDecimal plain(String text, DecimalMark decimal) throws NumberRefused {
        return ExactNumber.written(plainText(text, decimal));
    }

    private static String plainText(String text, DecimalMark decimal) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == decimal.character()) {
                out.append('.');
            } else if (c != decimal.other().character()) {
                out.append(c);
            }
        }
        return out.toString();
    }
}
