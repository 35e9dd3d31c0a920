package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tallies of neighbours merge to the tally of the whole, to the last bit, however they are cut. */
class OrderedTallyLawTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void segmentsMergeToTheWhole(long seed) {
        Random random = new Random(seed);
        int n = 3 + random.nextInt(60);
        // some seeds reach the far end of what a reading may be, where products need 107 bits
        long reach = seed % 2 == 0 ? 1L << 53 : 400;
        long[] d = random.longs(n, -reach, reach + 1).toArray();
        int cut = random.nextInt(n + 1);
        int second = cut + random.nextInt(n + 1 - cut);
        LagTally whole = LagTally.of(d);
        LagTally merged = LagTally.of(Arrays.copyOfRange(d, 0, cut))
                .merge(LagTally.of(Arrays.copyOfRange(d, cut, second)))
                .merge(LagTally.of(Arrays.copyOfRange(d, second, n)));
        assertThat(merged).isEqualTo(whole);
        LagTally one = LagTally.EMPTY;
        for (long value : d) {
            one = one.plus(value);
        }
        assertThat(one).isEqualTo(whole);
        LineTally line = LineTally.ofSeries(d, 0, n);
        assertThat(LineTally.ofSeries(d, cut, n).merge(LineTally.ofSeries(d, 0, cut)))
                .isEqualTo(line);
        LineTally points = LineTally.EMPTY;
        for (int i = n - 1; i >= 0; i--) {
            points = points.plus(i, d[i]);
        }
        assertThat(points).isEqualTo(line);
        BigInteger products = BigInteger.ZERO;
        for (int i = 1; i < n; i++) {
            products = products.add(BigInteger.valueOf(d[i]).multiply(BigInteger.valueOf(d[i - 1])));
        }
        assertThat(whole.products()).isEqualTo(products);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void productsOfAnySizeSumExactly(long seed) {
        Random random = new Random(seed);
        ProductSum sum = new ProductSum();
        BigInteger expected = BigInteger.ZERO;
        for (int i = 0; i < 3000; i++) {
            long a = i % 5 == 0 ? Long.MIN_VALUE : random.nextLong();
            long b = i % 7 == 0 ? Long.MIN_VALUE : random.nextLong() >> random.nextInt(64);
            sum.add(a, b);
            expected = expected.add(BigInteger.valueOf(a).multiply(BigInteger.valueOf(b)));
        }
        assertThat(sum.value()).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void aConstantAndAStepChangeNothing(long seed) {
        Random random = new Random(seed);
        long[] d = random.longs(50, -900, 900).toArray();
        long[] moved = Arrays.stream(d).map(v -> 7 * v + 123_456).toArray();
        assertThat(LagTally.of(moved).lagOneAutocorrelation())
                .isCloseTo(LagTally.of(d).lagOneAutocorrelation(), within(1e-15));
        LineTally line = LineTally.ofSeries(d, 0, 50);
        LineTally other = LineTally.ofSeries(moved, 0, 50);
        assertThat(other.slope()).isCloseTo(7 * line.slope(), within(1e-12));
        assertThat(other.residualStandardDeviation()).isCloseTo(7 * line.residualStandardDeviation(), within(1e-9));
        OutlierTests.Result one = OutlierTests.generalised(d, 5, 0.05);
        OutlierTests.Result two = OutlierTests.generalised(moved, 5, 0.05);
        for (int i = 0; i < 5; i++) {
            assertThat(two.steps().get(i).index()).isEqualTo(one.steps().get(i).index());
            assertThat(two.steps().get(i).statistic())
                    .isCloseTo(one.steps().get(i).statistic(), within(1e-12));
        }
    }
}
