package io.github.firstoff.inspection;

import io.github.firstoff.plan.ResolvedPlan;
import java.util.List;

/**
 * Everything that was found on the pieces that the readings name, against one plan.
 *
 * @param plan the plan with its limits
 * @param parts the pieces in production order
 */
public record InspectionRecord(ResolvedPlan plan, List<PartRecord> parts) {

    /** Copies the list. */
    public InspectionRecord {
        parts = List.copyOf(parts);
    }

    /** How many readings there are. */
    public int readingCount() {
        return parts.stream()
                .mapToInt(part ->
                        part.readings().values().stream().mapToInt(List::size).sum())
                .sum();
    }
}
