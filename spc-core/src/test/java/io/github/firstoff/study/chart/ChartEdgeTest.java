package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Edges of settings, sentences and lines that no published example reaches. */
class ChartEdgeTest {
    private static Subgroups singles(String... values) {
        return Sample.of(Stream.of(values).map(BigDecimal::new).toList(), Unit.NONE)
                .asIndividuals();
    }

    private static FrozenLimits stated(String kind, double centre, double sigma) {
        return new FrozenLimits(kind, centre, sigma, "stated", 10, Unit.NONE);
    }

    @Test
    void leastAndGreatestSettingsAreAllowed() {
        assertThat(NelsonRule.SIX_IN_A_TREND.withLength(3).span()).isEqualTo(3);
        assertThat(NelsonRule.SIX_IN_A_TREND.withLength(62).span()).isEqualTo(62);
        assertThat(NelsonRule.FOURTEEN_ALTERNATING.withLength(3).span()).isEqualTo(3);
        assertThat(NelsonRule.FOURTEEN_ALTERNATING.withLength(62).span()).isEqualTo(62);
        assertThat(NelsonRule.NINE_ON_ONE_SIDE.withLength(1).span()).isEqualTo(1);
        // λ 1 is a chart of individuals
        ControlChart one =
                new Ewma(1, 3, Optional.empty(), Optional.empty()).withLimits(singles("2", "-4"), stated("ewma", 0, 1));
        assertThat(one.location().value(1)).isEqualTo(-4);
        assertThat(one.location().beyondLimit(1)).isEqualTo(-1);
        // k 0 sums everything
        ControlChart sums = new Cusum(0, 5, 0, Optional.empty(), Optional.empty())
                .withLimits(singles("2", "1"), stated("cusum", 0, 1));
        assertThat(sums.location().value(1)).isEqualTo(3);
        assertThat(one.location().statistic()).isEqualTo("weighted moving average");
    }

    @Test
    void linesOfSumsLieOnBothSides() {
        Cusum started = new Cusum(0.5, 4, 0.5, Optional.empty(), Optional.empty());
        ControlChart chart = started.withLimits(singles("0"), stated("cusum", 0, 2));
        assertThat(chart.location().commonLines().orElseThrow().lower()).isEqualTo(-8);
        assertThat(chart.location().commonLines().orElseThrow().upper()).isEqualTo(8);
        assertThat(chart.notes()).anyMatch(note -> note.endsWith("head start 0.5 of it."));
        assertThat(new Cusum().withLimits(singles("0"), stated("cusum", 0, 2)).notes())
                .noneMatch(note -> note.contains("head start") || note.contains("differ"));
        // Lucas and Crosier 1982: 149 with a head start of one half, 168 without (k 0.5, h 4; as reprinted, from
        // memory)
        assertThat(started.falseSignals(RuleSet.westernElectric()).average()).isCloseTo(149, within(0.5));
        Subgroups unequal = Sample.of(
                        Stream.of("-2", "-2", "-2", "-2", "-2")
                                .map(BigDecimal::new)
                                .toList(),
                        Unit.NONE)
                .inSubgroups(List.of("a", "a", "b", "b", "b"));
        ControlChart falling = new Cusum().withLimits(unequal, stated("cusum", 0, 2));
        // −√2 and −√3 sigmas of their means, k 0.5
        assertThat(falling.location().second(1).orElseThrow())
                .isCloseTo(-(Math.sqrt(2) + Math.sqrt(3) - 1), within(1e-14));
        assertThat(falling.location().commonLines().orElseThrow().lower()).isEqualTo(-5);
    }

    @Test
    void rangeOfSigmaZByChance() {
        // 20 counts, 19 moving ranges: V² = (0.8264·20 − 1.0821)/19² = 0.042785 (Cryer and Ryan 1990), ν about 11.94;
        // χ² 0.5 % and 99.5 % of 12 degrees of freedom are 3.074 and 28.300 (printed tables)
        DispersionCheck check = DispersionCheck.of(1.0, 19, 19.0, 20, DispersionPolicy.CHECK);
        assertThat(check.lower()).isCloseTo(Math.sqrt(3.074 / 12), within(0.005));
        assertThat(check.upper()).isCloseTo(Math.sqrt(28.300 / 12), within(0.005));
        assertThat(check.sigmaZ()).isCloseTo(1 / 1.128379, within(1e-6));
        assertThat(check.degreesOfFreedom()).isEqualTo(19);
        // the median of χ² with 19 degrees of freedom is 18.338
        assertThat(DispersionCheck.of(1.0, 19, 18.338, 20, DispersionPolicy.CHECK)
                        .p())
                .isCloseTo(0.5, within(1e-4));
        assertThat(check.applied()).isFalse();
        assertThat(DispersionCheck.of(1.0, 19, 19, 20, DispersionPolicy.OBSERVED)
                        .applied())
                .isTrue();
        assertThat(DispersionCheck.of(3.0, 19, 19, 20, DispersionPolicy.DISTRIBUTION)
                        .applied())
                .isFalse();
        assertThat(DispersionCheck.of(3.0, 19, 19, 20, DispersionPolicy.CHECK).applied())
                .isTrue();
        // counts that do not move at all would give limits of no width
        assertThat(DispersionCheck.of(0, 19, 19, 20, DispersionPolicy.OBSERVED).applied())
                .isFalse();
    }

