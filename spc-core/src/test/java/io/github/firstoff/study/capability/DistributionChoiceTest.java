package io.github.firstoff.study.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.stats.FoldedNormalFamily;
import io.github.firstoff.stats.JohnsonFamily;
import io.github.firstoff.stats.LognormalFamily;
import io.github.firstoff.stats.NormalFamily;
import io.github.firstoff.stats.PlottingPosition;
import io.github.firstoff.stats.WeibullFamily;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which distribution is chosen when, and that the choice says so. */
class DistributionChoiceTest {
    static Sample drawn(FittedDistribution d, int n, String reference, int places, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<BigDecimal> values = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            values.add(new BigDecimal(reference)
                    .add(new BigDecimal(d.sample(random)).setScale(places, RoundingMode.HALF_EVEN)));
        }
        return Sample.of(values, new BigDecimal(reference), Unit.MILLIMETRE);
    }

    static Capability analyse(CapabilityStudy study, Sample sample, Bounds bounds, ControlState control) {
        return study.analyse(sample, bounds, Optional.empty(), OptionalInt.empty(), control);
    }

    private static Bounds size(String lower, String upper) {
        return Bounds.between(new BigDecimal(lower), new BigDecimal(upper));
    }

    @Test
    void aGeometricCharacteristicIsNotTakenForNormal() {
        Sample flatness = drawn(FoldedNormalFamily.INSTANCE.of(0.003, 0.006), 100, "0", 5, 1);
        Capability c = analyse(
                CapabilityStudy.withDefaults(),
                flatness,
                Bounds.fromZeroTo(new BigDecimal("0.03")),
                ControlState.NOT_ASSESSED);
        assertThat(c.distribution().method().isNormal()).isFalse();
        assertThat(c.distribution().method().family().isPositive()).isTrue();
        assertThat(c.distribution().evidence()).hasSize(5);
        assertThat(c.distribution().chosen().orElseThrow().p()).isPresent();
        assertThat(c.distribution().reason()).contains("natural bound");
        assertThat(c.notes()).contains(c.distribution().reason());
        assertThat(c.ppk().value()).isPresent();
        assertThat(c.ppk().value()).isEqualTo(c.ppu().value());
        assertThat(c.ppk().interval()).isPresent();
        assertThat(c.pp().reason()).contains("natural");
        assertThat(c.nonconforming().expected().value()).isPresent();
    }

    @Test
    void aReadingBelowTheNaturalBoundLeavesNothingToFitAndSaysSo() {
        Sample sample = Sample.of(
                List.of(new BigDecimal("-0.001"), new BigDecimal("0.002"), new BigDecimal("0.003")),
                BigDecimal.ZERO,
                Unit.MILLIMETRE);
        Capability c = analyse(
                CapabilityStudy.withDefaults(),
                sample,
                Bounds.fromZeroTo(new BigDecimal("0.03")),
                ControlState.IN_CONTROL);
        assertThat(c.ppk().value()).isEmpty();
        assertThat(c.ppk().reason()).contains("below the bound 0");
    }

    @Test
    void aNormalSizeStaysNormal() {
        Sample sample = drawn(NormalFamily.INSTANCE.of(0.01, 0.008), 125, "52", 4, 2);
        Capability c = analyse(CapabilityStudy.withDefaults(), sample, size("51.95", "52.05"), ControlState.IN_CONTROL);
        assertThat(c.distribution().method()).isEqualTo(CapabilityMethod.NORMAL);
        assertThat(c.distribution().reason()).contains("do not refute");
        assertThat(c.notes()).isEmpty();
        assertThat(c.distribution().shapiroWilk().orElseThrow().p()).isGreaterThan(0.01);
    }

    @Test
    void aSkewedSizeInControlIsFittedByJohnson() {
        Sample sample = drawn(JohnsonFamily.INSTANCE.of(2, -1.5, 1.3, 0, 0.01), 200, "52", 5, 3);
        Capability c = analyse(CapabilityStudy.withDefaults(), sample, size("51.95", "52.2"), ControlState.IN_CONTROL);
        assertThat(c.distribution().method()).isEqualTo(CapabilityMethod.JOHNSON);
        assertThat(c.distribution().reason()).contains("refute the normal").contains("Johnson");
        assertThat(c.distribution().evidence())
                .extracting(DistributionCandidate::method)
                .containsExactly(CapabilityMethod.JOHNSON, CapabilityMethod.NORMAL);
        assertThat(c.ppk().interval().orElseThrow().method()).isEqualTo("bootstrap");
        double middle = c.distribution().percentile(sample, 0.5).orElseThrow();
        assertThat(middle).isBetween(52.0, 52.05);
    }

    @ParameterizedTest
    @EnumSource(
            value = ControlState.class,
            names = {"OUT_OF_CONTROL", "NOT_ASSESSED"})
    void aSkewedSizeThatIsNotKnownToBeInControlIsNotFitted(ControlState control) {
        Sample sample = drawn(JohnsonFamily.INSTANCE.of(2, -1.5, 1.3, 0, 0.01), 200, "52", 5, 3);
        Capability c = analyse(CapabilityStudy.withDefaults(), sample, size("51.95", "52.2"), control);
        assertThat(c.distribution().method()).isEqualTo(CapabilityMethod.NORMAL);
        assertThat(c.notes()).anyMatch(note -> note.contains("not known to be in control"));
    }

    @Test
    void coarselyRoundedReadingsDoNotRefuteTheNormalDistribution() {
        Sample sample = drawn(NormalFamily.INSTANCE.of(0, 0.007), 200, "52", 2, 4);
        Capability c = analyse(CapabilityStudy.withDefaults(), sample, size("51.95", "52.05"), ControlState.IN_CONTROL);
        assertThat(c.checks().discreteness().orElseThrow().isCoarse()).isTrue();
        assertThat(c.distribution().method()).isEqualTo(CapabilityMethod.NORMAL);
        assertThat(c.distribution().reason()).contains("do not refute");
    }

    @Test
    void coarselyRoundedReadingsAreNotFittedByAnythingElse() {
        Sample sample = drawn(LognormalFamily.INSTANCE.of(-5.6, 1), 200, "52", 2, 4);
        Capability c = analyse(CapabilityStudy.withDefaults(), sample, size("51.95", "52.2"), ControlState.IN_CONTROL);
        assertThat(c.distribution().method()).isEqualTo(CapabilityMethod.NORMAL);
        assertThat(c.distribution().reason()).contains("coarsely rounded");
        assertThat(c.notes()).contains(c.distribution().reason());
    }

    @Test
    void tiesAreSpreadOverTheirStepAndNothingElseMoves() {
        double[] spread = DistributionChoice.Distances.untied(new double[] {0, 0, 1, 3, 3, 3}, 1, true);
        assertThat(spread).containsExactly(0.125, 0.375, 1, 2.5 + 1 / 6.0, 3, 3.5 - 1 / 6.0);
        assertThat(DistributionChoice.Distances.untied(new double[] {0, 2}, 1, true))
                .containsExactly(0.25, 2);
        assertThat(DistributionChoice.Distances.untied(new double[] {0, 2}, 1, false))
                .containsExactly(0, 2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"normal", "lognormal", "weibull", "gamma", "folded-normal", "rayleigh", "box-cox", "johnson"})
    void aPlanCanFixEachMethodOfTheCatalogue(String word) {
        CapabilityMethod method = CapabilityMethod.named(word).orElseThrow();
        Sample sample = drawn(WeibullFamily.INSTANCE.of(1.8, 0.01), 100, "0", 5, 5);
        Capability c = analyse(
                CapabilityStudy.withDefaults().with(method),
                sample,
                Bounds.fromZeroTo(new BigDecimal("0.05")),
                ControlState.IN_CONTROL);
        assertThat(c.distribution().method()).isEqualTo(method);
        assertThat(c.distribution().fixed()).isTrue();
        assertThat(c.ppu().value()).as(c.ppu().reason()).isPresent();
        assertThat(c.ppu().interval()).isPresent();
        assertThat(c.ppu().lowerBound().orElseThrow())
                .isBetween(
                        c.ppu().interval().orElseThrow().lower(),
                        c.ppu().value().getAsDouble());
        assertThat(c.notes()).anyMatch(note -> note.startsWith("The plan fixes"));
        assertThat(c.distribution()
                        .probabilityPlot(sample, PlottingPosition.FILLIBEN)
                        .orElseThrow()
                        .correlation())
                .isGreaterThan(0.85);
    }

    @Test
    void aFixedMethodThatCannotBeFittedSaysWhy() {
        Sample sample = Sample.of(
                List.of(BigDecimal.ZERO, new BigDecimal("0.01"), new BigDecimal("0.02")),
                BigDecimal.ZERO,
                Unit.MILLIMETRE);
        Capability c = analyse(
                CapabilityStudy.withDefaults().with(CapabilityMethod.LOGNORMAL),
                sample,
                Bounds.fromZeroTo(new BigDecimal("0.05")),
                ControlState.IN_CONTROL);
        assertThat(c.ppk().value()).isEmpty();
        assertThat(c.ppk().reason()).contains("lognormal");
        assertThat(c.nonconforming().observed().value()).hasValue(0);
    }

    /** A unit and, for a family that has a location, an origin change no index. */
    @ParameterizedTest
    @ValueSource(strings = {"normal", "johnson"})
    void locationScaleFamiliesAreAffineInvariant(String word) {
        CapabilityStudy study =
                CapabilityStudy.withDefaults().with(CapabilityMethod.named(word).orElseThrow());
        Sample sample = drawn(JohnsonFamily.INSTANCE.of(2, -1.5, 1.3, 0, 0.01), 80, "0", 5, 6);
        BigDecimal factor = new BigDecimal("25.4");
        BigDecimal shift = new BigDecimal("1234.5");
        List<BigDecimal> moved = new ArrayList<>();
        for (int i = 0; i < sample.size(); i++) {
            moved.add(sample.exactValue(i).multiply(factor).add(shift));
        }
        Bounds bounds = size("-0.02", "0.08");
        Bounds movedBounds = Bounds.between(
                new BigDecimal("-0.02").multiply(factor).add(shift),
                new BigDecimal("0.08").multiply(factor).add(shift));
        Capability one = analyse(study, sample, bounds, ControlState.IN_CONTROL);
        Capability two = analyse(study, Sample.of(moved, Unit.MILLIMETRE), movedBounds, ControlState.IN_CONTROL);
        for (int i = 4; i < 8; i++) {
            double expected = one.indices().get(i).value().orElseThrow();
            assertThat(two.indices().get(i).value().orElseThrow())
                    .as(one.indices().get(i).name())
                    .isCloseTo(expected, within(1e-9 * expected));
            assertThat(two.indices().get(i).interval().orElseThrow().lower())
                    .isCloseTo(one.indices().get(i).interval().orElseThrow().lower(), within(1e-6));
        }
        double ppm = one.nonconforming().expected().value().orElseThrow();
        assertThat(two.nonconforming().expected().value().orElseThrow()).isCloseTo(ppm, within(1e-6 * ppm));
    }

    @Test
    void theSameReadingsGiveTheSameFiguresAlways() {
        Sample sample = drawn(LognormalFamily.INSTANCE.of(-4, 0.5), 60, "0", 5, 7);
        Bounds bounds = Bounds.fromZeroTo(new BigDecimal("0.1"));
        Capability one = analyse(CapabilityStudy.withDefaults(), sample, bounds, ControlState.IN_CONTROL);
        Capability two = analyse(CapabilityStudy.withDefaults(), sample, bounds, ControlState.IN_CONTROL);
        assertThat(two.indices()).isEqualTo(one.indices());
        assertThat(two.distribution().reason()).isEqualTo(one.distribution().reason());
    }

    @Test
    void theCatalogueIsComplete() {
        assertThat(CapabilityMethod.CATALOGUE).doesNotHaveDuplicates().hasSize(8);
        assertThat(CapabilityMethod.named("WEIBULL")).contains(CapabilityMethod.WEIBULL);
        assertThat(CapabilityMethod.named("none such")).isEmpty();
        assertThatThrownBy(() -> DistributionSetting.automatic().withSignificance(1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
