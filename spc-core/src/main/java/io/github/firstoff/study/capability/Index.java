package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One index or share: a number, or the reason why there is none.
 *
 * @param name the name as a sheet prints it, for example {@code Cpk}
 * @param value the index; empty where it has no right to exist
 * @param interval its two-sided confidence interval; empty without a value, and where none is known
 * @param lowerBound the one-sided lower confidence bound at the same level ("at least … with 95 % confidence"); empty likewise
 * @param why why there is no value, a sentence; empty text with one
 */
public record Index(
        String name, OptionalDouble value, Optional<Interval> interval, OptionalDouble lowerBound, Remark why) {
    /** Either a value or a reason. */
    public Index {
        if (value.isPresent() != why.isEmpty()) {
            throw new IllegalArgumentException(name + " needs either a value or the reason why it has none");
        }
    }

    /** Why there is no value, in English; empty text with one. */
    public String reason() {
        return why.english();
    }

    static Index of(String name, double value) {
        return new Index(name, OptionalDouble.of(value), Optional.empty(), OptionalDouble.empty(), Remark.none());
    }

    static Index none(String name, Remark why) {
        return new Index(name, OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), why);
    }

    Index with(Interval found) {
        return new Index(name, value, Optional.of(found), lowerBound, why);
    }

    Index with(Optional<Interval> found, OptionalDouble atLeast) {
        return new Index(name, value, found, atLeast, why);
    }

    Index atLeast(double bound) {
        return new Index(name, value, interval, OptionalDouble.of(bound), why);
    }
}
