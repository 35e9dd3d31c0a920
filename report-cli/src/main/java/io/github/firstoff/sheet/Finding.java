package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import java.util.Map;
import java.util.Optional;

/**
 * Everything a sheet knows of one characteristic.
 *
 * @param result the verdicts
 * @param summary the measured values; empty for attributes and where nothing was measured
 * @param study how it ran; empty unless the plan asks for a study and the sheet has one
 * @param notes why a figure that a reader may look for is not there, by the figure's JSON name
 */
public record Finding(
        CharacteristicResult result,
        Optional<Summary> summary,
        Optional<ProcessStudy> study,
        Map<String, String> notes) {
    /** Copies the map. */
    public Finding {
        notes = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(notes));
    }

    /** The balloon number. */
    public String number() {
        return result.number();
    }
}
