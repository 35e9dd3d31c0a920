package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Doubt;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.study.conformity.GaugeAssessment;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything a sheet knows of one characteristic.
 *
 * @param result the verdicts
 * @param summary the measured values; empty for attributes and where nothing was measured
 * @param study how it ran; empty unless the plan asks for a study and the sheet has one
 * @param gauges whether the gauges that were used are fine enough
 * @param doubts readings that look like a slip, by the piece; they were judged all the same
 * @param notes why a figure that a reader may look for is not there, by the figure's JSON name
 */
public record Finding(
        CharacteristicResult result,
        Optional<Summary> summary,
        Optional<ProcessStudy> study,
        List<GaugeAssessment> gauges,
        List<DoubtfulReading> doubts,
        Map<String, String> notes) {
    /** Copies the map. */
    public Finding {
        gauges = List.copyOf(gauges);
        doubts = List.copyOf(doubts);
        notes = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(notes));
    }

    /**
     * A reading that looks like a slip.
     *
     * @param judgement the reading with its verdict
     * @param doubt what it may be
     */
    public record DoubtfulReading(Judgement judgement, Doubt doubt) {}

    /** The doubt about a reading; empty if there is none. */
    public Optional<Doubt> doubtAbout(Judgement judgement) {
        return doubts.stream()
                .filter(each -> each.judgement().equals(judgement))
                .map(DoubtfulReading::doubt)
                .findFirst();
    }

    /** The same finding with what is known of gauges and slips. */
    Finding with(List<GaugeAssessment> assessed, List<DoubtfulReading> found) {
        return new Finding(result, summary, study, assessed, found, notes);
    }

    /** The balloon number. */
    public String number() {
        return result.number();
    }
}
