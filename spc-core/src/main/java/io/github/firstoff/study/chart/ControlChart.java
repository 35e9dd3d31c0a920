package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The result of every kind of chart. Knows nothing of tests; give it to a {@link RuleSet}.
 *
 * @param kind the kind, by its name in the {@link ChartCatalogue}
 * @param panels the panels, location first; at most one of each kind
 * @param sigmaWithin the standard deviation of single readings within subgroups, in the unit of the readings; empty while the
 *     data give none, and for attributes
 * @param sigmaBetween the standard deviation of what moves subgroups as wholes, on charts of within and between
 * @param frozen what to freeze for the charts that follow (of the last stage, where there are several); empty while the data give
 *     none
 * @param limitsFrom how many subgroups (or individuals) set the limits; 0 if frozen limits were applied or none exist
 * @param data the subgroups on the chart, in its order: point i (from 0) of the location panel is subgroup i; for attributes the
 *     counts as single readings
 * @param dispersionCheck for attributes: whether they spread as their distribution says
 * @param stages the stretches with limits of their own, where limits were recalculated; else empty
 * @param remarks what a reader must know, in sentences
 */
public record ControlChart(
        String kind,
        List<Panel> panels,
        Optional<SigmaEstimate> sigmaWithin,
        Optional<Double> sigmaBetween,
        Optional<FrozenLimits> frozen,
        int limitsFrom,
        Subgroups data,
        Optional<DispersionCheck> dispersionCheck,
        List<Stage> stages,
        List<Remark> remarks) {
    /** Copies the lists and checks that there is a location panel. */
    public ControlChart {
        panels = List.copyOf(panels);
        stages = List.copyOf(stages);
        remarks = List.copyOf(remarks);
        if (panels.isEmpty() || panels.get(0).kind() != PanelKind.LOCATION) {
            throw new IllegalArgumentException("the first panel of a chart shows the location");
        }
    }

    /** A chart without any of what only some kinds have. */
    static ControlChart of(
            String kind,
            List<Panel> panels,
            Optional<SigmaEstimate> sigma,
            Optional<FrozenLimits> frozen,
            int limitsFrom,
            Subgroups data,
            List<Remark> remarks) {
        return new ControlChart(
                kind, panels, sigma, Optional.empty(), frozen, limitsFrom, data, Optional.empty(), List.of(), remarks);
    }

    /** The same in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }

    /** The panel of means, individuals, medians, averages, sums, proportions or counts. */
    public Panel location() {
        return panels.get(0);
    }

    /** The panel of ranges, standard deviations or moving ranges, for kinds that have one. */
    public Optional<Panel> dispersion() {
        return panel(PanelKind.DISPERSION);
    }

    /** The panel of that kind, if the chart has one. */
    public Optional<Panel> panel(PanelKind wanted) {
        return panels.stream().filter(panel -> panel.kind() == wanted).findFirst();
    }

    ControlChart withSigmaBetween(double sigma) {
        return new ControlChart(
                kind,
                panels,
                sigmaWithin,
                Optional.of(sigma),
                frozen,
                limitsFrom,
                data,
                dispersionCheck,
                stages,
                remarks);
    }

    ControlChart withFrozen(FrozenLimits limits) {
        return new ControlChart(
                kind,
                panels,
                sigmaWithin,
                sigmaBetween,
                Optional.of(limits),
                limitsFrom,
                data,
                dispersionCheck,
                stages,
                remarks);
    }

    ControlChart withDispersionCheck(DispersionCheck check) {
        return new ControlChart(
                kind, panels, sigmaWithin, sigmaBetween, frozen, limitsFrom, data, Optional.of(check), stages, remarks);
    }

    ControlChart withMoreNotes(List<Remark> more) {
        List<Remark> all = new ArrayList<>(remarks);
        more.stream().filter(note -> !all.contains(note)).forEach(all::add);
        return new ControlChart(
                kind, panels, sigmaWithin, sigmaBetween, frozen, limitsFrom, data, dispersionCheck, stages, all);
    }
}
