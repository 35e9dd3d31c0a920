package io.github.firstoff.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class GroupingTest {
    private static final Instant SIX = Instant.parse("2026-11-20T06:00:00Z");

    private static Sample sample(int count) {
        long[] deviations = new long[count];
        for (int i = 0; i < count; i++) {
            deviations[i] = i + 1L;
        }
        return Sample.ofDeviations(deviations, new Scale(new BigDecimal("10"), 3, Unit.MILLIMETRE));
    }

    private static List<List<Integer>> groups(Subgroups subgroups) {
        List<List<Integer>> all = new ArrayList<>();
        for (int g = 0; g < subgroups.count(); g++) {
            all.add(subgroups.readings(g));
        }
        return all;
    }

    @Test
    void consecutiveLeavesOrKeepsTheIncompleteLast() {
        Subgroups left = Grouping.consecutive(3).of(sample(8));
        assertThat(groups(left)).containsExactly(List.of(0, 1, 2), List.of(3, 4, 5));
        assertThat(left.leftOver()).isEqualTo(2);
        assertThat(left.incomplete()).isEmpty();
        Subgroups kept = Grouping.consecutive(3).keepingIncomplete().of(sample(8));
        assertThat(groups(kept)).containsExactly(List.of(0, 1, 2), List.of(3, 4, 5), List.of(6, 7));
        assertThat(kept.leftOver()).isZero();
        assertThat(kept.incomplete()).containsExactly(3);
        assertThat(Grouping.consecutive(3).keepingIncomplete().of(sample(6)).incomplete())
                .isEmpty();
        assertThat(Grouping.consecutive(3).of(sample(0)).count()).isZero();
        assertThat(Grouping.consecutive(3).keepingIncomplete().of(sample(0)).count())
                .isZero();
    }

    @Test
    void phasesBreakAndNoSubgroupStraddlesThem() {
        List<String> phases = List.of("a", "a", "a", "a", "a", "b", "b", "b", "b", "a", "a");
        Subgroups left = Grouping.consecutive(2).inPhases(phases).of(sample(11));
        assertThat(groups(left))
                .containsExactly(List.of(0, 1), List.of(2, 3), List.of(5, 6), List.of(7, 8), List.of(9, 10));
        assertThat(left.leftOver()).isEqualTo(1);
        assertThat(left.breaks()).extracting(Break::number).containsExactly(3, 5);
        assertThat(left.breaks()).extracting(Break::label).containsExactly("b", "a");
        assertThat(left.breaks()).extracting(Break::reason).containsExactly("phase b", "phase a");
        assertThat(left.startsSegment(0)).isTrue();
        assertThat(left.startsSegment(1)).isFalse();
        assertThat(left.startsSegment(2)).isTrue();
        assertThat(left.segment(4)).isEqualTo(2);
        Subgroups kept =
                Grouping.consecutive(2).inPhases(phases).keepingIncomplete().of(sample(11));
        assertThat(kept.incomplete()).containsExactly(3);
        assertThat(kept.size(2)).isEqualTo(1);
        // what is left of a last phase may be nothing: then there is no break either
        assertThat(Grouping.consecutive(2)
                        .inPhases(List.of("a", "a", "b"))
                        .of(sample(3))
                        .breaks())
                .isEmpty();
    }

    @Test
    void labelsGatherInOrderOfAppearance() {
        Subgroups byLabel = Grouping.labelled(List.of("x", "y", "x", "y", "z")).of(sample(5));
        assertThat(groups(byLabel)).containsExactly(List.of(0, 2), List.of(1, 3));
        assertThat(byLabel.label(1)).isEqualTo("y");
        assertThat(byLabel.leftOver()).isEqualTo(1);
        Subgroups kept = Grouping.labelled(List.of("x", "y", "x", "y", "z"))
                .keepingIncomplete()
                .of(sample(5));
        assertThat(kept.count()).isEqualTo(3);
        assertThat(kept.incomplete()).containsExactly(3);
        // sizes that differ among themselves: nothing tells what is complete
        assertThat(Grouping.labelled(List.of("x", "y", "x", "z")).of(sample(4)).leftOver())
                .isZero();
        assertThatThrownBy(() -> Grouping.labelled(List.of("x")).of(sample(2))).hasMessageContaining("1 for 2");
        assertThatThrownBy(() -> Grouping.labelled(List.of("x", "x"))
                        .inPhases(List.of("a", "b"))
                        .of(sample(2)))
                .hasMessageContaining("two phases");
        assertThatThrownBy(() -> Grouping.consecutive(1).inPhases(List.of("a")).of(sample(2)))
                .hasMessageContaining("one phase per reading");
        assertThatThrownBy(() -> Grouping.consecutive(0)).hasMessageContaining("at least one");
    }

    @Test
    void windowsOfTimeBeginAtTheirOrigin() {
        List<Instant> times = List.of(
                SIX.minusSeconds(1),
                SIX,
                SIX.plusSeconds(3599),
                SIX.plusSeconds(3600),
                SIX.plusSeconds(3600),
                SIX.plusSeconds(4 * 3600));
        Subgroups hours = Grouping.timed(times, Duration.ofHours(1), SIX)
                .keepingIncomplete()
                .of(sample(6));
        // the hour before six, six to seven, seven to eight, none until ten
        assertThat(groups(hours)).containsExactly(List.of(0), List.of(1, 2), List.of(3, 4), List.of(5));
        // sizes 1, 2, 2: the last is not known to be incomplete
        assertThat(hours.incomplete()).isEmpty();
        Subgroups later =
                Grouping.timed(times.subList(1, 6), Duration.ofHours(1), SIX).of(sample(5));
        assertThat(groups(later)).containsExactly(List.of(0, 1), List.of(2, 3));
        assertThat(later.leftOver()).isEqualTo(1);
        // exactly one window before the origin belongs to the window that begins there
        assertThat(Grouping.timed(List.of(SIX.minusSeconds(3600), SIX.minusSeconds(1)), Duration.ofHours(1), SIX)
                        .of(sample(2))
                        .count())
                .isEqualTo(1);
        assertThatThrownBy(() -> Grouping.timed(List.of(SIX, SIX.minusSeconds(1)), Duration.ofHours(1), SIX))
                .hasMessageContaining("reading 2");
        assertThatThrownBy(() -> Grouping.timed(List.of(), Duration.ZERO, SIX)).hasMessageContaining("longer");
    }

    @Test
    void breaksAndExclusionsNeedReasonsAndExist() {
        Subgroups data = sample(6).asIndividuals();
        assertThatThrownBy(() -> new Break(2, " ", "x")).hasMessageContaining("label and a reason");
        assertThatThrownBy(() -> new Break(0, "a", "x")).hasMessageContaining("from 1");
        assertThatThrownBy(() -> new Exclusion(3, " ")).hasMessageContaining("written reason");
        assertThatThrownBy(() -> new Exclusion(0, "x")).hasMessageContaining("from 1");
        assertThatThrownBy(() -> data.excluding(List.of(new Exclusion(7, "x")))).hasMessageContaining("7 of 6");
        assertThatThrownBy(() -> data.breakingBefore(List.of(new Break(7, "a", "x"))))
                .hasMessageContaining("7 of 6");
        assertThatThrownBy(() -> data.excluding(List.of(new Exclusion(2, "x"), new Exclusion(2, "y"))))
                .hasMessageContaining("twice");
        Subgroups marked = data.excluding(List.of(new Exclusion(5, "dropped"), new Exclusion(2, "chip")))
                .breakingBefore(List.of(new Break(4, "t2", "tool change"), new Break(1, "t1", "start of batch")));
        assertThat(marked.exclusions()).extracting(Exclusion::number).containsExactly(2, 5);
        assertThat(marked.isExcluded(1)).isTrue();
        assertThat(marked.isExcluded(2)).isFalse();
        assertThat(marked.breaks()).extracting(Break::number).containsExactly(1, 4);
        assertThat(marked.segment(2)).isZero();
        assertThat(marked.segment(3)).isEqualTo(1);
        Subgroups twice =
                marked.breakingBefore(List.of(new Break(4, "t2", "tool change"), new Break(4, "t2b", "offset")));
        assertThat(twice.breaks()).anySatisfy(both -> {
            assertThat(both.number()).isEqualTo(4);
            assertThat(both.label()).isEqualTo("t2b");
            assertThat(both.reason()).isEqualTo("tool change; offset");
        });
        assertThat(twice.withoutBreaks().breaks()).isEmpty();
        assertThat(twice.withoutBreaks().exclusions()).hasSize(2);
    }

    @Test
    void partsKeepNumbersAndMarks() {
        Subgroups data = sample(12)
                .inSubgroupsOf(2)
                .excluding(List.of(new Exclusion(5, "dropped")))
                .breakingBefore(List.of(new Break(3, "t2", "tool change"), new Break(5, "t3", "tool change")));
        Subgroups part = data.part(2, 5);
        assertThat(part.number(0)).isEqualTo(3);
        assertThat(part.label(2)).isEqualTo("5");
        assertThat(part.isExcluded(2)).isTrue();
        assertThat(part.breaks()).extracting(Break::number).containsExactly(3, 5);
        assertThat(part.segment(0)).isEqualTo(1);
        assertThat(part.segment(2)).isEqualTo(2);
        assertThat(part.readings(0)).containsExactly(4, 5);
        assertThatThrownBy(() -> data.part(3, 2)).isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> part.excluding(List.of(new Exclusion(2, "x")))).hasMessageContaining("2 of 3");
    }

    @Test
    void droppedSubgroupsPassTheirBreakOn() {
        Subgroups data = Grouping.labelled(List.of("a", "a", "b", "c", "c", "d", "d"))
                .of(sample(7))
                .breakingBefore(List.of(new Break(2, "t2", "tool change")))
                .excluding(List.of(new Exclusion(4, "dropped"), new Exclusion(2, "lost")));
        Subgroups kept = data.ofAtLeast(2);
        assertThat(kept.count()).isEqualTo(3);
        assertThat(kept.breaks()).containsExactly(new Break(2, "t2", "tool change"));
        assertThat(kept.exclusions()).containsExactly(new Exclusion(3, "dropped"));
        assertThat(kept.label(1)).isEqualTo("c");
        assertThat(data.ofAtLeast(1)).isSameAs(data);
    }

    @Test
    void failuresAreCountedBySubgroup() {
        Sample passFail =
                Sample.ofDeviations(new long[] {0, 1, 0, 1, 1, 0, 0}, new Scale(BigDecimal.ZERO, 0, Unit.NONE));
        Counts counts =
                Counts.ofFailures(Grouping.consecutive(3).keepingIncomplete().of(passFail));
        assertThat(counts.count(0)).isEqualTo(1);
        assertThat(counts.count(1)).isEqualTo(2);
        assertThat(counts.size(2)).isEqualTo(1);
        assertThat(counts.haveOneSize()).isFalse();
        assertThat(counts.part(1, 3).count(0)).isEqualTo(2);
        assertThat(counts.part(1, 3).data().number(0)).isEqualTo(2);
        assertThatThrownBy(() -> Counts.ofFailures(sample(3).asIndividuals()))
                .hasMessageContaining("passes (0) or fails (1)");
        assertThatThrownBy(() -> new Counts(sample(2).asIndividuals(), List.of(BigDecimal.ONE)))
                .hasMessageContaining("one size per count");
    }

    @Test
    void familiesAreDeviationsFromTheNominalOfTheirPart() {
        List<Family.Piece> pieces = List.of(
                new Family.Piece("HQ-310-P", new BigDecimal("52.000"), new BigDecimal("52.003")),
                new Family.Piece("HQ-310-P", new BigDecimal("52.000"), new BigDecimal("51.999")),
                new Family.Piece("HQ-310-P", new BigDecimal("52.000"), new BigDecimal("52.001")),
                new Family.Piece("HQ-320", new BigDecimal("40.00"), new BigDecimal("40.0025")),
                new Family.Piece("HQ-320", new BigDecimal("40.00"), new BigDecimal("39.9990")));
        Family family = Family.of(pieces, 2, Unit.MILLIMETRE);
        assertThat(family.parts()).containsExactly("HQ-310-P", "HQ-320");
        assertThat(family.deviations().leftOver()).isEqualTo(1);
        assertThat(family.deviations().deviation(0, 0)).isEqualTo(30);
        assertThat(family.deviations().deviation(1, 0)).isEqualTo(25);
        assertThat(family.deviations().breaks()).isEmpty();
        assertThat(family.deviations().sample().exactValue(4)).isEqualByComparingTo("-0.001");
        assertThatThrownBy(() -> Family.of(
                        List.of(
                                new Family.Piece("A", BigDecimal.ONE, BigDecimal.ONE),
                                new Family.Piece("A", BigDecimal.TEN, BigDecimal.ONE)),
                        1,
                        Unit.MILLIMETRE))
                .hasMessageContaining("two nominals");
        Subgroups readings = sample(4).inSubgroupsOf(2);
        Family one = Family.ofOnePart(readings, "HQ-045");
        assertThat(one.deviations().sample().exactValue(0)).isEqualByComparingTo("0.001");
        assertThat(one.parts()).containsExactly("HQ-045", "HQ-045");
    }
}
