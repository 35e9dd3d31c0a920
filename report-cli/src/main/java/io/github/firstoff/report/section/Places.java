package io.github.firstoff.report.section;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Scale;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Where an exact value lies in a picture. A place in a picture may round; a figure beside it and a verdict never come from
 * here.
 */
final class Places {
    private static final Scale WHOLE = new Scale(BigDecimal.ZERO, 0, Unit.NONE);

    private Places() {}

    /** The value on an axis. */
    static double of(BigDecimal value) {
        return WHOLE.deviation(value);
    }

    /** The distance from one value up to another, rounded once. */
    static double between(BigDecimal from, BigDecimal to) {
        return WHOLE.stepsBetween(from, to);
    }

    /** A value in another unit of its kind. */
    static BigDecimal in(Unit wanted, BigDecimal value, Unit unit) {
        return unit.convert(value, wanted, MathContext.DECIMAL128);
    }
}
