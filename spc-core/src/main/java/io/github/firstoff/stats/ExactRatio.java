package io.github.firstoff.stats;

import java.math.BigInteger;

/** Quotients of whole numbers, rounded once: the double nearest to the exact quotient. */
public final class ExactRatio {
    private ExactRatio() {}

    /** Bits kept before the final rounding: the 53 of a double, a guard and a sticky bit, and room. */
    private static final int BITS = 64;

    /**
     * The double nearest to numerator / denominator.
     *
     * @throws ArithmeticException if the denominator is not above 0
     */
    public static double of(BigInteger numerator, BigInteger denominator) {
        if (denominator.signum() <= 0) {
            throw new ArithmeticException("the denominator must be above zero, not " + denominator);
        }
        if (numerator.signum() == 0) {
            return 0.0;
        }
        int shift = BITS - (numerator.bitLength() - denominator.bitLength());
        BigInteger magnitude = numerator.abs();
        BigInteger[] parts = shift >= 0
                ? magnitude.shiftLeft(shift).divideAndRemainder(denominator)
                : magnitude.divideAndRemainder(denominator.shiftLeft(-shift));
        BigInteger quotient = parts[0];
        if (parts[1].signum() != 0) {
            // a sticky last bit: the discarded rest can only break a tie, and so it does
            quotient = quotient.setBit(0);
        }
        double result = Math.scalb(quotient.doubleValue(), -shift);
        return numerator.signum() < 0 ? -result : result;
    }
}
