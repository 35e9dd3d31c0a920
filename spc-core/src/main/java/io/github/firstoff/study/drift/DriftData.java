package io.github.firstoff.study.drift;

import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import java.util.List;

/** The readings of one characteristic with their piece numbers, in production order, and what is known of the process. Immutable. */
public final class DriftData {
    private final Sample sample;
    private final long[] pieces;
    private final List<Start> starts;
    private final boolean detect;
    private final Bounds drawing;
    private final Bounds allowed;

    /**
     * Readings to follow.
     *
     * @param sample the readings
     * @param pieces the number of the piece of each, ascending; pieces that were not measured leave gaps
     * @param starts where stretches begin, ascending by reading, the first at reading 0
     * @param detect whether change points are looked for besides the stretches that are stated
     * @param drawing limits and target as the drawing has them, in the unit of the readings
     * @param allowed the limits that a reading must keep: those of the drawing less the guard band
     * @throws IllegalArgumentException if these contradict each other
     */
    public DriftData(Sample sample, long[] pieces, List<Start> starts, boolean detect, Bounds drawing, Bounds allowed) {
        if (pieces.length != sample.size()) {
            throw new IllegalArgumentException(pieces.length + " pieces for " + sample.size() + " readings");
        }
        for (int i = 1; i < pieces.length; i++) {
            if (pieces[i] < pieces[i - 1]) {
                throw new IllegalArgumentException("piece " + pieces[i] + " after piece " + pieces[i - 1]);
            }
        }
        int before = -1;
        for (Start start : starts) {
            if (start.reading() <= before || start.reading() >= sample.size()) {
                throw new IllegalArgumentException(
                        "stretches begin in ascending order within the readings, not at " + starts);
            }
            before = start.reading();
        }
        if (sample.size() > 0 && (starts.isEmpty() || starts.get(0).reading() != 0)) {
            throw new IllegalArgumentException("the first stretch begins with the first reading");
        }
        this.sample = sample;
        this.pieces = pieces.clone();
        this.starts = List.copyOf(starts);
        this.detect = detect;
        this.drawing = drawing;
        this.allowed = allowed;
    }

    /** The readings. */
    public Sample sample() {
        return sample;
    }

    /** The number of the piece of reading {@code index} (from 0). */
    public long piece(int index) {
        return pieces[index];
    }

    /** The numbers of all pieces. */
    public long[] pieces() {
        return pieces.clone();
    }

    /** Where stretches begin. */
    public List<Start> starts() {
        return starts;
    }

    /** Whether change points are looked for. */
    public boolean detects() {
        return detect;
    }

    /** Limits and target as the drawing has them. */
    public Bounds drawing() {
        return drawing;
    }

    /** The limits less the guard band. */
    public Bounds allowed() {
        return allowed;
    }
}
