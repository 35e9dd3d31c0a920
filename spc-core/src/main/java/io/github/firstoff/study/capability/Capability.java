package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.stats.SigmaEstimate;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What the readings say of the process against its limits, with everything that was used to say it.
 *
 * <p>{@link #indices} holds every index that can be computed; {@link #presented} holds what may be shown to somebody who decides.
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
 * @param settings the settings of the study
 * @param indices Cp, CPL, CPU, Cpk, Pp, PPL, PPU, Ppk, Cpm in this order
 * @param nonconforming the share outside the limits, observed and expected
 * @param distribution the distribution by which performance is stated, with its evidence
 * @param checks what to know of the readings
 * @param remarks what a reader must know, in sentences; the reasons of missing indices are with the indices, what the checks found
 *     is with {@code checks}
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
        CapabilityStudy settings,
        List<Index> indices,
        Nonconforming nonconforming,
        DistributionChoice distribution,
        DataChecks checks,
        List<Remark> remarks) {
    private static final Set<String> OF_THE_SPREAD_WITHIN = Set.of("Cp", "CPL", "CPU", "Cpk");

    /** Copies the lists. */
    public Capability {
        indices = List.copyOf(indices);
        remarks = List.copyOf(remarks);
    }

    /** The same in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }

    /** The confidence level of the intervals. */
    public double level() {
        return settings.level();
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

    /** (U − L)/(6s), or by percentiles of the chosen distribution. */
    public Index pp() {
        return index("Pp");
    }

    /** (x̄ − L)/(3s), or by percentiles. */
    public Index ppl() {
        return index("PPL");
    }

    /** (U − x̄)/(3s), or by percentiles. */
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

    /**
     * The indices as they may be shown, in the same order: without the value, and with the reason, where there are too few
     * readings, and where an index of the spread within subgroups would promise what a process that is not in control, or not
     * normal, does not keep (ISO 22514-2: capability is stated of processes in statistical control, performance of any).
     */
    public List<Index> presented() {
        return indices.stream().map(this::presented).toList();
    }

    private Index presented(Index index) {
        if (index.value().isEmpty()) {
            return index;
        }
        if (count < settings.fewestReadings()) {
            return Index.none(
                    index.name(),
                    Remark.of(
                            "no-index.too-few",
                            "Fewer than {0} readings ({1}): the index would be luck more than process.",
                            settings.fewestReadings(),
                            count));
        }
        if (!OF_THE_SPREAD_WITHIN.contains(index.name())) {
            return index;
        }
        if (control == ControlState.OUT_OF_CONTROL) {
            return Index.none(
                    index.name(),
                    Remark.of(
                            "no-index.performance-only",
                            "The process is not in control: only its performance is stated."));
        }
        if (control == ControlState.NOT_ASSESSED) {
            return Index.none(
                    index.name(),
                    Remark.of(
                            "no-index.performance-unassessed",
                            "Control is not assessed: only the performance is stated."));
        }
        if (!distribution.method().isNormal()) {
            return Index.none(
                    index.name(),
                    Remark.of(
                            "no-index.not-normal",
                            "The index assumes a normal distribution; performance is stated by the {0} distribution instead.",
                            distribution.method().family().remark()));
        }
        return index;
    }
}
