package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every chart refuses, what its decisions are at their edges, and the notes that count. */
class ChartRefusalTest {
    private static final Scale STEPS = new Scale(new BigDecimal("5.000"), 3, Unit.MILLIMETRE);

    static Stream<ChartMethod<Subgroups>> methods() {
        return ChartCatalogue.measured().stream();
    }

    private static Sample sample(int n) {
        Random random = new Random(n);
        long[] d = new long[n];
        for (int i = 0; i < n; i++) {
            d[i] = Math.round(20 * random.nextGaussian());
        }
        return Sample.ofDeviations(d, STEPS);
    }

    private static Subgroups data(ChartMethod<Subgroups> method, int groups) {
        return method.kind().equals("individuals")
                ? sample(groups).asIndividuals()
                : sample(4 * groups).inSubgroupsOf(4);
    }

    @ParameterizedTest
    @MethodSource("methods")
    void limitsOfAnotherKindOrUnitAreRefused(ChartMethod<Subgroups> method) {
        Subgroups data = data(method, 30);
        FrozenLimits own = method.fromData(data).frozen().orElseThrow();
        assertThat(own.kind()).isEqualTo(method.kind());
        FrozenLimits kind = new FrozenLimits(
                "other", own.centre(), own.sigma(), own.estimator(), 9, own.unit(), own.pointSigma(), Map.of());
        assertThatThrownBy(() -> method.withLimits(data, kind)).hasMessageContaining("other");
        FrozenLimits unit = new FrozenLimits(
                own.kind(), own.centre(), own.sigma(), own.estimator(), 9, Unit.INCH, own.pointSigma(), Map.of());
        assertThatThrownBy(() -> method.withLimits(data, unit)).hasMessageContaining("inch");
        assertThat(method.withLimits(data, own).limitsFrom()).isZero();
    }

    /** Fewer than twenty (common practice) are provisional, twenty are not; no spread is said. */
    @ParameterizedTest
    @MethodSource("methods")
    void provisionalBelowTwenty(ChartMethod<Subgroups> method) {
        assertThat(method.fromData(data(method, 19)).notes())
                .anyMatch(note -> note.contains("19") && note.contains("provisional"));
        assertThat(method.fromData(data(method, 20)).notes()).noneMatch(note -> note.contains("provisional"));
        assertThat(method.fromData(data(method, 30)).notes()).noneMatch(note -> note.contains("do not spread"));
        Sample still = Sample.ofDeviations(new long[80], STEPS);
        Subgroups level = method.kind().equals("individuals") ? still.asIndividuals() : still.inSubgroupsOf(4);
        assertThat(method.fromData(level).notes()).anyMatch(note -> note.contains("do not spread"));
    }

    @ParameterizedTest
    @MethodSource("methods")
    void oneReadingHasPointsWithoutLines(ChartMethod<Subgroups> method) {
        ControlChart chart = method.fromData(sample(1).asIndividuals());
        assertThat(chart.panels()).noneMatch(Panel::hasLines);
        assertThat(chart.location().commonLines()).isEmpty();
        if (chart.location().count() > 0) {
            assertThat(chart.location().lines(0)).isEmpty();
        }
        for (Panel panel : chart.panels()) {
            assertThat(panel.statistic()).isNotBlank();
        }
    }

    @Test
    void subgroupsWithoutLimitsAreStillDrawn() {
        // one subgroup of four and no second: means and ranges are there, between them is nothing
        ControlChart chart = new BetweenWithin().fromData(sample(4).inSubgroupsOf(4));
        assertThat(chart.location().count()).isEqualTo(1);
        assertThat(chart.panel(PanelKind.BETWEEN).orElseThrow().count()).isZero();
        assertThat(chart.dispersion().orElseThrow().count()).isEqualTo(1);
        assertThat(chart.location().value(0)).isFinite();
        assertThatThrownBy(() -> new BetweenWithin()
                        .withLimits(
                                sample(8).inSubgroupsOf(4),
                                new FrozenLimits("between-within", 5, 0.1, "stated", 9, Unit.MILLIMETRE)))
                .hasMessageContaining("standard deviation of its points");
        assertThatThrownBy(() -> new Individuals().fromData(sample(8).inSubgroupsOf(2)))
                .hasMessageContaining("one by one");
        assertThatThrownBy(() -> new Individuals()
                        .withLimits(
                                sample(8).inSubgroupsOf(2),
                                new FrozenLimits("individuals", 5, 0.1, "stated", 9, Unit.MILLIMETRE)))
                .hasMessageContaining("one by one");
    }

