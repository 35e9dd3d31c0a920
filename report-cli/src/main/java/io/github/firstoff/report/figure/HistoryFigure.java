package io.github.firstoff.report.figure;

import java.util.List;

/**
 * Batches beside one another on one common scale: from the least to the greatest reading of each, its mean with one standard deviation to either
 * side, and the limits across.
 *
 * @param name what is measured
 * @param unit its unit, or empty
 * @param axis what stands along the foot, such as "batch"
 * @param batches the batches, in order
 * @param lines limits and target
 */
public record HistoryFigure(String name, String unit, String axis, List<Batch> batches, List<LevelLine> lines)
        implements Figure {
    /** Copies the lists; refuses a picture of nothing. */
    public HistoryFigure {
        batches = List.copyOf(batches);
        lines = List.copyOf(lines);
        if (batches.isEmpty()) {
            throw new IllegalArgumentException("a history has at least one batch");
        }
    }

    /**
     * One batch.
     *
     * @param label    its name
     * @param least    its least reading
     * @param mean     its mean
     * @param greatest its greatest reading
     * @param spread   its standard deviation; NaN where one reading has none
     * @param out      how many of its readings lie outside, as text beside it, or empty
     */
    public record Batch(String label, double least, double mean, double greatest, double spread, String out) {
        /** Refuses places that are none. */
        public Batch {
            if (!Double.isFinite(least) || !Double.isFinite(mean) || !Double.isFinite(greatest)) {
                throw new IllegalArgumentException("the batch " + label + " needs finite places");
            }
        }
    }
}
