package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Run lengths of whole charts, simulated with the same watches that users get, against the exact figures. Tolerance: four
 * standard errors of the simulation, which about one run in 16,000 exceeds; seeds are fixed.
 */
@Tag("slow")
class RunLengthSimulationTest {
    private static final int RUNS = 20_000;
    private static final int CHUNK = 256;
    private static final int MOST = 20_000;
    private static final Scale FINE = new Scale(BigDecimal.ZERO, 6, Unit.NONE);

    private static double[] simulate(
            long seed, double shift, Function<Sample, ControlChart> method, RuleSet rules, int longest) {
        SplittableRandom random = new SplittableRandom(seed);
        double sum = 0;
        double squares = 0;
        for (int run = 0; run < RUNS; run++) {
            int length = length(random, shift, method, rules, longest);
            sum += length;
            squares += (double) length * length;
        }
        double mean = sum / RUNS;
        return new double[] {mean, Math.sqrt((squares / RUNS - mean * mean) / RUNS)};
    }

    /** Grows the chart until it signals; the watch sees only what is new where the panel allows it. */
    private static int length(
            SplittableRandom random, double shift, Function<Sample, ControlChart> method, RuleSet rules, int longest) {
        long[] all = new long[CHUNK];
        int count = 0;
        while (count < MOST) {
            if (count == all.length) {
                all = java.util.Arrays.copyOf(all, 2 * count);
            }
            while (count < all.length) {
                all[count++] = Math.round((gaussian(random) + shift) * 1e6);
            }
            Panel panel = method.apply(Sample.ofDeviations(all, FINE)).location();
            PanelWatch watch = rules.watch(PanelKind.LOCATION, panel.nature());
            watch.next(panel);
            if (!watch.signals().isEmpty()) {
                return watch.signals().get(0).at();
            }
        }
        throw new IllegalStateException("no signal within " + MOST + " points, longest test " + longest);
    }

    private static double gaussian(SplittableRandom random) {
        // the polar method of Marsaglia, one of its two values
        while (true) {
            double u = 2 * random.nextDouble() - 1;
            double v = 2 * random.nextDouble() - 1;
            double s = u * u + v * v;
            if (s > 0 && s < 1) {
                return u * Math.sqrt(-2 * Math.log(s) / s);
            }
        }
    }

    private static FrozenLimits standard(String kind) {
        return new FrozenLimits(kind, 0, 1, "stated", 1, Unit.NONE);
    }

    private static ControlChart individuals(Sample sample) {
        return new Individuals().withLimits(sample.asIndividuals(), standard("individuals"));
    }

    private static void check(double[] found, double expected) {
        assertThat(found[0]).isCloseTo(expected, within(4 * found[1]));
    }

    @Test
    void zoneTestsInControlAndShifted() {
        RuleSet we = RuleSet.westernElectric();
        check(
                simulate(1, 0, RunLengthSimulationTest::individuals, we, 8),
                we.inControlRunLength().runLength().average());
        check(
                simulate(2, 1, RunLengthSimulationTest::individuals, we, 8),
                InControlRunLength.shifted(we, 1).runLength().average());
        RuleSet odd = new RuleSet(List.of(
                WesternElectricRule.TWO_OF_THREE.withWindow(3, 5),
                UnnaturalPattern.STRATIFICATION.withLength(10),
                UnnaturalPattern.MIXTURE.withLength(5)));
        check(
                simulate(3, 0, RunLengthSimulationTest::individuals, odd, 10),
                odd.inControlRunLength().runLength().average());
    }

    @Test
    void nelsonsEightInControlAndShifted() {
        RuleSet nelson = new RuleSet(NelsonRule.all());
        check(
                simulate(4, 0, RunLengthSimulationTest::individuals, nelson, 15),
                nelson.inControlRunLength().runLength().average());
        check(
                simulate(9, 0.5, RunLengthSimulationTest::individuals, nelson, 15),
                InControlRunLength.shifted(nelson, 0.5).runLength().average());
        RuleSet steps =
                new RuleSet(List.of(UnnaturalPattern.TREND.withLength(5), UnnaturalPattern.SYSTEMATIC.withLength(7)));
        check(
                simulate(10, 0, RunLengthSimulationTest::individuals, steps, 7),
                steps.inControlRunLength().runLength().average());
    }

    @Test
    void weightedAverageWithExactLimits() {
        Ewma ewma = new Ewma(0.2, 2.7, Optional.empty(), Optional.empty());
        RuleSet one = new RuleSet(List.of(WesternElectricRule.BEYOND_LIMIT));
        check(
                simulate(5, 0, s -> ewma.withLimits(s.asIndividuals(), standard("ewma")), one, 1),
                ewma.falseSignals(one).average());
    }

    @Test
    void cumulativeSumsWithHeadStart() {
        Cusum cusum = new Cusum(0.5, 4, 0.5, Optional.empty(), Optional.empty());
        RuleSet one = new RuleSet(List.of(WesternElectricRule.BEYOND_LIMIT));
        check(
                simulate(6, 0, s -> cusum.withLimits(s.asIndividuals(), standard("cusum")), one, 1),
                cusum.falseSignals(one).average());
    }

    @Test
    void medianLimitsHoldWhatTheyClaim() {
        // the share of medians of five beyond three sigma: their distribution is nearly normal, 0.0027 within a tenth
        // of it
        SplittableRandom random = new SplittableRandom(7);
        long[] all = new long[5 * 400_000];
        for (int i = 0; i < all.length; i++) {
            all[i] = Math.round(gaussian(random) * 1e6);
        }
        Panel panel = new MedianRange()
                .withLimits(Sample.ofDeviations(all, FINE).inSubgroupsOf(5), standard("median-r"))
                .location();
        int beyond = 0;
        double squares = 0;
        for (int i = 0; i < panel.count(); i++) {
            beyond += panel.beyondLimit(i) != 0 ? 1 : 0;
            squares += panel.value(i) * panel.value(i);
        }
        // the standard deviation of the median of five: 0.5356; its standard error here 0.0006
        assertThat(Math.sqrt(squares / panel.count()))
                .isCloseTo(panel.lines(0).orElseThrow().sigma().orElseThrow(), within(0.0024));
        assertThat(beyond / (double) panel.count()).isBetween(0.0020, 0.0040);
    }

    @Test
    void effectiveDegreesOfFreedomOfTheMedianMovingRange() {
        // ν from the asymptotic variance, against the variance found over 4000 samples of 200 readings
        SplittableRandom random = new SplittableRandom(8);
        SpreadEstimator median = SpreadEstimators.named("median-moving-range").orElseThrow();
        double sum = 0;
        double squares = 0;
        double nu = 0;
        int samples = 4000;
        for (int k = 0; k < samples; k++) {
            long[] all = new long[200];
            for (int i = 0; i < all.length; i++) {
                all[i] = Math.round(gaussian(random) * 1e6);
            }
            var estimate = median.estimate(
                            Basis.of(Sample.ofDeviations(all, FINE).asIndividuals(), Baseline.ALL))
                    .orElseThrow();
            sum += estimate.sigma() / 1e6;
            squares += estimate.sigma() / 1e6 * estimate.sigma() / 1e6;
            nu = estimate.degreesOfFreedom();
        }
        double mean = sum / samples;
        double variance = squares / samples - mean * mean;
        assertThat(mean).isCloseTo(1, within(0.01));
        // a χ/√ν variable has variance about 1/(2ν); the variance of 4000 is known to 2.2 %
        assertThat(variance).isCloseTo(1 / (2 * nu), org.assertj.core.api.Assertions.withinPercentage(10));
    }
}
