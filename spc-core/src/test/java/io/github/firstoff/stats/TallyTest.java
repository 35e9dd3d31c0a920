package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Laws of the tallies: however data are cut and merged, the whole results. */
class TallyTest {
    private static final long SEED = 42;
    /** The path in double: merging in another order moves the last bits. */
    private static final double STREAMED_PATH = 1e-12;

    private static List<int[]> cuts(int length, Random random) {
        List<int[]> parts = new ArrayList<>();
        int from = 0;
        while (from < length) {
            int to = Math.min(length, from + random.nextInt(7));
            parts.add(new int[] {from, to});
            from = to;
        }
        return parts;
    }

    @Test
    void deviationTallyMergesToTheLastBitInAnyOrder() {
        Random random = new Random(SEED);
        for (int round = 0; round < 200; round++) {
            long[] d = random.longs(1 + random.nextInt(80)).toArray();
            DeviationTally whole = DeviationTally.of(d);
            List<int[]> parts = cuts(d.length, random);
            Collections.shuffle(parts, random);
            DeviationTally merged = DeviationTally.EMPTY;
            for (int[] part : parts) {
                DeviationTally piece = DeviationTally.of(d, part[0], part[1]);
                merged = random.nextBoolean() ? merged.merge(piece) : piece.merge(merged);
            }
            DeviationTally oneByOne = DeviationTally.EMPTY;
            for (long x : d) {
                oneByOne = oneByOne.plus(x);
            }
            assertThat(merged).isEqualTo(whole).isEqualTo(oneByOne);
        }
    }

    @Test
    void deviationTallyIsExactAtTheEdgesOfLong() {
        long[] d = new long[1000];
        Arrays.fill(d, Long.MIN_VALUE);
        d[0] = Long.MAX_VALUE;
        BigInteger sum = BigInteger.ZERO;
        BigInteger squares = BigInteger.ZERO;
        for (long x : d) {
            sum = sum.add(BigInteger.valueOf(x));
            squares = squares.add(BigInteger.valueOf(x).pow(2));
        }
        DeviationTally tally = DeviationTally.of(d);
        assertThat(tally.sum()).isEqualTo(sum);
        assertThat(tally.sumOfSquares()).isEqualTo(squares);
        assertThat(tally.minimum()).isEqualTo(Long.MIN_VALUE);
        assertThat(tally.maximum()).isEqualTo(Long.MAX_VALUE);
    }

    @Test
    void statisticsOfTooFewValuesAreRefused() {
        assertThatThrownBy(DeviationTally.EMPTY::mean).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(DeviationTally.of(5)::standardDeviation)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("2 values, not 1");
        assertThatThrownBy(Moments.EMPTY::variance).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(MovingRangeTally.of(5)::mean).isInstanceOf(IllegalStateException.class);
        assertThat(DeviationTally.of(5, 5, 5).standardDeviation()).isZero();
    }

    @Test
    void movingRangesMergeAcrossTheCut() {
        Random random = new Random(SEED);
        for (int round = 0; round < 200; round++) {
            long[] d = random.longs(random.nextInt(60), -1_000_000, 1_000_000).toArray();
            MovingRangeTally merged = MovingRangeTally.EMPTY;
            for (int[] part : cuts(d.length, random)) {
                merged = merged.merge(MovingRangeTally.of(Arrays.copyOfRange(d, part[0], part[1])));
            }
            MovingRangeTally oneByOne = MovingRangeTally.EMPTY;
            for (long x : d) {
                oneByOne = oneByOne.plus(x);
            }
            assertThat(merged).isEqualTo(MovingRangeTally.of(d)).isEqualTo(oneByOne);
        }
    }

    @Test
    void movingRangeMergeIsAssociative() {
        MovingRangeTally a = MovingRangeTally.of(1, 4);
        MovingRangeTally b = MovingRangeTally.of(-3);
        MovingRangeTally c = MovingRangeTally.of(7, 7, 9);
        assertThat(a.merge(b).merge(c)).isEqualTo(a.merge(b.merge(c)));
        assertThat(a.merge(b).merge(c).sum()).isEqualTo(BigInteger.valueOf(3 + 7 + 10 + 0 + 2));
    }

    @Test
    void momentsMergeWithinTheirAccuracy() {
        Random random = new Random(SEED);
        for (int round = 0; round < 100; round++) {
            double[] x = new double[20 + random.nextInt(300)];
            for (int i = 0; i < x.length; i++) {
                // skewed, so that the third moment is no cancellation to zero
                x[i] = 12.5 + 0.01 * Math.exp(random.nextGaussian());
            }
            Moments whole = Moments.of(x);
            Moments merged = Moments.EMPTY;
            for (int[] part : cuts(x.length, random)) {
                merged = merged.merge(Moments.of(Arrays.copyOfRange(x, part[0], part[1])));
            }
            Moments oneByOne = Moments.EMPTY;
            for (double v : x) {
                oneByOne = oneByOne.plus(v);
            }
            for (Moments other : List.of(merged, oneByOne)) {
                assertThat(other.count()).isEqualTo(whole.count());
                assertThat(other.minimum()).isEqualTo(whole.minimum());
                assertThat(other.maximum()).isEqualTo(whole.maximum());
                assertThat(other.mean()).isCloseTo(whole.mean(), within(STREAMED_PATH * whole.mean()));
                assertThat(other.m2()).isCloseTo(whole.m2(), within(STREAMED_PATH * whole.m2()));
                assertThat(other.m3()).isCloseTo(whole.m3(), within(STREAMED_PATH * Math.abs(whole.m3())));
                assertThat(other.m4()).isCloseTo(whole.m4(), within(STREAMED_PATH * whole.m4()));
            }
        }
    }

    @Test
    void thirdAndFourthMomentsOfASmallSample() {
        // 1, 2, 3, 10 about their mean 4: squares 9+4+1+36, cubes −27−8−1+216, fourth powers 81+16+1+1296
        for (Moments m : List.of(
                Moments.of(1, 2, 3, 10),
                Moments.EMPTY.plus(1).plus(2).plus(3).plus(10),
                Moments.of(1, 2).merge(Moments.of(3, 10)))) {
            assertThat(m.mean()).isEqualTo(4);
            assertThat(m.m2()).isCloseTo(50, within(1e-13));
            assertThat(m.m3()).isCloseTo(180, within(1e-12));
            assertThat(m.m4()).isCloseTo(1394, within(1e-11));
        }
        assertThatThrownBy(() -> Moments.of(1, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void quotientsAreRoundedOnce() {
        Random random = new Random(SEED);
        for (int round = 0; round < 2000; round++) {
            // both below 2^53: the hardware division is correctly rounded and an independent answer
            long p = random.nextLong() >> 11;
            long q = (random.nextLong() >>> 12) + 1;
            assertThat(ExactRatio.of(BigInteger.valueOf(p), BigInteger.valueOf(q)))
                    .isEqualTo((double) p / (double) q);
        }
        BigInteger huge = BigInteger.TEN.pow(60);
        assertThat(ExactRatio.of(huge.add(BigInteger.ONE), huge)).isEqualTo(1.0);
        assertThat(ExactRatio.of(huge.negate(), BigInteger.TEN.pow(58))).isEqualTo(-100.0);
        assertThatThrownBy(() -> ExactRatio.of(huge, BigInteger.ZERO)).isInstanceOf(ArithmeticException.class);
    }
}
