package io.github.firstoff.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Parts, marks, equality, and values of computed deviations. */
class MarksTest {
    private static final Scale STEPS = new Scale(new BigDecimal("5.00"), 2, Unit.MILLIMETRE);

    private static Sample sample(long... deviations) {
        return Sample.ofDeviations(deviations, STEPS);
    }

    @Test
    void samplesAreEqualWhenScaleAndDeviationsAre() {
        Sample one = sample(1, 2, 3);
        assertThat(one).isEqualTo(sample(1, 2, 3)).hasSameHashCodeAs(sample(1, 2, 3));
        assertThat(one).isNotEqualTo(sample(1, 2, 4)).isNotEqualTo("1, 2, 3");
        Sample elsewhere =
                Sample.ofDeviations(new long[] {1, 2, 3}, new Scale(new BigDecimal("6.00"), 2, Unit.MILLIMETRE));
        assertThat(one).isNotEqualTo(elsewhere);
        assertThat(one.hashCode())
                .isNotEqualTo(elsewhere.hashCode())
                .isNotEqualTo(sample(3, 2, 1).hashCode());
        assertThat(one.toString()).contains("3");
        // exactly 2⁵³ steps may be held, one more may not
        assertThat(sample(1L << 53, -(1L << 53)).deviation(1)).isEqualTo(-(1L << 53));
        assertThatThrownBy(() -> sample((1L << 53) + 1)).hasMessageContaining("steps");
        assertThatThrownBy(() -> sample(-(1L << 53) - 1)).hasMessageContaining("steps");
    }

    @Test
    void partKeepsNumbersAndWhatLiesInIt() {
        Subgroups whole = sample(0, 1, 2, 3, 4, 5, 6, 7, 8, 9)
                .asIndividuals()
                .breakingBefore(List.of(new Break(3, "b", "offset"), new Break(7, "c", "tool")))
                .excluding(List.of(new Exclusion(2, "burr"), new Exclusion(5, "chip"), new Exclusion(8, "dirt")));
        Subgroups part = whole.part(2, 7);
        assertThat(part.number(0)).isEqualTo(3);
        assertThat(part.breaks()).extracting(Break::number).containsExactly(3, 7);
        assertThat(part.exclusions()).extracting(Exclusion::number).containsExactly(5);
        assertThat(part.segment(0)).isEqualTo(1);
        assertThat(part.segment(4)).isEqualTo(2);
        assertThat(part.isExcluded(2)).isTrue();
        assertThat(part.isExcluded(1)).isFalse();
        assertThat(whole.part(2, 6).breaks()).extracting(Break::number).containsExactly(3);
        assertThat(whole.part(3, 8).exclusions()).extracting(Exclusion::number).containsExactly(5, 8);
        assertThat(whole.part(3, 3).count()).isZero();
        assertThat(whole.part(0, 10).count()).isEqualTo(10);
        assertThatThrownBy(() -> whole.part(3, 2)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> whole.part(0, 11)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> whole.part(-1, 2)).isInstanceOf(IndexOutOfBoundsException.class);
        // what is left over belongs to the end
        Subgroups pairs = sample(0, 1, 2, 3, 4).inSubgroupsOf(2);
        assertThat(pairs.leftOver()).isEqualTo(1);
        assertThat(pairs.part(0, 1).leftOver()).isZero();
        assertThat(pairs.part(1, 2).leftOver()).isEqualTo(1);
        assertThatThrownBy(() -> whole.breakingBefore(List.of(new Break(11, "d", "x"))))
                .hasMessageContaining("11");
        assertThatThrownBy(() -> part.breakingBefore(List.of(new Break(2, "d", "x"))))
                .hasMessageContaining("2");
        assertThat(whole.withoutBreaks().segment(9)).isZero();
    }

