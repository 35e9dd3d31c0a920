package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.firstoff.ReferenceFile;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Degrees of freedom, factors computed anew (not from the table that is kept), and p-values, against base R, {@code freedom.R}. */
class FreedomReferenceTest {
    /** In per cent: adaptive integration in R. */
    private static final double COMPUTED = 1e-6;

    static Stream<Map<String, String>> rows() {
        return ReferenceFile.rows("stats/freedom.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void againstBaseR(Map<String, String> row) {
        String a = row.get("a");
        int b = Integer.parseInt(row.get("b"));
        int[] sizes = Stream.of(a.split(";"))
                .mapToInt(text -> (int) Double.parseDouble(text))
                .toArray();
        int n = sizes[0];
        double[] spreads = {0.7, 1.1, 0.9};
        double found = switch (row.get("what")) {
            case "mean-range" -> SigmaEstimators.meanRange(1, n, b).degreesOfFreedom();
            case "mean-range unequal" ->
                SigmaEstimators.meanRange(spreads, sizes).degreesOfFreedom();
            case "mean-standard-deviation" ->
                SigmaEstimators.meanStandardDeviation(1, n, b).degreesOfFreedom();
            case "mean-standard-deviation unequal" ->
                SigmaEstimators.meanStandardDeviation(spreads, sizes).degreesOfFreedom();
            case "median-range" -> SigmaEstimators.medianRange(1, n, b).degreesOfFreedom();
            case "median-moving-range" ->
                SigmaEstimators.medianMovingRange(1, b).degreesOfFreedom();
            case "median deviation" -> MedianConstants.compute(n).standardDeviation();
            case "median of range" -> MedianConstants.compute(n).d4();
            case "density of range" -> MedianConstants.compute(n).rangeDensity();
            case "d2" -> ChartConstants.compute(n).d2();
            case "d3" -> ChartConstants.compute(n).d3();
            case "c4" -> ChartConstants.compute(n).c4();
            case "ad p" ->
                AndersonDarling.p(Double.parseDouble(a), NormalFamily.INSTANCE, b)
                        .orElseThrow();
            default -> throw new IllegalStateException(row.get("what"));
        };
        assertThat(found).isCloseTo(Double.parseDouble(row.get("value")), withinPercentage(COMPUTED));
    }

    @Test
    void unequalSubgroupsWeighAlike() {
        // (0.7/d2(2) + 1.1/d2(3) + 0.9/d2(3))/3, d2 1.128379 and 1.692569; c4 0.797885 and 0.886227
        int[] sizes = {2, 3, 3};
        double[] spreads = {0.7, 1.1, 0.9};
        assertThat(SigmaEstimators.meanRange(spreads, sizes).sigma())
                .isCloseTo((0.7 / 1.1283791671 + 2.0 / 1.69256875064) / 3, within(1e-10));
        assertThat(SigmaEstimators.meanStandardDeviation(spreads, sizes).sigma())
                .isCloseTo((0.7 / 0.797884560803 + 2.0 / 0.886226925453) / 3, within(1e-10));
        assertThat(SigmaEstimators.meanRange(0.5, 5, 2).sigma()).isCloseTo(0.5 / 2.325929, within(1e-6));
        assertThat(SigmaEstimators.pooledUnbiased(2, 4).sigma()).isCloseTo(2 / 0.939986, within(1e-5));
        assertThat(SigmaEstimators.sample(2, 9).degreesOfFreedom()).isEqualTo(8);
    }

    @Test
    void nothingToEstimateFromIsRefused() {
        assertThatThrownBy(() -> SigmaEstimators.meanRange(1, 5, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SigmaEstimators.meanRange(new double[0], new int[0]))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SigmaEstimators.meanStandardDeviation(1, 5, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SigmaEstimators.meanStandardDeviation(new double[0], new int[0]))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SigmaEstimators.medianRange(1, 5, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SigmaEstimators.medianMovingRange(1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SigmaEstimators.meanMovingRange(1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThat(SigmaEstimators.meanMovingRange(1, 2).degreesOfFreedom()).isPositive();
        assertThatThrownBy(() -> SigmaEstimators.effectiveDegreesOfFreedom(0))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void logarithmsOfALognormalSampleAreTestedLikeANormalOne() {
        double[] logs = {-1.2, -0.4, 0.1, 0.3, 0.8, 1.9};
        double[] x = Arrays.stream(logs).map(Math::exp).toArray();
        assertThat(AndersonDarling.forFormula(x, LognormalFamily.INSTANCE.fit(x)))
                .isCloseTo(AndersonDarling.normal(logs), within(1e-12));
        assertThat(AndersonDarling.forFormula(logs, NormalFamily.INSTANCE.fit(logs)))
                .isEqualTo(AndersonDarling.normal(logs));
        FittedDistribution rayleigh = RayleighFamily.INSTANCE.fit(x);
        assertThat(AndersonDarling.forFormula(x, rayleigh)).isEqualTo(AndersonDarling.statistic(x, rayleigh));
    }
}
