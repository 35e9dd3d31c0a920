package io.github.firstoff.intake;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads an angle in degrees, minutes and seconds with their marks: {@code 45°30'}, {@code -0°07'30.5"}. Kept in the smallest part that is
 * written, because 20 minutes are no finite decimal of a degree.
 *
 * @param value in the unit
 * @param unit the minute or the second of arc
 */
record ExactAngle(BigDecimal value, Unit unit) {
    private static final BigDecimal SIXTY = new BigDecimal("60");
    private static final Pattern WRITTEN =
            Pattern.compile("([+\\-\u2212]?)(\\d{1,4})\\s*[°º]\\s*(\\d{1,3}(?:\\.\\d{1,20})?)\\s*['′’]"
                    + "(?:\\s*(\\d{1,3}(?:\\.\\d{1,20})?)\\s*(?:[\"″”]|''))?");
    private static final Pattern WITHOUT_MARKS =
            Pattern.compile("([+\\-\u2212]?\\d{1,3})[\\s:](\\d{1,2})(?:[\\s:](\\d{1,2}(?:\\.\\d+)?))?");

    /** The angle; empty if the text is not written so. */
    static Optional<ExactAngle> parse(String text) throws NumberRefused {
        Matcher bare = WITHOUT_MARKS.matcher(text);
        if (bare.matches()) {
            throw new NumberRefused(
                    FaultKind.AMBIGUOUS_NUMBER,
                    "degrees, minutes and seconds need their marks",
                    bare.group(1) + "°" + bare.group(2) + "'" + (bare.group(3) == null ? "" : bare.group(3) + "\"")
                            + ", or decimal degrees");
        }
        Matcher parts = WRITTEN.matcher(text);
        if (!parts.matches()) {
            return Optional.empty();
        }
        BigDecimal degrees = new BigDecimal(parts.group(2));
        BigDecimal minutes = new BigDecimal(parts.group(3));
        boolean toSeconds = parts.group(4) != null;
        requireBelowSixty(minutes, "minutes");
        BigDecimal value = degrees.multiply(SIXTY).add(minutes);
        if (toSeconds) {
            if (minutes.scale() > 0) {
                throw new NumberRefused(
                        FaultKind.NOT_A_NUMBER,
                        "only the last part of an angle has decimals",
                        "whole minutes, such as 45°30'15.5\"");
            }
            BigDecimal seconds = new BigDecimal(parts.group(4));
            requireBelowSixty(seconds, "seconds");
            value = value.multiply(SIXTY).add(seconds);
        }
        boolean negative = parts.group(1).equals("-") || parts.group(1).equals("\u2212");
        return Optional.of(
                new ExactAngle(negative ? value.negate() : value, toSeconds ? Unit.ARC_SECOND : Unit.ARC_MINUTE));
    }

    private static void requireBelowSixty(BigDecimal part, String what) throws NumberRefused {
        if (part.compareTo(SIXTY) >= 0) {
            throw new NumberRefused(
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    part.toPlainString() + " " + what + ": 60 make the next larger part",
                    what + " below 60");
        }
    }
}
