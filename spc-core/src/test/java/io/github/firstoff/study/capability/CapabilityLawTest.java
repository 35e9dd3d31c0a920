package io.github.firstoff.study.capability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CapabilityLawTest {
    /** Indices do not depend on origin or unit; the two paths round a handful of times. */
    private static final double FEW_ULPS = 1e-13;

    private static final SigmaEstimate WITHIN = SigmaEstimators.meanRange(0.05, 5, 25);

    private static Capability analyse(List<String> values, Bounds bounds, Optional<SigmaEstimate> within) {
        return CapabilityStudy.withDefaults()
                .analyse(
                        Sample.of(values.stream().map(BigDecimal::new).toList(), Unit.MILLIMETRE),
                        bounds,
                        within,
                        OptionalInt.of(5),
                        ControlState.OUT_OF_CONTROL);
    }

    @Test
    void indicesAreTheSameAfterAShiftAndAChangeOfScale() {
        Random random = new Random(20261125);
        for (int round = 0; round < 50; round++) {
            List<BigDecimal> values = new ArrayList<>();
            for (int i = 0; i < 60; i++) {
                values.add(BigDecimal.valueOf(Math.round(random.nextGaussian() * 40), 3));
            }
            BigDecimal shift = BigDecimal.valueOf(random.nextInt(1_000_000), 1);
            BigDecimal factor = BigDecimal.valueOf(1 + random.nextInt(999), 2);
            Bounds bounds = Bounds.between(new BigDecimal("-0.15"), new BigDecimal("0.2"));
            Bounds moved = Bounds.between(
                    new BigDecimal("-0.15").multiply(factor).add(shift),
                    new BigDecimal("0.2").multiply(factor).add(shift));
            List<BigDecimal> movedValues =
                    values.stream().map(v -> v.multiply(factor).add(shift)).toList();
            double by = Double.parseDouble(factor.toString());
            Capability one = CapabilityStudy.withDefaults()
                    .analyse(
                            Sample.of(values, Unit.MILLIMETRE),
                            bounds,
                            Optional.of(WITHIN),
                            OptionalInt.of(5),
                            ControlState.IN_CONTROL);
            Capability other = CapabilityStudy.withDefaults()
                    .analyse(
                            Sample.of(movedValues, Unit.MILLIMETRE),
                            moved,
                            Optional.of(WITHIN.times(by)),
                            OptionalInt.of(5),
                            ControlState.IN_CONTROL);
            for (int i = 0; i < one.indices().size(); i++) {
                double expected = one.indices().get(i).value().orElseThrow();
                assertThat(other.indices().get(i).value().orElseThrow())
                        .as("round %d, %s", round, one.indices().get(i).name())
                        .isCloseTo(expected, within(FEW_ULPS * Math.abs(expected)));
            }
        }
    }

    @Test
    void oneSidedRequirementHasOnlyItsSide() {
        List<String> values = List.of("9.9", "10.0", "10.1", "10.2");
        Capability upper = analyse(values, Bounds.atMost(new BigDecimal("10.5")), Optional.of(WITHIN));
        assertThat(upper.cp().value()).isEmpty();
        assertThat(upper.cp().reason()).isEqualTo("The requirement has one side only.");
        assertThat(upper.cpl().reason()).isEqualTo("The requirement has no lower limit.");
        assertThat(upper.cpk().value()).isEqualTo(upper.cpu().value()).isPresent();
        assertThat(upper.cpm().value()).isEmpty();
        Capability lower = analyse(values, Bounds.atLeast(new BigDecimal("9.5")), Optional.of(WITHIN));
        assertThat(lower.ppk().value()).isEqualTo(lower.ppl().value()).isPresent();
        assertThat(lower.ppu().value()).isEmpty();
    }

    @Test
    void naturalLowerBoundGivesOnlyTheUpperIndex() {
        Capability flatness = analyse(
                List.of("0.01", "0.012", "0.02"), Bounds.fromZeroTo(new BigDecimal("0.05")), Optional.of(WITHIN));
        assertThat(flatness.cpl().value()).isEmpty();
        assertThat(flatness.cpl().reason()).contains("natural");
        assertThat(flatness.pp().value()).isEmpty();
        assertThat(flatness.cpk().value()).isEqualTo(flatness.cpu().value()).isPresent();
        assertThat(flatness.notes()).anyMatch(note -> note.contains("natural"));
    }

    @Test
    void whatHasNoRightToExistSaysWhy() {
        Bounds bounds = Bounds.between(BigDecimal.ONE, BigDecimal.TEN);
        Capability nothing = analyse(List.of(), bounds, Optional.empty());
        assertThat(nothing.mean()).isEmpty();
        assertThat(nothing.indices())
                .allMatch(index -> index.value().isEmpty() && !index.reason().isBlank());
        Capability one = analyse(List.of("5"), bounds, Optional.empty());
        assertThat(one.mean()).hasValue(5);
        assertThat(one.overall()).isEmpty();
        assertThat(one.ppk().reason()).isEqualTo("One reading has no spread.");
        Capability still = analyse(List.of("5", "5", "5"), bounds, Optional.of(WITHIN.withSigma(0)));
        assertThat(still.indices()).allMatch(index -> index.reason().startsWith("The readings do not spread"));
        Capability unlimited = analyse(List.of("4", "5"), Bounds.NONE, Optional.of(WITHIN));
        assertThat(unlimited.cpk().reason()).isEqualTo("The requirement has no limits.");
    }

    @Test
    void processOutOfControlDoesNotPredict() {
        Capability result =
                analyse(List.of("4", "5"), Bounds.between(BigDecimal.ONE, BigDecimal.TEN), Optional.of(WITHIN));
        assertThat(result.predicts()).isFalse();
        assertThat(result.notes()).anyMatch(note -> note.contains("not in control"));
        assertThat(result.cpk().value()).isPresent();
    }

    @Test
    void meanOutsideTheLimitsGivesANegativeIndex() {
        Capability result =
                analyse(List.of("11", "12"), Bounds.between(BigDecimal.ONE, BigDecimal.TEN), Optional.of(WITHIN));
        assertThat(result.ppk().value().orElseThrow()).isNegative();
        assertThat(result.ppu().value()).isEqualTo(result.ppk().value());
    }

    @Test
    void targetDefaultsToTheMiddleAndCanBeStated() {
        List<String> values = List.of("14", "14", "16", "18", "18");
        Bounds bounds = Bounds.between(BigDecimal.valueOf(8), BigDecimal.valueOf(20));
        double middle = analyse(values, bounds, Optional.empty()).cpm().value().orElseThrow();
        double stated = analyse(values, bounds.aimingAt(BigDecimal.valueOf(16)), Optional.empty())
                .cpm()
                .value()
                .orElseThrow();
        assertThat(middle).isCloseTo(1 / Math.sqrt(2), within(1e-15));
        assertThat(stated).isEqualTo(1.0);
    }

    @Test
    void levelsOutsideZeroAndOneAreRefused() {
        assertThatThrownBy(() -> CapabilityStudy.withDefaults().withConfidence(95))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("95");
    }
}
