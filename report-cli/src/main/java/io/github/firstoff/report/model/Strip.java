package io.github.firstoff.report.model;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Where readings lie in their tolerance: a line from limit to limit, a notch at the target, a small upright mark per reading.
 *
 * <p>Places are fractions of the tolerance: 0 is the lower limit, 1 the upper. A reading outside is below 0 or above 1. With
 * one limit only, the open end stands at the fraction the caller chooses as the edge of its scale (0 or 1) and is drawn without
 * a tick.
 *
 * @param lower      whether there is a lower limit, at 0
 * @param upper      whether there is an upper limit, at 1
 * @param target     place of the target, 0 to 1, if there is one
 * @param lowerGuard width of the guard band inside the lower limit, 0 to 1
 * @param upperGuard width of the guard band inside the upper limit, 0 to 1
 * @param marks      the readings, in any order
 */
public record Strip(
        boolean lower, boolean upper, OptionalDouble target, double lowerGuard, double upperGuard, List<Mark> marks) {
    /** Copies the list; refuses a strip without any limit, or with guard bands that are no fractions. */
    public Strip {
        marks = List.copyOf(marks);
        if (!lower && !upper) {
            throw new IllegalArgumentException("a strip has at least one limit");
        }
        if (!(lowerGuard >= 0 && lowerGuard <= 1 && upperGuard >= 0 && upperGuard <= 1)) {
            throw new IllegalArgumentException("guard bands are fractions of the tolerance, from 0 to 1");
        }
    }

    /** A strip between two limits with its target in the middle and no guard bands. */
    public static Strip between(double... places) {
        return of(true, true, OptionalDouble.of(0.5), 0, 0, places);
    }

    /** A strip of readings that all lie inside, or whose excess needs no figure. */
    public static Strip of(
            boolean lower,
            boolean upper,
            OptionalDouble target,
            double lowerGuard,
            double upperGuard,
            double... places) {
        List<Mark> marks =
                Arrays.stream(places).mapToObj(at -> new Mark(at, "")).toList();
        return new Strip(lower, upper, target, lowerGuard, upperGuard, marks);
    }

    /**
     * One reading.
     *
     * @param at     its place, a finite fraction of the tolerance
     * @param excess by how much it lies outside, as text such as "0.004", or empty
     */
    public record Mark(double at, String excess) {
        /** Refuses a place that is not finite. */
        public Mark {
            if (!Double.isFinite(at)) {
                throw new IllegalArgumentException("a mark on a strip needs a finite place");
            }
        }
    }
}
