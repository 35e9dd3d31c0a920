package io.github.firstoff.plan;

import java.math.BigDecimal;
import java.util.Map;

/**
 * What a class of characteristics demands, as the plan states it.
 *
 * @param everyPiece whether each piece must be inspected, whatever a characteristic says of sampling
 * @param study whether each measured characteristic of the class must be under study
 * @param minimumIndices the least value of each named index (cp, cpk, pp, ppk, cpm), by name
 */
public record Demand(boolean everyPiece, boolean study, Map<String, BigDecimal> minimumIndices) {
    /** Copies the map. */
    public Demand {
        minimumIndices = Map.copyOf(minimumIndices);
    }
}
