package io.github.firstoff.study.chart;

/**
 * Which points set the limits: those with numbers {@code from} to {@code to}, both included, as far as they exist and are not
 * excluded.
 *
 * @param from the first, from 1
 * @param to the last; {@link Integer#MAX_VALUE}: the last there is
 */
public record Baseline(int from, int to) {
    /** All points. */
    public static final Baseline ALL = new Baseline(1, Integer.MAX_VALUE);

    /** Refuses numbers below 1 and the wrong order. */
    public Baseline {
        if (from < 1 || to < from) {
            throw new IllegalArgumentException("a baseline has at least one point, not from " + from + " to " + to);
        }
    }

    /**
     * The first {@code count} points.
     *
     * @throws IllegalArgumentException if {@code count} is less than 1
     */
    public static Baseline first(int count) {
        return new Baseline(1, count);
    }

    boolean contains(int number) {
        return number >= from && number <= to;
    }
}
