package io.github.firstoff.study.capability;

import static io.github.firstoff.reference.ReferenceFile.decimals;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.stats.NormalFamily;
import io.github.firstoff.stats.SigmaEstimators;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DataCheckStudyTest {
    private static final DataCheckStudy STUDY = DataCheckStudy.withDefaults();

    private static DataChecks check(Stream<String> values) {
        return STUDY.check(
                Sample.of(values.map(BigDecimal::new).toList(), Unit.MILLIMETRE), Bounds.NONE, Optional.empty());
    }

    @Test
    void outliersOfRosnerAreReportedAndNothingIsRemoved() {
        // Rosner 1983; e-Handbook 1.3.5.17.3 looks for up to ten; here a tenth of 54 is five, which finds the same
        // three
        List<BigDecimal> values = decimals(reference("stats/outliers.json", "nist-rosner-computed")
                .path("input")
                .path("values"));
        DataChecks found = STUDY.check(Sample.of(values, Unit.NONE), Bounds.NONE, Optional.empty());
        assertThat(found.outliers().orElseThrow().values())
                .usingElementComparator(BigDecimal::compareTo)
                .containsExactly(new BigDecimal("6.01"), new BigDecimal("5.42"), new BigDecimal("5.34"));
        assertThat(found.remarks())
                .anyMatch(remark -> remark.contains("reading 54 (6.01)") && remark.contains("Nothing was removed"));
    }

    @Test
    void fewReadingsAreTestedForOneOutlierOnly() {
        List<BigDecimal> values = decimals(reference("stats/outliers.json", "nist-grubbs-computed")
                .path("input")
                .path("values"));
        DataChecks found = STUDY.check(Sample.of(values, Unit.NONE), Bounds.NONE, Optional.empty());
        assertThat(found.outliers().orElseThrow().test().steps()).hasSize(1);
        assertThat(found.outliers().orElseThrow().readings()).containsExactly(7);
    }

    @Test
    void heatFlowMeterIsAutocorrelated() {
        // e-Handbook 1.4.2.8: r₁ 0.281, limits ±0.140 at 95 %
        List<BigDecimal> values = decimals(
                reference("stats/normality.json", "STAT-ZARR13").path("inputs").path("values"));
        DataChecks found = STUDY.check(Sample.of(values, Unit.NONE), Bounds.NONE, Optional.empty());
        DataChecks.Autocorrelation lag = found.autocorrelation().orElseThrow();
        assertThat(lag.lagOne()).isCloseTo(0.281, within(5e-4));
        assertThat(lag.limit()).isCloseTo(0.140, within(5e-4));
        assertThat(lag.isBeyond()).isTrue();
        assertThat(found.remarks()).anyMatch(remark -> remark.contains("autocorrelation 0.281"));
    }

    @Test
    void stepsAreFoundInTheReadingsNotInTheirDecimals() {
        // three places written, but the last is 0 or 5: the step is 0.005
        DataChecks found = check(Stream.of("12.500", "12.505", "12.500", "12.515", "12.510", "12.505"));
        DataChecks.Discreteness d = found.discreteness().orElseThrow();
        assertThat(d.step()).isEqualByComparingTo("0.005");
        assertThat(d.distinctValues()).isEqualTo(4);
        // moving ranges 5, 5, 15, 5, 5 thousandths
        assertThat(d.distinctRanges()).isEqualTo(2);
        // mean range 0.007, limit 3.267 × 0.007 = 0.0229: 0, 5, 10, 15, 20
        assertThat(d.possibleRanges()).isEqualTo(5);
        assertThat(found.ties().orElseThrow()).isEqualTo(new DataChecks.Ties(4, 2));
    }

    @Test
    void aStepAboveTheStandardDeviationIsTooCoarse() {
        DataChecks found = check(Stream.of("10.0", "10.0", "10.1", "10.0", "10.0", "10.0", "10.1", "10.0"));
        assertThat(found.discreteness().orElseThrow().isCoarse()).isTrue();
        assertThat(found.remarks()).anyMatch(remark -> remark.contains("too coarse"));
    }

    @Test
    void theGaugeMayBeCoarserThanTheReadings() {
        Sample sample = DistributionChoiceTest.drawn(NormalFamily.INSTANCE.of(0, 0.008), 60, "52", 4, 8);
        Bounds bounds = Bounds.between(new BigDecimal("51.95"), new BigDecimal("52.05"));
        DataChecks found = STUDY.withGaugeResolution(new BigDecimal("0.01"))
                .check(sample, bounds, Optional.of(SigmaEstimators.pooled(0.008, 50)));
        DataChecks.Discreteness d = found.discreteness().orElseThrow();
        assertThat(d.step()).isEqualByComparingTo("0.01");
        assertThat(d.stepOverSigma()).isCloseTo(1.25, within(1e-12));
        assertThat(d.stepOverTolerance().orElseThrow()).isCloseTo(0.1, within(1e-12));
        assertThat(d.isCoarse()).isTrue();
    }

    @Test
    void aTrendIsFound() {
        // constructed tool wear, slope and its error by base R
        var c = reference("stats/lines.json", "DRIFT-TOOLWEAR");
        List<BigDecimal> values = decimals(c.path("inputs").path("y"));
        DataChecks found = STUDY.check(Sample.of(values, Unit.MILLIMETRE), Bounds.NONE, Optional.empty());
        DataChecks.Trend trend = found.trend().orElseThrow();
        var e = c.path("expected");
        assertThat(trend.slope()).isCloseTo(e.path("slope").asDouble(), within(1e-14));
        assertThat(trend.slopeError()).isCloseTo(e.path("se_slope").asDouble(), within(1e-12));
        assertThat(trend.residual()).isCloseTo(e.path("residual_sd").asDouble(), within(1e-12));
        assertThat(trend.p()).isCloseTo(e.path("p_slope").asDouble(), within(1e-12));
        assertThat(found.remarks())
                .anyMatch(remark -> remark.startsWith("The readings rise by 1.36 µm per reading along"));
    }

    /** Each test errs in one of twenty sound samples, as its significance says; 1000 samples, seeds 1 to 1000. */
    @Test
    void soundReadingsAreSeldomRemarkedOn() {
        int correlated = 0;
        int outlying = 0;
        int trending = 0;
        for (int seed = 1; seed <= 1000; seed++) {
            DataChecks found = STUDY.check(
                    DistributionChoiceTest.drawn(NormalFamily.INSTANCE.of(0, 0.008), 60, "52", 5, seed),
                    Bounds.NONE,
                    Optional.empty());
            correlated += found.autocorrelation().orElseThrow().isBeyond() ? 1 : 0;
            outlying += found.outliers().orElseThrow().values().isEmpty() ? 0 : 1;
            trending += found.trend().orElseThrow().p() < 0.05 ? 1 : 0;
            assertThat(found.discreteness().orElseThrow().isCoarse()).isFalse();
        }
        // 50 expected, binomial standard deviation 7: four of them
        assertThat(correlated).isBetween(22, 78);
        assertThat(outlying).isBetween(22, 78);
        assertThat(trending).isBetween(22, 78);
    }

    @Test
    void whatCannotBeCheckedIsEmptyNotWrong() {
        DataChecks none = check(Stream.of());
        assertThat(none.discreteness()).isEmpty();
        assertThat(none.ties()).isEmpty();
        assertThat(none.remarks()).isEmpty();
        DataChecks equal = check(Stream.of("1", "1", "1", "1"));
        assertThat(equal.autocorrelation()).isEmpty();
        assertThat(equal.outliers()).isEmpty();
        assertThat(equal.trend()).isEmpty();
        assertThat(equal.ties().orElseThrow()).isEqualTo(new DataChecks.Ties(4, 4));
        List<String> line = new ArrayList<>(List.of("1", "2", "3", "4"));
        assertThat(check(line.stream()).trend().orElseThrow().p()).isZero();
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        assertThatThrownBy(() -> new DataCheckStudy(0, 3, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new DataCheckStudy(0.05, 0, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> STUDY.withGaugeResolution(BigDecimal.ZERO))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
