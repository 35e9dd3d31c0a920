package io.github.firstoff.samples;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.SplittableRandom;

/**
 * How a machine spreads around its setting, read with a gauge of finite resolution.
 *
 * <p>The scatter is the sum of twelve uniform numbers less six (the classical approximation to a normal deviate, common
 * practice): it is made of whole numbers only, so the same seed gives the same digits on every platform and every later JDK,
 * which the normal generators of the JDK do not promise.
 *
 * @param mean where the process is set
 * @param spread its standard deviation
 * @param step the resolution of the gauge
 */
record Machining(BigDecimal mean, BigDecimal spread, BigDecimal step) {

    private static final int BITS = 20;
    private static final BigDecimal ONE_UNIT = BigDecimal.valueOf(1L << BITS);
    private static final BigDecimal SIX = BigDecimal.valueOf(6);

    static Machining of(String mean, String spread, String step) {
        return new Machining(new BigDecimal(mean), new BigDecimal(spread), new BigDecimal(step));
    }

    /** The next reading, with the setting moved by that much. */
    String next(SplittableRandom random, BigDecimal moved) {
        long sum = 0;
        for (int i = 0; i < 12; i++) {
            sum += random.nextLong() >>> (Long.SIZE - BITS);
        }
        BigDecimal deviate = BigDecimal.valueOf(sum).divide(ONE_UNIT).subtract(SIX);
        BigDecimal value = mean.add(moved).add(spread.multiply(deviate));
        return value.divide(step, 0, RoundingMode.HALF_EVEN)
                .multiply(step)
                .setScale(step.scale(), RoundingMode.UNNECESSARY)
                .toPlainString();
    }
}
