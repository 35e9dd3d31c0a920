package io.github.firstoff.sheet;

import io.github.firstoff.study.drift.DriftSettings;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What is asked of a study of drift.
 *
 * @param characteristics the numbers of those to follow; empty for all that can be followed
 * @param every one piece in so many was measured, at least 1
 * @param acrossBatches whether stretches go on from one file of readings to the next
 * @param detect whether change points are looked for where no column states a tool, phase or offset
 * @param index the index that a tool life must keep; empty for what the plan demands of the class, else 1.33
 * @param settings everything else
 */
public record DriftOptions(
        List<String> characteristics,
        int every,
        boolean acrossBatches,
        boolean detect,
        OptionalDouble index,
        DriftSettings settings) {
    /** Copies the list. */
    public DriftOptions {
        characteristics = List.copyOf(characteristics);
        if (every < 1) {
            throw new IllegalArgumentException("one piece in " + every + " cannot be measured");
        }
    }

    /** Everything as is usual. */
    public static final DriftOptions USUAL =
            new DriftOptions(List.of(), 1, false, true, OptionalDouble.empty(), DriftSettings.withDefaults());

    /** The same without a search for change points: of a process that is watched as it runs, they would change the past. */
    public DriftOptions withoutDetection() {
        return new DriftOptions(characteristics, every, acrossBatches, false, index, settings);
    }
}
