package io.github.firstoff.sheet;

import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.study.capability.Index;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * An index that the plan demands of a characteristic's class and that is not shown to be reached.
 *
 * @param index the index that may be presented; without a value where it has no right to be shown
 * @param least the least value that the plan demands
 */
public record Shortfall(Index index, BigDecimal least) {

    /** The demands that the presented indices do not meet, or cannot show to be met; none without a study. */
    public static List<Shortfall> of(ResolvedPlan plan, Finding finding) {
        Demand demand = plan.plan()
                .demands()
                .get(finding.result().characteristic().characteristic().importance());
        if (demand == null || finding.study().flatMap(ProcessStudy::indices).isEmpty()) {
            return List.of();
        }
        List<Shortfall> missed = new ArrayList<>();
        for (Index index : finding.study().get().capability().presented()) {
            BigDecimal least = demand.minimumIndices().get(index.name().toLowerCase(Locale.ROOT));
            if (least != null && !reaches(index, least)) {
                missed.add(new Shortfall(index, least));
            }
        }
        return missed;
    }

    private static boolean reaches(Index index, BigDecimal least) {
        return index.value().isPresent()
                && BigDecimal.valueOf(index.value().getAsDouble()).compareTo(least) >= 0;
    }
}
