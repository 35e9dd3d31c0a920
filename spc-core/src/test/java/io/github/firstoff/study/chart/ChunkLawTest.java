package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.CusumTally;
import io.github.firstoff.stats.EwmaTally;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every test of the catalogue gives the same signals whether it is fed a chart whole or in chunks, wherever it is cut. */
class ChunkLawTest {
    private static final Scale STEPS = new Scale(new BigDecimal("20.000"), 3, Unit.MILLIMETRE);

    /** All tests, and some with other lengths, the longest windows among them. */
    static Stream<RunRule> rules() {
        List<RunRule> rules = new ArrayList<>(RuleCatalogue.rules());
        rules.add(WesternElectricRule.EIGHT_ON_ONE_SIDE.withLength(2));
        rules.add(WesternElectricRule.FOUR_OF_FIVE.withWindow(3, 31));
        rules.add(NelsonRule.SIX_IN_A_TREND.withLength(3));
        rules.add(NelsonRule.FOURTEEN_ALTERNATING.withLength(4));
        rules.add(NelsonRule.FIFTEEN_WITHIN.withLength(31));
        return rules.stream();
    }

    /** Readings that provoke every test now and then: quiet, wild, drifting, alternating and level stretches in turn. */
    private static long[] eventful(Random random, int n) {
        long[] d = new long[n];
        int kind = 0;
        for (int i = 0; i < n; i++) {
            if (random.nextInt(12) == 0) {
                kind = random.nextInt(6);
            }
            double z = random.nextGaussian();
            d[i] = Math.round(
                    switch (kind) {
                        case 0 -> 100 * z;
                        case 1 -> 30 * z;
                        case 2 -> 220 * Math.signum(z) + 40 * z;
                        case 3 -> i > 0 ? d[i - 1] + 20 + 15 * z : 0;
                        case 4 -> (i % 2 == 0 ? 90 : -90) + 20 * z;
                        default -> 100 * Math.round(z);
                    });
        }
        return d;
    }

    private static Subgroups marked(Random random, int n, boolean marks) {
        Subgroups data = Sample.ofDeviations(eventful(random, n), STEPS).asIndividuals();
        if (!marks) {
            return data;
        }
        TreeSet<Integer> phases = new TreeSet<>();
        TreeSet<Integer> left = new TreeSet<>();
        for (int i = 0; i < 5; i++) {
            phases.add(2 + random.nextInt(n - 1));
            left.add(1 + random.nextInt(n));
        }
        return data.breakingBefore(phases.stream()
                        .map(i -> new Break(i, "from " + i, "set-up"))
                        .toList())
                .excluding(left.stream()
                        .map(i -> new Exclusion(i, "dropped on the floor"))
                        .toList());
    }

    private static List<Signal> inChunks(RunRule rule, Panel panel, int... cuts) {
        PanelWatch watch = new RuleSet(List.of(rule)).watch(panel.kind(), panel.nature());
        int from = 0;
        for (int to : cuts) {
            watch.next(panel.part(from, to));
            from = to;
        }
        watch.next(panel.part(from, panel.count()));
        return watch.signals();
    }

    @ParameterizedTest
    @MethodSource("rules")
    void signalsOfChunksAreThoseOfTheWhole(RunRule rule) {
        int found = 0;
        for (long seed = 1; seed <= 24; seed++) {
            Random random = new Random(seed);
            int n = 300;
            Subgroups data = marked(random, n, seed % 2 == 0);
            Panel panel = new Individuals()
                    .withLimits(data, new FrozenLimits("individuals", 20, 0.1, "stated", 99, Unit.MILLIMETRE))
                    .location();
            List<Signal> whole = inChunks(rule, panel);
            found += whole.size();
            assertThat(inChunks(rule, panel, random.ints(7, 0, n + 1).sorted().toArray()))
                    .isEqualTo(whole);
            // one point at a time
            assertThat(inChunks(
                            rule, panel, java.util.stream.IntStream.range(1, n).toArray()))
                    .isEqualTo(whole);
            // cut within every signal's own points
            for (Signal signal : whole.subList(0, Math.min(20, whole.size()))) {
                for (int point : signal.points()) {
                    assertThat(inChunks(rule, panel, point)).isEqualTo(whole);
                }
            }
            // and nothing is found that a phase or an excluded point should have ended
            for (Signal signal : whole) {
                assertThat(signal.points()).noneMatch(p -> panel.isExcluded(p - 1));
                assertThat(signal.points().stream()
                                .map(p -> panel.segment(p - 1))
                                .distinct())
                        .hasSize(1);
            }
        }
        assertThat(found).as("signals of " + rule.id()).isPositive();
    }

