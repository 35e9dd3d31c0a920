package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import java.math.BigDecimal;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What shifting, scaling, freezing and cutting must and must not change, on charts of every measured kind. */
class DriftLawTest {
    static Stream<ChartMethod<Subgroups>> methods() {
        return ChartCatalogue.measured().stream();
    }

    private static Subgroups data(ChartMethod<Subgroups> method, String reference, int places, int factor) {
        Random random = new Random(72);
        long[] deviations = new long[200];
        for (int i = 0; i < deviations.length; i++) {
            deviations[i] = factor * Math.round(random.nextGaussian() * 25 + (i > 150 ? 20 : 0));
        }
        Sample sample = Sample.ofDeviations(
                deviations, new Scale(new BigDecimal(reference).setScale(places), places, Unit.MILLIMETRE));
        return method.kind().equals("individuals") ? sample.asIndividuals() : sample.inSubgroupsOf(4);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void shiftMovesNoDecision(ChartMethod<Subgroups> method) {
        ControlChart here = method.fromData(data(method, "0", 3, 1), 25);
        ControlChart there = method.fromData(data(method, "250", 3, 1), 25);
        assertThat(RuleSet.westernElectric().assess(there).signals())
                .isEqualTo(RuleSet.westernElectric().assess(here).signals());
        boolean relative = method.kind().equals("deviation") || method.kind().equals("cusum");
        double moved = relative ? 0 : 250;
        for (int i = 0; i < here.location().count(); i++) {
            Lines a = here.location().lines(i).orElseThrow();
            Lines b = there.location().lines(i).orElseThrow();
            double tolerance = 2 * Math.ulp(250.0);
            assertThat(there.location().value(i)).isCloseTo(here.location().value(i) + moved, within(tolerance));
            assertThat(b.centre()).isCloseTo(a.centre() + moved, within(tolerance));
            assertThat(b.upper()).isCloseTo(a.upper() + moved, within(tolerance));
            assertThat(b.lower()).isCloseTo(a.lower() + moved, within(tolerance));
        }
    }

    @ParameterizedTest
    @MethodSource("methods")
    void scaleStretchesEverything(ChartMethod<Subgroups> method) {
        ControlChart one = method.fromData(data(method, "0", 3, 1));
        ControlChart seven = method.fromData(data(method, "0", 3, 7));
        assertThat(RuleSet.westernElectric().assess(seven).signals())
                .isEqualTo(RuleSet.westernElectric().assess(one).signals());
        for (int i = 0; i < one.location().count(); i++) {
            Lines a = one.location().lines(i).orElseThrow();
            Lines b = seven.location().lines(i).orElseThrow();
            assertThat(seven.location().value(i)).isCloseTo(7 * one.location().value(i), within(1e-13));
            assertThat(b.upper()).isCloseTo(7 * a.upper(), within(1e-13));
            assertThat(b.lower()).isCloseTo(7 * a.lower(), within(1e-13));
        }
    }

    @ParameterizedTest
    @MethodSource("methods")
    void frozenLimitsGiveTheSameChart(ChartMethod<Subgroups> method) {
        Subgroups data = data(method, "12", 4, 3);
        ControlChart first = method.fromData(data);
        ControlChart again = method.withLimits(data, first.frozen().orElseThrow());
        for (int i = 0; i < first.location().count(); i++) {
            Lines a = first.location().lines(i).orElseThrow();
            Lines b = again.location().lines(i).orElseThrow();
            assertThat(again.location().value(i)).isCloseTo(first.location().value(i), within(1e-13));
            assertThat(b.upper()).isCloseTo(a.upper(), within(1e-13));
            assertThat(b.lower()).isCloseTo(a.lower(), within(1e-13));
        }
        assertThat(RuleSet.westernElectric().assess(again).signals())
                .isEqualTo(RuleSet.westernElectric().assess(first).signals());
        assertThat(again.sigmaWithin().orElseThrow().sigma())
                .isCloseTo(first.sigmaWithin().orElseThrow().sigma(), within(1e-13));
    }

    @ParameterizedTest
    @MethodSource("methods")
    void tooFewReadingsGiveAChartThatSaysSo(ChartMethod<Subgroups> method) {
        Sample none = Sample.ofDeviations(new long[0], new Scale(BigDecimal.ONE, 0, Unit.MILLIMETRE));
        ControlChart chart = method.fromData(none.asIndividuals());
        assertThat(chart.location().hasLines()).isFalse();
        assertThat(chart.notes()).isNotEmpty();
        assertThat(chart.sigmaWithin()).isEmpty();
        assertThat(method.title()).isNotBlank();
    }

    @ParameterizedTest
    @MethodSource("methods")
    void readingsWithoutSpreadGiveNoSignal(ChartMethod<Subgroups> method) {
        Sample still = Sample.ofDeviations(new long[40], new Scale(BigDecimal.ONE, 0, Unit.MILLIMETRE));
        ControlChart chart =
                method.fromData(method.kind().equals("individuals") ? still.asIndividuals() : still.inSubgroupsOf(4));
        assertThat(RuleSet.westernElectric().assess(chart).signals()).isEmpty();
        assertThat(chart.notes()).anyMatch(note -> note.contains("do not spread"));
    }
}
