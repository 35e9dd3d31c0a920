package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Plausibility;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Finds the readings that look like a slip of the person who wrote them down. */
final class Slips {
    private final Plausibility plausibility;
    private final Map<String, PartRecord> parts = new HashMap<>();

    Slips(InspectionRecord record) {
        plausibility = Plausibility.of(record.plan());
        record.parts().forEach(part -> parts.put(part.serial(), part));
    }

    /** The doubtful readings of one characteristic; only one that does not conform can be far out. */
    List<Finding.DoubtfulReading> in(CharacteristicResult result) {
        List<Finding.DoubtfulReading> found = new ArrayList<>();
        for (Judgement judgement : result.judgements()) {
            if (judgement.verdict() == Verdict.CONFORMING) {
                continue;
            }
            PartRecord part = parts.get(judgement.part());
            if (part != null) {
                plausibility
                        .doubt(part, judgement)
                        .ifPresent(doubt -> found.add(new Finding.DoubtfulReading(judgement, doubt)));
            }
        }
        return found;
    }
}
