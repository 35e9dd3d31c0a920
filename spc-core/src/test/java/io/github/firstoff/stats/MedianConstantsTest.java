package io.github.firstoff.stats;

import static io.github.firstoff.reference.ReferenceFile.file;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MedianConstantsTest {
    static Stream<JsonNode> cases() {
        return StreamSupport.stream(file("constants/medians.json").path("cases").spliterator(), false);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void factorsAgreeWithAdaptiveQuadratureAndPrint(JsonNode c) {
        MedianConstants found =
                MedianConstants.compute(c.path("input").path("n").asInt());
        JsonNode e = c.path("expected");
        assertThat(found.standardDeviation()).isCloseTo(e.path("sd_median").asDouble(), within(1e-10));
        assertThat(found.d4()).isCloseTo(e.path("d4").asDouble(), within(1e-10));
        if (e.has("a6_printed")) {
            // printed tables differ by a unit of the third decimal
            assertThat(found.a6()).isCloseTo(e.path("a6_printed").asDouble(), within(1.5e-3));
            assertThat(found.d4()).isCloseTo(e.path("d4_printed").asDouble(), within(6e-4));
        }
    }

    @Test
    void medianMovingRangeDivisor() {
        JsonNode e = reference("chart/variance.json", "CONST-median-MR").path("expected");
        assertThat(MedianConstants.of(2).d4()).isCloseTo(e.path("d4").asDouble(), within(1e-9));
        // √2 Φ⁻¹(3/4)
        assertThat(MedianConstants.of(2).d4())
                .isCloseTo(Math.sqrt(2) * Distributions.normalQuantile(0.75), within(1e-12));
        // the median of two is their mean
        assertThat(MedianConstants.of(2).standardDeviation()).isCloseTo(Math.sqrt(0.5), within(1e-12));
        assertThat(MedianConstants.of(100).standardDeviation()).isCloseTo(Math.sqrt(Math.PI / 2 / 100), within(1e-3));
        assertThatThrownBy(() -> MedianConstants.of(1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> MedianConstants.of(101)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void c4OfManyDegreesOfFreedom() {
        for (int n : new int[] {2, 5, 10, 25, 999, 1000}) {
            assertThat(ChartConstants.c4OfDegrees(n - 1))
                    .isCloseTo(ChartConstants.of(n).c4(), within(1e-14));
        }
        // the two paths meet: the series at 1000 continues c4(ν)c4(ν+1) = √(ν/(ν+1)) (Γ recursion)
        for (long df = 998; df < 1003; df++) {
            assertThat(ChartConstants.c4OfDegrees(df) * ChartConstants.c4OfDegrees(df + 1))
                    .isCloseTo(Math.sqrt(df / (df + 1.0)), within(1e-14));
        }
        assertThatThrownBy(() -> ChartConstants.c4OfDegrees(0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void bartlettsTestOfGearDiameters() {
        // NIST/SEMATECH e-Handbook 1.3.5.7: 20.78580 for ten batches of ten (from memory); base R 20.78587
        JsonNode e =
                reference("chart/variance.json", "STAT-GEAR-ANOVA-BARTLETT").path("expected");
        double[] variances = new double[10];
        long[] freedom = new long[10];
        long[] all = io.github.firstoff.reference.ReferenceFile.gear().deviations();
        for (int g = 0; g < 10; g++) {
            DeviationTally tally = DeviationTally.of(all, 10 * g, 10 * g + 10);
            variances[g] = tally.variance();
            freedom[g] = 9;
        }
        VarianceTests.Result found = VarianceTests.bartlett(variances, freedom);
        assertThat(found.statistic()).isCloseTo(e.path("bartlett_K2").asDouble(), within(1e-8));
        assertThat(found.statistic()).isCloseTo(20.78580, within(1e-4));
        assertThat(found.degreesOfFreedom()).isEqualTo(9);
        assertThat(found.p()).isCloseTo(e.path("bartlett_p").asDouble(), within(1e-9));
        assertThatThrownBy(() -> VarianceTests.bartlett(new double[] {1}, new long[] {2}))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> VarianceTests.bartlett(new double[] {1, 0}, new long[] {2, 2}))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> VarianceTests.bartlett(new double[] {1, 1}, new long[] {2, 0}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
