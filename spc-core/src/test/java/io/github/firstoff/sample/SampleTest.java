package io.github.firstoff.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SampleTest {
    private static List<BigDecimal> decimals(String... values) {
        return Stream.of(values).map(BigDecimal::new).toList();
    }

    @Test
    void readingsBecomeWholeStepsOfTheFinestResolution() {
        Sample sample = Sample.of(decimals("12.48", "12.513", "12.5"), new BigDecimal("12.5"), Unit.MILLIMETRE);
        assertThat(sample.deviations()).containsExactly(-20, 13, 0);
        assertThat(sample.scale().step()).isEqualByComparingTo("0.001");
        assertThat(sample.exactValue(0)).isEqualTo(new BigDecimal("12.480"));
        assertThat(sample.value(1)).isEqualTo(12.513);
        assertThat(Sample.of(decimals("7", "9"), Unit.NONE).deviations()).containsExactly(0, 2);
        assertThat(Sample.of(List.of(), Unit.NONE).size()).isZero();
        assertThat(Sample.of(decimals("1.2E+3"), BigDecimal.ZERO, Unit.NONE).deviations())
                .containsExactly(1200);
    }

    @Test
    void nominalFinerThanTheReadingsSetsTheStep() {
        Sample sample = Sample.of(decimals("10.1"), new BigDecimal("10.125"), Unit.MILLIMETRE);
        assertThat(sample.deviations()).containsExactly(-25);
    }

    @Test
    void readingsThatCannotBeCountedAreRefusedInWords() {
        assertThatThrownBy(() -> Sample.of(decimals("1E+400"), BigDecimal.ONE, Unit.MILLIMETRE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1E+400")
                .hasMessageContaining("too far");
        assertThatThrownBy(() -> Sample.of(decimals("1E+1000000000"), BigDecimal.ONE, Unit.MILLIMETRE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Sample.of(decimals("1E-40"), BigDecimal.ONE, Unit.MILLIMETRE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("40 decimal places");
        assertThatThrownBy(() -> Sample.of(decimals("9007199254740993"), BigDecimal.ZERO, Unit.NONE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(Sample.of(decimals("9007199254740991"), BigDecimal.ZERO, Unit.NONE)
                        .deviation(0))
                .isEqualTo(9007199254740991L);
        // zeros say nothing about resolution when there are absurdly many
        assertThat(Sample.of(decimals("1." + "0".repeat(50)), BigDecimal.ONE, Unit.NONE)
                        .deviation(0))
                .isZero();
        assertThat(Sample.of(decimals("1", "2"), new BigDecimal("1." + "0".repeat(50)), Unit.NONE)
                        .deviation(1))
                .isEqualTo(1);
    }

    @Test
    void meansAreRoundedOnceOnTheFastPathAndOnTheSlow() {
        Random random = new Random(5);
        for (int round = 0; round < 500; round++) {
            Scale scale =
                    new Scale(BigDecimal.valueOf(random.nextInt(100_000), 3), 3 + random.nextInt(4), Unit.MILLIMETRE);
            long count = 1L + random.nextInt(1000);
            long sum = random.nextInt(2_000_000) - 1_000_000L;
            assertThat(scale.mean(sum, count)).isEqualTo(scale.mean(BigInteger.valueOf(sum), count));
        }
        Scale scale = new Scale(new BigDecimal("1000000.2"), 1, Unit.NONE);
        assertThat(scale.mean(0, 3)).isEqualTo(1000000.2);
        assertThat(scale.value(1L)).isEqualTo(1000000.3);
        assertThat(scale.value(0.5)).isEqualTo(1000000.25);
        assertThat(scale.deviation(1000000.25)).isEqualTo(0.5);
    }

    @Test
    void distanceFromTheMeanDoesNotCancel() {
        Scale scale = new Scale(new BigDecimal("100000.00"), 2, Unit.MILLIMETRE);
        // mean 100000 + 0.01/3; the limit is 100000.01: two thirds of a step above
        assertThat(scale.aboveMean(new BigDecimal("100000.01"), BigInteger.ONE, 3))
                .isEqualTo(2.0 / 3);
        assertThat(scale.stepsBetween(new BigDecimal("99999.9"), new BigDecimal("100000.1")))
                .isEqualTo(20);
    }

    @Test
    void consecutiveSubgroups() {
        Sample sample = Sample.ofDeviations(
                IntStream.range(0, 11).asLongStream().toArray(), new Scale(BigDecimal.ZERO, 0, Unit.NONE));
        Subgroups threes = sample.inSubgroupsOf(3);
        assertThat(threes.count()).isEqualTo(3);
        assertThat(threes.leftOver()).isEqualTo(2);
        assertThat(threes.readings(2)).containsExactly(6, 7, 8);
        assertThat(threes.label(2)).isEqualTo("3");
        assertThat(threes.commonSize()).hasValue(3);
        assertThat(sample.inSubgroupsOf(20).count()).isZero();
        assertThatThrownBy(() -> sample.inSubgroupsOf(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> threes.reading(0, 3)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void labelledSubgroupsMayLieApartAndDiffer() {
        Sample sample = Sample.of(decimals("1", "2", "3", "4", "5", "6"), Unit.NONE);
        Subgroups apart = sample.inSubgroups(List.of("x", "y", "x", "y", "y", "z"));
        assertThat(apart.count()).isEqualTo(3);
        assertThat(apart.readings(1)).containsExactly(1, 3, 4);
        assertThat(apart.commonSize()).isEmpty();
        assertThat(apart.leftOver()).isZero();
        assertThat(apart.ofAtLeast(2).count()).isEqualTo(2);
        assertThat(apart.ofAtLeast(2).label(1)).isEqualTo("y");
        Subgroups incomplete =
                sample.inSubgroups(List.of("x", "x", "y", "y", "z", "z")).ofAtLeast(2);
        assertThat(incomplete.count()).isEqualTo(3);
        Subgroups cut = sample.inSubgroups(List.of("x", "x", "x", "x", "z", "z"));
        assertThat(cut.leftOver()).isEqualTo(2);
        assertThat(cut.count()).isEqualTo(1);
        assertThatThrownBy(() -> sample.inSubgroups(List.of("x"))).hasMessageContaining("1 labels for 6 readings");
    }

    @Test
    void boundsKnowTheirSidesAndTheirAim() {
        Bounds two = Bounds.between(new BigDecimal("51.949"), new BigDecimal("51.979"));
        assertThat(two.isTwoSided()).isTrue();
        assertThat(two.aim().orElseThrow()).isEqualByComparingTo("51.964");
        assertThat(two.aimingAt(new BigDecimal("51.96")).aim()).contains(new BigDecimal("51.96"));
        assertThat(Bounds.atMost(BigDecimal.ONE).aim()).isEmpty();
        Bounds natural = Bounds.fromZeroTo(BigDecimal.ONE);
        assertThat(natural.isTwoSided()).isFalse();
        assertThat(natural.requiredLower()).isEmpty();
        assertThat(natural.aim()).isEmpty();
        assertThatThrownBy(() -> Bounds.between(BigDecimal.TEN, BigDecimal.ONE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Bounds(Optional.empty(), Optional.empty(), Optional.empty(), true))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
