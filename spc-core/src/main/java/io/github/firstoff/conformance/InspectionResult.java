package io.github.firstoff.conformance;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.plan.ResolvedCharacteristic;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What was found for the whole plan over all pieces.
 *
 * @param record what was read
 * @param characteristics one per characteristic that is covered, in the plan's order; those that are never judged among them
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

    /** The characteristics of the plan that would get a verdict and that this inspection does not cover, in the plan's order. */
    public List<ResolvedCharacteristic> uncovered() {
        Set<String> covered =
                characteristics.stream().map(CharacteristicResult::number).collect(Collectors.toSet());
        return record.plan().characteristics().stream()
                .filter(each -> each.isJudged() && !covered.contains(each.number()))
                .toList();
    }

    /** How many judged characteristics have this verdict. */
    public int count(Verdict wanted) {
        return (int) judged().stream().filter(each -> each.verdict() == wanted).count();
    }
}
