package io.github.firstoff.sheet;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.TrendedCapability;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.ChartRequest;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.FalseSignals;
import java.util.List;
import java.util.Optional;

/**
 * How a characteristic ran through the batch.
 *
 * @param chartTitle the chart as a sheet names it
 * @param request what was asked of the chart: settings, source of limits, tests, breaks, exclusions
 * @param subgroups what was grouped: subgroup i (from 0) is behind point i of a chart of counts; of measured values the grouping before
 *     subgroups that cannot be plotted were left off
 * @param assessment the chart and what the tests say of it
 * @param falseSignals how often the chosen tests would cry wolf over a process in control
 * @param indices capability and performance; empty for counts and for pass or fail, which have none
 * @param frozenFrom from which batch or study limits come that were set before; empty if this batch set them
 * @param remarks everything that a reader must know of the chart, in sentences: those of the assessment, how readings were grouped, where
 *     limits come from
 * @param parts the piece of each reading that {@code subgroups} groups, in production order; of each piece, where pieces were counted
 */
public record ProcessStudy(
        String chartTitle,
        ChartRequest request,
        Subgroups subgroups,
        Assessment assessment,
        FalseSignals falseSignals,
        Optional<Indices> indices,
        Optional<String> frozenFrom,
        List<Remark> remarks,
        List<String> parts) {
    /** Copies the lists. */
    public ProcessStudy {
        remarks = List.copyOf(remarks);
        parts = List.copyOf(parts);
    }

    /** The remarks in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }

    /**
     * What only measured values have.
     *
     * @param capability the indices by the distribution that fits, or that the plan fixes, for the sheet
     * @param byDefinition the indices as their definitions state them, for the JSON result; the same unless the readings of a size
     *     refute the normal distribution
     * @param trended the indices of a process that drifts, where the plan asks for them
     */
    public record Indices(Capability capability, Capability byDefinition, Optional<TrendedCapability> trended) {}

    /** The chart. */
    public ControlChart chart() {
        return assessment.chart();
    }

    /** Whether the chart counts, and so has no indices. */
    public boolean isCounted() {
        return indices.isEmpty();
    }

    /**
     * The indices for the sheet.
     *
     * @throws java.util.NoSuchElementException if there are none, as of counts: ask {@link #indices}
     */
    public Capability capability() {
        return indices.orElseThrow().capability();
    }

    /** Whether every stretch has limits of its own: what the chart shows then holds within stretches, not from one to the next. */
    public boolean isInStretches() {
        return chart().stages().size() > 1;
    }

    /** The pieces behind point {@code point} (from 0) of the location panel, in production order. */
    public List<String> pieces(int point) {
        Subgroups behind = isCounted() ? subgroups : chart().data();
        return behind.readings(point).stream().map(parts::get).toList();
    }
}
