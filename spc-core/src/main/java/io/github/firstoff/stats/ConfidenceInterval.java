package io.github.firstoff.stats;

/**
 * From a lower to an upper bound; either may be infinite where nothing bounds that side.
 *
 * @param lower the lower bound
 * @param upper the upper bound, not below the lower
 */
public record ConfidenceInterval(double lower, double upper) {
    /** Refuses bounds that are not numbers or not in order. */
    public ConfidenceInterval {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException("an interval runs upwards, not from " + lower + " to " + upper);
        }
    }

    /** The value, give or take half a width. */
    static ConfidenceInterval about(double value, double half) {
        return new ConfidenceInterval(value - half, value + half);
    }

    /** Both bounds times a positive factor. */
    public ConfidenceInterval times(double factor) {
        return new ConfidenceInterval(lower * factor, upper * factor);
    }
}
