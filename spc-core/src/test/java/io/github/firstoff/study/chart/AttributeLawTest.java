package io.github.firstoff.study.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Counts;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must not change on charts of attributes: unit of area, share or count, order of the counts, cut into chunks. */
class AttributeLawTest {
    private static final double FEW_ULPS = 1e-12;

    static Stream<ChartMethod<Counts>> methods() {
        return ChartCatalogue.counted().stream();
    }

    private static Counts counts(long seed, boolean oneSize) {
        Random random = new Random(seed);
        int n = 60;
        long[] found = new long[n];
        List<BigDecimal> sizes = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            int size = oneSize ? 80 : 40 + random.nextInt(100);
            sizes.add(BigDecimal.valueOf(size));
            for (int k = 0; k < size; k++) {
                found[i] += random.nextInt(9) == 0 ? 1 : 0;
            }
        }
        return Counts.of(found, sizes);
    }

    private static List<Integer> beyond(ControlChart chart) {
        return RuleSet.westernElectric().assess(chart).signals().stream()
                .map(Signal::at)
                .toList();
    }

    /** Nonconformities on twice the area in half the unit: limits of u halve, decisions and false signals stay. */
    @Test
    void theUnitOfAreaChangesNothing() {
        for (long seed = 1; seed <= 10; seed++) {
            Counts one = counts(seed, false);
            BigDecimal factor = new BigDecimal("2.5");
            long[] found = new long[one.sizes().size()];
            for (int i = 0; i < found.length; i++) {
                found[i] = one.count(i);
            }
            Counts other = Counts.of(
                    found,
                    one.sizes().stream().map(size -> size.multiply(factor)).toList());
            ControlChart a = new NonconformitiesPerUnit().fromData(one);
            ControlChart b = new NonconformitiesPerUnit().fromData(other);
            for (int i = 0; i < found.length; i++) {
                Lines la = a.location().lines(i).orElseThrow();
                Lines lb = b.location().lines(i).orElseThrow();
                assertThat(2.5 * b.location().value(i)).isCloseTo(a.location().value(i), within(FEW_ULPS));
                assertThat(2.5 * lb.upper()).isCloseTo(la.upper(), within(FEW_ULPS));
                assertThat(2.5 * lb.lower()).isCloseTo(la.lower(), within(FEW_ULPS));
                assertThat(2.5 * lb.centre()).isCloseTo(la.centre(), within(FEW_ULPS));
            }
            assertThat(beyond(b)).isEqualTo(beyond(a));
            RuleSet tests = RuleSet.westernElectric();
            assertThat(new NonconformitiesPerUnit().falseSignals(tests, b).average())
                    .isCloseTo(
                            new NonconformitiesPerUnit().falseSignals(tests, a).average(), within(1e-6));
        }
    }

    /** np is n times p, c on one size is u times the size; both decide alike. */
    @Test
    void shareAndCountAreOneChart() {
        for (long seed = 1; seed <= 10; seed++) {
            Counts data = counts(seed, true);
            for (List<String> pair : List.of(List.of("p", "np"), List.of("u", "c"))) {
                ControlChart share = ChartCatalogue.counted(pair.get(0), ChartSettings.USUAL)
                        .orElseThrow()
                        .fromData(data);
                ControlChart count = ChartCatalogue.counted(pair.get(1), ChartSettings.USUAL)
                        .orElseThrow()
                        .fromData(data);
                // a chart c takes one size as the unit
                double scale = 80;
                Lines a = share.location().commonLines().orElseThrow();
                Lines b = count.location().commonLines().orElseThrow();
                assertThat(scale * a.upper()).isCloseTo(b.upper(), within(1e-10));
                assertThat(scale * a.lower()).isCloseTo(b.lower(), within(1e-10));
                assertThat(scale * a.centre()).isCloseTo(b.centre(), within(1e-10));
                assertThat(beyond(share)).isEqualTo(beyond(count));
            }
        }
    }

    /** Conforming in place of nonconforming: p turns into 1 − p, limits change places. */
    @Test
    void conformingAndNonconformingMirrorEachOther() {
        for (long seed = 1; seed <= 10; seed++) {
            Counts data = counts(seed, false);
            long[] conforming = new long[data.sizes().size()];
            for (int i = 0; i < conforming.length; i++) {
                conforming[i] = data.sizes().get(i).longValueExact() - data.count(i);
            }
            ControlChart bad = new NonconformingShare().fromData(data);
            ControlChart good = new NonconformingShare().fromData(Counts.of(conforming, data.sizes()));
            for (int i = 0; i < conforming.length; i++) {
                Lines a = bad.location().lines(i).orElseThrow();
                Lines b = good.location().lines(i).orElseThrow();
                assertThat(1 - b.lower()).isCloseTo(a.upper(), within(FEW_ULPS));
                assertThat(1 - b.upper()).isCloseTo(a.lower(), within(FEW_ULPS));
                assertThat(good.location().side(i)).isEqualTo(-bad.location().side(i));
            }
            assertThat(beyond(good)).isEqualTo(beyond(bad));
        }
    }

    @ParameterizedTest
    @MethodSource("methods")
    void limitsKnowNoOrderAndChunksFindTheSame(ChartMethod<Counts> method) {
        boolean oneSize = List.of("c", "np").contains(method.kind());
        for (long seed = 1; seed <= 8; seed++) {
            Counts data = counts(seed, oneSize);
            // the check of dispersion rests on neighbours: by choice the distribution's own limits
            ChartMethod<Counts> plain = ChartCatalogue.counted(
                            method.kind(), ChartSettings.USUAL.withDispersion(DispersionPolicy.DISTRIBUTION))
                    .orElseThrow();
            ControlChart chart = plain.fromData(data);
            long[] back = new long[data.sizes().size()];
            List<BigDecimal> sizes = new ArrayList<>();
            for (int i = 0; i < back.length; i++) {
                back[i] = data.count(back.length - 1 - i);
                sizes.add(data.sizes().get(back.length - 1 - i));
            }
            ControlChart reversed = plain.fromData(Counts.of(back, sizes));
            for (int i = 0; i < back.length; i++) {
                assertThat(reversed.location().lines(back.length - 1 - i))
                        .isEqualTo(chart.location().lines(i));
            }
            PanelWatch watch = RuleSet.westernElectric().watch(PanelKind.LOCATION, PanelNature.COUNTED);
            watch.next(chart.location().part(0, 23));
            watch.next(chart.location().part(23, 24));
            watch.next(chart.location().part(24, back.length));
            assertThat(watch.signals())
                    .isEqualTo(RuleSet.westernElectric().assess(chart).signals());
            // a part of counts is a part of the chart
            ControlChart part =
                    plain.withLimits(data.part(10, 30), chart.frozen().orElseThrow());
            for (int i = 0; i < 20; i++) {
                assertThat(part.location().value(i)).isEqualTo(chart.location().value(i + 10));
                assertThat(part.location().number(i)).isEqualTo(i + 11);
                assertThat(part.location().lines(i).orElseThrow().upper())
                        .isCloseTo(chart.location().lines(i + 10).orElseThrow().upper(), within(1e-10));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("methods")
    void everyKindNamesItselfAndRefusesForeignLimits(ChartMethod<Counts> method) {
        ControlChart chart = method.fromData(counts(1, true));
        assertThat(chart.kind()).isEqualTo(method.kind());
        assertThat(ChartCatalogue.counted(method.kind(), ChartSettings.USUAL)).isPresent();
        assertThat(method.title()).isNotBlank();
        assertThat(chart.location().statistic()).isNotBlank();
        FrozenLimits foreign = new FrozenLimits("individuals", 0.1, 1, "stated", 9, Unit.NONE);
        assertThatThrownBy(() -> method.withLimits(counts(1, true), foreign)).hasMessageContaining("individuals");
        FrozenLimits negative = new FrozenLimits(method.kind(), -0.1, 1, "stated", 9, Unit.NONE);
        assertThatThrownBy(() -> method.withLimits(counts(1, true), negative)).hasMessageContaining("-0.1");
        if (List.of("p", "np").contains(method.kind())) {
            FrozenLimits more = new FrozenLimits(method.kind(), 1.1, 1, "stated", 9, Unit.NONE);
            assertThatThrownBy(() -> method.withLimits(counts(1, true), more)).hasMessageContaining("1.1");
            FrozenLimits all = new FrozenLimits(method.kind(), 1, 1, "stated", 9, Unit.NONE);
            assertThat(method.withLimits(counts(1, true), all).location().hasLines())
                    .isTrue();
        }
        ControlChart none = method.fromData(Counts.of(new long[0], 1));
        assertThat(none.location().count()).isZero();
        assertThat(none.notes()).anyMatch(note -> note.contains("no count"));
    }
}
