package io.github.firstoff.conformance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Amounts in another unit for display beside a verdict. A millimetre is no finite decimal of an inch, so these may round, to 34
 * digits; the verdicts themselves compare by multiplication and never come here.
 */
final class ExactLengths {
    private ExactLengths() {}

    static BigDecimal in(Unit wanted, BigDecimal value, Unit unit) {
        if (wanted == unit) {
            return value;
        }
        return unit.convert(value, wanted, MathContext.DECIMAL128);
    }
}
