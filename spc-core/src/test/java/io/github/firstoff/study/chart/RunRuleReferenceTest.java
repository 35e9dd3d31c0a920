package io.github.firstoff.study.chart;

import static io.github.firstoff.reference.ReferenceFile.decimals;
import static io.github.firstoff.reference.ReferenceFile.file;
import static io.github.firstoff.reference.ReferenceFile.integers;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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

/** Nelson's tests and those for unnatural patterns against two collections of sequences with literal implementations. */
class RunRuleReferenceTest {
    /** Centre 0 and sigma 1, so that readings are the standardised points themselves. */
    private static final FrozenLimits STANDARD = new FrozenLimits("individuals", 0, 1, "stated", 1, Unit.NONE);

    private static ControlChart chart(List<BigDecimal> z) {
        return new Individuals().withLimits(Sample.of(z, Unit.NONE).asIndividuals(), STANDARD);
    }

    private static List<BigDecimal> z(String... values) {
        return Stream.of(values).map(BigDecimal::new).toList();
    }

    private static List<Signal> signals(List<BigDecimal> z, RunRule rule) {
        return new RuleSet(List.of(rule))
                .assess(chart(z)).signals().stream()
                        .filter(s -> s.panel() == PanelKind.LOCATION)
                        .toList();
    }

    private static List<Integer> at(List<BigDecimal> z, RunRule rule) {
        return signals(z, rule).stream().map(Signal::at).toList();
    }

    static Stream<JsonNode> nelson() {
        return StreamSupport.stream(file("chart/run-rules.json").path("cases").spliterator(), false)
                .filter(c -> c.path("expected").has("nelson"));
    }

    static Stream<JsonNode> patterns() {
        return StreamSupport.stream(file("chart/run-rules.json").path("cases").spliterator(), false)
                .filter(c -> c.path("expected").has("trend_6_points"));
    }

    @ParameterizedTest
    @MethodSource("nelson")
    void nelsonsEight(JsonNode c) {
        List<BigDecimal> z = decimals(c.path("inputs").path("z"));
        for (int test = 1; test <= 8; test++) {
            assertThat(at(z, NelsonRule.all().get(test - 1)))
                    .as("test %s", test)
                    .isEqualTo(integers(c.path("expected").path("nelson").path("test" + test)));
        }
    }

    @ParameterizedTest
    @MethodSource("patterns")
    void unnaturalPatternsAndOtherLengths(JsonNode c) {
        List<BigDecimal> z = decimals(c.path("input").path("z"));
        JsonNode e = c.path("expected");
        assertThat(at(z, UnnaturalPattern.TREND)).isEqualTo(integers(e.path("trend_7_points")));
        assertThat(at(z, UnnaturalPattern.TREND.withLength(6))).isEqualTo(integers(e.path("trend_6_points")));
        assertThat(at(z, UnnaturalPattern.SYSTEMATIC)).isEqualTo(integers(e.path("alternating_14_points")));
        assertThat(at(z, UnnaturalPattern.STRATIFICATION)).isEqualTo(integers(e.path("fifteen_inside_1")));
        assertThat(at(z, UnnaturalPattern.MIXTURE)).isEqualTo(integers(e.path("eight_outside_1")));
        assertThat(at(z, NelsonRule.NINE_ON_ONE_SIDE)).isEqualTo(integers(e.path("same_side_9")));
        assertThat(at(z, NelsonRule.NINE_ON_ONE_SIDE.withLength(7))).isEqualTo(integers(e.path("same_side_7")));
        assertThat(at(z, NelsonRule.TWO_OF_THREE))
                .isEqualTo(integers(e.path("two_of_three_beyond_2_last_point_counts")));
        assertThat(at(z, NelsonRule.FOUR_OF_FIVE))
                .isEqualTo(integers(e.path("four_of_five_beyond_1_last_point_counts")));
    }

