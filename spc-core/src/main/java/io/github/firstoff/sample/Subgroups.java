package io.github.firstoff.sample;

import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A sample cut into subgroups, in the order in which they were taken. Subgroups and members count from 0, their
 * {@link #number numbers} as people count them from 1. Immutable.
 *
 * <p>Readings left over (an incomplete last subgroup) belong to the sample but to no subgroup. A {@link Break} says that
 * something was done to the process before a subgroup, an {@link Exclusion} that one is not to count, and why; both are
 * made by people, never by this library.
 */
public final class Subgroups {
    private final Sample sample;
    private final int @Nullable [] order;
    private final int[] starts;
    private final List<String> labels;
    private final LeftOver leftOver;
    private final List<Integer> incomplete;
    private final Marks marks;

    /**
     * Readings of incomplete subgroups.
     *
     * @param groups how many subgroups they would have made
     * @param atEnd whether the last of these ends with the sample
     */
    record LeftOver(int readings, int groups, boolean atEnd) {
        static final LeftOver NONE = new LeftOver(0, 0, true);

        static LeftOver last(int readings) {
            return readings == 0 ? NONE : new LeftOver(readings, 1, true);
        }

        LeftOver plus(int more, boolean end) {
            return new LeftOver(readings + more, groups + 1, end);
        }
    }

    /** Where the subgroups lie among all: number of the first less 1, breaks and exclusions by number. */
    private static final class Marks {
        static final Marks NONE = new Marks(0, List.of(), List.of(), new int[0]);

        private final int before;
        private final List<Break> breaks;
        private final List<Exclusion> exclusions;
        private final int[] segments;

        Marks(int before, List<Break> breaks, List<Exclusion> exclusions, int[] segments) {
            this.before = before;
            this.breaks = breaks;
            this.exclusions = exclusions;
            this.segments = segments;
        }

        Marks with(List<Break> newBreaks, List<Exclusion> newExclusions, int count) {
            int[] segment = new int[newBreaks.isEmpty() ? 0 : count];
            int next = 0;
            int current = 0;
            for (int g = 0; g < segment.length; g++) {
                while (next < newBreaks.size() && newBreaks.get(next).number() <= before + g + 1) {
                    // a break before the first subgroup opens the first segment and does not begin another
                    current += newBreaks.get(next).number() > before + 1 ? 1 : 0;
                    next++;
                }
                segment[g] = current;
            }
            return new Marks(before, List.copyOf(newBreaks), List.copyOf(newExclusions), segment);
        }
    }

    Subgroups(
            Sample sample,
            int @Nullable [] order,
            int[] starts,
            List<String> labels,
            LeftOver leftOver,
            List<Integer> incomplete) {
        this(sample, order, starts, List.copyOf(labels), leftOver, List.copyOf(incomplete), Marks.NONE);
    }

    private Subgroups(
            Sample sample,
            int @Nullable [] order,
            int[] starts,
            List<String> labels,
            LeftOver leftOver,
            List<Integer> incomplete,
            Marks marks) {
        this.sample = sample;
        this.order = order;
        this.starts = starts;
        this.labels = labels;
        this.leftOver = leftOver;
        this.incomplete = incomplete;
        this.marks = marks;
    }

    /** The whole sample, left-over readings included. */
    public Sample sample() {
        return sample;
    }

    /** How many subgroups. */
    public int count() {
        return starts.length - 1;
    }

    /** How many readings subgroup {@code group} holds. */
    public int size(int group) {
        return starts[group + 1] - starts[group];
    }

    /** The size that all subgroups share; empty if sizes differ or there is no subgroup. */
    public OptionalInt commonSize() {
        if (count() == 0) {
            return OptionalInt.empty();
        }
        int size = size(0);
        for (int g = 1; g < count(); g++) {
            if (size(g) != size) {
                return OptionalInt.empty();
            }
        }
        return OptionalInt.of(size);
    }

    /** Which reading of the sample (from 0) is member {@code member} of subgroup {@code group}. */
    public int reading(int group, int member) {
        int at = starts[group] + member;
        if (member < 0 || at >= starts[group + 1]) {
            throw new IndexOutOfBoundsException("member " + member + " of a subgroup of " + size(group));
        }
        return order == null ? at : order[at];
    }

    /** Which readings of the sample (from 0) subgroup {@code group} holds. */
    public List<Integer> readings(int group) {
        List<Integer> readings = new ArrayList<>(size(group));
        for (int member = 0; member < size(group); member++) {
            readings.add(reading(group, member));
        }
        return List.copyOf(readings);
    }

    /** The deviation of one member from the reference, in whole steps. */
    public long deviation(int group, int member) {
        return sample.deviation(reading(group, member));
    }

    /** The number of subgroup {@code group} as people count, from 1; a {@link #part} keeps the numbers of the whole. */
    public int number(int group) {
        return marks.before + group + 1;
    }

    /** The label of subgroup {@code group}; its number where none was given. */
    public String label(int group) {
        return labels.isEmpty() ? Integer.toString(number(group)) : labels.get(group);
    }

    /** How many readings belong to an incomplete subgroup and so to no chart. */
    public int leftOver() {
        return leftOver.readings;
    }

    /** What the values of subgroups are, where something is said of those that are left over. */
    public enum LeftOverOf {
        /** Readings, which count in the overall figures. */
        READINGS,
        /** Pieces, which count in the verdict. */
        PIECES,
        /** Counts, which count in the verdict. */
        COUNTS
    }

    /**
     * What is said of readings that belong to an incomplete subgroup and so to no chart; empty if there are none.
     *
     * @param what what they are
     */
    public Optional<Remark> leftOverNote(LeftOverOf what) {
        if (leftOver.readings == 0) {
            return Optional.empty();
        }
        if (leftOver.groups > 1) {
            return Optional.of(
                    switch (what) {
                        case READINGS ->
                            Remark.of(
                                    "subgroups.left-over.readings",
                                    "{0} subgroups that end at a break or with the last reading are incomplete ({1} {1|reading|readings}"
                                            + " in all): they count in the overall figures and are left off the chart.",
                                    leftOver.groups,
                                    leftOver.readings);
                        case PIECES ->
                            Remark.of(
                                    "subgroups.left-over.pieces",
                                    "{0} subgroups that end at a break or with the last piece are incomplete ({1} {1|piece|pieces} in"
                                            + " all): they count in the verdict and are left off the chart.",
                                    leftOver.groups,
                                    leftOver.readings);
                        case COUNTS ->
                            Remark.of(
                                    "subgroups.left-over.counts",
                                    "{0} subgroups that end at a break or with the last count are incomplete ({1} {1|count|counts} in"
                                            + " all): they count in the verdict and are left off the chart.",
                                    leftOver.groups,
                                    leftOver.readings);
                    });
        }
        return Optional.of(
                switch (what) {
                    case READINGS ->
                        Remark.of(
                                "subgroups.last.readings",
                                "The last subgroup{0|| before a break} is incomplete ({1} {1|reading|readings}): it counts in the overall"
                                        + " figures and is left off the chart.",
                                leftOver.atEnd,
                                leftOver.readings);
                    case PIECES ->
                        Remark.of(
                                "subgroups.last.pieces",
                                "The last subgroup{0|| before a break} is incomplete ({1} {1|piece|pieces}): it counts in the verdict and"
                                        + " is left off the chart.",
                                leftOver.atEnd,
                                leftOver.readings);
                    case COUNTS ->
                        Remark.of(
                                "subgroups.last.counts",
                                "The last subgroup{0|| before a break} is incomplete ({1} {1|count|counts}): it counts in the verdict and"
                                        + " is left off the chart.",
                                leftOver.atEnd,
                                leftOver.readings);
                });
    }

    /** The numbers of subgroups that are incomplete and were kept by choice. */
    public List<Integer> incomplete() {
        return incomplete;
    }

    /** In which stretch between two breaks subgroup {@code group} lies, counted from 0. */
    public int segment(int group) {
        return marks.segments.length == 0 ? 0 : marks.segments[group];
    }

    /** Whether something was done to the process before subgroup {@code group}, or it is the first. */
    public boolean startsSegment(int group) {
        return group == 0 || segment(group) != segment(group - 1);
    }

    /** Whether subgroup {@code group} is not to count. */
    public boolean isExcluded(int group) {
        // a handful at most: each needed a written reason
        for (Exclusion exclusion : marks.exclusions) {
            if (exclusion.number() == number(group)) {
                return true;
            }
        }
        return false;
    }

    /** The breaks, in order. */
    public List<Break> breaks() {
        return marks.breaks;
    }

    /** The exclusions, in order. */
    public List<Exclusion> exclusions() {
        return marks.exclusions;
    }

    /**
     * The same subgroups with these breaks besides those they have.
     *
     * @throws IllegalArgumentException if a break names a subgroup that does not exist
     */
    public Subgroups breakingBefore(List<Break> more) {
        Map<Integer, Break> byNumber = new HashMap<>();
        marks.breaks.forEach(b -> byNumber.put(b.number(), b));
        for (Break b : more) {
            requireNumber(b.number(), "a break before subgroup ");
            byNumber.merge(b.number(), b, Break::and);
        }
        List<Break> all = byNumber.values().stream().sorted().toList();
        return marked(marks.with(all, marks.exclusions, count()));
    }

    /**
     * The same subgroups with these exclusions besides those they have.
     *
     * @throws IllegalArgumentException if an exclusion names a subgroup that does not exist or is excluded already
     */
    public Subgroups excluding(List<Exclusion> more) {
        List<Exclusion> all = new ArrayList<>(marks.exclusions);
        for (Exclusion exclusion : more) {
            requireNumber(exclusion.number(), "an exclusion of subgroup ");
            if (all.stream().anyMatch(known -> known.number() == exclusion.number())) {
                throw new IllegalArgumentException("subgroup " + exclusion.number() + " is excluded twice");
            }
            all.add(exclusion);
        }
        return marked(marks.with(marks.breaks, all.stream().sorted().toList(), count()));
    }

    private void requireNumber(int number, String what) {
        if (number <= marks.before || number > marks.before + count()) {
            throw new IllegalArgumentException(what + number + " of " + count());
        }
    }

    /** The same subgroups without any break. */
    public Subgroups withoutBreaks() {
        return marked(marks.with(List.of(), marks.exclusions, count()));
    }

    private Subgroups marked(Marks other) {
        return new Subgroups(sample, order, starts, labels, leftOver, incomplete, other);
    }

    /** The subgroups {@code from} (inclusive) to {@code to} (exclusive), counted from 0; they keep numbers and marks. */
    public Subgroups part(int from, int to) {
        if (from < 0 || to > count() || from > to) {
            throw new IndexOutOfBoundsException("from " + from + " to " + to + " of " + count());
        }
        int before = marks.before + from;
        int after = marks.before + to;
        Marks partMarks = new Marks(
                before,
                marks.breaks.stream()
                        .filter(b -> b.number() > before && b.number() <= after)
                        .toList(),
                marks.exclusions.stream()
                        .filter(e -> e.number() > before && e.number() <= after)
                        .toList(),
                marks.segments.length == 0
                        ? marks.segments
                        : IntStream.range(from, to).map(this::segment).toArray());
        return new Subgroups(
                sample,
                order,
                java.util.Arrays.copyOfRange(starts, from, to + 1),
                labels.isEmpty() ? labels : labels.subList(from, to),
                to == count() ? leftOver : LeftOver.NONE,
                incomplete.stream().filter(i -> i > before && i <= after).toList(),
                partMarks);
    }

    /** The same subgroups of other numbers on the same places, for readings taken relative to something. */
    Subgroups withSample(Sample other) {
        if (other.size() != sample.size()) {
            throw new IllegalArgumentException(other.size() + " readings in place of " + sample.size());
        }
        return new Subgroups(other, order, starts, labels, leftOver, incomplete, marks);
    }

    /** The same subgroups with their readings counted as deviations: the reference becomes 0. */
    public Subgroups asDeviations() {
        Scale scale = sample.scale();
        return withSample(sample.withScale(new Scale(java.math.BigDecimal.ZERO, scale.places(), scale.unit())));
    }

    /** Without subgroups of a single reading, which have no spread within; if all are such, the same. */
    public Subgroups withoutSingles() {
        for (int g = 0; g < count(); g++) {
            if (size(g) > 1) {
                return ofAtLeast(2);
            }
        }
        return this;
    }

    /**
     * The subgroups of at least {@code least} readings, in the same order; smaller ones are dropped, and numbers count those
     * that are left. A break before one that is dropped moves to the next.
     */
    public Subgroups ofAtLeast(int least) {
        int enough = 0;
        while (enough < count() && size(enough) >= least) {
            enough++;
        }
        if (enough == count()) {
            return this;
        }
        List<Integer> kept = new ArrayList<>();
        for (int g = 0; g < count(); g++) {
            if (size(g) >= least) {
                kept.add(g);
            }
        }
        int[] newStarts = new int[kept.size() + 1];
        List<Integer> newOrder = new ArrayList<>();
        List<String> newLabels = new ArrayList<>();
        for (int k = 0; k < kept.size(); k++) {
            newOrder.addAll(readings(kept.get(k)));
            newLabels.add(label(kept.get(k)));
            newStarts[k + 1] = newOrder.size();
        }
        Subgroups result = new Subgroups(
                sample,
                newOrder.stream().mapToInt(Integer::intValue).toArray(),
                newStarts,
                List.copyOf(newLabels),
                leftOver,
                incomplete.stream()
                        .filter(i -> kept.contains(i - marks.before - 1))
                        .map(i -> newNumber(kept, i))
                        .toList(),
                new Marks(marks.before, List.of(), List.of(), new int[0]));
        List<Break> newBreaks = new ArrayList<>();
        for (Break b : marks.breaks) {
            int next = newNumber(kept, b.number());
            if (next <= marks.before + kept.size()) {
                newBreaks.add(b.before(next));
            }
        }
        List<Exclusion> newExclusions = new ArrayList<>();
        for (Exclusion e : marks.exclusions) {
            int group = e.number() - marks.before - 1;
            if (kept.contains(group)) {
                newExclusions.add(new Exclusion(newNumber(kept, e.number()), e.reason()));
            }
        }
        return result.breakingBefore(newBreaks).excluding(newExclusions);
    }

    /** The number, among those kept, of the first that is not before {@code number}. */
    private int newNumber(List<Integer> kept, int number) {
        int result = marks.before + 1;
        for (int g : kept) {
            result += number(g) < number ? 1 : 0;
        }
        return result;
    }
}
