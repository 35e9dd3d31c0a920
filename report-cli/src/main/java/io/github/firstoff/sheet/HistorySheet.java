package io.github.firstoff.sheet;

import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.study.capability.Index;
import java.util.List;
import java.util.Optional;

/**
 * One characteristic across several batches.
 *
 * @param plan the plan that all batches were held against
 * @param characteristic the characteristic
 * @param batches the batches, in the order in which they were given
 * @param remarks what a reader must know beside it, in sentences
 * @param provenance what it was made from and by
 */
public record HistorySheet(
        ResolvedPlan plan,
        ResolvedCharacteristic characteristic,
        List<Batch> batches,
        List<Remark> remarks,
        Provenance provenance)
        implements Told {
    /** Copies the lists; refuses a history of nothing. */
    public HistorySheet {
        batches = List.copyOf(batches);
        remarks = List.copyOf(remarks);
        if (batches.isEmpty()) {
            throw new IllegalArgumentException("a history has at least one batch");
        }
    }

    /**
     * One batch.
     *
     * @param name how it is called
     * @param file the file of its readings, without its folder
     * @param finding what is known of the characteristic in it, judged and studied as its own batch sheet would
     */
    public record Batch(String name, String file, Finding finding) {
        /** What its chart says of the process; empty where the plan asks for no study, or nothing was read. */
        public Optional<ControlState> control() {
            return finding.study().map(study -> study.assessment().control());
        }

        /** Cpk where it may be presented, else why it may not; empty without a study of measured values. */
        public Optional<Index> cpk() {
            return finding.study()
                    .flatMap(ProcessStudy::indices)
                    .flatMap(indices -> indices.capability().presented().stream()
                            .filter(index -> index.name().equals("Cpk"))
                            .findFirst());
        }

        /** Whether Cpk stands on the sheet: it has a value, and the process was in control. */
        public boolean showsCpk() {
            return cpk().filter(index -> index.value().isPresent()
                                    && Double.isFinite(index.value().getAsDouble()))
                            .isPresent()
                    && control().equals(Optional.of(ControlState.IN_CONTROL));
        }
    }

    /** Whether the characteristic conforms in every batch. */
    public boolean accepted() {
        return batches.stream()
                .allMatch(batch ->
                        batch.finding().result().verdict() == io.github.firstoff.conformance.Verdict.CONFORMING);
    }
}
