package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * What was found, as far as a verdict needs it: something that compares with a limit, exactly.
 *
 * <p>Not every finding is a decimal: a position from coordinates is a square root, and is compared by its square.
 */
public interface Found {

    /** Negative if what was found lies below the limit, positive if above, 0 if exactly on it. */
    int compareTo(BigDecimal limit, Unit unit);

    /** A value as read; compared across units of one kind by their exact factors. */
    static Found of(BigDecimal value, Unit valueUnit) {
        return (limit, unit) -> Unit.compare(value, valueUnit, limit, unit);
    }

    /**
     * A position from coordinates; squares are compared, across units of length by the square of their exact factors.
     *
     * @param deviation the deviation
     * @param deviationUnit the unit of the offsets it was made of, a length
     */
    static Found of(PositionDeviation deviation, Unit deviationUnit) {
        BigDecimal factor = deviationUnit.convert(BigDecimal.ONE, Unit.MILLIMETRE);
        BigDecimal squared = deviation.squared().multiply(factor).multiply(factor);
        return (limit, unit) -> {
            BigDecimal inMillimetres = unit.convert(limit, Unit.MILLIMETRE);
            return limit.signum() < 0 ? 1 : squared.compareTo(inMillimetres.multiply(inMillimetres));
        };
    }

    /**
     * A value that is rounded to the last place of the limit before it is compared, halves to even: the rounding method of ASTM
     * E29-13, section 6, by rule A of ISO 80000-1:2009, annex B.
     */
    static Found rounded(BigDecimal value, Unit valueUnit) {
        return (limit, unit) -> {
            // A millimetre is no finite decimal of an inch: 34 digits lie far below any place that a limit is written
            // to.
            BigDecimal inUnit = valueUnit == unit ? value : valueUnit.convert(value, unit, MathContext.DECIMAL128);
            return inUnit.setScale(limit.scale(), RoundingMode.HALF_EVEN).compareTo(limit);
        };
    }
}
