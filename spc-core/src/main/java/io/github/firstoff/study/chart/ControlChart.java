package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The result of every kind of chart. Knows nothing of tests; give it to a {@link RuleSet}.
 *
 * @param kind the kind, by its name in the {@link ChartCatalogue}
 * @param location the panel of means, individuals, proportions or counts
 * @param dispersion the panel of ranges or standard deviations, for kinds that have one
 * @param sigmaWithin the standard deviation of single readings within subgroups, in the unit of the readings; empty while the
 *     data give none
 * @param frozen what to freeze for the charts that follow; empty while the data give none
 * @param limitsFrom how many subgroups (or individuals) set the limits; 0 if frozen limits were applied or none exist
 * @param data the subgroups on the chart, in its order: point i (from 0) of the location panel is subgroup i
 * @param notes what a reader must know, in sentences
 */
public record ControlChart(
        String kind,
        Panel location,
        Optional<Panel> dispersion,
        Optional<SigmaEstimate> sigmaWithin,
        Optional<FrozenLimits> frozen,
        int limitsFrom,
        Subgroups data,
        List<String> notes) {
    /** Copies the notes. */
    public ControlChart {
        notes = List.copyOf(notes);
    }

    /** The panels, location first. */
    public List<Panel> panels() {
        List<Panel> panels = new ArrayList<>();
        panels.add(location);
        dispersion.ifPresent(panels::add);
        return List.copyOf(panels);
    }
}
