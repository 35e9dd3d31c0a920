package io.github.firstoff.plan;

import java.util.List;
import java.util.stream.Collectors;

/** A plan cannot be resolved; carries every fault, not only the first. */
public final class PlanContradiction extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<PlanFault> faults;

    /** All faults found; at least one. */
    public PlanContradiction(List<PlanFault> faults) {
        super(faults.stream()
                .map(fault ->
                        fault.characteristic().map(number -> number + ": ").orElse("") + fault.message())
                .collect(Collectors.joining("; ")));
        this.faults = List.copyOf(faults);
    }

    /** All faults, in the order of the plan. */
    public List<PlanFault> faults() {
        return faults;
    }
}
