package io.github.firstoff.study.chart;

import static io.github.firstoff.reference.ReferenceFile.decimals;
import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.integers;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Weighted averages and cumulative sums against the examples of the NIST/SEMATECH e-Handbook. */
class DriftReferenceTest {
    private static final String FILE = "chart/drift.json";

    private static Subgroups values(String id, String key) {
        JsonNode c = reference(FILE, id);
        return Sample.of(decimals((c.has("inputs") ? c.path("inputs") : c.path("input")).path(key)), Unit.NONE)
                .asIndividuals();
    }

    private static Ewma ewma(double lambda, double width) {
        return new Ewma(lambda, width, Optional.empty(), Optional.empty());
    }

    private static Cusum cusum(double k, double h, double headStart) {
        return new Cusum(k, h, headStart, Optional.empty(), Optional.empty());
    }

    @Test
    void weightedAverageOfNist() {
        // e-Handbook 6.3.2.4: target 50, s 2.0539, λ 0.3; the page draws the final limits 52.5884 and 47.4115
        JsonNode e = reference(FILE, "nist-ewma-exact").path("expected");
        FrozenLimits limits = new FrozenLimits("ewma", 50, 2.0539, "s", 100, Unit.NONE);
        ControlChart chart = ewma(0.3, 3).withLimits(values("nist-ewma-exact", "values"), limits);
        double[] z = doubles(e.path("ewma"));
        double[] upper = doubles(e.path("ucl"));
        double[] lower = doubles(e.path("lcl"));
        for (int i = 0; i < z.length; i++) {
            assertThat(chart.location().value(i)).isCloseTo(z[i], within(1e-12 * 50));
            assertThat(chart.location().lines(i).orElseThrow().upper()).isCloseTo(upper[i], within(1e-12 * 50));
            assertThat(chart.location().lines(i).orElseThrow().lower()).isCloseTo(lower[i], within(1e-12 * 50));
            assertThat(chart.location().lines(i).orElseThrow().centre()).isEqualTo(50);
        }
        Lines last = chart.location().lines(z.length - 1).orElseThrow();
        // after 20 points 0.7^40 = 6e-7 of the width is missing
        assertThat(last.upper()).isCloseTo(e.path("ucl_steady").asDouble(), within(2e-6));
        double[] printed =
                doubles(reference(FILE, "nist-ewma-printed").path("expected").path("ewma"));
        for (int i = 0; i < z.length; i++) {
            assertThat(chart.location().value(i)).isCloseTo(printed[i + 1], within(0.00501));
        }
        Assessment assessment = RuleSet.westernElectric().assess(chart);
        assertThat(assessment.signals()).isEmpty();
        assertThat(assessment.signalCounts()).containsOnlyKeys("western-electric-1");
    }

    @Test
    void cumulativeSumOfNist() {
        // e-Handbook 6.3.2.3: k 0.3175 and h 4.1959 in the unit of the data, sigma of the means 0.635
        JsonNode e = reference(FILE, "nist-cusum-computed").path("expected");
        FrozenLimits limits = new FrozenLimits("cusum", 325, 0.635, "stated", 100, Unit.NONE);
        ControlChart chart = cusum(0.5, 4.1959 / 0.635, 0).withLimits(values("nist-cusum-computed", "values"), limits);
        double[] upper = doubles(e.path("upper"));
        double[] lower = doubles(e.path("lower"));
        for (int i = 0; i < upper.length; i++) {
            assertThat(chart.location().value(i)).isCloseTo(upper[i], within(1e-9));
            assertThat(chart.location().second(i).orElseThrow()).isCloseTo(-lower[i], within(1e-9));
        }
        assertThat(chart.location().commonLines().orElseThrow().upper()).isCloseTo(4.1959, within(1e-12));
        List<Signal> signals = RuleSet.westernElectric().assess(chart).signals();
        assertThat(signals.stream().map(Signal::at))
                .isEqualTo(integers(reference(FILE, "CHART-CUSUM-NIST-6.3.2.3")
                        .path("expected")
                        .path("signal_high_at")));
        assertThat(signals).allMatch(signal -> signal.side() == Side.ABOVE);
    }