    @Test
    void smallSubgroupsDropOutWithTheirMarksMoved() {
        Subgroups data = sample(0, 1, 2, 3, 4, 5, 6)
                .inSubgroups(List.of("a", "a", "b", "c", "c", "d", "d"))
                .breakingBefore(List.of(new Break(2, "later", "offset")))
                .excluding(List.of(new Exclusion(2, "single"), new Exclusion(4, "burr")));
        Subgroups pairs = data.ofAtLeast(2);
        assertThat(pairs.count()).isEqualTo(3);
        assertThat(pairs.label(1)).isEqualTo("c");
        assertThat(pairs.readings(1)).containsExactly(3, 4);
        // the break stood before b, which is gone: it stands before c; the exclusion of b went with it
        assertThat(pairs.breaks()).extracting(Break::number).containsExactly(2);
        assertThat(pairs.exclusions()).containsExactly(new Exclusion(3, "burr"));
        assertThat(data.ofAtLeast(1)).isSameAs(data);
        assertThat(data.ofAtLeast(3).count()).isZero();
        // a kept incomplete subgroup keeps its mark under its new number
        assertThat(pairs.incomplete()).isEmpty();
    }

    /** The quick way and the exact one agree to half a unit in the last place, with few exceptions of one. */
    @Test
    void valuesOfComputedDeviations() {
        Random random = new Random(9);
        Scale.Means quick = STEPS.means();
        int off = 0;
        for (int i = 0; i < 20_000; i++) {
            double deviation = random.nextGaussian() * Math.pow(10, random.nextInt(12) - 3);
            double exact = STEPS.value(deviation);
            double found = quick.value(deviation);
            assertThat(found).isCloseTo(exact, within(Math.ulp(exact)));
            off += found == exact ? 0 : 1;
        }
        assertThat(off).isLessThan(20);
        // far away, and on a scale of more places than a double has, by the exact way
        assertThat(quick.value(0x1p60)).isEqualTo(STEPS.value(0x1p60));
        Scale fine = new Scale(BigDecimal.ONE, 25, Unit.NONE);
        assertThat(fine.means().value(1.5)).isEqualTo(fine.value(1.5));
        assertThat(fine.length(3)).isEqualTo(3e-25);
        assertThat(fine.steps(3e-25)).isCloseTo(3, within(1e-12));
        assertThat(new Scale(BigDecimal.ONE, 22, Unit.NONE).length(3)).isEqualTo(3e-22);
        assertThatThrownBy(() -> quick.value(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> fine.length(Double.POSITIVE_INFINITY)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> fine.steps(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> STEPS.mean(1, 0)).hasMessageContaining("at least one");
        assertThatThrownBy(() -> STEPS.aboveMean(BigDecimal.ONE, java.math.BigInteger.ONE, 0))
                .hasMessageContaining("at least one");
        assertThatThrownBy(() -> new Scale(BigDecimal.ONE, 31, Unit.NONE)).hasMessageContaining("31");
        assertThatThrownBy(() -> new Scale(BigDecimal.ONE, -1, Unit.NONE)).hasMessageContaining("-1");
        assertThat(new Scale(BigDecimal.ONE, 30, Unit.NONE).step()).isEqualByComparingTo("1E-30");
    }

    /** Means on every side of where the quick way ends: the exact quotient, rounded once. */
    @Test
    void meansAreRoundedOnceWhateverTheirSize() {
        long[] sums = {
            0, 1, -1, 7, -7, 999_999_999_999L, -999_999_999_999L, (1L << 53) - 1, 1L << 53, -(1L << 53), Long.MAX_VALUE
        };
        long[] counts = {1, 3, 7, 1_000_003, (1L << 53) - 1, 1L << 53, Long.MAX_VALUE};
        for (String reference :
                List.of("0", "5.00", "-5.00", "90071992547409.91", "90071992547409.92", "123456789012345678.90")) {
            for (int places : new int[] {2, 22, 23, 30}) {
                Scale scale = new Scale(new BigDecimal(reference), places, Unit.NONE);
                for (long sum : sums) {
                    for (long count : counts) {
                        BigDecimal exact = new BigDecimal(reference)
                                .add(BigDecimal.valueOf(sum, places)
                                        .divide(BigDecimal.valueOf(count), new java.math.MathContext(80)));
                        assertThat(scale.mean(sum, count))
                                .as("%s + %s/%s of %s places", reference, sum, count, places)
                                .isEqualTo(Double.parseDouble(exact.toString()));
                    }
                }
            }
        }
    }
}