    @Test
    void sidesOfACentreOfAnySize() {
        // centre 10/3: 3 lies below, 4 above; and so with numbers beyond 64 bits
        ExactCentre third = new ExactCentre(BigInteger.TEN, 3);
        assertThat(third.side(3, 1)).isNegative();
        assertThat(third.side(4, 1)).isPositive();
        assertThat(third.side(10, 3)).isZero();
        assertThat(third.side(20, 6)).isZero();
        BigInteger huge = BigInteger.ONE.shiftLeft(70);
        ExactCentre far = new ExactCentre(huge, 1L << 20);
        // centre 2⁵⁰
        assertThat(far.side(1L << 50, 1)).isZero();
        assertThat(far.side((1L << 50) + 1, 1)).isPositive();
        assertThat(far.side((1L << 50) - 1, 1)).isNegative();
        assertThat(far.deviation()).isEqualTo(0x1p50);
        ExactCentre edge = new ExactCentre(BigInteger.ONE.shiftLeft(63).subtract(BigInteger.ONE), 2);
        assertThat(edge.side(Long.MAX_VALUE, 2)).isZero();
        assertThat(edge.side(Long.MAX_VALUE / 2, 1)).isNegative();
        assertThat(edge.side(Long.MAX_VALUE / 2 + 1, 1)).isPositive();
    }

    @Test
    void mediansOfWholeNumbers() {
        assertThat(Spread.median(new long[] {10, 1, 20, 2})).isEqualTo(6);
        assertThat(Spread.median(new long[] {5, 1, 9})).isEqualTo(5);
        assertThat(Spread.median(new long[] {1, 2})).isEqualTo(1.5);
        assertThat(Spread.median(new long[] {7})).isEqualTo(7);
    }

    @Test
    void spreadsOfSubgroupsByBothWays() {
        // small steps in a long, large ones in whole numbers of any size: the same digits
        Random random = new Random(4);
        for (long reach : new long[] {10, 1000, 1L << 25, 1L << 40, 1L << 52}) {
            long[] d = random.longs(5, -reach, reach).toArray();
            Subgroups five = Sample.ofDeviations(d, STEPS).inSubgroupsOf(5);
            double expected = io.github.firstoff.stats.DeviationTally.of(d).variance();
            assertThat(Spread.variance(five, 0)).isEqualTo(expected);
            assertThat(Spread.standardDeviation(five, 0)).isEqualTo(Math.sqrt(expected));
        }
        Subgroups pair = Sample.ofDeviations(new long[] {-3, 1}, STEPS).inSubgroupsOf(2);
        assertThat(Spread.variance(pair, 0)).isEqualTo(8);
    }

    @Test
    void frozenLimitsCheckTheirRanges() {
        for (double bad : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> new FrozenLimits("xbar-r", 1, bad, "stated", 9, Unit.NONE))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() ->
                            new FrozenLimits("xbar-r", 1, 1, "stated", 9, Unit.NONE, OptionalDouble.of(bad), Map.of()))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new FrozenLimits(
                            "xbar-r", 1, 1, "stated", 9, Unit.NONE, OptionalDouble.empty(), Map.of("a", bad)))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> new FrozenLimits("xbar-r", 1, 1, "stated", 0, Unit.NONE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new FrozenLimits("xbar-r", Double.NaN, 1, "stated", 1, Unit.NONE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(new FrozenLimits("xbar-r", 1, 0, "stated", 1, Unit.NONE).sigma())
                .isZero();
    }

    @Test
    void wordsOfPlansAndResultsAreDistinct() {
        assertThat(Stream.of(PanelKind.values()).map(PanelKind::word))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
        assertThat(Stream.of(Side.values()).map(Side::word))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
        assertThat(Stream.of(DispersionPolicy.values()).map(DispersionPolicy::word))
                .containsExactly("distribution", "check", "observed");
        assertThat(Stream.of(PanelNature.values()).map(nature -> nature.remark().english()))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
        assertThat(UnnaturalPattern.all()).hasSize(4);
        assertThat(ChartCatalogue.families()).singleElement().isInstanceOf(StandardisedDeviation.class);
        assertThat(ChartCatalogue.families().get(0).title()).isEqualTo("Standardised deviation from nominal");
        assertThat(FalseSignals.figure(99.94)).isEqualTo("99.9");
        assertThat(FalseSignals.figure(100)).isEqualTo("100");
    }

    @Test
    void largeSumsStayExact() {
        // 2⁵³ steps a thousand times over: the sum passes 2⁶³
        long[] d = new long[2000];
        java.util.Arrays.fill(d, 1L << 53);
        d[0] = (1L << 53) - 2000;
        Sample sample = Sample.ofDeviations(d, new Scale(BigDecimal.ZERO, 0, Unit.NONE));
        ControlChart chart = new Individuals().fromData(sample.asIndividuals());
        // mean 2⁵³ − 1: all but the first lie above it, by one
        assertThat(chart.location().commonLines().orElseThrow().centre()).isEqualTo((double) ((1L << 53) - 1));
        assertThat(chart.location().side(0)).isEqualTo(-1);
        assertThat(chart.location().side(1)).isEqualTo(1);
        assertThat(chart.dispersion().orElseThrow().value(0)).isCloseTo(2000, within(1e-9));
        assertThat(List.of(chart.location().side(1999))).containsExactly(1);
    }
}