    @Test
    void fallingValuesSignalBelow() {
        FrozenLimits limits = new FrozenLimits("cusum", 0, 1, "stated", 100, Unit.NONE);
        Subgroups falling =
                Sample.of(decimalsOf("0", "-2", "-2", "-2", "-2"), Unit.NONE).asIndividuals();
        ControlChart chart = cusum(0.5, 4, 0).withLimits(falling, limits);
        // −1.5, −3, −4.5, −6: beyond −4 from the fourth on
        assertThat(RuleSet.westernElectric().assess(chart).signals())
                .containsExactly(
                        new Signal("western-electric-1", PanelKind.LOCATION, Side.BELOW, 4, List.of(4)),
                        new Signal("western-electric-1", PanelKind.LOCATION, Side.BELOW, 5, List.of(5)));
        // a sum exactly on the interval is not beyond it
        assertThat(RuleSet.westernElectric()
                        .assess(cusum(0.5, 4.5, 0).withLimits(falling, limits))
                        .signals())
                .extracting(Signal::at)
                .containsExactly(5);
    }

    private static List<BigDecimal> decimalsOf(String... values) {
        return java.util.stream.Stream.of(values).map(BigDecimal::new).toList();
    }

    @Test
    void headStartOfMontgomery() {
        // Montgomery, section 9.1.6: target 100, k 3, h 12, head start 50 %; in control the sums fade, C+ 8 and C− 2
        // after 102 = 105 − 3:
        // max(0, 105 − 103 + 6) = 8, max(0, 97 − 105 + 6) = 0? the book's first value is 102: 5 and 1
        FrozenLimits limits = new FrozenLimits("cusum", 100, 6, "stated", 100, Unit.NONE);
        Subgroups data = Sample.of(
                        decimalsOf("102", "97", "104", "93", "100", "105", "96", "98", "105", "99"), Unit.NONE)
                .asIndividuals();
        ControlChart chart = cusum(0.5, 2, 0.5).withLimits(data, limits);
        // 6 + 102 − 103 = 5; then 0, 1, 0, 0, 2, 0, 0, 2, 0 (table 9.5, from memory; recomputed by hand)
        double[] upper = {5, 0, 1, 0, 0, 2, 0, 0, 2, 0};
        // 6 + 97 − 102 = 1; then 1, 0, 4, 1, 0, 1, 0, 0, 0
        double[] lower = {1, 1, 0, 4, 1, 0, 1, 0, 0, 0};
        for (int i = 0; i < upper.length; i++) {
            assertThat(chart.location().value(i)).isCloseTo(upper[i], within(1e-12));
            assertThat(chart.location().second(i).orElseThrow()).isCloseTo(-lower[i], within(1e-12));
        }
    }

    @Test
    void breaksBeginAnewAndExclusionsArePassedOver() {
        FrozenLimits limits = new FrozenLimits("ewma", 0, 1, "stated", 100, Unit.NONE);
        Subgroups data =
                Sample.of(decimalsOf("1", "2", "9", "3", "1", "2"), Unit.NONE).asIndividuals();
        Subgroups marked = data.excluding(List.of(new Exclusion(3, "chip under the part")))
                .breakingBefore(List.of(new Break(5, "tool 2", "tool change")));
        ControlChart chart = ewma(0.5, 3).withLimits(marked, limits);
        // 0.5, 1.25, (1.25), 2.125 | 0.5, 1.25
        double[] expected = {0.5, 1.25, 1.25, 2.125, 0.5, 1.25};
        for (int i = 0; i < expected.length; i++) {
            assertThat(chart.location().value(i)).isCloseTo(expected[i], within(1e-15));
        }
        assertThat(chart.location().lines(4)).isEqualTo(chart.location().lines(0));
        assertThat(chart.location().lines(2)).isEqualTo(chart.location().lines(1));
        ControlChart sums =
                cusum(0.5, 3, 0.5).withLimits(marked, new FrozenLimits("cusum", 0, 1, "stated", 100, Unit.NONE));
        // 1.5 + 0.5, + 1.5, (9 passed over), + 2.5 | 1.5 + 0.5, + 1.5
        double[] upper = {2, 3.5, 3.5, 6, 2, 3.5};
        for (int i = 0; i < upper.length; i++) {
            assertThat(sums.location().value(i)).isCloseTo(upper[i], within(1e-15));
        }
        assertThat(RuleSet.westernElectric().assess(sums).signals())
                .extracting(Signal::at)
                .containsExactly(2, 4, 6);
        assertThat(sums.notes()).anyMatch(note -> note.contains("chip under the part"));
        assertThat(sums.notes()).anyMatch(note -> note.contains("point 5 (tool 2): tool change"));
    }

