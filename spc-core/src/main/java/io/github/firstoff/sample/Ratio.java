package io.github.firstoff.sample;

import java.math.BigDecimal;
import java.math.MathContext;

/** How many times one exact amount goes into another, as a {@code double}. */
public final class Ratio {
    private static final MathContext AMPLE = new MathContext(60);

    private Ratio() {}

    /**
     * {@code part/whole}: the quotient to 60 digits, then rounded once; differences that cancel must be taken before, in decimals.
     *
     * @throws ArithmeticException if the whole is zero
     */
    public static double of(BigDecimal part, BigDecimal whole) {
        return part.divide(whole, AMPLE).doubleValue();
    }
}
