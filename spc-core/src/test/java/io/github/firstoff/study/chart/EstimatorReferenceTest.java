package io.github.firstoff.study.chart;

import static io.github.firstoff.reference.ReferenceFile.decimals;
import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static io.github.firstoff.reference.ReferenceFile.sample;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.SigmaEstimate;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Estimators of spread on the ring diameters and the flow rates, and the charts of medians and of within and between. */
class EstimatorReferenceTest {
    private static Subgroups ring() {
        return sample(reference("chart/subgroups.json", "xbar-ring-printed")
                        .path("input")
                        .path("data"))
                .inSubgroupsOf(5);
    }

    private static Subgroups flow() {
        return Sample.of(
                        decimals(reference("chart/individuals.json", "nist-individuals-flowrate-computed")
                                .path("input")
                                .path("values")),
                        Unit.NONE)
                .asIndividuals();
    }

    private static double sigma(String name, Subgroups data) {
        SigmaEstimate steps = SpreadEstimators.named(name)
                .orElseThrow()
                .estimate(Basis.of(data, Baseline.ALL))
                .orElseThrow();
        return data.sample().scale().length(steps.sigma());
    }

    private static Sample of(String... values) {
        return Sample.of(Stream.of(values).map(BigDecimal::new).toList(), Unit.MILLIMETRE);
    }

    @Test
    void ringDiameters() {
        JsonNode e = reference("chart/subgroups.json", "xbar-ring-computed").path("expected");
        assertThat(sigma("mean-range", ring()))
                .isCloseTo(e.path("sigma_from_range").asDouble(), within(1e-13));
        assertThat(sigma("mean-standard-deviation", ring()))
                .isCloseTo(e.path("sigma_from_s").asDouble(), within(1e-13));
        assertThat(sigma("pooled-standard-deviation", ring()))
                .isCloseTo(e.path("sigma_pooled_unbiased").asDouble(), within(1e-13));
        assertThat(sigma("overall-standard-deviation", ring()))
                .isCloseTo(e.path("overall_s").asDouble(), within(1e-13));
        // the median of the published ranges over d4(5) = 2.2574 (ASTM STP 15D, 2.257)
        double[] ranges = doubles(e.path("subgroup_ranges"));
        java.util.Arrays.sort(ranges);
        assertThat(sigma("median-range", ring())).isCloseTo(ranges[12] / 2.257, within(2e-6));
    }

    @Test
    void flowRates() {
        JsonNode e = reference("chart/individuals.json", "nist-individuals-flowrate-computed")
                .path("expected");
        assertThat(sigma("mean-moving-range", flow())).isCloseTo(e.path("sigma").asDouble(), within(1e-12));
        assertThat(sigma("median-moving-range", flow()))
                .isCloseTo(e.path("median_moving_range").asDouble() / 0.9538725524, within(1e-9));
        assertThat(sigma("overall-standard-deviation", flow()))
                .isCloseTo(e.path("s").asDouble(), within(1e-12));
        ControlChart chart =
                new Individuals(SpreadEstimators.named("median-moving-range").orElseThrow()).fromData(flow());
        Lines lines = chart.location().commonLines().orElseThrow();
        // 3.145 times the median moving range (3/0.954, common in print)
        assertThat(lines.upper() - lines.centre()).isCloseTo(3.145 * 1.5, within(1e-3));
        assertThat(chart.notes()).anyMatch(note -> note.contains("median MR/d4"));
    }

    @Test
    void estimatorsThatDoNotFitGiveNothing() {
        for (SpreadEstimator estimator : SpreadEstimators.all()) {
            boolean moving = estimator.name().contains("moving");
            boolean any = estimator.name().startsWith("overall");
            Optional<SigmaEstimate> singles = estimator.estimate(Basis.of(flow(), Baseline.ALL));
            assertThat(singles.isPresent()).as(estimator.name()).isEqualTo(moving || any);
            assertThat(estimator.estimate(Basis.of(ring(), Baseline.ALL)).isPresent())
                    .as(estimator.name())
                    .isEqualTo(!moving);
            Subgroups none = of().asIndividuals();
            assertThat(estimator.estimate(Basis.of(none, Baseline.ALL))).isEmpty();
        }
        Subgroups unequal = of("1", "2", "1", "3", "5").inSubgroups(List.of("a", "a", "b", "b", "b"));
        assertThat(SpreadEstimators.named("median-range").orElseThrow().estimate(Basis.of(unequal, Baseline.ALL)))
                .isEmpty();
        // ranges 1 and 4 over d2(2) and d2(3); s 0.7071 and 2 over c4(2) and c4(3); printed factors 1.128, 1.693,
        // 0.7979, 0.8862
        assertThat(sigma("mean-range", unequal)).isCloseTo((1 / 1.128 + 4 / 1.693) / 2, within(1e-3));
        assertThat(sigma("mean-standard-deviation", unequal))
                .isCloseTo((Math.sqrt(0.5) / 0.7979 + 2 / 0.8862) / 2, within(1e-3));
        // √((0.5 + 2·4)/3) over c4 with 3 degrees of freedom, 0.9213
        assertThat(sigma("pooled-standard-deviation", unequal)).isCloseTo(Math.sqrt(8.5 / 3) / 0.9213, within(1e-3));
        assertThat(SpreadEstimators.named("guess")).isEmpty();
        assertThat(SpreadEstimators.all())
                .extracting(SpreadEstimator::name)
                .doesNotHaveDuplicates()
                .hasSize(7);
    }

