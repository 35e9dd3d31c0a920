package io.github.firstoff.stats;

import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Averages and sums that remember order: however a series is cut, its pieces merge to the whole. */
class DriftTallyLawTest {
    /** Of the greatest value that takes part. */
    private static final double MERGED = 1e-12;

    private static double[] points(Random random, int n, double mean) {
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = mean + random.nextGaussian();
        }
        return x;
    }

    private static EwmaTally merged(Random random, double lambda, double[] x, int from, int to) {
        if (to - from < 2 || random.nextInt(6) == 0) {
            return EwmaTally.of(lambda, x, from, to);
        }
        int cut = from + random.nextInt(to - from + 1);
        return merged(random, lambda, x, from, cut).merge(merged(random, lambda, x, cut, to));
    }

    private static CusumTally mergedSums(Random random, double k, double[] x, int from, int to) {
        if (to - from < 2 || random.nextInt(6) == 0) {
            return CusumTally.of(k, x, from, to);
        }
        int cut = from + random.nextInt(to - from + 1);
        return mergedSums(random, k, x, from, cut).merge(mergedSums(random, k, x, cut, to));
    }

    @ParameterizedTest
    @CsvSource({"1, 0.2", "2, 0.05", "3, 1", "4, 0.4", "5, 0.01", "6, 0.2", "7, 0.1", "8, 0.9"})
    void averagesMergeToTheWhole(long seed, double lambda) {
        Random random = new Random(seed);
        for (int round = 0; round < 60; round++) {
            double[] x = points(random, random.nextInt(400), seed % 2 == 0 ? 0 : 1000);
            double start = 10 * random.nextGaussian();
            // the definition, point by point
            double z = start;
            double variance = 0;
            double greatest = Math.abs(start);
            EwmaTally one = EwmaTally.empty(lambda);
            for (double value : x) {
                z = lambda * value + (1 - lambda) * z;
                variance = lambda * lambda + (1 - lambda) * (1 - lambda) * variance;
                greatest = Math.max(greatest, Math.abs(value));
                one = one.plus(value);
            }
            for (EwmaTally tally :
                    new EwmaTally[] {EwmaTally.of(lambda, x), one, merged(random, lambda, x, 0, x.length)}) {
                assertThat(tally.count()).isEqualTo(x.length);
                assertThat(tally.after(start)).isCloseTo(z, within(MERGED * greatest));
                assertThat(tally.varianceAfter(0)).isCloseTo(variance, within(MERGED));
                assertThat(tally.varianceAfter(3))
                        .isCloseTo(variance + 3 * Math.pow(1 - lambda, 2.0 * x.length), within(3 * MERGED));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 0.5, 0", "2, 0.25, 0", "3, 0, 0.1", "4, 0.5, 1", "5, 1, 0", "6, 0.5, -2", "7, 0.5, 0.5"})
    void sumsMergeToTheWhole(long seed, double k, double mean) {
        Random random = new Random(seed);
        for (int round = 0; round < 60; round++) {
            double[] x = points(random, random.nextInt(400), mean);
            double start = round % 3 == 0 ? 0 : 4 * random.nextDouble();
            double sum = start;
            double peak = Double.NEGATIVE_INFINITY;
            double way = start + 1;
            CusumTally one = CusumTally.empty(k);
            for (double value : x) {
                sum = Math.max(0, sum + value - k);
                peak = Math.max(peak, sum);
                way += Math.abs(value - k);
                one = one.plus(value);
            }
            for (CusumTally tally :
                    new CusumTally[] {CusumTally.of(k, x), one, mergedSums(random, k, x, 0, x.length)}) {
                assertThat(tally.count()).isEqualTo(x.length);
                assertThat(tally.after(start)).isCloseTo(sum, within(MERGED * way));
                if (x.length > 0) {
                    assertThat(tally.peak(start)).isCloseTo(peak, within(MERGED * way));
                } else {
                    assertThat(tally.peak(start)).isEqualTo(start + Double.NEGATIVE_INFINITY);
                }
            }
        }
    }

    @Test
    void aClimbAcrossTheCutIsFound() {
        // neither half reaches 5 from 0; together they do
        double[] x = {0, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 0};
        CusumTally first = CusumTally.of(0.5, x, 0, 4);
        CusumTally second = CusumTally.of(0.5, x, 4, 8);
        assertThat(first.peak(0)).isEqualTo(3);
        assertThat(second.peak(0)).isEqualTo(3);
        CusumTally whole = first.merge(second);
        assertThat(whole.peak(0)).isEqualTo(6);
        assertThat(whole.after(0)).isEqualTo(5.5);
        assertThat(second.peak(first.after(0))).isEqualTo(6);
        // with a head start the first half reaches 5 already: 2.5, then -0.5, then three times +1
        assertThat(first.peak(2.5)).isEqualTo(5);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void wholeNumbersMergeExactlyAndAssociatively(long seed) {
        Random random = new Random(seed);
        double[] x = random.ints(90, -9, 10).asDoubleStream().toArray();
        CusumTally a = CusumTally.of(1, x, 0, 30);
        CusumTally b = CusumTally.of(1, x, 30, 60);
        CusumTally c = CusumTally.of(1, x, 60, 90);
        assertThat(a.merge(b).merge(c)).isEqualTo(a.merge(b.merge(c))).isEqualTo(CusumTally.of(1, x));
        assertThat(CusumTally.empty(1).merge(a)).isEqualTo(a);
        assertThat(a.merge(CusumTally.empty(1))).isEqualTo(a);
        EwmaTally halves = EwmaTally.of(0.5, x, 0, 10).merge(EwmaTally.of(0.5, x, 10, 20));
        assertThat(halves).isEqualTo(EwmaTally.of(0.5, x, 0, 20));
        assertThat(EwmaTally.empty(0.5).merge(halves)).isEqualTo(halves);
        assertThat(halves.merge(EwmaTally.empty(0.5))).isEqualTo(halves);
    }

    @Test
    void publishedExamples() {
        // NIST/SEMATECH e-Handbook 6.3.2.4 and 6.3.2.3, each cut in the middle
        JsonNode ewma = reference("chart/drift.json", "nist-ewma-printed");
        double[] x = doubles(ewma.path("input").path("values"));
        EwmaTally late = EwmaTally.of(0.3, x, 7, 20);
        assertThat(EwmaTally.of(0.3, x, 0, 7).merge(late).after(50)).isCloseTo(51.99, within(0.005));
        assertThat(late.after(49.75)).isCloseTo(51.99, within(0.005));
        JsonNode cusum = reference("chart/drift.json", "nist-cusum-computed");
        double[] y = doubles(cusum.path("input").path("values"));
        double[] distances = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            distances[i] = y[i] - 325;
        }
        CusumTally upper =
                CusumTally.of(0.3175, distances, 0, 13).merge(CusumTally.of(0.3175, distances, 13, y.length));
        assertThat(upper.after(0)).isCloseTo(19.035, within(1e-10));
        // the first signal is at point 14
        assertThat(CusumTally.of(0.3175, distances, 0, 13).peak(0)).isLessThan(4.1959);
        assertThat(CusumTally.of(0.3175, distances, 0, 14).peak(0)).isGreaterThan(4.1959);
        // variances of points may differ: 0.04 · 4 then 0.04 · 9 + 0.64 · 0.16
        assertThat(EwmaTally.empty(0.2).plus(1, 4).plus(1, 9).varianceAfter(0)).isCloseTo(0.4624, within(1e-15));
    }

    @Test
    void whatDoesNotGoTogetherIsRefused() {
        assertThatThrownBy(() -> EwmaTally.empty(0.2).merge(EwmaTally.empty(0.3)))
                .hasMessageContaining("0.3");
        assertThatThrownBy(() -> CusumTally.empty(0.5).merge(CusumTally.empty(1)))
                .hasMessageContaining("1.0");
        assertThatThrownBy(() -> EwmaTally.empty(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> EwmaTally.empty(1.1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EwmaTally(0.5, -1, 1, 0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EwmaTally(0.5, 1, 1.5, 0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EwmaTally(0.5, 1, 0.5, Double.NaN, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EwmaTally(0.5, 1, 0.5, 0, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CusumTally.empty(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CusumTally(0, 1, 1, -1, 1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CusumTally(0, 1, 1, 2, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CusumTally(0, 1, 1, 0, 0.5, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CusumTally.of(0.5, 1, 2).after(-0.1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CusumTally.of(0.5, 1, 2).peak(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        double[] x = {1, 2};
        assertThatThrownBy(() -> CusumTally.of(0.5, x, -1, 2)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> CusumTally.of(0.5, x, 0, 3)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> EwmaTally.of(0.5, x, 2, 1)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> EwmaTally.of(0.5, x, 0, 3)).isInstanceOf(IndexOutOfBoundsException.class);
    }
}