    @Test
    void signalsNameDirectionAndPoints() {
        assertThat(signals(z("3", "0.1", "0.2", "0.3", "0.4"), NelsonRule.SIX_IN_A_TREND.withLength(4)))
                .containsExactly(new Signal("nelson-3", PanelKind.LOCATION, Side.RISING, 5, List.of(2, 3, 4, 5)));
        assertThat(signals(z("0.5", "0.4", "0.3", "0.3", "0.2", "0.1"), NelsonRule.SIX_IN_A_TREND.withLength(3)))
                .containsExactly(
                        new Signal("nelson-3", PanelKind.LOCATION, Side.FALLING, 3, List.of(1, 2, 3)),
                        new Signal("nelson-3", PanelKind.LOCATION, Side.FALLING, 6, List.of(4, 5, 6)));
        assertThat(signals(z("0.1", "0.3", "0.2", "0.4", "0.4", "0.1"), NelsonRule.FOURTEEN_ALTERNATING.withLength(4)))
                .containsExactly(new Signal("nelson-4", PanelKind.LOCATION, Side.EITHER, 4, List.of(1, 2, 3, 4)));
        assertThat(signals(z("1.1", "-1.2", "1", "1.3", "-1.4"), NelsonRule.EIGHT_BEYOND.withLength(2)))
                .containsExactly(
                        new Signal("nelson-8", PanelKind.LOCATION, Side.EITHER, 2, List.of(1, 2)),
                        new Signal("nelson-8", PanelKind.LOCATION, Side.EITHER, 5, List.of(4, 5)));
        // on the line at one sigma a point is neither within nor beyond; on the centre line it is within
        assertThat(at(z("0.9", "-1", "0", "0.5", "-0.9"), NelsonRule.FIFTEEN_WITHIN.withLength(3)))
                .containsExactly(5);
        assertThat(at(z("1.1", "-1", "1.1", "-1.1"), NelsonRule.EIGHT_BEYOND.withLength(2)))
                .containsExactly(4);
    }

    @Test
    void lengthsAreCheckedAndDescribed() {
        assertThat(NelsonRule.TWO_OF_THREE.withWindow(3, 4).description())
                .isEqualTo("three of four successive points beyond two sigma on the same side");
        assertThat(NelsonRule.NINE_ON_ONE_SIDE.description())
                .isEqualTo("nine successive points on the same side of the centre line");
        assertThat(NelsonRule.BEYOND_LIMIT.description()).isEqualTo("one point beyond three sigma");
        assertThat(NelsonRule.SIX_IN_A_TREND.description())
                .isEqualTo("six successive points steadily rising or falling");
        assertThat(NelsonRule.FOURTEEN_ALTERNATING.withLength(25).description())
                .isEqualTo("25 successive points alternating up and down");
        assertThat(NelsonRule.SIX_IN_A_TREND.withLength(9).span()).isEqualTo(9);
        assertThat(NelsonRule.TWO_OF_THREE.span()).isEqualTo(3);
        assertThatThrownBy(() -> NelsonRule.SIX_IN_A_TREND.withWindow(5, 6)).hasMessageContaining("trend");
        assertThatThrownBy(() -> NelsonRule.FOURTEEN_ALTERNATING.withWindow(5, 6))
                .hasMessageContaining("alternation");
        assertThatThrownBy(() -> NelsonRule.SIX_IN_A_TREND.withLength(2)).hasMessageContaining("3 to");
        assertThatThrownBy(() -> NelsonRule.FOURTEEN_ALTERNATING.withLength(63)).hasMessageContaining("3 to");
        assertThatThrownBy(() -> NelsonRule.TWO_OF_THREE.withWindow(4, 3)).hasMessageContaining("4 of 3");
        assertThatThrownBy(() -> NelsonRule.TWO_OF_THREE.withWindow(0, 3)).hasMessageContaining("0 of 3");
        assertThatThrownBy(() -> NelsonRule.NINE_ON_ONE_SIDE.withLength(32)).hasMessageContaining("31");
        assertThat(at(z("1", "1"), NelsonRule.NINE_ON_ONE_SIDE.withLength(31))).isEmpty();
    }

