package io.github.firstoff.study.chart;

import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.integers;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Exclusion;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Charts of attributes against published examples. */
class AttributeReferenceTest {
    private static final String FILE = "chart/attributes.json";
    private static final double COMPUTED = 1e-9;

    private static Counts rows(String id, int count, int size) {
        JsonNode rows = reference(FILE, id).path("inputs").path("rows");
        long[] counts = new long[rows.size()];
        List<BigDecimal> sizes = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            counts[i] = rows.get(i).get(count).asLong();
            sizes.add(size < 0 ? BigDecimal.ONE : rows.get(i).get(size).decimalValue());
        }
        return Counts.of(counts, sizes);
    }

    private static long[] longs(JsonNode array) {
        return integers(array).stream().mapToLong(i -> i).toArray();
    }

    private static List<Integer> outside(ControlChart chart) {
        Panel panel = chart.location();
        return IntStream.range(0, panel.count())
                .filter(i -> panel.beyondLimit(i) != 0)
                .map(panel::number)
                .boxed()
                .toList();
    }

    @Test
    void waferDefectsWithAPointExactlyOnTheLimit() {
        // NIST/SEMATECH e-Handbook 6.3.3.1: 16 ± 12, wafer 3 has 28, wafer 24 has 31
        JsonNode e = reference(FILE, "CHART-C-NIST-6.3.3.1").path("expected");
        ControlChart chart = new Nonconformities().fromData(rows("CHART-C-NIST-6.3.3.1", 1, -1));
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.centre()).isEqualTo(e.path("center").asDouble());
        assertThat(lines.upper()).isEqualTo(e.path("UCL").asDouble());
        assertThat(lines.lower()).isEqualTo(e.path("LCL").asDouble());
        assertThat(outside(chart)).isEqualTo(integers(e.path("points_outside")));
        // on the centre line: neither side
        assertThat(chart.location().side(0)).isZero();
        assertThat(RuleSet.westernElectric().assess(chart).control()).isEqualTo(ControlState.OUT_OF_CONTROL);
        assertThat(chart.dispersionCheck().orElseThrow().applied()).isFalse();
    }

    @Test
    void defectiveMotorsInLotsOfDifferentSize() {
        // Ishikawa, pages 77 to 79
        JsonNode e = reference(FILE, "CHART-P-ISHIKAWA-79").path("expected");
        ControlChart chart =
                new NonconformingShare(DispersionPolicy.DISTRIBUTION).fromData(rows("CHART-P-ISHIKAWA-79", 1, 2));
        double[] p = doubles(e.path("p"));
        double[] upper = doubles(e.path("UCL"));
        double[] lower = doubles(e.path("LCL"));
        double[] z = doubles(e.path("standardized"));
        for (int i = 0; i < p.length; i++) {
            Lines lines = chart.location().lines(i).orElseThrow();
            assertThat(lines.centre()).isCloseTo(e.path("p_bar").asDouble(), within(COMPUTED));
            assertThat(chart.location().value(i)).isCloseTo(p[i], within(1e-14));
            assertThat(lines.upper()).isCloseTo(upper[i], within(COMPUTED));
            assertThat(lines.lower()).isCloseTo(lower[i], within(COMPUTED));
            assertThat((p[i] - lines.centre()) / lines.sigma().orElseThrow()).isCloseTo(z[i], within(COMPUTED));
        }
        assertThat(outside(chart)).isEqualTo(integers(e.path("points_outside")));
        assertThat(chart.location().commonLines()).isEmpty();
        // the index of dispersion is the sum of the squares of the published standardised values
        double squares = 0;
        for (double value : z) {
            squares += value * value;
        }
        assertThat(chart.dispersionCheck().orElseThrow().chiSquared()).isCloseTo(squares, within(COMPUTED));
    }

    @Test
    void defectiveMirrors() {
        JsonNode e = reference(FILE, "CHART-NP-ISHIKAWA-80").path("expected");
        ControlChart chart =
                new NonconformingCount(DispersionPolicy.DISTRIBUTION).fromData(rows("CHART-NP-ISHIKAWA-80", 1, 2));
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.centre()).isCloseTo(e.path("center").asDouble(), within(COMPUTED));
        assertThat(lines.upper()).isCloseTo(e.path("UCL").asDouble(), within(COMPUTED));
        assertThat(lines.lower()).isZero();
        assertThat(outside(chart)).isEqualTo(integers(e.path("points_outside")));
        assertThat(chart.frozen().orElseThrow().centre())
                .isCloseTo(e.path("p_bar").asDouble(), within(COMPUTED));
    }

    @Test
    void wireCracksOnLengthsOfDifferentSize() {
        JsonNode e = reference(FILE, "CHART-U-ISHIKAWA-81").path("expected");
        ControlChart chart =
                new NonconformitiesPerUnit(DispersionPolicy.DISTRIBUTION).fromData(rows("CHART-U-ISHIKAWA-81", 1, 2));
        for (int i = 0; i < chart.location().count(); i++) {
            Lines lines = chart.location().lines(i).orElseThrow();
            assertThat(lines.centre()).isCloseTo(e.path("u_bar").asDouble(), within(COMPUTED));
            assertThat(chart.location().value(i)).isEqualTo(e.path("u").get(i).asDouble(), within(1e-14));
            assertThat(lines.upper()).isCloseTo(e.path("UCL").get(i).asDouble(), within(COMPUTED));
            assertThat(lines.lower()).isCloseTo(e.path("LCL").get(i).asDouble(), within(COMPUTED));
        }
        assertThat(outside(chart)).isEmpty();
    }

    @Test
    void chipsOnThirtyWafers() {
        // NIST/SEMATECH e-Handbook 6.3.3.2
        JsonNode c = reference(FILE, "nist-p-chart-computed");
        JsonNode printed = reference(FILE, "nist-p-chart-printed").path("expected");
        Counts counts = Counts.of(longs(c.path("input").path("defectives")), 50);
        JsonNode e = c.path("expected");
        ControlChart p = new NonconformingShare(DispersionPolicy.DISTRIBUTION).fromData(counts);
        Lines share = p.location().commonLines().orElseThrow();
        assertThat(share.centre()).isCloseTo(e.path("p_bar").asDouble(), within(1e-12));
        assertThat(share.upper()).isCloseTo(e.path("ucl").asDouble(), within(1e-12));
        assertThat(share.lower()).isCloseTo(e.path("lcl").asDouble(), within(1e-12));
        assertThat(share.upper()).isCloseTo(printed.path("ucl").asDouble(), within(6e-5));
        assertThat(share.lower()).isCloseTo(printed.path("lcl").asDouble(), within(6e-5));
        assertThat(outside(p)).isEqualTo(integers(printed.path("above_ucl_index")));
        ControlChart np = new NonconformingCount(DispersionPolicy.DISTRIBUTION).fromData(counts);
        Lines number = np.location().commonLines().orElseThrow();
        assertThat(number.centre()).isCloseTo(e.path("np_bar").asDouble(), within(1e-12));
        assertThat(number.upper()).isCloseTo(e.path("np_ucl").asDouble(), within(1e-11));
        assertThat(number.lower()).isCloseTo(e.path("np_lcl").asDouble(), within(1e-11));
    }

    @Test
    void circuitBoardsAndTheirRevisedLimits() {
        // Montgomery, chapter 7: points 6 and 20 out, for written reasons; revised centre 19.67
        JsonNode c = reference(FILE, "c-chart-boards-computed");
        JsonNode printed = reference(FILE, "c-chart-boards-printed").path("expected");
        JsonNode e = c.path("expected");
        Counts counts = Counts.of(longs(c.path("input").path("counts")), 1);
        Nonconformities method = new Nonconformities(DispersionPolicy.DISTRIBUTION);
        ControlChart chart = method.fromData(counts);
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.centre()).isCloseTo(e.path("c_bar").asDouble(), within(1e-12));
        assertThat(lines.upper()).isCloseTo(e.path("ucl").asDouble(), within(1e-11));
        assertThat(lines.lower()).isCloseTo(e.path("lcl").asDouble(), within(1e-11));
        assertThat(outside(chart)).isEqualTo(integers(printed.path("out_index")));
        Counts revised = counts.withData(data -> data.excluding(List.of(
                new Exclusion(6, "inspector missed several defects"),
                new Exclusion(20, "temperature of the solder bath"))));
        ControlChart again = method.fromData(revised);
        Lines second = again.location().commonLines().orElseThrow();
        assertThat(second.centre()).isCloseTo(e.path("revised_c_bar").asDouble(), within(1e-12));
        assertThat(second.upper()).isCloseTo(e.path("revised_ucl").asDouble(), within(1e-11));
        assertThat(second.lower()).isCloseTo(e.path("revised_lcl").asDouble(), within(1e-11));
        assertThat(again.limitsFrom()).isEqualTo(24);
        assertThat(again.notes()).anyMatch(note -> note.contains("Point 20") && note.contains("solder bath"));
        // excluded points stay on the chart and are not tested
        assertThat(again.location().count()).isEqualTo(26);
        assertThat(RuleSet.westernElectric().assess(again).signals())
                .noneMatch(
                        signal -> signal.points().contains(6) || signal.points().contains(20));
    }

    @Test
    void shipments() {
        JsonNode c = reference(FILE, "u-chart-shipments-computed");
        Counts counts = Counts.of(longs(c.path("input").path("counts")), 50);
        ControlChart chart = new NonconformitiesPerUnit(DispersionPolicy.DISTRIBUTION).fromData(counts);
        Lines lines = chart.location().commonLines().orElseThrow();
        assertThat(lines.centre()).isCloseTo(c.path("expected").path("u_bar").asDouble(), within(1e-15));
        assertThat(lines.upper()).isCloseTo(c.path("expected").path("ucl").asDouble(), within(1e-12));
        assertThat(lines.lower()).isZero();
        assertThat(chart.notes()).anyMatch(note -> note.contains("below 5"));
    }

    @Test
    void widenedLimitsAreLaneys() {
        // Laney 2002: z, its mean moving range over 1.128, and limits widened by it; written out here from the
        // definition
        Random random = new Random(2002);
        long[] counts = new long[40];
        List<BigDecimal> sizes = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            int size = 9_000 + random.nextInt(2_000);
            // a rate that wanders from lot to lot makes large samples over-dispersed
            counts[i] = Math.round(size * (0.1 + 0.02 * random.nextGaussian()));
            sizes.add(BigDecimal.valueOf(size));
        }
        ControlChart chart = new NonconformingShare().fromData(Counts.of(counts, sizes));
        double total = 0;
        double all = 0;
        for (int i = 0; i < counts.length; i++) {
            total += counts[i];
            all += sizes.get(i).doubleValue();
        }
        double rate = total / all;
        double ranges = 0;
        double before = 0;
        for (int i = 0; i < counts.length; i++) {
            double n = sizes.get(i).doubleValue();
            double z = (counts[i] / n - rate) / Math.sqrt(rate * (1 - rate) / n);
            ranges += i > 0 ? Math.abs(z - before) : 0;
            before = z;
        }
        double sigmaZ = ranges / 39 / (2 / Math.sqrt(Math.PI));
        DispersionCheck check = chart.dispersionCheck().orElseThrow();
        assertThat(check.sigmaZ()).isCloseTo(sigmaZ, within(1e-10));
        assertThat(check.isOver()).isTrue();
        assertThat(check.applied()).isTrue();
        assertThat(check.p()).isLessThan(1e-6);
        Lines lines = chart.location().lines(3).orElseThrow();
        assertThat(lines.upper())
                .isCloseTo(
                        rate
                                + 3
                                        * sigmaZ
                                        * Math.sqrt(
                                                rate * (1 - rate) / sizes.get(3).doubleValue()),
                        within(1e-12));
        assertThat(chart.notes())
                .anyMatch(note -> note.contains("spread more than the binomial") && note.contains("widened"));
        ControlChart plain = new NonconformingShare(DispersionPolicy.DISTRIBUTION).fromData(Counts.of(counts, sizes));
        assertThat(plain.notes()).anyMatch(note -> note.contains("all the same"));
        assertThat(plain.dispersionCheck().orElseThrow().applied()).isFalse();
        ControlChart again = new NonconformingShare()
                .withLimits(Counts.of(counts, sizes), chart.frozen().orElseThrow());
        assertThat(again.location().lines(3).orElseThrow().upper()).isCloseTo(lines.upper(), within(1e-14));
    }

    @Test
    void underDispersedCountsNarrowTheLimits() {
        long[] counts = new long[60];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = 100L + i % 3;
        }
        ControlChart chart = new Nonconformities().fromData(Counts.of(counts, 1));
        assertThat(chart.dispersionCheck().orElseThrow().isUnder()).isTrue();
        assertThat(chart.location().commonLines().orElseThrow().upper()).isLessThan(110);
        assertThat(chart.notes()).anyMatch(note -> note.contains("spread less") && note.contains("narrowed"));
    }

    @Test
    void checkLeavesBinomialCountsAlone() {
        // 99 % range: of 400 charts of binomial counts about 4 are called otherwise; 12 would be five standard
        // deviations
        Random random = new Random(99);
        int called = 0;
        for (int trial = 0; trial < 400; trial++) {
            long[] counts = new long[40];
            for (int i = 0; i < counts.length; i++) {
                for (int piece = 0; piece < 200; piece++) {
                    counts[i] += random.nextDouble() < 0.15 ? 1 : 0;
                }
            }
            called += new NonconformingShare()
                            .fromData(Counts.of(counts, 200))
                            .dispersionCheck()
                            .orElseThrow()
                            .applied()
                    ? 1
                    : 0;
        }
        assertThat(called).isLessThanOrEqualTo(12);
    }

    @Test
    void edgesOfCounts() {
        ControlChart none = new NonconformingShare().fromData(Counts.of(new long[20], 50));
        assertThat(none.location().commonLines().orElseThrow().upper()).isZero();
        assertThat(none.notes()).anyMatch(note -> note.contains("do not vary"));
        assertThat(RuleSet.westernElectric().assess(none).signals()).isEmpty();
        ControlChart empty = new Nonconformities().fromData(Counts.of(new long[0], 1));
        assertThat(empty.location().hasLines()).isFalse();
        assertThat(empty.frozen()).isEmpty();
        // limits of a share never leave 0 to 1
        ControlChart high = new NonconformingShare().fromData(Counts.of(new long[] {9, 10, 9, 8, 10}, 10));
        assertThat(high.location().commonLines().orElseThrow().upper()).isEqualTo(1);
        assertThatThrownBy(() -> new NonconformingShare().fromData(Counts.of(new long[] {11}, 10)))
                .hasMessageContaining("11 nonconforming among 10");
        assertThatThrownBy(() -> new Nonconformities()
                        .fromData(Counts.of(new long[] {1, 2}, List.of(BigDecimal.ONE, BigDecimal.TEN))))
                .hasMessageContaining("chart u");
        assertThatThrownBy(() ->
                        new NonconformingCount().fromData(Counts.of(new long[] {1}, List.of(new BigDecimal("2.5")))))
                .hasMessageContaining("whole");
        assertThatThrownBy(() -> Counts.of(new long[] {-1}, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Counts.of(new long[] {1}, 0)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Nonconformities()
                        .withLimits(Counts.of(new long[] {1}, 1), none.frozen().orElseThrow()))
                .hasMessageContaining("do not fit");
    }

    @Test
    void testsOfZonesDoNotJudgeCounts() {
        ControlChart chart = new Nonconformities().fromData(rows("CHART-C-NIST-6.3.3.1", 1, -1));
        Assessment assessment = RuleSet.westernElectric().assess(chart);
        assertThat(assessment.signalCounts()).containsOnlyKeys("western-electric-1", "western-electric-4");
        assertThat(assessment.notes()).anyMatch(note -> note.contains("western-electric-2, western-electric-3"));
        FalseSignals signals = new Nonconformities().falseSignals(RuleSet.westernElectric());
        assertThat(signals.exact()).isFalse();
        assertThat(signals.average()).isCloseTo(152.73, within(0.005));
    }
}