    @Test
    void chosenEstimatorsSetTheLinesOfEveryChart() {
        for (String kind : List.of("xbar-r", "xbar-s", "median-r", "between-within", "deviation")) {
            ChartSettings settings = ChartSettings.USUAL.withEstimator("pooled-standard-deviation");
            ControlChart chart =
                    ChartCatalogue.measured(kind, settings).orElseThrow().fromData(ring());
            assertThat(chart.sigmaWithin().orElseThrow().estimator()).isEqualTo("pooled s/c4");
            assertThat(chart.notes()).anyMatch(note -> note.contains("pooled s/c4"));
            Lines spread = chart.dispersion().orElseThrow().commonLines().orElseThrow();
            double sigma = chart.sigmaWithin().orElseThrow().sigma();
            // d2(5) 2.326, c4(5) 0.9400
            assertThat(spread.centre()).isCloseTo((kind.equals("xbar-s") ? 0.94 : 2.326) * sigma, within(1e-5));
        }
    }

    @Test
    void breaksAndExclusionsLeaveTheirMovingRangesOut() {
        // 1 2 | 10 11 13, and 13 excluded: ranges 1 and 1
        Subgroups data = of("1", "2", "10", "11", "13", "12")
                .asIndividuals()
                .breakingBefore(List.of(new Break(3, "b", "offset")))
                .excluding(List.of(new Exclusion(5, "burr")));
        assertThat(sigma("mean-moving-range", data)).isCloseTo(1 / (2 / Math.sqrt(Math.PI)), within(1e-14));
        ControlChart chart = new Individuals().fromData(data);
        Panel ranges = chart.dispersion().orElseThrow();
        assertThat(List.of(ranges.number(0), ranges.number(1), ranges.number(2), ranges.number(3)))
                .containsExactly(2, 4, 5, 6);
        assertThat(ranges.count()).isEqualTo(4);
        // both ranges that touch the excluded reading are drawn and not tested
        assertThat(ranges.isExcluded(1)).isFalse();
        assertThat(ranges.isExcluded(2)).isTrue();
        assertThat(ranges.isExcluded(3)).isTrue();
        assertThat(ranges.segment(0)).isZero();
        assertThat(ranges.segment(1)).isEqualTo(1);
        assertThat(ranges.point(1).label()).isEqualTo("4");
        // x̄ of 1, 2, 10, 11, 12
        assertThat(chart.location().lines(0).orElseThrow().centre()).isEqualTo(7.2);
        assertThat(chart.limitsFrom()).isEqualTo(5);
    }