    @Test
    void catalogueKnowsEveryTest() {
        assertThat(RuleCatalogue.rules()).hasSize(16).doesNotHaveDuplicates();
        assertThat(RuleCatalogue.rule("nelson-3")).contains(NelsonRule.SIX_IN_A_TREND);
        assertThat(RuleCatalogue.rule("nelson-9")).isEmpty();
        assertThat(RuleCatalogue.set("western-electric")).contains(RuleSet.westernElectric());
        assertThat(RuleCatalogue.set("unnatural").orElseThrow().rules()).hasSize(4);
        assertThat(RuleCatalogue.set("western")).isEmpty();
        assertThatThrownBy(
                        () -> new RuleSet(List.of(NelsonRule.TWO_OF_THREE, NelsonRule.TWO_OF_THREE.withWindow(2, 4))))
                .hasMessageContaining("twice");
        assertThat(RuleSet.westernElectric().and(UnnaturalPattern.TREND).rules())
                .hasSize(5);
    }

    @Test
    void whichTestMayJudgeWhat() {
        // the sources: zone tests only where points are normal; only a point beyond a limit where points share readings
        for (RunRule rule : RuleCatalogue.rules()) {
            assertThat(rule.judges(PanelNature.NORMAL)).isTrue();
            boolean beyond = rule.id().equals("western-electric-1") || rule.id().equals("nelson-1");
            assertThat(rule.judges(PanelNature.DEPENDENT)).isEqualTo(beyond);
            assertThat(rule.judges(PanelNature.SPREAD)).isEqualTo(beyond);
        }
        assertThat(RuleCatalogue.rules().stream()
                        .filter(rule -> rule.judges(PanelNature.COUNTED))
                        .map(RunRule::id))
                .containsExactly(
                        "western-electric-1",
                        "western-electric-4",
                        "unnatural-trend",
                        "unnatural-systematic",
                        "nelson-1",
                        "nelson-2",
                        "nelson-3",
                        "nelson-4");
    }

    @Test
    void wholeAndInChunksSignalAlike() {
        RuleSet all = new RuleSet(RuleCatalogue.rules());
        Random random = new Random(1984);
        for (int trial = 0; trial < 60; trial++) {
            List<BigDecimal> z = new ArrayList<>();
            for (int i = 0; i < 120; i++) {
                // few digits, so that points lie on lines and repeat
                z.add(BigDecimal.valueOf(Math.round(random.nextGaussian() * (trial % 3 == 0 ? 4 : 12)), 1));
            }
            Panel whole = chart(z).location();
            PanelWatch once = all.watch(PanelKind.LOCATION, PanelNature.NORMAL);
            once.next(whole);
            PanelWatch chunked = all.watch(PanelKind.LOCATION, PanelNature.NORMAL);
            int from = 0;
            while (from < whole.count()) {
                int to = Math.min(whole.count(), from + 1 + random.nextInt(9));
                chunked.next(whole.part(from, to));
                from = to;
            }
            assertThat(chunked.signals()).isEqualTo(once.signals());
        }
    }

    @Test
    void assessmentWaitsForTheLongestTest() {
        List<BigDecimal> fourteen = z(
                "0.5", "0.4", "0.6", "-1.2", "0.2", "0.1", "-0.2", "1.3", "0.2", "-0.3", "0.1", "-0.4", "-0.2", "0.3");
        assertThat(new RuleSet(NelsonRule.all()).assess(chart(fourteen)).control())
                .isEqualTo(ControlState.NOT_ASSESSED);
        List<BigDecimal> fifteen = new ArrayList<>(fourteen);
        fifteen.add(new BigDecimal("0.1"));
        assertThat(new RuleSet(NelsonRule.all()).assess(chart(fifteen)).control())
                .isEqualTo(ControlState.IN_CONTROL);
    }
}