    /** A stretch between two breaks is tested as if it stood alone, and excluded points as if they had not been taken. */
    @ParameterizedTest
    @MethodSource("rules")
    void phasesStandAloneAndExcludedPointsWereNeverTaken(RunRule rule) {
        for (long seed = 31; seed <= 42; seed++) {
            Random random = new Random(seed);
            Subgroups data = marked(random, 260, true);
            FrozenLimits limits = new FrozenLimits("individuals", 20, 0.1, "stated", 99, Unit.MILLIMETRE);
            Panel panel = new Individuals().withLimits(data, limits).location();
            List<List<Integer>> alone = new ArrayList<>();
            int from = 0;
            for (int to = 1; to <= data.count(); to++) {
                if (to < data.count() && data.segment(to) == data.segment(from)) {
                    continue;
                }
                List<Integer> numbers = new ArrayList<>();
                for (int g = from; g < to; g++) {
                    if (!data.isExcluded(g)) {
                        numbers.add(g + 1);
                    }
                }
                long[] own = numbers.stream()
                        .mapToLong(i -> data.deviation(i - 1, 0))
                        .toArray();
                Panel part = new Individuals()
                        .withLimits(Sample.ofDeviations(own, STEPS).asIndividuals(), limits)
                        .location();
                for (Signal signal : inChunks(rule, part)) {
                    alone.add(signal.points().stream()
                            .map(p -> numbers.get(p - 1))
                            .toList());
                }
                from = to;
            }
            assertThat(inChunks(rule, panel).stream().map(Signal::points)).containsExactlyElementsOf(alone);
        }
    }

    /** The charts of averages and sums end where the merged tallies of their stretches say. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void chartsAgreeWithMergedTallies(long seed) {
        Random random = new Random(seed);
        long[] d = eventful(random, 200);
        double[] x = Arrays.stream(d).asDoubleStream().map(v -> v / 1000).toArray();
        Subgroups data = Sample.ofDeviations(d, STEPS).asIndividuals();
        double sigma = 0.1;
        ControlChart averages = new Ewma(0.2, 3, Optional.empty(), Optional.empty())
                .withLimits(data, new FrozenLimits("ewma", 20, sigma, "stated", 99, Unit.MILLIMETRE));
        EwmaTally tally = EwmaTally.empty(0.2);
        for (double value : x) {
            tally = tally.plus(value, sigma * sigma);
        }
        assertThat(averages.location().value(199)).isCloseTo(20 + tally.after(0), within(1e-13));
        assertThat(averages.location().lines(199).orElseThrow().upper())
                .isCloseTo(20 + 3 * Math.sqrt(tally.varianceAfter(0)), within(1e-13));
        ControlChart sums = new Cusum(0.5, 5, 0.5, Optional.empty(), Optional.empty())
                .withLimits(data, new FrozenLimits("cusum", 20, sigma, "stated", 99, Unit.MILLIMETRE));
        double[] mirrored = Arrays.stream(x).map(v -> -v).toArray();
        int cut = random.nextInt(201);
        CusumTally upper = CusumTally.of(0.5 * sigma, x, 0, cut).merge(CusumTally.of(0.5 * sigma, x, cut, 200));
        CusumTally lower =
                CusumTally.of(0.5 * sigma, mirrored, 0, cut).merge(CusumTally.of(0.5 * sigma, mirrored, cut, 200));
        double start = 2.5 * sigma;
        assertThat(sums.location().value(199)).isCloseTo(upper.after(start), within(1e-12));
        assertThat(sums.location().second(199).orElseThrow()).isCloseTo(-lower.after(start), within(1e-12));
        boolean signal = false;
        for (int i = 0; i < 200; i++) {
            signal |= sums.location().beyondLimit(i) != 0;
        }
        assertThat(Math.max(upper.peak(start), lower.peak(start)) > 5 * sigma).isEqualTo(signal);
    }

    @Test
    void linesOnAMeanWithoutSpreadAreHitExactly() {
        Subgroups level = Sample.ofDeviations(new long[30], STEPS).asIndividuals();
        Panel panel = new Individuals().fromData(level).location();
        for (RunRule rule : RuleCatalogue.rules()) {
            boolean within = rule.description().contains("within one sigma");
            assertThat(inChunks(rule, panel).isEmpty()).as(rule.id()).isEqualTo(!within);
        }
    }
}
