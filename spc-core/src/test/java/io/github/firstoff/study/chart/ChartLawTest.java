package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChartLawTest {
    static Stream<ChartMethod<Subgroups>> methods() {
        // averages, sums and deviations have laws of their own
        return ChartCatalogue.measured().stream().limit(5);
    }

    private static Sample random(long seed, int count, BigDecimal shift) {
        Random random = new Random(seed);
        List<BigDecimal> values = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            values.add(BigDecimal.valueOf(Math.round(random.nextGaussian() * 30), 4)
                    .add(shift));
        }
        return Sample.of(values, shift, Unit.MILLIMETRE);
    }

    private static Subgroups grouped(ChartMethod<Subgroups> method, Sample sample) {
        return method instanceof Individuals ? sample.asIndividuals() : sample.inSubgroupsOf(4);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void limitsMoveWithTheReadings(ChartMethod<Subgroups> method) {
        BigDecimal far = new BigDecimal("250.0000");
        ControlChart here = method.fromData(grouped(method, random(7, 200, new BigDecimal("0.0000"))));
        ControlChart there = method.fromData(grouped(method, random(7, 200, far)));
        Lines a = here.location().commonLines().orElseThrow();
        Lines b = there.location().commonLines().orElseThrow();
        // one rounding at a magnitude of 250
        double ulp = Math.ulp(250.0);
        assertThat(b.centre()).isCloseTo(a.centre() + 250, within(ulp));
        assertThat(b.upper()).isCloseTo(a.upper() + 250, within(ulp));
        assertThat(b.lower()).isCloseTo(a.lower() + 250, within(ulp));
        // the spread is counted in steps from the reference and does not notice the shift at all
        assertThat(there.dispersion().orElseThrow().commonLines())
                .isEqualTo(here.dispersion().orElseThrow().commonLines());
        assertThat(RuleSet.westernElectric().assess(there).signals())
                .isEqualTo(RuleSet.westernElectric().assess(here).signals());
    }

    @ParameterizedTest
    @MethodSource("methods")
    void limitsAreOrderedAndSymmetric(ChartMethod<Subgroups> method) {
        ControlChart chart = method.fromData(grouped(method, random(11, 100, BigDecimal.TEN)));
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.upper() - lines.centre()).isCloseTo(lines.centre() - lines.lower(), within(1e-14));
        assertThat(lines.upper() - lines.centre()).isCloseTo(3 * lines.sigma().orElseThrow(), within(1e-14));
        Lines spread = chart.dispersion().orElseThrow().commonLines().orElseThrow();
        assertThat(spread.lower()).isBetween(0.0, spread.centre());
        assertThat(spread.upper()).isGreaterThan(spread.centre());
    }

    @ParameterizedTest
    @MethodSource("methods")
    void frozenLimitsOnTheirOwnReadingsGiveTheSameChart(ChartMethod<Subgroups> method) {
        Subgroups data = grouped(method, random(13, 200, BigDecimal.TEN));
        ControlChart first = method.fromData(data);
        ControlChart again = method.withLimits(data, first.frozen().orElseThrow());
        for (int panel = 0; panel < 2; panel++) {
            Lines a = first.panels().get(panel).commonLines().orElseThrow();
            Lines b = again.panels().get(panel).commonLines().orElseThrow();
            assertThat(b.centre()).isCloseTo(a.centre(), within(1e-13));
            assertThat(b.lower()).isCloseTo(a.lower(), within(1e-13));
            assertThat(b.upper()).isCloseTo(a.upper(), within(1e-13));
        }
        assertThat(RuleSet.westernElectric().assess(again).signals())
                .isEqualTo(RuleSet.westernElectric().assess(first).signals());
        assertThat(again.frozen()).isEqualTo(first.frozen());
    }

    @ParameterizedTest
    @MethodSource("methods")
    void baselineSetsTheLimitsOfAllPoints(ChartMethod<Subgroups> method) {
        Sample all = random(17, 200, BigDecimal.ONE);
        Sample start = Sample.ofDeviations(java.util.Arrays.copyOf(all.deviations(), 80), all.scale());
        int baseline = method instanceof Individuals ? 80 : 20;
        ControlChart chart = method.fromData(grouped(method, all), baseline);
        ControlChart alone = method.fromData(grouped(method, start));
        assertThat(chart.location().commonLines()).isEqualTo(alone.location().commonLines());
        assertThat(chart.dispersion().orElseThrow().commonLines())
                .isEqualTo(alone.dispersion().orElseThrow().commonLines());
        assertThat(chart.sigmaWithin()).isEqualTo(alone.sigmaWithin());
        assertThat(chart.limitsFrom()).isEqualTo(baseline);
        assertThat(chart.location().count()).isEqualTo(method instanceof Individuals ? 200 : 50);
        assertThatThrownBy(() -> method.fromData(grouped(method, all), 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void tooFewReadingsGiveAChartThatSaysSo(ChartMethod<Subgroups> method) {
        for (int count = 0; count < 2; count++) {
            Subgroups data = grouped(method, random(1, count, BigDecimal.ONE));
            ControlChart chart = method.fromData(data);
            assertThat(chart.location().hasLines()).isFalse();
            assertThat(chart.sigmaWithin()).isEmpty();
            assertThat(chart.frozen()).isEmpty();
            assertThat(chart.notes()).isNotEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("methods")
    void readingsWithoutSpreadPutTheLimitsOnTheCentre(ChartMethod<Subgroups> method) {
        Sample still = Sample.ofDeviations(
                new long[40], random(1, 0, new BigDecimal("1.00")).scale());
        ControlChart chart = method.fromData(grouped(method, still));
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.upper()).isEqualTo(lines.lower()).isEqualTo(1.0);
        assertThat(RuleSet.westernElectric().assess(chart).signals()).isEmpty();
        assertThat(chart.notes()).anyMatch(note -> note.contains("do not spread"));
    }

    @Test
    void incompleteLastSubgroupIsLeftOffTheChart() {
        Sample sample = random(3, 23, BigDecimal.ONE);
        ControlChart chart = new XbarRange().fromData(sample.inSubgroupsOf(5));
        assertThat(chart.location().count()).isEqualTo(4);
        assertThat(chart.notes()).anyMatch(note -> note.contains("incomplete (3 readings)"));
        assertThat(chart.data().readings(3)).containsExactly(15, 16, 17, 18, 19);
    }

    @Test
    void unequalRangesUseTheFactorOfTheirOwnSize() {
        // σ = (R₁/d2(2) + R₂/d2(3))/2 with d2 1.128379 and 1.692569 (Harter 1960)
        Sample sample = Sample.of(
                Stream.of("1.0", "1.4", "1.0", "1.2", "1.9")
                        .map(BigDecimal::new)
                        .toList(),
                Unit.MILLIMETRE);
        ControlChart chart = new XbarRange().fromData(sample.inSubgroups(List.of("a", "a", "b", "b", "b")));
        double sigma = (0.4 / 1.1283791671 + 0.9 / 1.6925687506) / 2;
        assertThat(chart.sigmaWithin().orElseThrow().sigma()).isCloseTo(sigma, within(1e-9));
        assertThat(chart.location().commonLines()).isEmpty();
        assertThat(chart.location().lines(1).orElseThrow().upper())
                .isCloseTo(1.3 + 3 * sigma / Math.sqrt(3), within(1e-9));
    }

    @Test
    void foreignLimitsAreRefused() {
        Subgroups data = random(1, 20, BigDecimal.ONE).inSubgroupsOf(5);
        FrozenLimits inches = new FrozenLimits("xbar-r", 1, 1, "stated", 1, Unit.INCH);
        FrozenLimits other = new FrozenLimits("xbar-s", 1, 1, "stated", 1, Unit.MILLIMETRE);
        assertThatThrownBy(() -> new XbarRange().withLimits(data, inches)).hasMessageContaining("inch");
        assertThatThrownBy(() -> new XbarRange().withLimits(data, other)).hasMessageContaining("xbar-s");
        assertThatThrownBy(() -> new Individuals().fromData(data)).hasMessageContaining("one by one");
    }

    @Test
    void catalogueKnowsTheNamesOfTheContract() {
        assertThat(ChartCatalogue.measured().stream().map(ChartMethod::kind))
                .containsExactly(
                        "individuals", "xbar-r", "xbar-s", "median-r", "between-within", "ewma", "cusum", "deviation");
        assertThat(ChartCatalogue.measured("xbar-r")).containsInstanceOf(XbarRange.class);
        assertThat(ChartCatalogue.measured("nonsense")).isEmpty();
    }
}
