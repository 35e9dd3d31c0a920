package io.github.firstoff.study.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.firstoff.ReferenceFile;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.stats.FoldedNormalFamily;
import io.github.firstoff.stats.GammaFamily;
import io.github.firstoff.stats.LognormalFamily;
import io.github.firstoff.stats.NoncentralT;
import io.github.firstoff.stats.RayleighFamily;
import io.github.firstoff.stats.WeibullFamily;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The widths of intervals against base R ({@code intervals.R}) and against their definitions. */
class IntervalReferenceTest {
    /** In per cent; both programs take differences. */
    private static final double DIFFERENCES = 1e-3;

    static Stream<Map<String, String>> rows() {
        return ReferenceFile.rows("capability/intervals.csv").stream();
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void standardErrors(Map<String, String> row) {
        double first = number(row, "first");
        double second = number(row, "second");
        double third = number(row, "third");
        int n = (int) number(row, "n");
        double value = number(row, "value");
        double error = number(row, "error");
        if (row.get("what").equals("score")) {
            double score = Scores.ofShare(Distributions.normalAbove(first) + Distributions.normalAbove(second));
            assertThat(score).isCloseTo(value, within(1e-12));
            assertThat(IndexIntervals.scoreError(first, second, score, n, third))
                    .isCloseTo(error, withinPercentage(DIFFERENCES));
            return;
        }
        FittedDistribution fitted = switch (row.get("what")) {
            case "lognormal" -> LognormalFamily.INSTANCE.of(first, second);
            case "weibull" -> WeibullFamily.INSTANCE.of(first, second);
            case "gamma" -> GammaFamily.INSTANCE.of(first, second);
            default -> RayleighFamily.INSTANCE.of(first);
        };
        PercentileIndices indices =
                new PercentileIndices(OptionalDouble.empty(), OptionalDouble.of(third), PercentileIndices.USUAL_TAIL);
        PercentileIndices.Uncertain found =
                new PercentileIndices.Uncertain(fitted, new double[n], 0.95, indices.functions());
        assertThat(found.value(2)).isCloseTo(value, withinPercentage(1e-8));
        Interval interval = found.interval(2).orElseThrow();
        assertThat(interval.lower()).isCloseTo(value - 1.959963984540054 * error, withinPercentage(DIFFERENCES));
        assertThat(interval.upper()).isCloseTo(value + 1.959963984540054 * error, withinPercentage(DIFFERENCES));
        assertThat(interval.method()).isEqualTo("delta");
        assertThat(interval.level()).isEqualTo(0.95);
        assertThat(found.lowerBound(2).orElseThrow())
                .isCloseTo(value - 1.644853626951473 * error, withinPercentage(DIFFERENCES));
        // without a lower limit there is no index of that side, and no interval of it
        assertThat(found.interval(1)).isEmpty();
        assertThat(found.lowerBound(0)).isEmpty();
    }

    /** Of every member on the boundary the log-likelihood lies χ²(0.95; 1)/2 = 1.9207 below the greatest, half-normal ones apart. */
    @ParameterizedTest
    @CsvSource({"0, 60", "0.4, 60", "1, 60", "2.5, 60", "8, 40"})
    void foldedNormalLikelihoodRegion(double mu, int n) {
        Random random = new Random(3);
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = 0.01 * Math.abs(mu + random.nextGaussian());
        }
        Arrays.sort(x);
        FittedDistribution fitted = FoldedNormalFamily.INSTANCE.fit(x);
        double greatest = fitted.logLikelihood(x);
        List<FittedDistribution> boundary = fitted.likelihoodBoundary(x, 0.95);
        assertThat(boundary).hasSizeGreaterThanOrEqualTo(98);
        double leastRatio = Double.POSITIVE_INFINITY;
        for (FittedDistribution member : boundary.subList(0, 98)) {
            leastRatio = Math.min(leastRatio, member.parameters()[0] / member.parameters()[1]);
            assertThat(greatest - member.logLikelihood(x)).isCloseTo(1.920729, within(2e-3));
        }
        if (boundary.size() > 98) {
            // where the half-normal distribution is plausible: its σ by chi-squared with n degrees of freedom
            assertThat(leastRatio).isZero();
            double squares = Arrays.stream(x).map(v -> v * v).sum();
            assertThat(boundary.get(98).parameters()[1])
                    .isCloseTo(Math.sqrt(squares / Distributions.chiSquaredQuantile(0.025, n)), withinPercentage(1e-9));
            assertThat(boundary.get(99).parameters()[1])
                    .isCloseTo(Math.sqrt(squares / Distributions.chiSquaredQuantile(0.975, n)), withinPercentage(1e-9));
        } else {
            assertThat(leastRatio).isPositive();
        }
        PercentileIndices indices = new PercentileIndices(
                OptionalDouble.empty(), OptionalDouble.of(0.01 * (mu + 4)), PercentileIndices.USUAL_TAIL);
        PercentileIndices.Uncertain found = new PercentileIndices.Uncertain(fitted, x, 0.95, indices.functions());
        Interval interval = found.interval(2).orElseThrow();
        assertThat(interval.method()).isEqualTo("profile likelihood");
        assertThat(found.value(2)).isBetween(interval.lower(), interval.upper());
        // cautious: the one-sided bound is the lower end
        assertThat(found.lowerBound(2)).hasValue(interval.lower());
        if (mu == 8) {
            // far from the fold it is a normal distribution: within a tenth of the exact interval
            double sigma = fitted.parameters()[1];
            double ppu = (0.12 - fitted.parameters()[0]) / (3 * sigma);
            Interval exact = IndexIntervals.oneSided(ppu, n, n - 1, 0.95);
            assertThat(interval.lower()).isCloseTo(exact.lower(), withinPercentage(5));
            assertThat(interval.upper()).isCloseTo(exact.upper(), withinPercentage(5));
        }
    }

