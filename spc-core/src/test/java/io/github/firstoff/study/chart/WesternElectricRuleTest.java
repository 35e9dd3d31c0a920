package io.github.firstoff.study.chart;

import static io.github.firstoff.reference.ReferenceFile.decimals;
import static io.github.firstoff.reference.ReferenceFile.file;
import static io.github.firstoff.reference.ReferenceFile.integers;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WesternElectricRuleTest {
    /** Centre 0 and sigma 1, so that readings are the standardised points themselves. */
    private static final FrozenLimits STANDARD = new FrozenLimits("individuals", 0, 1, "stated", 1, Unit.NONE);

    private static ControlChart chart(List<BigDecimal> z) {
        return new Individuals().withLimits(Sample.of(z, Unit.NONE).asIndividuals(), STANDARD);
    }

    private static List<BigDecimal> z(String... values) {
        return Stream.of(values).map(BigDecimal::new).toList();
    }

    private static List<Signal> signals(ControlChart chart, String test) {
        return RuleSet.westernElectric().assess(chart).signals().stream()
                .filter(s -> s.panel() == PanelKind.LOCATION && s.test().equals(test))
                .toList();
    }

    private static List<Integer> at(ControlChart chart, String test) {
        return signals(chart, test).stream().map(Signal::at).toList();
    }

    static Stream<JsonNode> sequences() {
        return StreamSupport.stream(file("chart/run-rules.json").path("cases").spliterator(), false);
    }

    /** Two independent collections of sequences (definitions of 1956), their indices from literal implementations. */
    @ParameterizedTest
    @MethodSource("sequences")
    void findsThePatternsOfTheReferenceSequences(JsonNode c) {
        JsonNode in = c.has("inputs") ? c.path("inputs") : c.path("input");
        JsonNode e = c.path("expected");
        ControlChart chart = chart(decimals(in.path("z")));
        boolean first = e.has("western_electric");
        JsonNode we = e.path("western_electric");
        assertThat(at(chart, "western-electric-1")).isEqualTo(integers(first ? we.path("rule1") : e.path("beyond_3")));
        assertThat(at(chart, "western-electric-2"))
                .isEqualTo(integers(first ? we.path("rule2") : e.path("two_of_three_beyond_2_last_point_counts")));
        assertThat(at(chart, "western-electric-3"))
                .isEqualTo(integers(first ? we.path("rule3") : e.path("four_of_five_beyond_1_last_point_counts")));
        assertThat(at(chart, "western-electric-4"))
                .isEqualTo(integers(first ? we.path("rule4") : e.path("same_side_8")));
    }

    @Test
    void signalNamesExactlyThePointsInTheZone() {
        List<Signal> found = signals(chart(z("0.2", "1.2", "1.4", "0.3", "1.1", "1.3", "0.1")), "western-electric-3");
        assertThat(found)
                .containsExactly(
                        new Signal("western-electric-3", PanelKind.LOCATION, Side.ABOVE, 6, List.of(2, 3, 5, 6)));
        assertThat(signals(chart(z("-2.1", "0", "-2.5")), "western-electric-2"))
                .containsExactly(new Signal("western-electric-2", PanelKind.LOCATION, Side.BELOW, 3, List.of(1, 3)));
        assertThat(signals(chart(z("1.2", "1.2", "1.2", "1.2", "1.2")), "western-electric-3"))
                .extracting(Signal::points)
                .containsExactly(List.of(1, 2, 3, 4), List.of(1, 2, 3, 4, 5));
    }

    @Test
    void pointOnALineIsNotBeyondIt() {
        assertThat(signals(chart(z("3", "-3", "2", "2", "2", "1", "1", "1", "1")), "western-electric-1"))
                .isEmpty();
        assertThat(signals(chart(z("2", "2", "2")), "western-electric-2")).isEmpty();
        assertThat(signals(chart(z("1", "1", "1", "1", "1")), "western-electric-3"))
                .isEmpty();
        // 7 above, one on the centre line, 8 above: only the last eight are a run
        assertThat(at(
                        chart(z("1", "1", "1", "1", "1", "1", "1", "0", "1", "1", "1", "1", "1", "1", "1", "1")),
                        "western-electric-4"))
                .containsExactly(16);
    }

    @Test
    void centreLineIsDecidedInWholeNumbers() {
        // the mean of 0.1, 0.2, 0.3 is 0.2: in binary arithmetic (0.1 + 0.2 + 0.3)/3 is 0.20000000000000004
        ControlChart chart = new XbarRange()
                .fromData(Sample.of(z("0.1", "0.2", "0.3", "0.3", "0.1", "0.2", "0.2", "0.2", "0.2"), Unit.MILLIMETRE)
                        .inSubgroupsOf(3));
        for (int i = 0; i < 3; i++) {
            assertThat(chart.location().side(i)).isZero();
        }
        assertThat((0.1 + 0.2 + 0.3) / 3).isGreaterThan(0.2);
    }

    @Test
    void decimalLinesAreHitExactlyFarFromZero() {
        // centre 51.9645 and sigma 0.0021: 51.9708 is exactly three sigma, 51.9687 two, 51.9666 one
        FrozenLimits limits = new FrozenLimits("individuals", 51.9645, 0.0021, "stated", 10, Unit.MILLIMETRE);
        ControlChart chart = new Individuals()
                .withLimits(
                        Sample.of(
                                        z("51.9708", "51.9687", "51.9666", "51.9645", "51.9582", "51.9709", "51.9581"),
                                        new BigDecimal("52"),
                                        Unit.MILLIMETRE)
                                .asIndividuals(),
                        limits);
        int[] zones = new int[7];
        int[] sides = new int[7];
        for (int i = 0; i < 7; i++) {
            zones[i] = chart.location().zone(i);
            sides[i] = chart.location().side(i);
        }
        assertThat(zones).containsExactly(2, 1, 0, 0, 2, 3, 3);
        assertThat(sides).containsExactly(1, 1, 1, 0, -1, 1, -1);
    }

    @Test
    void chunksFedInOrderGiveTheSignalsOfTheWhole() {
        Random random = new Random(1956);
        for (int round = 0; round < 40; round++) {
            List<BigDecimal> z = new ArrayList<>();
            for (int i = 0; i < 300; i++) {
                z.add(BigDecimal.valueOf(Math.round(random.nextGaussian() * 130 + 40), 2));
            }
            ControlChart whole = chart(z);
            PanelWatch once = RuleSet.westernElectric().watch(PanelKind.LOCATION, PanelNature.NORMAL);
            once.next(whole.location());
            PanelWatch chunked = RuleSet.westernElectric().watch(PanelKind.LOCATION, PanelNature.NORMAL);
            int from = 0;
            while (from < z.size()) {
                int to = Math.min(z.size(), from + 1 + random.nextInt(9));
                chunked.next(whole.location().part(from, to));
                from = to;
            }
            assertThat(once.signals()).isNotEmpty();
            assertThat(chunked.signals()).isEqualTo(once.signals());
        }
    }

    @Test
    void testsTwoToFourLeaveDispersionAlone() {
        // moving ranges swing widely: every range is beyond its upper limit, on the dispersion panel only test 1 says
        // so
        ControlChart chart = chart(z("2", "-2.5", "2", "-2.5", "2", "-2.5", "2", "-2.5", "2", "-2.5"));
        List<Signal> dispersion = RuleSet.westernElectric().assess(chart).signals().stream()
                .filter(s -> s.panel() == PanelKind.DISPERSION)
                .toList();
        assertThat(dispersion).hasSize(9).allMatch(s -> s.test().equals("western-electric-1"));
        assertThat(dispersion.get(0).at()).isEqualTo(2);
        assertThat(dispersion.get(0).side()).isEqualTo(Side.ABOVE);
    }

    @Test
    void controlStateAndCounts() {
        Assessment calm =
                RuleSet.westernElectric().assess(chart(z("0.1", "-0.2", "0.3", "-0.1", "0.2", "-0.3", "0.1", "-0.1")));
        assertThat(calm.control()).isEqualTo(ControlState.IN_CONTROL);
        assertThat(calm.signalCounts().keySet())
                .containsExactly(
                        "western-electric-1", "western-electric-2", "western-electric-3", "western-electric-4");
        assertThat(calm.signalCounts().values()).containsOnly(0);
        Assessment shortChart = RuleSet.westernElectric().assess(chart(z("0.1", "-0.2", "0.3")));
        assertThat(shortChart.control()).isEqualTo(ControlState.NOT_ASSESSED);
        assertThat(shortChart.notes()).anyMatch(note -> note.contains("needs 8 points, the chart has 3"));
        Assessment shortButOut = RuleSet.westernElectric().assess(chart(z("0.1", "3.2")));
        assertThat(shortButOut.control()).isEqualTo(ControlState.OUT_OF_CONTROL);
        Assessment none = RuleSet.westernElectric()
                .assess(new Individuals().fromData(Sample.of(z("1"), Unit.NONE).asIndividuals()));
        assertThat(none.control()).isEqualTo(ControlState.NOT_ASSESSED);
        assertThat(none.notes()).anyMatch(note -> note.contains("no limits"));
    }

    @Test
    void setCanLeaveATestOut() {
        RuleSet three = RuleSet.westernElectric().without(WesternElectricRule.EIGHT_ON_ONE_SIDE);
        Assessment a = three.assess(chart(z("1", "1", "1", "1", "1", "1", "1", "1", "1")));
        assertThat(a.signals()).isEmpty();
        assertThat(a.signalCounts()).doesNotContainKey("western-electric-4");
    }
}
