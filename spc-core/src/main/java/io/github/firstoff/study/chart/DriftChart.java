package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.SigmaEstimate;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the charts that add up the past have in common: a centre that may be stated, and no panel of spread. */
abstract class DriftChart extends ShewhartChart {
    private final Optional<SpreadEstimator> estimator;
    private final Optional<BigDecimal> target;

    DriftChart(Optional<SpreadEstimator> estimator, Optional<BigDecimal> target) {
        this.estimator = estimator;
        this.target = target;
    }

    /** The panel about a centre, in steps, with the spread of single readings, in steps; below 0: without lines. */
    abstract Panel panel(Subgroups data, double centre, double sigma);

    @Override
    public final ControlChart fromData(Subgroups given, Baseline baseline) {
        Subgroups data = charted(given);
        List<Remark> notes = notes(given, data);
        Basis basis = Basis.of(data, baseline);
        SpreadEstimator chosen = estimator.orElse(SpreadEstimators.usual(isSingle(data)));
        Optional<SigmaEstimate> estimated = chosen.estimate(basis);
        if (estimated.isEmpty()) {
            notes.add(Remark.of(
                    "chart.readings-no-spread",
                    "The readings that were to set the limits give no spread by {0}, so there are no limits.",
                    ChartNotes.estimator(chosen.name())));
            Panel empty = new LocationPanel(data, "mean").withoutLines();
            return withoutLimits(List.of(empty), data, notes);
        }
        SigmaEstimate sigma = estimated.get();
        ChartNotes.addProvisional(
                notes, basis.count(), isSingle(data) ? ChartNotes.Setting.READING : ChartNotes.Setting.SUBGROUP);
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        ChartNotes.addEstimator(notes, sigma.estimator());
        double steps;
        double centre;
        if (target.isPresent()) {
            steps = data.sample().scale().deviation(target.get());
            centre = data.sample().scale().value(steps);
            notes.add(Remark.of(
                    "chart.centre-is-target",
                    "The centre is the stated target {0}.",
                    target.get().toPlainString()));
        } else {
            ExactCentre mean = new LocationPanel(data, "mean").centre(basis);
            steps = mean.deviation();
            centre = data.sample().scale().mean(mean.sum(), mean.count());
        }
        return chart(
                List.of(panel(data, steps, sigma.sigma())), inUnit(sigma, data), centre, basis.count(), data, notes);
    }

    @Override
    public final ControlChart withLimits(Subgroups given, FrozenLimits limits) {
        requireOwn(limits, given);
        Subgroups data = charted(given);
        return chart(
                List.of(panel(
                        data,
                        data.sample().scale().deviation(limits.centre()),
                        data.sample().scale().steps(limits.sigma()))),
                estimate(limits),
                limits.centre(),
                0,
                data,
                notes(given, data));
    }

    private List<Remark> notes(Subgroups given, Subgroups data) {
        List<Remark> notes = new ArrayList<>(ChartNotes.of(given, data));
        notes.addAll(design(data));
        return notes;
    }

    /** What a reader must know of the chart's own settings. */
    abstract List<Remark> design(Subgroups data);

    static boolean isSingle(Subgroups data) {
        for (int g = 0; g < data.count(); g++) {
            if (data.size(g) != 1) {
                return false;
            }
        }
        return true;
    }

    private static Subgroups charted(Subgroups given) {
        return isSingle(given) ? given : given.ofAtLeast(2);
    }

    static double mean(Subgroups data, int group) {
        double sum = 0;
        for (int m = 0; m < data.size(group); m++) {
            sum += data.deviation(group, m);
        }
        return sum / data.size(group);
    }

    /** Whether tests of the set look at points that share readings, as all of these charts' do. */
    static boolean anyJudges(RuleSet tests) {
        return tests.rules().stream().anyMatch(rule -> rule.judges(PanelNature.DEPENDENT));
    }
}
