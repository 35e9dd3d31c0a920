package io.github.firstoff.study.chart;

import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.file;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.stats.CusumRunLength;
import io.github.firstoff.stats.EwmaRunLength;
import io.github.firstoff.stats.RunLength;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Run lengths against Champ and Woodall 1987, Lucas and Saccucci 1990, and two independent computations. */
class RunLengthReferenceTest {
    private static final String FILE = "chart/run-lengths.json";
    /** The independent chains solve linear systems in double; both state 1e-9 or their printed digits. */
    private static final double COMPUTED = 1e-7;

    private static final Map<String, RunRule> TESTS = Map.of(
            "1", WesternElectricRule.BEYOND_LIMIT,
            "2", WesternElectricRule.TWO_OF_THREE,
            "3", WesternElectricRule.FOUR_OF_FIVE,
            "4", WesternElectricRule.EIGHT_ON_ONE_SIDE,
            "run7", WesternElectricRule.EIGHT_ON_ONE_SIDE.withLength(7),
            "run9", NelsonRule.NINE_ON_ONE_SIDE,
            "in15", NelsonRule.FIFTEEN_WITHIN,
            "out8", NelsonRule.EIGHT_BEYOND);

    private static RuleSet set(String names) {
        List<RunRule> rules = new ArrayList<>();
        for (String name : names.replace(" only", "").split(",", -1)) {
            rules.add(TESTS.get(name));
        }
        return new RuleSet(rules);
    }

    static Stream<JsonNode> chains() {
        return StreamSupport.stream(file(FILE).path("cases").spliterator(), false)
                .filter(c -> c.path("id").asText().startsWith("runlength-")
                        && c.path("input").has("tests"));
    }

    @ParameterizedTest
    @MethodSource("chains")
    void setsOfZoneTests(JsonNode c) {
        RuleSet rules = set(c.path("input").path("tests").asText());
        double[] shifts = doubles(c.path("input").path("shifts_in_sigma_of_plotted_statistic"));
        double[] average = doubles(c.path("expected").path("arl"));
        double[] spread = doubles(c.path("expected").path("sdrl"));
        for (int i = 0; i < shifts.length; i++) {
            RunLength found = InControlRunLength.shifted(rules, shifts[i]).runLength();
            assertThat(found.average()).isCloseTo(average[i], withinPercentage(COMPUTED));
            assertThat(found.standardDeviation()).isCloseTo(spread[i], withinPercentage(COMPUTED));
        }
        within(
                c.path("expected").path("in_control_p_signal_by"),
                InControlRunLength.shifted(rules, 0).runLength());
        within(
                c.path("expected").path("shift1_p_signal_by"),
                InControlRunLength.shifted(rules, 1).runLength());
    }

    private static void within(JsonNode expected, RunLength found) {
        expected.properties()
                .forEach(e -> assertThat(found.signalWithin(Integer.parseInt(e.getKey())))
                        .isCloseTo(e.getValue().asDouble(), offset(1e-11)));
    }

    @Test
    void printedInControlColumnOfChampAndWoodall() {
        // 370.40, 225.44, 166.05, 152.73, 132.89, 122.05, 105.78 and 91.75
        JsonNode printed = reference(FILE, "runlength-published-in-control")
                .path("expected")
                .path("arl");
        assertThat(printed.size()).isEqualTo(8);
        printed.properties()
                .forEach(e -> assertThat(
                                set(e.getKey()).inControlRunLength().runLength().average())
                        .isCloseTo(e.getValue().asDouble(), offset(0.0051)));
    }

    static Stream<String> champAndWoodall() {
        return Stream.of("C1", "C12", "C13", "C123", "C1234");
    }

    @ParameterizedTest
    @MethodSource("champAndWoodall")
    void printedTableOfChampAndWoodall(String name) {
        JsonNode c = reference(FILE, "ARL-" + name);
        RuleSet rules = set(String.join(",", name.substring(1).split("")));
        double[] shifts = doubles(c.path("inputs").path("shift_in_sigma_of_plotted_statistic"));
        for (int i = 0; i < shifts.length; i++) {
            RunLength found = InControlRunLength.shifted(rules, shifts[i]).runLength();
            assertThat(found.average())
                    .isCloseTo(c.path("expected").path("arl").get(i).asDouble(), offset(1e-6));
            assertThat(found.average())
                    .isCloseTo(c.path("expected").path("arl_printed").get(i).asDouble(), offset(0.011));
        }
    }

