package io.github.firstoff.inspection;

import io.github.firstoff.plan.ResolvedPlan;
import java.util.List;

/**
 * Everything that was found on the pieces that the readings name, against one plan.
 *
 * @param plan the plan with its limits
 * @param parts the pieces in production order
 * @param refusedRows how many rows of readings could not be used and are not among the pieces; 0 or more. With any, nobody knows what
 *     was found on the pieces they are about, and so no verdict on the others may be taken for one on all
 */
public record InspectionRecord(ResolvedPlan plan, List<PartRecord> parts, long refusedRows) {

    /** Copies the list. */
    public InspectionRecord {
        parts = List.copyOf(parts);
    }

    /** A record of everything that was read. */
    public InspectionRecord(ResolvedPlan plan, List<PartRecord> parts) {
        this(plan, parts, 0);
    }

    /** How many readings there are. */
    public int readingCount() {
        return parts.stream().mapToInt(PartRecord::count).sum();
    }
}
