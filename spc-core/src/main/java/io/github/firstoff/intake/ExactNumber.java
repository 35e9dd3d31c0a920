package io.github.firstoff.intake;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a decimal number from its literal text, exactly: an optional sign, digits, an optional decimal point with digits after it.
 * Trailing zeros are kept, because they state a resolution.
 *
 * <p>What could be read in two ways is refused, not guessed: a comma may be a decimal mark or part a thousand off. An exponent is
 * refused in files that people write, because a spreadsheet that shows one has usually rounded; JSON numbers may have one. At most
 * 40 significant digits and a magnitude between 10⁻³⁰ and 10³⁰, which leaves every measurement alone and stops texts that would
 * take minutes to multiply.
 */
final class ExactNumber {
    static final String EXAMPLE = "a decimal number such as 12.5";
    private static final int MOST_DIGITS = 40;
    private static final int WIDEST_EXPONENT = 30;
    static final int LONGEST = 100;
    private static final Pattern COMMA = Pattern.compile("([+\\-\u2212]?)(\\d+),(\\d+)");
    private static final Pattern WITH_EXPONENT = Pattern.compile("[+\\-\u2212]?(\\d+\\.?\\d*|\\.\\d+)[eE][+\\-]?\\d+");
    private static final Pattern WITH_UNIT =
            Pattern.compile("([+\\-\u2212]?(?:\\d+\\.?\\d*|\\.\\d+))\\s*([\\p{L}µ°'\"%][\\p{L}µ°'\"%]*)");
    private static final Pattern NO_NUMBER = Pattern.compile("(?i)[+-]?(nan|inf|infinity|∞)");
    private static final Pattern SPACED = Pattern.compile("[+\\-\u2212]?\\d+([\\s\u00A0\u202F'’]\\d+)+([.,]\\d+)?");

    private ExactNumber() {}

    /** A number as people write it, without an exponent. */
    static BigDecimal written(String text) throws NumberRefused {
        return read(text, false);
    }

    /** A JSON number's literal, which may have an exponent. */
    static BigDecimal literal(String text) throws NumberRefused {
        return read(text, true);
    }

    private static BigDecimal read(String text, boolean mayHaveExponent) throws NumberRefused {
        if (text.length() > LONGEST) {
            throw tooLong(text);
        }
        int end = plainEnd(text);
        if (end == text.length()) {
            return checked(new BigDecimal(text.charAt(0) == '\u2212' ? "-" + text.substring(1) : text));
        }
        if (WITH_EXPONENT.matcher(text).matches()) {
            if (!mayHaveExponent) {
                throw new NumberRefused(
                        FaultKind.NOT_A_NUMBER,
                        "a number with an exponent has perhaps been rounded",
                        "the number written out, such as 0.00125");
            }
            return withExponent(text);
        }
        throw refusal(text);
    }

    /** The length of the text if it is a plain number, otherwise something less. */
    private static int plainEnd(String text) {
        int at = 0;
        int length = text.length();
        if (at < length && (text.charAt(at) == '+' || text.charAt(at) == '-' || text.charAt(at) == '\u2212')) {
            at++;
        }
        int whole = at;
        while (at < length && isDigit(text.charAt(at))) {
            at++;
        }
        boolean digits = at > whole;
        if (at < length && text.charAt(at) == '.') {
            int fraction = ++at;
            while (at < length && isDigit(text.charAt(at))) {
                at++;
            }
            // "12." is as likely a number cut short as a whole one.
            if (at == fraction) {
                return -1;
            }
            digits = true;
        }
        return digits ? at : -1;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static BigDecimal withExponent(String text) throws NumberRefused {
        int mark = Math.max(text.indexOf('e'), text.indexOf('E'));
        if (text.substring(0, mark).chars().noneMatch(c -> c >= '1' && c <= '9')) {
            return BigDecimal.ZERO;
        }
        String exponent = text.substring(mark + 1).replaceFirst("^([+-]?)0+(?=\\d)", "$1");
        if (exponent.length() > 4) {
            throw outOfRange();
        }
        BigDecimal value = new BigDecimal(text.substring(0, mark + 1) + exponent);
        if (Math.abs((long) value.precision() - 1 - value.scale()) > WIDEST_EXPONENT) {
            throw outOfRange();
        }
        return checked(value.scale() < 0 ? value.setScale(0) : value);
    }

    private static BigDecimal checked(BigDecimal value) throws NumberRefused {
        if (value.precision() > MOST_DIGITS) {
            throw new NumberRefused(
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "the number has " + value.precision() + " digits",
                    "at most " + MOST_DIGITS + " significant digits");
        }
        boolean wide = value.signum() != 0 && Math.abs((long) value.precision() - 1 - value.scale()) > WIDEST_EXPONENT;
        if (wide) {
            throw outOfRange();
        }
        return value;
    }

    private static NumberRefused outOfRange() {
        return new NumberRefused(
                FaultKind.NUMBER_OUT_OF_RANGE,
                "the number is too large or too small for any measurement",
                "a magnitude between 1e-" + WIDEST_EXPONENT + " and 1e" + WIDEST_EXPONENT);
    }

    private static NumberRefused tooLong(String text) {
        return new NumberRefused(
                FaultKind.NUMBER_OUT_OF_RANGE,
                "the text has " + text.length() + " characters",
                "a decimal number of at most " + MOST_DIGITS + " significant digits");
    }

    private static NumberRefused refusal(String text) {
        Matcher comma = COMMA.matcher(text);
        if (comma.matches()) {
            String sign = comma.group(1);
            return new NumberRefused(
                    FaultKind.AMBIGUOUS_NUMBER,
                    "the comma could mean " + sign + comma.group(2) + "." + comma.group(3) + " or " + sign
                            + comma.group(2) + comma.group(3),
                    "a decimal point and no thousands mark");
        }
        if (SPACED.matcher(text).matches()) {
            return new NumberRefused(
                    FaultKind.AMBIGUOUS_NUMBER, "a gap among the digits", "the digits without thousands marks");
        }
        if (text.indexOf(',') >= 0 && text.chars().anyMatch(Character::isDigit)) {
            return new NumberRefused(
                    FaultKind.AMBIGUOUS_NUMBER, "a comma among the digits", "a decimal point and no thousands mark");
        }
        if (NO_NUMBER.matcher(text).matches()) {
            return new NumberRefused(FaultKind.NOT_A_NUMBER, "nothing was measured that way", EXAMPLE);
        }
        Matcher unit = WITH_UNIT.matcher(text);
        if (unit.matches()) {
            return new NumberRefused(
                    FaultKind.NOT_A_NUMBER,
                    "there is more after the number",
                    "the number alone, " + unit.group(1) + "; a unit has a column of its own");
        }
        if (text.endsWith(".")) {
            return new NumberRefused(
                    FaultKind.NOT_A_NUMBER, "digits are missing after the point", "a number such as 12 or 12.0");
        }
        return new NumberRefused(FaultKind.NOT_A_NUMBER, "", EXAMPLE);
    }
}
