package io.github.firstoff.report.section;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Figures as a sheet prints them. Readings and limits are exact and keep the digits they were written with; statistics are
 * rounded here, and only here, to the digits they are entitled to.
 */
final class Figures {
    /** Stands where there is nothing to print. */
    static final String DASH = "—";

    /** Fewer readings than this carry no second digit of a standard deviation, unless the first is a 1 or a 2. */
    private static final int SETTLED_SPREAD = 5;

    /** An interval reaching this far to either side leaves no meaning to the second decimal of an index. */
    private static final double WIDE_INTERVAL = 0.5;

    /** From here on nobody needs the second decimal of an index. */
    private static final double LARGE_INDEX = 10;

    private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_EVEN);
    private static final int SECONDS_OF_DEGREE = 3600;
    private static final int SECONDS_OF_MINUTE = 60;

    /** Below this many millimetres an amount reads better in micrometres. */
    private static final double SMALL = 0.1;

    private Figures() {}

    /** A decimal as it was written, with a true minus. */
    static String of(BigDecimal value) {
        return minus(value.toPlainString());
    }

    /** A decimal with at least so many places. */
    static String of(BigDecimal value, int places) {
        return of(value.scale() < places ? value.setScale(places, RoundingMode.UNNECESSARY) : value);
    }

    /** A computed figure rounded to so many places. */
    static String rounded(double value, int places) {
        BigDecimal exact = new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN);
        return of(exact.signum() == 0 ? exact.abs() : exact);
    }

    /** A standard deviation: two significant digits, one where the readings are too few for two. */
    static String spread(double value, int readings) {
        if (value == 0) {
            return "0";
        }
        BigDecimal two = new BigDecimal(value).round(TWO_DIGITS);
        boolean leadsLow = two.unscaledValue().toString().charAt(0) < '3';
        return of(readings >= SETTLED_SPREAD || leadsLow ? two : two.round(new MathContext(1, RoundingMode.HALF_EVEN)));
    }

    /** A computed figure with two significant digits. */
    static String twoDigits(double value) {
        return of(new BigDecimal(value).round(TWO_DIGITS));
    }

    /** A large computed figure with two significant digits, its thousands set apart. */
    static String grouped(double value) {
        return Phrases.count(new BigDecimal(value).round(TWO_DIGITS).longValueExact());
    }

    /** The decimals that hold two significant digits of an uncertainty; 0 for none. */
    static int placesOf(double uncertainty) {
        return uncertainty > 0
                ? Math.max(0, new BigDecimal(uncertainty).round(TWO_DIGITS).scale())
                : 0;
    }

    /** How many decimals an index with this interval is entitled to. */
    static int indexPlaces(double value, double lower, double upper) {
        boolean wide = upper - lower >= 2 * WIDE_INTERVAL;
        return wide || Math.abs(value) >= LARGE_INDEX ? 1 : 2;
    }

    /** A length or angle with its unit and two significant digits; small lengths in micrometres. */
    static String amount(double value, Unit unit) {
        double size = Math.abs(value);
        if (unit == Unit.MILLIMETRE && size < SMALL) {
            return of(new BigDecimal(size * 1000).round(TWO_DIGITS)) + " µm";
        }
        return with(of(new BigDecimal(size).round(TWO_DIGITS)), unit);
    }

    /** From one amount to another in one unit, that of the greater; one amount where both print alike. */
    static String amounts(double least, double most, Unit unit) {
        boolean small = unit == Unit.MILLIMETRE && Math.abs(most) < SMALL;
        double factor = small ? 1000 : 1;
        String low = of(new BigDecimal(Math.abs(least) * factor).round(TWO_DIGITS));
        String high = of(new BigDecimal(Math.abs(most) * factor).round(TWO_DIGITS));
        String range = low.equals(high) ? high : Wording.span(low, high);
        return small ? range + " µm" : with(range, unit);
    }

    /** A figure followed by its unit; the degree stands close. */
    static String with(String figure, Unit unit) {
        return switch (unit) {
            case NONE -> figure;
            case DEGREE, ARC_MINUTE, ARC_SECOND -> figure + unit.symbol();
            default -> figure + "\u00A0" + unit.symbol();
        };
    }

    /** A true minus instead of the hyphen. */
    static String minus(String figure) {
        return figure.replace('-', '−');
    }

    /** Both limits one above the other, one limit behind its sign, in as many decimals as the finer of the two. */
    static String limits(Limits limits) {
        int places = places(limits);
        if (limits.naturalLower() || limits.lower().isEmpty()) {
            return limits.upper()
                    .map(upper -> "≤ " + limit(upper, places, limits.unit()))
                    .orElse(DASH);
        }
        String lower = limit(limits.lower().get(), places, limits.unit());
        return limits.upper()
                .map(upper -> limit(upper, places, limits.unit()) + "\n" + lower)
                .orElse("≥ " + lower);
    }

    /** The limits in a sentence: {@code 51.949 to 51.979 mm}, {@code at least 5 mm}. */
    static String limitsInWords(Limits limits) {
        int places = places(limits);
        Unit unit = limits.unit();
        if (limits.naturalLower() || limits.lower().isEmpty()) {
            return limits.upper()
                    .map(upper -> Labels.text("limits.at-most", with(of(upper, places), unit)))
                    .orElseGet(() -> Labels.text("limits.none"));
        }
        String lower = of(limits.lower().get(), places);
        return limits.upper()
                .map(upper -> Wording.span(lower, with(of(upper, places), unit)))
                .orElseGet(() -> Labels.text("limits.at-least", with(lower, unit)));
    }

    /** The decimals that both limits are printed with. */
    static int places(Limits limits) {
        int lower = limits.naturalLower()
                ? 0
                : limits.lower().map(BigDecimal::scale).orElse(0);
        return Math.max(0, Math.max(lower, limits.upper().map(BigDecimal::scale).orElse(0)));
    }

    private static String limit(BigDecimal value, int places, Unit unit) {
        return switch (unit) {
            case ARC_MINUTE -> sexagesimal(value.multiply(BigDecimal.valueOf(SECONDS_OF_MINUTE)));
            case ARC_SECOND -> sexagesimal(value);
            default -> of(value, places);
        };
    }

    /** Degrees, minutes and, where there are any, seconds: limits of angles that are no finite decimals of a degree. */
    static String sexagesimal(BigDecimal seconds) {
        BigDecimal[] degrees = seconds.abs().divideAndRemainder(BigDecimal.valueOf(SECONDS_OF_DEGREE));
        BigDecimal[] minutes = degrees[1].divideAndRemainder(BigDecimal.valueOf(SECONDS_OF_MINUTE));
        String rest =
                minutes[1].signum() == 0 ? "" : minutes[1].stripTrailingZeros().toPlainString() + "″";
        return (seconds.signum() < 0 ? "−" : "") + degrees[0].toBigInteger() + "°" + minutes[0].toBigInteger() + "′"
                + rest;
    }
}
