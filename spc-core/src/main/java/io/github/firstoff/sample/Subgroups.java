package io.github.firstoff.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A sample cut into subgroups, in the order in which they were taken. Subgroups and members count from 0. Immutable.
 *
 * <p>Readings left over (an incomplete last subgroup) belong to the sample but to no subgroup.
 */
public final class Subgroups {
    private final Sample sample;
    private final int @Nullable [] order;
    private final int[] starts;
    private final List<String> labels;
    private final int leftOver;

    Subgroups(Sample sample, int @Nullable [] order, int[] starts, List<String> labels, int leftOver) {
        this.sample = sample;
        this.order = order;
        this.starts = starts;
        this.labels = List.copyOf(labels);
        this.leftOver = leftOver;
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

    /** The label of subgroup {@code group}; its number from 1 where none was given. */
    public String label(int group) {
        return labels.isEmpty() ? Integer.toString(group + 1) : labels.get(group);
    }

    /** How many readings belong to an incomplete last subgroup and so to no chart. */
    public int leftOver() {
        return leftOver;
    }

    /** The subgroups of at least {@code least} readings, in the same order; smaller ones are dropped. */
    public Subgroups ofAtLeast(int least) {
        List<Integer> kept = new ArrayList<>();
        for (int g = 0; g < count(); g++) {
            if (size(g) >= least) {
                kept.add(g);
            }
        }
        if (kept.size() == count()) {
            return this;
        }
        int[] newStarts = new int[kept.size() + 1];
        List<Integer> newOrder = new ArrayList<>();
        List<String> newLabels = new ArrayList<>();
        for (int k = 0; k < kept.size(); k++) {
            newOrder.addAll(readings(kept.get(k)));
            newLabels.add(label(kept.get(k)));
            newStarts[k + 1] = newOrder.size();
        }
        return new Subgroups(
                sample, newOrder.stream().mapToInt(Integer::intValue).toArray(), newStarts, newLabels, leftOver);
    }
}
