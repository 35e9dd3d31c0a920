package io.github.firstoff.report.figure;

/**
 * The ends of an axis.
 *
 * @param low  lower end, finite
 * @param high upper end, finite, above the lower
 */
public record Scale(double low, double high) {
    /** Refuses ends that are not in order. */
    public Scale {
        if (!(Double.isFinite(low) && Double.isFinite(high) && low < high)) {
            throw new IllegalArgumentException(
                    "an axis runs from a lower to a higher value, not " + low + " to " + high);
        }
    }
}
