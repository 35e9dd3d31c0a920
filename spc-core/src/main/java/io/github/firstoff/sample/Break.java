package io.github.firstoff.sample;

import io.github.firstoff.remark.Remark;
import java.util.Comparator;
import java.util.List;

/**
 * Something that was done to the process: a tool change, an offset, a set-up. Patterns and moving ranges do not reach across
 * it.
 *
 * @param number the subgroup (or individual) before which it was done, from 1
 * @param name what the stretch that begins here is called, for example {@code tool 2}; not blank
 * @param cause what was done, for example {@code tool change}; not blank
 */
public record Break(int number, Remark name, Remark cause) implements Comparable<Break> {
    private static final Comparator<Break> ORDER =
            Comparator.comparingInt(Break::number).thenComparing(Break::label).thenComparing(Break::reason);

    /** Refuses numbers below 1 and blank words. */
    public Break {
        if (number < 1) {
            throw new IllegalArgumentException("subgroups count from 1; there is no break before " + number);
        }
        if (name.english().isBlank() || cause.english().isBlank()) {
            throw new IllegalArgumentException("a break before subgroup " + number + " needs a label and a reason");
        }
    }

    /** A break in words that people wrote. */
    public Break(int number, String label, String reason) {
        this(number, Remark.verbatim(label), Remark.verbatim(reason));
    }

    /** What the stretch that begins here is called, in English: by this name plans and results know it. */
    public String label() {
        return name.english();
    }

    /** What was done, in English. */
    public String reason() {
        return cause.english();
    }

    Break before(int other) {
        return new Break(other, name, cause);
    }

    /** Two things done at the same time. */
    Break and(Break other) {
        return equals(other) ? this : new Break(number, other.name, Remark.joined("; ", List.of(cause, other.cause)));
    }

    @Override
    public int compareTo(Break other) {
        return ORDER.compare(this, other);
    }
}