    @Test
    void worstMomentOfOneLifeIsThatOfItsEnd() {
        // y = 10x + noise over 20 readings, upper limit only: the end with leverage 1/20 + 9.5²/665
        long[] noise = {3, -4, 1, 0, -2, 5, -3, 2, -1, 4, -5, 0, 2, -2, 3, -1, 1, -3, 4, -2};
        long[] d = new long[20];
        for (int i = 0; i < 20; i++) {
            d[i] = 10L * i + noise[i];
        }
        Sample sample = Sample.ofDeviations(d, new Scale(BigDecimal.ZERO, 0, Unit.NONE));
        TrendedCapability found =
                new TrendedStudy(0.95).analyse(sample, Bounds.atMost(new BigDecimal("215")), List.of());
        double s = found.withinTrend().orElseThrow();
        double end = found.segments().get(0).line().orElseThrow().end();
        double index = (215 - end) / (3 * s);
        double h = 1 / 20.0 + 9.5 * 9.5 / 665;
        assertThat(found.worst().value().orElseThrow()).isCloseTo(index, within(1e-12));
        double t = (215 - end) / (s * Math.sqrt(h));
        double scale = Math.sqrt(h) / 3;
        Interval interval = found.worst().interval().orElseThrow();
        assertThat(interval.method()).isEqualTo("noncentral t");
        assertThat(interval.lower()).isCloseTo(scale * NoncentralT.noncentralityFor(t, 18, 0.975), within(1e-7));
        // two ends might be the worst: each has half of the upper tail
        assertThat(interval.upper()).isCloseTo(scale * NoncentralT.noncentralityFor(t, 18, 0.0125), within(1e-7));
        assertThat(found.worst().lowerBound().orElseThrow())
                .isCloseTo(scale * NoncentralT.noncentralityFor(t, 18, 0.95), within(1e-7));
        assertThat(found.notes()).anyMatch(note -> note.contains("approximate"));
        // within trend from the mean of all readings
        double mean = found.wholeLife().get(1).value().orElseThrow();
        assertThat(mean).isLessThan(found.potential().get(1).value().orElseThrow());
        double average = Arrays.stream(d).average().orElseThrow();
        assertThat(found.potential().get(1).value().orElseThrow()).isCloseTo((215 - average) / (3 * s), within(1e-12));
    }
}