    @Test
    void mediansOfRings() {
        JsonNode e = reference("chart/subgroups.json", "xbar-ring-computed").path("expected");
        ControlChart chart = new MedianRange().fromData(ring());
        double[] medians = doubles(e.path("subgroup_medians"));
        double mean = 0;
        for (int g = 0; g < medians.length; g++) {
            assertThat(chart.location().value(g)).isEqualTo(medians[g]);
            mean += medians[g] / medians.length;
        }
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.centre()).isCloseTo(mean, within(1e-12));
        // Ã2 0.691 for n = 5 (ASTM STP 15D, Ishikawa)
        assertThat(lines.upper() - lines.centre())
                .isCloseTo(0.691 * e.path("mean_range").asDouble(), within(1e-5));
        Lines ranges = chart.dispersion().orElseThrow().commonLines().orElseThrow();
        assertThat(ranges.upper()).isCloseTo(e.path("xbar_r").path("r_ucl").asDouble(), within(1e-12));
        // an even number: the mean of the middle two, exact
        ControlChart four =
                new MedianRange().fromData(of("1.0", "1.1", "1.2", "9.9").inSubgroupsOf(4));
        assertThat(four.location().value(0)).isEqualTo(1.15);
        assertThat(four.location().side(0)).isZero();
    }

    @Test
    void meansOfLoadsThatMoveAsWholes() {
        // written out by hand: means 1.5, 3.5, 2.5, 6.5 of pairs with range 1; moving ranges 2, 1, 4
        Subgroups data = of("1", "2", "3", "4", "2", "3", "6", "7").inSubgroupsOf(2);
        ControlChart chart = new BetweenWithin().fromData(data);
        Lines means = chart.location().commonLines().orElseThrow();
        double pointSigma = 7.0 / 3 / (2 / Math.sqrt(Math.PI));
        assertThat(means.centre()).isEqualTo(3.5);
        assertThat(means.upper()).isCloseTo(3.5 + 3 * pointSigma, within(1e-13));
        Panel between = chart.panel(PanelKind.BETWEEN).orElseThrow();
        assertThat(between.value(2)).isEqualTo(4);
        assertThat(between.number(0)).isEqualTo(2);
        assertThat(between.commonLines().orElseThrow().centre()).isCloseTo(7.0 / 3, within(1e-13));
        // D4 for two is 3.267
        assertThat(between.commonLines().orElseThrow().upper()).isCloseTo(3.267 * 7 / 3, within(2e-3));
        double within = 1 / (2 / Math.sqrt(Math.PI));
        assertThat(chart.sigmaWithin().orElseThrow().sigma()).isCloseTo(within, within(1e-13));
        assertThat(chart.sigmaBetween().orElseThrow())
                .isCloseTo(Math.sqrt(pointSigma * pointSigma - within * within / 2), within(1e-13));
        // no negative variance where subgroups do not move
        ControlChart still =
                new BetweenWithin().fromData(of("1", "5", "2", "4", "1", "5").inSubgroupsOf(2));
        assertThat(still.sigmaBetween()).contains(0.0);
        ControlChart again = new BetweenWithin().withLimits(data, chart.frozen().orElseThrow());
        assertThat(again.location().commonLines().orElseThrow().upper()).isCloseTo(means.upper(), within(1e-13));
        assertThat(chart.panels())
                .extracting(Panel::kind)
                .containsExactly(PanelKind.LOCATION, PanelKind.BETWEEN, PanelKind.DISPERSION);
        List<Signal> signals =
                new ArrayList<>(RuleSet.westernElectric().assess(chart).signals());
        assertThat(signals).isEmpty();
    }

    @Test
    void machinesInSubgroupsOfTen() {
        // NIST/SEMATECH e-Handbook 3.5.2, MACHINE.DAT, 18 subgroups of 10
        JsonNode c = reference("chart/variance.json", "CLASSIC-MACHINE-XR");
        List<BigDecimal> values = new ArrayList<>();
        c.path("inputs").path("rows").forEach(row -> values.add(row.get(4).decimalValue()));
        Subgroups data = Sample.of(values, Unit.INCH).inSubgroupsOf(10);
        JsonNode e = c.path("expected");
        Lines r = new XbarRange().fromData(data).location().commonLines().orElseThrow();
        assertThat(r.upper()).isCloseTo(e.path("xbar_UCL_R").asDouble(), within(1e-12));
        assertThat(r.lower()).isCloseTo(e.path("xbar_LCL_R").asDouble(), within(1e-12));
        Lines s = new XbarStandardDeviation()
                .fromData(data)
                .dispersion()
                .orElseThrow()
                .commonLines()
                .orElseThrow();
        assertThat(s.upper()).isCloseTo(e.path("S_UCL").asDouble(), within(1e-12));
        assertThat(s.lower()).isCloseTo(e.path("S_LCL").asDouble(), within(1e-12));
        // three machines that differ: between them the loads move, and the chart for that has fewer points out
        List<Integer> plain = beyond(new XbarRange().fromData(data));
        assertThat(plain)
                .isEqualTo(io.github.firstoff.reference.ReferenceFile.integers(e.path("points_outside_means")));
        assertThat(beyond(new BetweenWithin().fromData(data))).hasSizeLessThan(plain.size());
    }

    private static List<Integer> beyond(ControlChart chart) {
        return RuleSet.westernElectric().assess(chart).signals().stream()
                .filter(s -> s.panel() == PanelKind.LOCATION && s.test().equals("western-electric-1"))
                .map(Signal::at)
                .toList();
    }
}
