package io.github.firstoff.study.capability;

import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.stats.SigmaEstimate;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the readings say of the process against its limits, with everything that was used to say it.
 *
 * @param count how many readings, an incomplete last subgroup included
 * @param minimum the least reading, exact; empty of none
 * @param maximum the greatest reading, exact; empty of none
 * @param mean the mean of all readings, in their unit; empty of none
 * @param within the standard deviation within subgroups, in the unit; empty if there is none
 * @param overall the standard deviation of all readings (n − 1), in the unit; empty for fewer than two
 * @param subgroupSize the subgroup size behind {@code within}; empty if none or unequal
 * @param bounds the limits and the target
 * @param control what the control chart says
 * @param level the confidence level of the intervals
 * @param indices Cp, CPL, CPU, Cpk, Pp, PPL, PPU, Ppk, Cpm in this order
 * @param notes what a reader must know, in sentences; the reasons of missing indices are with the indices
 */
public record Capability(
        int count,
        Optional<BigDecimal> minimum,
        Optional<BigDecimal> maximum,
        OptionalDouble mean,
        Optional<SigmaEstimate> within,
        Optional<SigmaEstimate> overall,
        OptionalInt subgroupSize,
        Bounds bounds,
        ControlState control,
        double level,
        List<Index> indices,
        List<String> notes) {
    /** Copies the lists. */
    public Capability {
        indices = List.copyOf(indices);
        notes = List.copyOf(notes);
    }

    /** (U − L)/(6σ within). */
    public Index cp() {
        return index("Cp");
    }

    /** (x̄ − L)/(3σ within). */
    public Index cpl() {
        return index("CPL");
    }

    /** (U − x̄)/(3σ within). */
    public Index cpu() {
        return index("CPU");
    }

    /** The lesser of CPL and CPU that exist. */
    public Index cpk() {
        return index("Cpk");
    }

    /** (U − L)/(6s). */
    public Index pp() {
        return index("Pp");
    }

    /** (x̄ − L)/(3s). */
    public Index ppl() {
        return index("PPL");
    }

    /** (U − x̄)/(3s). */
    public Index ppu() {
        return index("PPU");
    }

    /** The lesser of PPL and PPU that exist. */
    public Index ppk() {
        return index("Ppk");
    }

    /** (U − L)/(6√(s² + (x̄ − T)²)). */
    public Index cpm() {
        return index("Cpm");
    }

    private Index index(String name) {
        return indices.stream()
                .filter(index -> index.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("a capability without " + name));
    }

    /** Whether the indices may be presented as capability, as a prediction: the process is in control. */
    public boolean predicts() {
        return control == ControlState.IN_CONTROL;
    }
}
