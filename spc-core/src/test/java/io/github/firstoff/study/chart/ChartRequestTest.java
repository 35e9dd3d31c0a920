package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ChartRequestTest {
    private static final Break TOOL = new Break(31, "tool 2", "tool change");

    /** 60 readings about 0; from reading 31 on about 40 steps higher. */
    private static Sample shifted() {
        Random random = new Random(310);
        long[] deviations = new long[60];
        for (int i = 0; i < deviations.length; i++) {
            deviations[i] = Math.round(random.nextGaussian() * 10) + (i >= 30 ? 40 : 0);
        }
        return Sample.ofDeviations(deviations, new Scale(new BigDecimal("12.5"), 3, Unit.MILLIMETRE));
    }

    private static Sample first(Sample sample, int count) {
        return Sample.ofDeviations(Arrays.copyOf(sample.deviations(), count), sample.scale());
    }

    @Test
    void baselineSetsLimitsThatApplyToWhatFollows() {
        ChartRequest request = ChartRequest.of("individuals").with(LimitsFrom.baseline(Baseline.first(30)));
        Assessment assessment = request.assess(shifted().asIndividuals());
        ControlChart alone = new Individuals().fromData(first(shifted(), 30).asIndividuals());
        assertThat(assessment.chart().location().commonLines())
                .isEqualTo(alone.location().commonLines());
        assertThat(assessment.control()).isEqualTo(ControlState.OUT_OF_CONTROL);
        assertThat(assessment.notes()).anyMatch(note -> note.contains("points 1 to 30"));
        assertThat(assessment.chart().limitsFrom()).isEqualTo(30);
        // frozen, they judge later readings alike
        ChartRequest later = ChartRequest.of("individuals")
                .with(LimitsFrom.frozen(alone.frozen().orElseThrow()));
        Assessment frozen = later.assess(shifted().asIndividuals());
        assertThat(frozen.signals()).isEqualTo(assessment.signals());
        assertThat(frozen.chart().limitsFrom()).isZero();
    }

    @Test
    void onePhaseSetsTheLimitsOfAll() {
        Subgroups data = shifted().asIndividuals();
        ChartRequest request = ChartRequest.of("individuals")
                .with(List.of(TOOL, new Break(51, "tool 3", "tool change")), List.of())
                .with(LimitsFrom.phase("tool 2"));
        ControlChart chart = request.assess(data).chart();
        assertThat(chart.limitsFrom()).isEqualTo(20);
        assertThat(chart.notes()).anyMatch(note -> note.contains("points 31 to 50"));
        ControlChart last =
                request.with(LimitsFrom.phase("tool 3")).assess(data).chart();
        assertThat(last.limitsFrom()).isEqualTo(10);
        assertThat(last.notes()).anyMatch(note -> note.contains("points 51 to 60"));
        assertThatThrownBy(() -> request.with(LimitsFrom.phase("tool 9")).assess(data))
                .hasMessageContaining("tool 9");
    }

    @Test
    void breaksRestartRunsAndMovingRanges() {
        Subgroups data = shifted().asIndividuals();
        LimitsFrom baseline = LimitsFrom.baseline(Baseline.first(30));
        Assessment without = ChartRequest.of("individuals").with(baseline).assess(data);
        Assessment with = ChartRequest.of("individuals")
                .with(baseline)
                .with(List.of(TOOL), List.of())
                .assess(data);
        assertThat(without.chart().dispersion().orElseThrow().count()).isEqualTo(59);
        assertThat(with.chart().dispersion().orElseThrow().count()).isEqualTo(58);
        assertThat(with.signals())
                .isNotEmpty()
                .allMatch(signal -> signal.points().get(0) >= 31 || signal.at() < 31);
        // the eighth point on one side counts from the break
        assertThat(with.signals().stream()
                        .filter(s -> s.test().equals("western-electric-4"))
                        .mapToInt(Signal::at)
                        .min())
                .hasValue(38);
        assertThat(with.notes()).anyMatch(note -> note.contains("point 31 (tool 2): tool change"));
    }

    @Test
    void recalculationIsNeverSilent() {
        Subgroups data = shifted().asIndividuals();
        ChartRequest request = ChartRequest.of("individuals")
                .with(List.of(TOOL), List.of(new Exclusion(40, "part dropped")))
                .with(LimitsFrom.eachPhase("new tool cuts larger by design"));
        Assessment assessment = request.assess(data);
        ControlChart chart = assessment.chart();
        assertThat(chart.stages()).hasSize(2);
        assertThat(chart.stages().get(0).label()).isEqualTo("start");
        assertThat(chart.stages().get(0).reason()).isEmpty();
        Stage second = chart.stages().get(1);
        assertThat(second.label()).isEqualTo("tool 2");
        assertThat(second.from()).isEqualTo(31);
        assertThat(second.to()).isEqualTo(60);
        assertThat(second.limitsFrom()).isEqualTo(29);
        assertThat(second.reason()).contains("new tool cuts larger by design");
        assertThat(chart.notes())
                .anyMatch(note -> note.contains("recalculated from point 31") && note.contains("cuts larger"))
                .anyMatch(note -> note.contains("Point 40") && note.contains("part dropped"));
        ControlChart before = new Individuals().fromData(first(shifted(), 30).asIndividuals());
        assertThat(chart.location().lines(29)).isEqualTo(before.location().lines(29));
        assertThat(chart.location().lines(30)).isNotEqualTo(chart.location().lines(29));
        assertThat(chart.location().count()).isEqualTo(60);
        assertThat(chart.location().number(59)).isEqualTo(60);
        assertThat(chart.location().isExcluded(39)).isTrue();
        assertThat(chart.dispersion().orElseThrow().count()).isEqualTo(58);
        assertThat(chart.dispersion().orElseThrow().number(29)).isEqualTo(32);
        assertThat(chart.dispersion().orElseThrow().point(29).label()).isEqualTo("32");
        assertThat(chart.frozen()).isEqualTo(second.frozen());
        assertThat(chart.limitsFrom()).isEqualTo(59);
        assertThatThrownBy(() -> LimitsFrom.eachPhase(" ")).hasMessageContaining("written reason");
    }

    @Test
    void stretchTooShortForLimitsHasNone() {
        ChartRequest request = ChartRequest.of("individuals")
                .with(List.of(new Break(60, "tool 2", "tool change")), List.of())
                .with(LimitsFrom.eachPhase("new tool"));
        Assessment assessment = request.assess(shifted().asIndividuals());
        Panel location = assessment.chart().location();
        assertThat(location.hasLines(58)).isTrue();
        assertThat(location.hasLines(59)).isFalse();
        assertThat(location.lines(59)).isEmpty();
        assertThat(location.commonLines()).isEmpty();
        assertThat(assessment.chart().frozen()).isEmpty();
        assertThat(assessment.signals()).noneMatch(signal -> signal.at() == 60);
    }

    @Test
    void recalculatedSubgroupsAndCounts() {
        List<String> labels = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            labels.add("s" + (i == 59 ? 99 : i < 9 ? 0 : i / 4));
        }
        ChartRequest request = ChartRequest.of("xbar-r")
                .with(List.of(new Break(7, "tool 2", "tool change")), List.of())
                .with(LimitsFrom.eachPhase("new tool"));
        ControlChart chart = request.assess(shifted().inSubgroups(labels)).chart();
        assertThat(chart.stages().get(1).from()).isEqualTo(7);
        assertThat(chart.stages().get(1).to()).isEqualTo(chart.location().count());
        assertThat(chart.notes()).anyMatch(note -> note.contains("single reading"));
        Counts counts = Counts.of(new long[] {3, 4, 5, 3, 9, 8, 9, 10}, 100);
        ControlChart c = ChartRequest.of("np")
                .with(List.of(new Break(5, "lot 2", "new lot")), List.of())
                .with(LimitsFrom.eachPhase("another supplier"))
                .assess(counts)
                .chart();
        assertThat(c.location().lines(0).orElseThrow().centre()).isCloseTo(3.75, within(1e-12));
        assertThat(c.location().lines(4).orElseThrow().centre()).isCloseTo(9, within(1e-12));
    }

    @Test
    void requestsAreCheckedWhenAsked() {
        Subgroups data = shifted().asIndividuals();
        assertThatThrownBy(() -> ChartRequest.of("p").assess(data)).hasMessageContaining("measured values is called p");
        assertThatThrownBy(() -> ChartRequest.of("ewma").assess(Counts.of(new long[] {1}, 1)))
                .hasMessageContaining("attributes is called ewma");
        assertThatThrownBy(() -> ChartRequest.of("individuals")
                        .with(List.of(), List.of(new Exclusion(99, "x")))
                        .assess(data))
                .hasMessageContaining("99");
        assertThatThrownBy(() -> ChartRequest.of("individuals")
                        .with(ChartSettings.USUAL.withEstimator("x"))
                        .assess(data))
                .hasMessageContaining("x");
        assertThatThrownBy(() -> ChartRequest.of("nothing").falseSignals()).hasMessageContaining("nothing");
        assertThatThrownBy(() -> new Baseline(3, 2)).hasMessageContaining("3 to 2");
        assertThatThrownBy(() -> new Baseline(0, 2)).hasMessageContaining("0 to 2");
        assertThatThrownBy(() -> new LimitsFrom(
                        Baseline.first(3),
                        java.util.Optional.of("a"),
                        java.util.Optional.empty(),
                        java.util.Optional.empty()))
                .hasMessageContaining("one source");
    }

    @Test
    void falseSignalsOfWhatWasAsked() {
        assertThat(ChartRequest.of("xbar-r").falseSignals().average()).isCloseTo(91.75, within(0.005));
        assertThat(ChartRequest.of("xbar-r").falseSignals().exact()).isTrue();
        assertThat(ChartRequest.of("cusum")
                        .with(ChartSettings.USUAL.withSums(0.5, 4, 0))
                        .falseSignals()
                        .average())
                .isCloseTo(167.68, within(0.01));
        assertThat(ChartRequest.of("p").falseSignals().exact()).isFalse();
        assertThat(ChartRequest.of("standardised-deviation").falseSignals().exact())
                .isTrue();
    }

    private static Family family(double spreadOfSecond, int size) {
        Random random = new Random(45);
        List<Family.Piece> pieces = new ArrayList<>();
        for (int run = 0; run < 8; run++) {
            boolean second = run % 2 == 1;
            BigDecimal nominal = new BigDecimal(second ? "40.000" : "52.000");
            for (int i = 0; i < 20; i++) {
                double spread = second ? spreadOfSecond : 10;
                pieces.add(new Family.Piece(
                        second ? "HQ-320" : "HQ-310-P",
                        nominal,
                        nominal.add(BigDecimal.valueOf(Math.round(random.nextGaussian() * spread), 3))));
            }
        }
        return Family.of(pieces, size, Unit.MILLIMETRE);
    }

    @Test
    void deviationsOfAFamilyShareOneChart() {
        Family family = family(10, 5);
        Assessment assessment = ChartRequest.of("deviation").assess(family);
        ControlChart chart = assessment.chart();
        ControlChart plain = new XbarRange().fromData(family.deviations());
        assertThat(chart.kind()).isEqualTo("deviation");
        assertThat(chart.location().statistic()).isEqualTo("mean deviation from nominal");
        assertThat(chart.location().commonLines()).isEqualTo(plain.location().commonLines());
        assertThat(chart.notes()).anyMatch(note -> note.contains("finds no difference"));
        FrozenLimits frozen = chart.frozen().orElseThrow();
        assertThat(frozen.kind()).isEqualTo("deviation");
        ControlChart again = new Deviation().withLimits(family.deviations(), frozen);
        assertThat(again.location().lines(3).orElseThrow().upper())
                .isCloseTo(chart.location().lines(3).orElseThrow().upper(), within(1e-15));
        // unequal spreads are found and named
        assertThat(ChartRequest.of("deviation").assess(family(30, 5)).notes())
                .anyMatch(note -> note.contains("do not spread alike"));
        assertThat(ChartRequest.of("deviation").assess(family(30, 1)).notes())
                .anyMatch(note -> note.contains("do not spread alike"));
        // readings of one part count from their nominal
        ControlChart one = new Deviation().fromData(shifted().asIndividuals());
        assertThat(one.location().value(0)).isEqualTo(shifted().deviation(0) / 1000.0);
        assertThat(one.location().statistic()).isEqualTo("deviation from nominal");
        assertThatThrownBy(() -> new Deviation()
                        .withLimits(shifted().asIndividuals(), plain.frozen().orElseThrow()))
                .hasMessageContaining("do not fit");
    }

    @Test
    void standardisedDeviationsAreTheChartOfTheBookOnAnotherScale() {
        // Montgomery, section 10.1: (x̄ − T)/R̄ⱼ with ±A2 and R/R̄ⱼ with D3 and D4; here in σⱼ = R̄ⱼ/d2
        Family family = family(30, 5);
        ControlChart chart = new StandardisedDeviation().fromData(family);
        Subgroups d = family.deviations();
        for (String part : List.of("HQ-310-P", "HQ-320")) {
            double ranges = 0;
            int count = 0;
            for (int g = 0; g < d.count(); g++) {
                if (family.parts().get(g).equals(part)) {
                    ranges += Spread.range(d, g);
                    count++;
                }
            }
            double meanRange = ranges / count;
            for (int g = 0; g < d.count(); g++) {
                if (!family.parts().get(g).equals(part)) {
                    continue;
                }
                double mean = 0;
                for (int m = 0; m < 5; m++) {
                    mean += d.deviation(g, m) / 5.0;
                }
                // d2(5) 2.32593
                assertThat(chart.location().value(g) / 2.3259289473).isCloseTo(mean / meanRange, within(1e-9));
                assertThat(chart.dispersion().orElseThrow().value(g) / 2.3259289473)
                        .isCloseTo(Spread.range(d, g) / meanRange, within(1e-9));
            }
        }
        Lines lines = chart.location().commonLines().orElseThrow();
        // A2(5) 0.577 and D4(5) 2.114
        assertThat(lines.upper() / 2.3259289473).isCloseTo(0.577, within(5e-4));
        Lines spread = chart.dispersion().orElseThrow().commonLines().orElseThrow();
        assertThat(spread.upper() / spread.centre()).isCloseTo(2.1145, within(1e-4));
        assertThat(spread.lower()).isZero();
        ControlChart again =
                new StandardisedDeviation().withLimits(family, chart.frozen().orElseThrow());
        assertThat(again.location().value(7)).isCloseTo(chart.location().value(7), within(1e-12));
        Assessment assessed = ChartRequest.of("standardised-deviation").assess(family);
        int beyond = 0;
        for (Panel panel : assessed.chart().panels()) {
            for (ChartPoint point : panel.points()) {
                Lines own = point.lines().orElseThrow();
                beyond += point.value() > own.upper() || point.value() < own.lower() ? 1 : 0;
            }
        }
        assertThat(assessed.signalCounts()).containsEntry("western-electric-1", beyond);
        assertThat(assessed.chart().sigmaWithin()).isEmpty();
    }

    @Test
    void standardisedSinglesAndPartsWithoutSpread() {
        List<Family.Piece> pieces = new ArrayList<>();
        String[] values = {"1", "3", "2", "4", "2"};
        for (String value : values) {
            pieces.add(new Family.Piece("A", BigDecimal.ZERO, new BigDecimal(value)));
        }
        pieces.add(new Family.Piece("B", BigDecimal.TEN, new BigDecimal("11")));
        pieces.add(new Family.Piece("A", BigDecimal.ZERO, new BigDecimal("3")));
        ControlChart chart = new StandardisedDeviation().fromData(Family.of(pieces, 1, Unit.MILLIMETRE));
        // moving ranges of A: 2, 1, 2, 2, and none across the run of B: σ = 1.75/1.128379
        double sigma = 1.75 / (2 / Math.sqrt(Math.PI));
        assertThat(chart.location().count()).isEqualTo(6);
        assertThat(chart.location().value(1)).isCloseTo(3 / sigma, within(1e-12));
        assertThat(chart.location().number(5)).isEqualTo(7);
        assertThat(chart.location().lines(0).orElseThrow().upper()).isEqualTo(3);
        Panel moving = chart.dispersion().orElseThrow();
        assertThat(moving.count()).isEqualTo(4);
        assertThat(moving.value(0)).isCloseTo(2 / sigma, within(1e-12));
        // Farnum 1992: centre 1.128, upper limit 3.686
        assertThat(moving.commonLines().orElseThrow().centre()).isCloseTo(1.128, within(5e-4));
        assertThat(moving.commonLines().orElseThrow().upper()).isCloseTo(3.686, within(5e-4));
        assertThat(chart.notes()).anyMatch(note -> note.contains("Part number B"));
        assertThat(chart.frozen().orElseThrow().partSigmas()).containsOnlyKeys("A");
        ControlChart none = new StandardisedDeviation().fromData(Family.of(pieces.subList(5, 6), 1, Unit.MILLIMETRE));
        assertThat(none.location().count()).isZero();
        assertThat(none.frozen()).isEmpty();
        assertThat(RuleSet.westernElectric().assess(none).control()).isEqualTo(ControlState.NOT_ASSESSED);
    }
}