    @Test
    void sentencesAndSizesOfAttributes() {
        Counts few = Counts.of(new long[] {5, 6, 4, 5, 7, 5}, 50)
                .withData(d -> d.excluding(List.of(new Exclusion(5, "wrong lot"))));
        ControlChart chart = new NonconformingShare().fromData(few);
        assertThat(chart.notes())
                .anyMatch(note -> note.contains("rest on 5 counts"))
                .anyMatch(note -> note.contains("wrong lot"))
                .noneMatch(note -> note.contains("below 5"));
        assertThat(chart.location().point(0).size()).isEqualTo(50);
        assertThat(chart.dispersionCheck()).isEmpty();
        assertThat(chart.frozen().orElseThrow().estimator()).isEqualTo("binomial");
        assertThat(new NonconformitiesPerUnit()
                        .fromData(few)
                        .frozen()
                        .orElseThrow()
                        .estimator())
                .isEqualTo("Poisson");
        ControlChart again =
                new NonconformingShare().withLimits(few, chart.frozen().orElseThrow());
        assertThat(again.notes()).anyMatch(note -> note.contains("wrong lot"));
        assertThat(again.location().side(0)).isZero();
        assertThatThrownBy(() -> new NonconformingShare().withLimits(few, stated("p", 1.1, 1)))
                .hasMessageContaining("1.1");
        assertThatThrownBy(() -> new NonconformitiesPerUnit().withLimits(few, stated("u", -0.1, 1)))
                .hasMessageContaining("-0.1");
        assertThat(new NonconformitiesPerUnit()
                        .withLimits(few, stated("u", 1.1, 1))
                        .location()
                        .count())
                .isEqualTo(6);
        assertThatThrownBy(() ->
                        new NonconformitiesPerUnit().withLimits(Counts.of(new long[] {1}, 1), stated("p", 0.1, 1)))
                .hasMessageContaining("do not fit");
    }

    @Test
    void sentencesOfStretches() {
        String[] values = {"1", "2", "1", "2", "1", "2", "1", "2", "1", "2"};
        Break tool = new Break(6, "tool 2", "tool change");
        Assessment assessment =
                ChartRequest.of("individuals").with(List.of(tool), List.of()).assess(singles(values));
        // two stretches of five: no test of eight can see anything
        assertThat(assessment.notes()).anyMatch(note -> note.endsWith("the chart has 5 between two breaks."));
        Assessment plain = ChartRequest.of("individuals").assess(singles("1", "2", "1"));
        assertThat(plain.notes()).anyMatch(note -> note.endsWith("the chart has 3."));
        ControlChart again = ChartRequest.of("individuals")
                .with(List.of(tool), List.of())
                .with(LimitsFrom.eachPhase("new tool"))
                .assess(singles(values))
                .chart();
        assertThat(again.notes())
                .anyMatch(note -> note.startsWith("tool 2: The limits rest on 5"))
                .anyMatch(note -> note.startsWith("Patterns"))
                .anyMatch(note -> note.contains("of its last stretch"));
        ControlChart one = ChartRequest.of("individuals")
                .with(LimitsFrom.eachPhase("new tool"))
                .assess(singles(values))
                .chart();
        assertThat(one.notes()).noneMatch(note -> note.contains("of its last stretch"));
        assertThat(one.stages()).hasSize(1);
        ControlChart none = ChartRequest.of("individuals")
                .with(LimitsFrom.baseline(Baseline.first(1)))
                .assess(singles(values))
                .chart();
        assertThat(none.limitsFrom()).isZero();
        assertThat(none.notes()).noneMatch(note -> note.contains("applied to all"));
    }

    @Test
    void memoriesForgetOnlyWhatCannotMatter() {
        // 4 of 5, zone beyond one sigma: above, inside, above leaves both points alive; two inside in a row leave
        // nothing
        RunRule.ZoneMemory memory = WesternElectricRule.FOUR_OF_FIVE.memory().orElseThrow();
        long hit = memory.essence(memory.next(0, RunRule.ZoneMemory.BEYOND_ONE_SIGMA));
        assertThat(hit).isEqualTo(0b1);
        long one = memory.essence(memory.next(hit, RunRule.ZoneMemory.WITHIN_ONE_SIGMA));
        assertThat(one).isEqualTo(0b10);
        assertThat(memory.essence(memory.next(one, RunRule.ZoneMemory.BEYOND_ONE_SIGMA)))
                .isEqualTo(0b101);
        assertThat(memory.essence(memory.next(one, RunRule.ZoneMemory.WITHIN_ONE_SIGMA)))
                .isZero();
        // the side below lives in the upper half
        assertThat(memory.essence(memory.next(0, -RunRule.ZoneMemory.BEYOND_TWO_SIGMA)))
                .isEqualTo(1L << 32);
        // a run remembers only its unbroken end
        RunRule.ZoneMemory run = WesternElectricRule.EIGHT_ON_ONE_SIDE.memory().orElseThrow();
        long state = 0;
        for (int cell : new int[] {1, 1, -1, 1, 1, 1}) {
            state = run.essence(run.next(state, cell));
        }
        assertThat(state).isEqualTo(0b111);
    }
}
