package io.github.firstoff.stats;

import java.math.BigInteger;

/** A sum of products of longs in 192 bits: cannot overflow for any array, and allocates nothing until it is read. */
final class ProductSum {
    private long low;
    private long middle;
    private long high;

    void add(long a, long b) {
        long productLow = a * b;
        long productHigh = Math.multiplyHigh(a, b);
        low += productLow;
        long carry = Long.compareUnsigned(low, productLow) < 0 ? 1 : 0;
        long before = middle;
        middle += productHigh;
        high += (productHigh >> 63) + (Long.compareUnsigned(middle, before) < 0 ? 1 : 0);
        middle += carry;
        if (carry == 1 && middle == 0) {
            high++;
        }
    }

    BigInteger value() {
        return BigInteger.valueOf(high)
                .shiftLeft(64)
                .add(unsigned(middle))
                .shiftLeft(64)
                .add(unsigned(low));
    }

    private static BigInteger unsigned(long word) {
        return BigInteger.valueOf(word >>> 32).shiftLeft(32).add(BigInteger.valueOf(word & 0xFFFFFFFFL));
    }
}
