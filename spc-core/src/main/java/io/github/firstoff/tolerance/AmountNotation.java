package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** Reads lengths and angles: {@code 12.50}, {@code 45.5°}, {@code 45°30'15"}, {@code 30'}. Without sign. */
final class AmountNotation {
    private static final BigDecimal SIXTY = new BigDecimal(60);
    private static final BigDecimal SECONDS_OF_DEGREE = new BigDecimal(3600);

    private AmountNotation() {}

    /**
     * @param angleExpected whether a lone {@code "} means seconds of arc rather than inches
     */
    static Amount read(Scanner in, boolean angleExpected) {
        in.skipSpace();
        int start = in.position();
        BigDecimal first = in.number();
        if (acceptDegree(in)) {
            return degrees(in, start, first);
        }
        if (in.peek() == '\'' && in.peek(1) != '\'') {
            in.accept("'");
            return minutes(in, Optional.empty(), first, start);
        }
        if (angleExpected && acceptSeconds(in)) {
            return new Amount(first, first.toPlainString() + "\"", Optional.of(Unit.ARC_SECOND));
        }
        if (!angleExpected) {
            in.acceptUnit();
        }
        return Amount.length(first);
    }

    private static boolean acceptDegree(Scanner in) {
        if (in.peek() == '°') {
            in.accept("°");
            return true;
        }
        return in.acceptWord("deg") || in.acceptWord("degree") || in.acceptWord("degrees");
    }

    private static boolean acceptSeconds(Scanner in) {
        if (in.peek() == '"') {
            in.accept("\"");
            return true;
        }
        if (in.peek() == '\'' && in.peek(1) == '\'') {
            in.accept("''");
            return true;
        }
        return false;
    }

    private static Amount degrees(Scanner in, int start, BigDecimal degrees) {
        int afterDegrees = in.position();
        if (!in.startsNumber()) {
            in.back(afterDegrees);
            return Amount.degrees(degrees);
        }
        BigDecimal second = in.number();
        if (in.peek() != '\'' || in.peek(1) == '\'') {
            // what follows the degrees belongs to the next part of the notation
            in.back(afterDegrees);
            return Amount.degrees(degrees);
        }
        in.accept("'");
        requireWhole(in, start, degrees, "degrees");
        requireBelowSixty(in, afterDegrees, second, "minutes");
        return minutes(in, Optional.of(degrees), second, start);
    }

    private static Amount minutes(Scanner in, Optional<BigDecimal> degrees, BigDecimal minutes, int start) {
        int afterMinutes = in.position();
        BigDecimal wholeDegrees = degrees.orElse(BigDecimal.ZERO);
        String digits = degrees.map(whole -> whole.toPlainString() + "°").orElse("") + minutes.toPlainString() + "'";
        if (in.startsNumber()) {
            BigDecimal seconds = in.number();
            if (acceptSeconds(in)) {
                requireWhole(in, start, minutes, "minutes");
                requireBelowSixty(in, afterMinutes, seconds, "seconds");
                BigDecimal value = wholeDegrees
                        .multiply(SECONDS_OF_DEGREE)
                        .add(minutes.multiply(SIXTY))
                        .add(seconds);
                return new Amount(value, digits + seconds.toPlainString() + "\"", Optional.of(Unit.ARC_SECOND));
            }
        }
        in.back(afterMinutes);
        return new Amount(wholeDegrees.multiply(SIXTY).add(minutes), digits, Optional.of(Unit.ARC_MINUTE));
    }

    private static void requireWhole(Scanner in, int at, BigDecimal value, String what) {
        if (value.scale() > 0) {
            throw in.fault(
                    at,
                    value.toPlainString() + " " + what + " cannot be followed by a smaller part of the angle",
                    "45.5° or 45°30'");
        }
    }

    private static void requireBelowSixty(Scanner in, int at, BigDecimal value, String what) {
        if (value.compareTo(SIXTY) >= 0) {
            throw in.fault(at, value.toPlainString() + " " + what + ": 60 make the next larger part", "45°30'");
        }
    }
}
