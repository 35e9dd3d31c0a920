package io.github.firstoff.sample;

import java.util.Comparator;

/**
 * Something that was done to the process: a tool change, an offset, a set-up. Patterns and moving ranges do not reach across
 * it.
 *
 * @param number the subgroup (or individual) before which it was done, from 1
 * @param label what the stretch that begins here is called, for example {@code tool 2}; not blank
 * @param reason what was done, for example {@code tool change}; not blank
 */
public record Break(int number, String label, String reason) implements Comparable<Break> {
    private static final Comparator<Break> ORDER =
            Comparator.comparingInt(Break::number).thenComparing(Break::label).thenComparing(Break::reason);

    /** Refuses numbers below 1 and blank words. */
    public Break {
        if (number < 1) {
            throw new IllegalArgumentException("subgroups count from 1; there is no break before " + number);
        }
        if (label.isBlank() || reason.isBlank()) {
            throw new IllegalArgumentException("a break before subgroup " + number + " needs a label and a reason");
        }
    }

    Break before(int other) {
        return new Break(other, label, reason);
    }

    /** Two things done at the same time. */
    Break and(Break other) {
        return equals(other) ? this : new Break(number, other.label, reason + "; " + other.reason);
    }

    @Override
    public int compareTo(Break other) {
        return ORDER.compare(this, other);
    }
}
