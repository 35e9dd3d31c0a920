package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Subgroups;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Deviations from nominal, for short runs: one chart for several part numbers that run through one process with one spread
 * (Bothe 1987, and Farnum 1992, Journal of Quality Technology 24, 138–144: the deviation-from-nominal chart; Montgomery, section 10.1).
 *
 * <p>The chart of {@link Individuals}, of {@link XbarRange} (subgroups up to 10) or of {@link XbarStandardDeviation}, of readings less
 * the nominal of their own part. Readings of one characteristic count from the reference of their sample, which is its nominal; those
 * of a family come from {@link io.github.firstoff.sample.Family}. Where the spreads of the parts differ, {@link StandardisedDeviation}
 * is the right chart; see {@link FamilySpreads}.
 */
public final class Deviation implements ChartMethod<Subgroups> {
    private static final int MOST_FOR_RANGES = 10;

    private final Optional<SpreadEstimator> estimator;

    /** With the usual estimate of spread. */
    public Deviation() {
        this(Optional.empty());
    }

    /** With another estimate of spread, if given. */
    public Deviation(Optional<SpreadEstimator> estimator) {
        this.estimator = estimator;
    }

    @Override
    public String kind() {
        return "deviation";
    }

    @Override
    public String title() {
        return "Deviation from nominal";
    }

    @Override
    public ControlChart fromData(Subgroups data, Baseline baseline) {
        Subgroups deviations = data.asDeviations();
        return renamed(base(deviations).fromData(deviations, baseline));
    }

    @Override
    public ControlChart withLimits(Subgroups data, FrozenLimits limits) {
        ShewhartChart.requireKind(limits, kind());
        Subgroups deviations = data.asDeviations();
        ChartMethod<Subgroups> base = base(deviations);
        return renamed(base.withLimits(deviations, renamed(limits, base.kind())));
    }

    private ChartMethod<Subgroups> base(Subgroups data) {
        int largest = 1;
        for (int g = 0; g < data.count(); g++) {
            largest = Math.max(largest, data.size(g));
        }
        if (largest == 1) {
            return estimator.map(Individuals::new).orElseGet(Individuals::new);
        }
        return largest <= MOST_FOR_RANGES
                ? estimator.map(XbarRange::new).orElseGet(XbarRange::new)
                : estimator.map(XbarStandardDeviation::new).orElseGet(XbarStandardDeviation::new);
    }

    private ControlChart renamed(ControlChart chart) {
        List<Panel> panels = new ArrayList<>(chart.panels());
        String plotted = panels.get(0).statistic();
        panels.set(
                0,
                panels.get(0)
                        .plotting(plotted.equals("mean") ? "mean deviation from nominal" : "deviation from nominal"));
        return ControlChart.of(
                kind(),
                panels,
                chart.sigmaWithin(),
                chart.frozen().map(limits -> renamed(limits, kind())),
                chart.limitsFrom(),
                chart.data(),
                chart.remarks());
    }

    private static FrozenLimits renamed(FrozenLimits limits, String kind) {
        return new FrozenLimits(
                kind,
                limits.centre(),
                limits.sigma(),
                limits.estimator(),
                limits.degreesOfFreedom(),
                limits.unit(),
                limits.pointSigma(),
                limits.partSigmas());
    }
}
