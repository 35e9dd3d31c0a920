package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * A number of the drawing with the digits in which it is written: a length in whatever unit the drawing has, or an angle in
 * degrees, or in degrees, minutes and seconds.
 *
 * @param value signed; in {@code unit}
 * @param digits how the absolute value is written, for example {@code 12.50} or {@code 45°30'}
 * @param unit the degree, minute or second of arc for angles; empty for lengths
 */
record Amount(BigDecimal value, String digits, Optional<Unit> unit) {

    static Amount length(BigDecimal value) {
        return new Amount(value, value.abs().toPlainString(), Optional.empty());
    }

    static Amount degrees(BigDecimal value) {
        return new Amount(value, value.abs().toPlainString() + "°", Optional.of(Unit.DEGREE));
    }

    boolean isAngle() {
        return unit.isPresent();
    }

    boolean isZero() {
        return value.signum() == 0;
    }

    boolean isNegative() {
        return value.signum() < 0;
    }

    Amount negate() {
        return new Amount(value.negate(), digits, unit);
    }

    /** The number with a minus where it is negative. */
    String text() {
        return isNegative() ? "-" + digits : digits;
    }

    /** The number as a deviation: with its sign, zero without one. */
    String signedText() {
        return value.signum() > 0 ? "+" + digits : text();
    }

    /** The value with its unit, a length taking the given one. */
    Exact exact(Unit lengthUnit) {
        return new Exact(value, unit.orElse(lengthUnit));
    }
}
