package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.function.IntPredicate;

/** The subgroups that set limits: those of the baseline that are not excluded. */
public final class Basis {
    private final Subgroups data;
    private final int[] groups;
    private final int reach;

    private Basis(Subgroups data, int[] groups, int reach) {
        this.data = data;
        this.groups = groups;
        this.reach = reach;
    }

    /** The subgroups of {@code data} that set limits. */
    public static Basis of(Subgroups data, Baseline baseline) {
        int[] found = new int[data.count()];
        int count = 0;
        boolean anyExcluded = !data.exclusions().isEmpty();
        for (int g = 0; g < found.length; g++) {
            if (baseline.contains(data.number(g)) && !(anyExcluded && data.isExcluded(g))) {
                found[count++] = g;
            }
        }
        return new Basis(data, Arrays.copyOf(found, count), 1);
    }

    /** Those of this basis for which a condition holds. */
    Basis where(IntPredicate condition) {
        return new Basis(data, Arrays.stream(groups).filter(condition).toArray(), reach);
    }

    /**
     * The same, where a subgroup follows another at once as long as fewer than {@code places} others stand between them: on charts that
     * interleave the members of a family, each follows its own kind.
     */
    Basis interleaved(int places) {
        return new Basis(data, groups, places);
    }

    /** All subgroups. */
    public Subgroups data() {
        return data;
    }

    /** How many set limits. */
    public int count() {
        return groups.length;
    }

    /** Subgroup number {@code i} (from 0) of those that set limits, as counted in {@link #data}. */
    public int group(int i) {
        return groups[i];
    }

    /** Whether subgroup {@code i} of the basis follows subgroup {@code i − 1} at once, without a break. */
    public boolean followsAtOnce(int i) {
        if (i == 0 || groups[i] - groups[i - 1] > reach) {
            return false;
        }
        return reach == 1 ? !data.startsSegment(groups[i]) : data.segment(groups[i]) == data.segment(groups[i - 1]);
    }

    /** The size that the subgroups of the basis share; empty if sizes differ or there is none. */
    public OptionalInt commonSize() {
        if (groups.length == 0) {
            return OptionalInt.empty();
        }
        int size = data.size(groups[0]);
        for (int g : groups) {
            if (data.size(g) != size) {
                return OptionalInt.empty();
            }
        }
        return OptionalInt.of(size);
    }

    /** Whether every subgroup of the basis holds at least {@code size} readings, and there is one. */
    public boolean hasSizes(int size) {
        return groups.length > 0 && Arrays.stream(groups).allMatch(g -> data.size(g) >= size);
    }

    int[] sizes() {
        return Arrays.stream(groups).map(data::size).toArray();
    }

    /** The ranges of the basis, in whole steps. */
    long[] ranges() {
        return Arrays.stream(groups).mapToLong(g -> Spread.range(data, g)).toArray();
    }

    /** The standard deviations of the basis, in steps. */
    double[] standardDeviations() {
        return Arrays.stream(groups)
                .mapToDouble(g -> Spread.standardDeviation(data, g))
                .toArray();
    }

    /** The moving ranges of individuals between neighbours that both set limits, in whole steps. */
    long[] movingRanges() {
        long[] ranges = new long[Math.max(0, groups.length - 1)];
        int count = 0;
        for (int i = 1; i < groups.length; i++) {
            if (followsAtOnce(i)) {
                ranges[count++] = Math.abs(data.deviation(groups[i], 0) - data.deviation(groups[i - 1], 0));
            }
        }
        return Arrays.copyOf(ranges, count);
    }

    /** Every reading of the basis. */
    DeviationTally tally() {
        DeviationTally tally = DeviationTally.EMPTY;
        for (int g : groups) {
            tally = tally.merge(Spread.tally(data, g));
        }
        return tally;
    }
}
