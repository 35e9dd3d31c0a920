package io.github.firstoff.study.capability;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One index: a number, or the reason why there is none.
 *
 * @param name the name as a sheet prints it, for example {@code Cpk}
 * @param value the index; empty where it has no right to exist
 * @param interval its confidence interval; empty without a value, and for indices that are given none
 * @param reason why there is no value, a sentence; empty text with one
 */
public record Index(String name, OptionalDouble value, Optional<Interval> interval, String reason) {
    /** Either a value or a reason. */
    public Index {
        if (value.isPresent() != reason.isEmpty()) {
            throw new IllegalArgumentException(name + " needs either a value or the reason why it has none");
        }
    }

    static Index of(String name, double value) {
        return new Index(name, OptionalDouble.of(value), Optional.empty(), "");
    }

    static Index none(String name, String reason) {
        return new Index(name, OptionalDouble.empty(), Optional.empty(), reason);
    }

    Index with(Interval found) {
        return new Index(name, value, Optional.of(found), reason);
    }
}