    @Test
    void unequalSubgroupsCountInTheirOwnSigma() {
        Subgroups data = Sample.of(decimalsOf("1", "1", "1", "1", "1", "1"), Unit.NONE)
                .inSubgroups(List.of("a", "a", "b", "b", "b", "b"));
        ControlChart sums =
                cusum(0.5, 5, 0).withLimits(data, new FrozenLimits("cusum", 0, 2, "stated", 100, Unit.NONE));
        // 1·√2/2 − 0.5, then + 1·√4/2 − 0.5
        assertThat(sums.location().value(0)).isCloseTo(Math.sqrt(2) / 2 - 0.5, within(1e-15));
        assertThat(sums.location().value(1)).isCloseTo(Math.sqrt(2) / 2, within(1e-15));
        assertThat(sums.location().commonLines().orElseThrow().upper()).isEqualTo(5);
        assertThat(sums.notes()).anyMatch(note -> note.contains("differ in size"));
        ControlChart average = ewma(0.5, 3).withLimits(data, new FrozenLimits("ewma", 0, 2, "stated", 100, Unit.NONE));
        // V1 = 0.25·4/2, V2 = 0.25·4/4 + 0.25·V1
        assertThat(average.location().lines(0).orElseThrow().upper()).isCloseTo(3 * Math.sqrt(0.5), within(1e-15));
        assertThat(average.location().lines(1).orElseThrow().upper()).isCloseTo(3 * Math.sqrt(0.375), within(1e-15));
    }

    @Test
    void targetAndEstimatorAreChosenAndSaid() {
        ChartSettings settings = ChartSettings.USUAL
                .withAverage(0.3, 2.7)
                .withTarget(new BigDecimal("50"))
                .withEstimator("overall-standard-deviation");
        Subgroups data = values("nist-ewma-exact", "values");
        ControlChart chart =
                ChartCatalogue.measured("ewma", settings).orElseThrow().fromData(data);
        assertThat(chart.location().lines(0).orElseThrow().centre()).isEqualTo(50);
        assertThat(chart.sigmaWithin().orElseThrow().estimator()).isEqualTo("s");
        assertThat(chart.notes())
                .anyMatch(note -> note.contains("stated target 50"))
                .anyMatch(note -> note.contains("lambda 0.3, width L 2.7"))
                .anyMatch(note -> note.contains("estimated by s"));
        ControlChart plain = new Ewma().fromData(data);
        assertThat(plain.sigmaWithin().orElseThrow().estimator()).isEqualTo("MR̄/d2");
        assertThat(plain.location().lines(0).orElseThrow().centre()).isCloseTo(50.465, within(1e-12));
        ControlChart again = new Ewma().withLimits(data, plain.frozen().orElseThrow());
        assertThat(again.location().value(19)).isCloseTo(plain.location().value(19), within(1e-12));
        assertThat(new Cusum()
                        .fromData(data.sample().inSubgroupsOf(4))
                        .sigmaWithin()
                        .orElseThrow()
                        .estimator())
                .isEqualTo("pooled s/c4");
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        assertThatThrownBy(() -> ewma(0, 3)).hasMessageContaining("lambda");
        assertThatThrownBy(() -> ewma(1.01, 3)).hasMessageContaining("lambda");
        assertThatThrownBy(() -> ewma(0.2, 0)).hasMessageContaining("width");
        assertThatThrownBy(() -> cusum(-0.1, 5, 0)).hasMessageContaining("k");
        assertThatThrownBy(() -> cusum(0.5, 0, 0)).hasMessageContaining("interval");
        assertThatThrownBy(() -> cusum(0.5, 5, 0.6)).hasMessageContaining("head start");
        assertThatThrownBy(() -> ChartSettings.USUAL.withEstimator("guess").spread())
                .hasMessageContaining("guess");
    }

    @Test
    void falseSignalsOfAveragesAndSums() {
        FalseSignals sums = cusum(0.5, 5, 0).falseSignals(RuleSet.westernElectric());
        assertThat(sums.average()).isCloseTo(465.44, within(0.01));
        assertThat(sums.sentence()).contains("once in 465 points");
        assertThat(ewma(0.2, 3).falseSignals(RuleSet.westernElectric()).average())
                .isBetween(500.0, 600.0);
        RuleSet none = new RuleSet(List.of(NelsonRule.TWO_OF_THREE));
        assertThat(cusum(0.5, 5, 0).falseSignals(none).average()).isInfinite();
        assertThat(ewma(0.2, 3).falseSignals(none).sentence()).contains("never");
    }
}
