package io.github.firstoff.sample;

import java.util.Comparator;

/**
 * A subgroup (or individual) that is not to count: it stays on the chart, marked, sets no limits and is not tested.
 *
 * @param number its number, from 1
 * @param reason the written reason, which every sheet prints; not blank
 */
public record Exclusion(int number, String reason) implements Comparable<Exclusion> {
    private static final Comparator<Exclusion> ORDER =
            Comparator.comparingInt(Exclusion::number).thenComparing(Exclusion::reason);

    /** Refuses numbers below 1 and missing reasons. */
    public Exclusion {
        if (number < 1) {
            throw new IllegalArgumentException("subgroups count from 1; there is no subgroup " + number);
        }
        if (reason.isBlank()) {
            throw new IllegalArgumentException("subgroup " + number + " cannot be excluded without a written reason");
        }
    }

    @Override
    public int compareTo(Exclusion other) {
        return ORDER.compare(this, other);
    }
}
