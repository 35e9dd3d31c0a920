package io.github.firstoff.study.capability;

import static io.github.firstoff.reference.ReferenceFile.decimals;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class TrendedStudyTest {
    private static final Bounds BOUNDS = Bounds.between(new BigDecimal("9.98"), new BigDecimal("10.03"));

    /** Deviations of a line 0.001 per reading that starts anew every {@code life} readings, with a normal spread of 0.002. */
    static Sample wear(int n, int life, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<BigDecimal> values = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double x = 9.99
                    + 0.001 * (i % life)
                    + 0.002 * io.github.firstoff.stats.FittedDistribution.Uniform.normal(random);
            values.add(new BigDecimal(x).setScale(6, RoundingMode.HALF_EVEN));
        }
        return Sample.of(values, BigDecimal.TEN, Unit.MILLIMETRE);
    }

    @Test
    void spreadAboutTheLineOfTheConstructedWear() {
        var c = reference("stats/lines.json", "DRIFT-TOOLWEAR");
        var e = c.path("expected");
        Sample sample = Sample.of(decimals(c.path("inputs").path("y")), Unit.MILLIMETRE);
        TrendedCapability t = TrendedStudy.withDefaults().analyse(sample, BOUNDS, List.of());
        double s = e.path("residual_sd").asDouble();
        assertThat(t.withinTrend().orElseThrow()).isCloseTo(s, within(1e-12));
        assertThat(t.degreesOfFreedom()).isEqualTo(8);
        TrendedCapability.Line line = t.segments().get(0).line().orElseThrow();
        // the file counts readings from 1
        double slope = e.path("slope").asDouble();
        double intercept = e.path("intercept").asDouble();
        assertThat(line.slope()).isCloseTo(slope, within(1e-14));
        assertThat(line.start()).isCloseTo(intercept + slope, within(1e-12));
        assertThat(line.end()).isCloseTo(intercept + 10 * slope, within(1e-12));
        assertThat(line.slopeInterval().lower())
                .isCloseTo(e.path("slope_ci").get(0).asDouble(), within(1e-9));
        assertThat(line.slopeInterval().upper())
                .isCloseTo(e.path("slope_ci").get(1).asDouble(), within(1e-9));
        assertThat(t.potential().get(0).value().orElseThrow()).isCloseTo(0.05 / (6 * s), within(1e-9));
        assertThat(t.worst().value().orElseThrow()).isCloseTo((10.03 - intercept - 10 * slope) / (3 * s), within(1e-9));
    }

    @Test
    void wholeLifeIsWorseThanWithinAndBetterThanTheWorstMoment() {
        Sample sample = wear(120, 30, 1);
        TrendedCapability t = TrendedStudy.withDefaults().analyse(sample, BOUNDS, List.of(30, 60, 90));
        assertThat(t.segments()).hasSize(4);
        assertThat(t.degreesOfFreedom()).isEqualTo(112);
        assertThat(t.withinTrend().orElseThrow()).isCloseTo(0.002, within(4e-4));
        double within = t.potential().get(1).value().orElseThrow();
        double life = t.wholeLife().get(1).value().orElseThrow();
        assertThat(life).isLessThan(within);
        assertThat(t.potential().get(0).value().orElseThrow())
                .isGreaterThan(t.wholeLife().get(0).value().orElseThrow());
        for (Index index :
                Stream.concat(t.potential().stream(), t.wholeLife().stream()).toList()) {
            assertThat(index.interval().orElseThrow().lower())
                    .isLessThan(index.value().orElseThrow());
            assertThat(index.interval().orElseThrow().upper())
                    .isGreaterThan(index.value().orElseThrow());
        }
        assertThat(t.notes()).singleElement().asString().contains("93 to 95 in 100 where 95 were meant");
    }

    /**
     * Without slope the mixture is one normal distribution, and whole life agrees with the plain normal index of the spread
     * about the line (to the difference of 0.135 % and the tail beyond z = 3, 1e-5).
     */
    @Test
    void aFlatLineIsThePlainNormalCase() {
        List<BigDecimal> values = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            // mirror image about its middle: the slope is exactly 0
            int k = Math.min(i, 39 - i);
            values.add(new BigDecimal("10").add(BigDecimal.valueOf((k * 7919L) % 23 - 11, 3)));
        }
        Sample sample = Sample.of(values, BigDecimal.TEN, Unit.MILLIMETRE);
        TrendedCapability t = TrendedStudy.withDefaults().analyse(sample, BOUNDS, List.of());
        assertThat(t.segments().get(0).line().orElseThrow().slope()).isZero();
        assertThat(t.wholeLife().get(0).value().orElseThrow())
                .isCloseTo(t.potential().get(0).value().orElseThrow(), within(2e-5));
        assertThat(t.wholeLife().get(1).value().orElseThrow())
                .isCloseTo(t.worst().value().orElseThrow(), within(2e-5));
    }

    @Test
    void percentilesOfTheMixtureAreThoseOfManySimulatedReadings() {
        // uniform locations of width w and normal spread s: the convolution, 1/(w) ∫Φ, is what many readings along a
        // line follow
        Sample sample = wear(400, 400, 3);
        TrendedCapability t = TrendedStudy.withDefaults()
                .analyse(sample, Bounds.between(new BigDecimal("9.9"), new BigDecimal("10.5")), List.of());
        TrendedCapability.Line line = t.segments().get(0).line().orElseThrow();
        double s = t.withinTrend().orElseThrow();
        double pp = t.wholeLife().get(0).value().orElseThrow();
        SplittableRandom random = new SplittableRandom(5);
        int n = 2_000_000;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = line.start()
                    + (line.end() - line.start()) * random.nextDouble()
                    + s * io.github.firstoff.stats.FittedDistribution.Uniform.normal(random);
        }
        java.util.Arrays.sort(x);
        double spread = x[(int) (n * 0.99865)] - x[(int) (n * 0.00135)];
        // the width is about 0.4: simulated percentiles are good to a few 1e-5 of it
        assertThat(0.6 / spread).isCloseTo(pp, within(3e-3 * pp));
    }

    @Test
    void originAndUnitChangeNothing() {
        Sample sample = wear(60, 30, 4);
        List<BigDecimal> moved = new ArrayList<>();
        for (int i = 0; i < sample.size(); i++) {
            moved.add(sample.exactValue(i).multiply(new BigDecimal("25.4")).add(new BigDecimal("300")));
        }
        Bounds movedBounds = Bounds.between(
                new BigDecimal("9.98").multiply(new BigDecimal("25.4")).add(new BigDecimal("300")),
                new BigDecimal("10.03").multiply(new BigDecimal("25.4")).add(new BigDecimal("300")));
        TrendedCapability one = TrendedStudy.withDefaults().analyse(sample, BOUNDS, List.of(30));
        TrendedCapability two =
                TrendedStudy.withDefaults().analyse(Sample.of(moved, Unit.MILLIMETRE), movedBounds, List.of(30));
        for (int i = 0; i < 2; i++) {
            double expected = one.wholeLife().get(i).value().orElseThrow();
            assertThat(two.wholeLife().get(i).value().orElseThrow()).isCloseTo(expected, within(1e-9 * expected));
            assertThat(two.wholeLife().get(i).interval().orElseThrow().lower())
                    .isCloseTo(one.wholeLife().get(i).interval().orElseThrow().lower(), within(1e-5));
        }
    }

    @Test
    void whatCannotBeStatedSaysWhy() {
        TrendedStudy study = TrendedStudy.withDefaults();
        Sample two = Sample.of(List.of(BigDecimal.ONE, BigDecimal.TEN), Unit.MILLIMETRE);
        assertThat(study.analyse(two, BOUNDS, List.of()).wholeLife().get(0).reason())
                .contains("too few");
        Sample exact =
                Sample.of(Stream.of("1", "2", "3", "4").map(BigDecimal::new).toList(), Unit.MILLIMETRE);
        assertThat(study.analyse(exact, BOUNDS, List.of()).worst().reason()).contains("do not spread");
        TrendedCapability unlimited = study.analyse(wear(20, 20, 6), Bounds.NONE, List.of());
        assertThat(unlimited.worst().reason()).contains("no limits");
        TrendedCapability oneSided = study.analyse(wear(20, 20, 6), Bounds.atMost(new BigDecimal("10.05")), List.of());
        assertThat(oneSided.potential().get(0).value()).isEmpty();
        assertThat(oneSided.wholeLife().get(1).value()).isPresent();
        TrendedCapability shortLife = study.analyse(wear(20, 20, 6), BOUNDS, List.of(18));
        assertThat(shortLife.notes()).anyMatch(note -> note.startsWith("2 readings"));
        assertThatThrownBy(() -> study.analyse(two, BOUNDS, List.of(1, 1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> study.analyse(two, BOUNDS, List.of(7))).isInstanceOf(IllegalArgumentException.class);
    }
}