    @Test
    void shiftsOfEitherSignAreAlike() {
        RuleSet rules = RuleSet.westernElectric();
        assertThat(InControlRunLength.shifted(rules, -0.7).runLength().average())
                .isCloseTo(InControlRunLength.shifted(rules, 0.7).runLength().average(), withinPercentage(1e-10));
        assertThatThrownBy(() -> InControlRunLength.shifted(rules, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void memoriesAreAsSmallAsPublished() {
        // Champ and Woodall give 107 states for the four tests after removing equivalent ones by hand; ours removes
        // what cannot
        // matter to each test, which leaves a few that only two tests together make equivalent
        assertThat(RuleSet.westernElectric().inControlRunLength().states()).isBetween(107, 555);
        assertThat(set("1").inControlRunLength().states()).isEqualTo(1);
        assertThat(set("1,4").inControlRunLength().states()).isEqualTo(15);
    }

    private static double average(RunRule... rules) {
        return new RuleSet(List.of(rules)).inControlRunLength().runLength().average();
    }

    @Test
    void trendsAndAlternationsAloneAreThoseOfPermutations() {
        // no three points rise or fall: alternating permutations, 2Eₙ of n! (André 1881); ΣEₙ/n! = sec 1 + tan 1, so
        // the average is
        // 2(sec 1 + tan 1) − 2
        assertThat(average(NelsonRule.SIX_IN_A_TREND.withLength(3)))
                .isCloseTo(2 * (1 / Math.cos(1) + Math.tan(1)) - 2, withinPercentage(1e-9));
        // no three points alternate: all rise or all fall, 2 of n!; 1 + 1 + 2(e − 2)
        assertThat(average(NelsonRule.FOURTEEN_ALTERNATING.withLength(3)))
                .isCloseTo(2 * Math.E - 2, withinPercentage(1e-9));
        // the probability of the first window: 2/6! (Nelson 1984), and 2E₁₄/14! with E₁₄ = 199360981 (Euler)
        assertThat(new RuleSet(List.of(NelsonRule.SIX_IN_A_TREND))
                        .inControlRunLength()
                        .runLength()
                        .signalWithin(6))
                .isCloseTo(2.0 / 720, offset(1e-14));
        double factorial = 1;
        for (int i = 2; i <= 14; i++) {
            factorial *= i;
        }
        RunLength alternating = new RuleSet(List.of(NelsonRule.FOURTEEN_ALTERNATING))
                .inControlRunLength()
                .runLength();
        assertThat(alternating.signalWithin(14)).isCloseTo(2 * 199360981.0 / factorial, offset(1e-13));
        assertThat(alternating.signalWithin(13)).isCloseTo(0, offset(1e-13));
        // runs up and down do not depend on where the process is
        assertThat(InControlRunLength.shifted(new RuleSet(List.of(NelsonRule.SIX_IN_A_TREND)), 1.3)
                        .runLength()
                        .average())
                .isCloseTo(average(NelsonRule.SIX_IN_A_TREND), withinPercentage(1e-8));
    }

    @Test
    void stepsAndZonesTogether() {
        InControlRunLength nelson = new RuleSet(NelsonRule.all()).inControlRunLength();
        double zones =
                set("1,2,3,run9,in15,out8").inControlRunLength().runLength().average();
        assertThat(nelson.isComplete()).isTrue();
        assertThat(nelson.runLength().average()).isLessThan(zones).isGreaterThan(zones / 2);
        // a trend too long to be seen within the run length changes nothing
        assertThat(average(WesternElectricRule.BEYOND_LIMIT, UnnaturalPattern.TREND.withLength(30)))
                .isCloseTo(370.3983473449564, withinPercentage(1e-8));
    }

    @Test
    void whatASheetSays() {
        assertThat(RuleSet.westernElectric().inControlRunLength().sentence()).contains("once in 91.8 points");
        assertThat(set("1").inControlRunLength().sentence())
                .contains("once in 370 points")
                .endsWith("average.");
        InControlRunLength none = new RuleSet(List.of()).inControlRunLength();
        assertThat(none.runLength().average()).isInfinite();
        assertThat(none.sentence()).contains("never");
        assertThat(none.runLength().signalWithin(1000)).isZero();
        assertThat(new InControlRunLength(none.runLength(), 1, List.of("own-1")).sentence())
                .contains("not counting own-1");
    }

    static Stream<JsonNode> cusums() {
        return StreamSupport.stream(file(FILE).path("cases").spliterator(), false)
                .filter(c -> c.path("id").asText().toLowerCase(Locale.ROOT).contains("cusum"));
    }

    @ParameterizedTest
    @MethodSource("cusums")
    void cumulativeSums(JsonNode c) {
        JsonNode in = c.has("inputs") ? c.path("inputs") : c.path("input");
        double[] shifts = doubles(in.has("shift") ? in.path("shift") : in.path("shifts"));
        JsonNode e = c.path("expected");
        double[] expected = doubles(e.has("arl") ? e.path("arl") : e.path("arl_zero_state"));
        boolean printed = c.path("id").asText().contains("printed");
        // 1e-7 relative, as both state: they leave out the sum on the far side where it hardly ever signals (6e-8 at
        // shift 1.5)
        for (int i = 0; i < shifts.length; i++) {
            double found = CusumRunLength.twoSidedAverage(
                    in.path("k").asDouble(), in.path("h").asDouble(), 0, shifts[i]);
            assertThat(found).isCloseTo(expected[i], withinPercentage(printed ? 0.5 : 1e-5));
        }
    }

    @Test
    void headStartOfCumulativeSums() {
        // Lucas and Crosier 1982, table of the two-sided cusum with k 0.5, h 5, head start 2.5: 430 and 6.35 at shifts
        // 0 and 1; h 4,
        // head start 2: 149 and 5.29 (as reprinted by Montgomery, from memory)
        assertThat(CusumRunLength.twoSidedAverage(0.5, 5, 2.5, 0)).isCloseTo(430, offset(0.5));
        assertThat(CusumRunLength.twoSidedAverage(0.5, 5, 2.5, 1)).isCloseTo(6.35, offset(0.005));
        assertThat(CusumRunLength.twoSidedAverage(0.5, 4, 2, 0)).isCloseTo(149, offset(0.5));
        assertThat(CusumRunLength.twoSidedAverage(0.5, 4, 2, 1)).isCloseTo(5.29, offset(0.005));
        // the row of h 4 in full, shifts 0 to 2, with head start (Lucas and Crosier 1982, from memory)
        double[] shifts = {0, 0.25, 0.5, 0.75, 1, 1.5, 2};
        double[] printed = {149, 62.7, 20.1, 8.97, 5.29, 2.86, 2.01};
        double[] halfPlace = {0.5, 0.05, 0.05, 0.005, 0.005, 0.005, 0.005};
        for (int i = 0; i < shifts.length; i++) {
            assertThat(CusumRunLength.twoSidedAverage(0.5, 4, 2, shifts[i]))
                    .isCloseTo(printed[i], offset(halfPlace[i]));
        }
        assertThatThrownBy(() -> CusumRunLength.twoSidedAverage(0.5, 4, 2.1, 0)).hasMessageContaining("half");
        assertThatThrownBy(() -> CusumRunLength.upper(-1, 4, 0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CusumRunLength.upper(1, 4, 5, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    static Stream<JsonNode> averages() {
        return StreamSupport.stream(file(FILE).path("cases").spliterator(), false)
                .filter(c -> c.path("id").asText().toLowerCase(Locale.ROOT).contains("ewma"));
    }

    @ParameterizedTest
    @MethodSource("averages")
    void weightedAveragesWithFinalLimits(JsonNode c) {
        JsonNode in = c.has("inputs") ? c.path("inputs") : c.path("input");
        double[] shifts = doubles(in.has("shift") ? in.path("shift") : in.path("shifts"));
        JsonNode e = c.path("expected");
        double[] expected = doubles(e.has("arl") ? e.path("arl") : e.path("arl_zero_state"));
        boolean printed = c.path("id").asText().contains("printed");
        for (int i = 0; i < shifts.length; i++) {
            double found = EwmaRunLength.of(
                            in.path("lambda").asDouble(), in.path("L").asDouble(), shifts[i], false)
                    .average();
            double tolerance = printed ? Math.max(0.1, expected[i] / 100) : expected[i] * 1e-8;
            assertThat(found).isCloseTo(expected[i], offset(tolerance));
        }
    }

    @Test
    void weightedAverageWithExactLimits() {
        // λ = 1 is the chart of individuals, whatever the limits do in time
        assertThat(EwmaRunLength.of(1, 3, 0, true).average()).isCloseTo(370.3983473449564, withinPercentage(1e-9));
        // limits that are narrow at the start can only signal earlier
        for (double shift : new double[] {0, 0.5, 2}) {
            assertThat(EwmaRunLength.of(0.1, 2.814, shift, true).average())
                    .isLessThan(EwmaRunLength.of(0.1, 2.814, shift, false).average());
        }
        // the first point of an average with exact limits is a chart of individuals with limits ±L
        assertThat(EwmaRunLength.of(0.1, 3, 0, true).signalWithin(1)).isCloseTo(0.002699796063, offset(1e-11));
        assertThatThrownBy(() -> EwmaRunLength.of(0, 3, 0, true)).isInstanceOf(IllegalArgumentException.class);
    }
}
