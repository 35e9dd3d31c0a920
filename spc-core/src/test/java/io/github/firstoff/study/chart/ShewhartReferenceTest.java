package io.github.firstoff.study.chart;

import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.gear;
import static io.github.firstoff.reference.ReferenceFile.integers;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static io.github.firstoff.reference.ReferenceFile.sample;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Charts against published worked examples and independent recomputations of their data. */
class ShewhartReferenceTest {
    private static final String FILE = "chart/subgroups.json";
    /** The collections state their own figures to about twelve digits. */
    private static final double COMPUTED = 1e-11;

    @Test
    void individualsOfNistFlowRate() {
        // NIST/SEMATECH e-Handbook 6.3.2.2, ten batches
        JsonNode c = reference("chart/individuals.json", "CHART-IMR-NIST-6.3.2.2");
        JsonNode expected = c.path("expected");
        ControlChart chart =
                new Individuals().fromData(sample(c.path("inputs").path("x")).asIndividuals());
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.centre()).isEqualTo(50.81);
        assertThat(lines.upper()).isCloseTo(expected.path("UCL_exact_d2").asDouble(), within(COMPUTED * 50));
        assertThat(lines.lower()).isCloseTo(expected.path("LCL_exact_d2").asDouble(), within(COMPUTED * 50));
        Panel ranges = chart.dispersion().orElseThrow();
        Lines rangeLines = ranges.commonLines().orElseThrow();
        assertThat(rangeLines.centre())
                .isCloseTo(expected.path("mean_moving_range").asDouble(), within(COMPUTED));
        assertThat(rangeLines.upper()).isCloseTo(expected.path("UCL_MR_exact").asDouble(), within(COMPUTED * 10));
        assertThat(rangeLines.lower()).isZero();
        double[] movingRanges = doubles(expected.path("moving_ranges"));
        assertThat(ranges.points()).hasSize(9);
        assertThat(ranges.points().stream().mapToDouble(ChartPoint::value).toArray())
                .containsExactly(movingRanges);
        assertThat(ranges.number(0)).isEqualTo(2);
        // the page prints 55.8041 and 45.8159, from d2 rounded to 1.128; with that d2 our mean range gives them
        assertThat(50.81 + 3 * rangeLines.centre() / 1.128).isCloseTo(55.8041, within(5e-5));
        assertThat(50.81 - 3 * rangeLines.centre() / 1.128).isCloseTo(45.8159, within(5e-5));
        Assessment assessment = RuleSet.westernElectric().assess(chart);
        assertThat(assessment.signalCounts()).containsEntry("western-electric-1", 0);
    }

    private static Subgroups ring() {
        return sample(reference(FILE, "xbar-ring-printed").path("input").path("data"))
                .inSubgroupsOf(5);
    }

    @Test
    void ringDiametersMeansAndRanges() {
        // Montgomery, section 6.2: printed centre 74.001, limits 74.014 and 73.988, R 0.023 and 0.049
        JsonNode expected = reference(FILE, "xbar-ring-computed").path("expected");
        ControlChart chart = new XbarRange().fromData(ring());
        assertLines(chart, expected.path("grand_mean"), expected.path("xbar_r"), "ucl", "lcl", "r_ucl", "r_lcl");
        assertThat(chart.dispersion().orElseThrow().commonLines().orElseThrow().centre())
                .isCloseTo(expected.path("mean_range").asDouble(), within(1e-15));
        assertThat(chart.sigmaWithin().orElseThrow().sigma())
                .isCloseTo(expected.path("sigma_from_range").asDouble(), within(1e-14));
        assertThat(values(chart.location())).containsExactly(doubles(expected.path("subgroup_means")));
        assertThat(values(chart.dispersion().orElseThrow()))
                .containsExactly(doubles(expected.path("subgroup_ranges")), within(1e-13));
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.upper()).isCloseTo(74.014, within(6e-4));
        assertThat(lines.lower()).isCloseTo(73.988, within(6e-4));
    }

    @Test
    void ringDiametersMeansAndStandardDeviations() {
        JsonNode expected = reference(FILE, "xbar-ring-computed").path("expected");
        ControlChart chart = new XbarStandardDeviation().fromData(ring());
        assertLines(chart, expected.path("grand_mean"), expected.path("xbar_s"), "ucl", "lcl", "s_ucl", "s_lcl");
        assertThat(chart.dispersion().orElseThrow().commonLines().orElseThrow().centre())
                .isCloseTo(expected.path("mean_s").asDouble(), within(1e-15));
        assertThat(chart.sigmaWithin().orElseThrow().sigma())
                .isCloseTo(expected.path("sigma_from_s").asDouble(), within(1e-14));
    }

    @Test
    void pitchDiametersSignalWhereTheBookFindsThem() {
        // Grant and Leavenworth: means 10, 12 and 18 and ranges 9 and 13 lie beyond the limits
        Sample sample =
                sample(reference(FILE, "xbar-pitch-printed").path("input").path("data"));
        JsonNode printed = reference(FILE, "xbar-pitch-printed").path("expected");
        JsonNode computed = reference(FILE, "xbar-pitch-computed").path("expected");
        ControlChart chart = new XbarRange().fromData(sample.inSubgroupsOf(5));
        assertLines(chart, computed.path("grand_mean"), computed.path("xbar_r"), "ucl", "lcl", "r_ucl", "r_lcl");
        List<Integer> means = new ArrayList<>();
        List<Integer> ranges = new ArrayList<>();
        for (Signal signal : RuleSet.westernElectric().assess(chart).signals()) {
            if (signal.test().equals("western-electric-1")) {
                (signal.panel() == PanelKind.LOCATION ? means : ranges).add(signal.at());
            }
        }
        assertThat(means).isEqualTo(integers(printed.path("xbar_out_index")));
        assertThat(ranges).isEqualTo(integers(printed.path("r_out_index")));
    }

    @Test
    void gearDiametersInBatchesOfTen() {
        // NIST data set GEAR.DAT; n = 10 gives lower limits of R and s above zero
        JsonNode e = reference(FILE, "CHART-XRS-GEAR").path("expected");
        ControlChart r = new XbarRange().fromData(gear().inSubgroupsOf(10));
        Lines means = r.location().commonLines().orElseThrow();
        Lines ranges = r.dispersion().orElseThrow().commonLines().orElseThrow();
        assertThat(means.upper()).isCloseTo(e.path("xbar_UCL_R").asDouble(), within(1e-11));
        assertThat(means.lower()).isCloseTo(e.path("xbar_LCL_R").asDouble(), within(1e-11));
        assertThat(ranges.upper()).isCloseTo(e.path("R_UCL").asDouble(), within(1e-11));
        assertThat(ranges.lower()).isCloseTo(e.path("R_LCL").asDouble(), within(1e-11));
        ControlChart s = new XbarStandardDeviation().fromData(gear().inSubgroupsOf(10));
        Lines deviations = s.dispersion().orElseThrow().commonLines().orElseThrow();
        assertThat(s.location().commonLines().orElseThrow().upper())
                .isCloseTo(e.path("xbar_UCL_S").asDouble(), within(1e-11));
        assertThat(deviations.upper()).isCloseTo(e.path("S_UCL").asDouble(), within(1e-11));
        assertThat(deviations.lower()).isCloseTo(e.path("S_LCL").asDouble(), within(1e-11));
    }

    @Test
    void unequalSubgroupsHaveTheirOwnLimits() {
        // Montgomery, section 6.3.2: the ring data with some subgroups cut to three or four pieces
        JsonNode c = reference(FILE, "xbar-s-unequal");
        int[] sizes = integers(c.path("input").path("sizes")).stream()
                .mapToInt(Integer::intValue)
                .toArray();
        Subgroups full = ring();
        List<java.math.BigDecimal> values = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        for (int g = 0; g < sizes.length; g++) {
            for (int m = 0; m < sizes[g]; m++) {
                values.add(full.sample().exactValue(full.reading(g, m)));
                labels.add("S" + g);
            }
        }
        Subgroups data = Sample.of(values, full.sample().unit()).inSubgroups(labels);
        ControlChart chart = new XbarStandardDeviation().fromData(data);
        Panel deviations = chart.dispersion().orElseThrow();
        for (int g = 0; g < sizes.length; g++) {
            assertThat(chart.location().value(g))
                    .isCloseTo(c.path("input").path("means").get(g).asDouble(), within(1e-13));
            JsonNode limits = c.path("expected").path("limits_by_n").path("n" + sizes[g]);
            Lines mean = chart.location().lines(g).orElseThrow();
            Lines s = deviations.lines(g).orElseThrow();
            assertThat(mean.upper()).isCloseTo(limits.path("xbar_ucl").asDouble(), within(1e-10));
            assertThat(mean.lower()).isCloseTo(limits.path("xbar_lcl").asDouble(), within(1e-10));
            assertThat(s.upper()).isCloseTo(limits.path("s_ucl").asDouble(), within(1e-10));
            assertThat(s.lower()).isCloseTo(limits.path("s_lcl").asDouble(), within(1e-10));
        }
        assertThat(chart.location().commonLines()).isEmpty();
    }

    @Test
    void frozenLimitsJudgeTheNextReadings() {
        // Montgomery: fifteen further samples against the limits of the first twenty-five
        JsonNode c = reference(FILE, "CLASSIC-PISTON-PHASE2");
        FrozenLimits frozen = new XbarRange().fromData(ring()).frozen().orElseThrow();
        Subgroups next = sample(c.path("inputs").path("x")).inSubgroupsOf(5);
        ControlChart chart = new XbarRange().withLimits(next, frozen);
        List<Integer> outside = IntStream.range(0, chart.location().count())
                .filter(i -> chart.location().beyondLimit(i) != 0)
                .map(i -> chart.location().number(i))
                .boxed()
                .toList();
        // the book counts on from 25: points 37, 38 and 39, and no range
        JsonNode e = c.path("expected");
        assertThat(outside)
                .isEqualTo(integers(e.path("mean_points_outside_sample_number")).stream()
                        .map(number -> number - 25)
                        .toList());
        Panel ranges = chart.dispersion().orElseThrow();
        assertThat(IntStream.range(0, ranges.count()).filter(i -> ranges.beyondLimit(i) != 0))
                .isEmpty();
    }

    private static double[] values(Panel panel) {
        return panel.points().stream().mapToDouble(ChartPoint::value).toArray();
    }

    private static void assertLines(
            ControlChart chart, JsonNode mean, JsonNode limits, String ucl, String lcl, String ducl, String dlcl) {
        Lines location = chart.location().commonLines().orElseThrow();
        Lines dispersion = chart.dispersion().orElseThrow().commonLines().orElseThrow();
        double tolerance = COMPUTED * mean.asDouble();
        assertThat(location.centre()).isCloseTo(mean.asDouble(), within(1e-13 * mean.asDouble()));
        assertThat(location.upper()).isCloseTo(limits.path(ucl).asDouble(), within(tolerance));
        assertThat(location.lower()).isCloseTo(limits.path(lcl).asDouble(), within(tolerance));
        assertThat(dispersion.upper())
                .isCloseTo(
                        limits.path(ducl).asDouble(),
                        within(COMPUTED * limits.path(ducl).asDouble()));
        assertThat(dispersion.lower()).isCloseTo(limits.path(dlcl).asDouble(), within(COMPUTED));
    }
}
