package io.github.firstoff.conformance;

import io.github.firstoff.inspection.InspectionRecord;
import java.util.List;

/**
 * What was found for the whole plan over all pieces.
 *
 * @param record what was read
 * @param characteristics one per characteristic, in the plan's order; those that are never judged among them
 * @param verdict the verdict of the sheet
 */
public record InspectionResult(
        InspectionRecord record, List<CharacteristicResult> characteristics, SheetVerdict verdict) {

    /** Copies the list. */
    public InspectionResult {
        characteristics = List.copyOf(characteristics);
    }

    /** The characteristics that get a verdict, in the plan's order. */
    public List<CharacteristicResult> judged() {
        return characteristics.stream()
                .filter(each -> each.characteristic().isJudged())
                .toList();
    }

    /** How many judged characteristics have this verdict. */
    public int count(Verdict wanted) {
        return (int) judged().stream().filter(each -> each.verdict() == wanted).count();
    }
}
