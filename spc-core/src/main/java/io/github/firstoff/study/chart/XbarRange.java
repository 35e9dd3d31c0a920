package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Means and ranges of subgroups.
 *
 * <p>Centre x̿, limits x̿ ± A2 R̄, A2 = 3/(d2√n); ranges with centre R̄ and limits D3 R̄ and D4 R̄ (ASTM E2587; Montgomery,
 * section 6.2). With subgroups of unequal size σ is the mean of Rᵢ/d2(nᵢ), and every point has its own limits from σ and its
 * own size (common practice); x̿ is the mean of all readings. With another estimator of spread limits are x̿ ± 3σ/√n, and D1σ,
 * d2σ, D2σ.
 *
 * <p>Best for subgroups of 2 to 10; above, {@link XbarStandardDeviation} wastes less of the data. A subgroup of one reading
 * has no range and is left off the chart.
 */
public final class XbarRange extends ShewhartChart {
    private final SpreadEstimator estimator;

    /** With limits from the mean range. */
    public XbarRange() {
        this(SpreadEstimators.MEAN_RANGE);
    }

    /** With limits from another estimate of spread. */
    public XbarRange(SpreadEstimator estimator) {
        this.estimator = estimator;
    }

    @Override
    public String kind() {
        return "xbar-r";
    }

    @Override
    public String title() {
        return "Mean and range";
    }

    @Override
    public ControlChart fromData(Subgroups given, Baseline baseline) {
        Subgroups data = given.ofAtLeast(2);
        List<Remark> notes = ChartNotes.of(given, data);
        LocationPanel location = new LocationPanel(data, "mean");
        Basis basis = Basis.of(data, baseline);
        Optional<SigmaEstimate> estimated = estimator.estimate(basis);
        if (estimated.isEmpty()) {
            ChartNotes.addNoLimits(notes, basis, Optional.of(estimator));
            return withoutLimits(
                    List.of(location.withoutLines(), DispersionPanels.ranges(data, null, -1)), data, notes);
        }
        SigmaEstimate sigma = estimated.get();
        if (estimator != SpreadEstimators.MEAN_RANGE) {
            ChartNotes.addEstimator(notes, sigma.estimator());
        }
        ExactCentre centre = location.centre(basis);
        ChartNotes.addProvisional(notes, basis.count(), ChartNotes.Setting.SUBGROUP);
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        return chart(
                List.of(
                        location.about(centre, n -> sigma.sigma() / Math.sqrt(n)),
                        DispersionPanels.ranges(data, meanRange(basis), sigma.sigma())),
                inUnit(sigma, data),
                data.sample().scale().mean(centre.sum(), centre.count()),
                basis.count(),
                data,
                notes);
    }

    /** The mean range as a centre line, where all subgroups on the chart share it. */
    private @Nullable ExactCentre meanRange(Basis basis) {
        if (estimator != SpreadEstimators.MEAN_RANGE
                || basis.data().commonSize().isEmpty()) {
            return null;
        }
        return new ExactCentre(DeviationTally.of(basis.ranges()).sum(), basis.count());
    }

    @Override
    public ControlChart withLimits(Subgroups given, FrozenLimits limits) {
        requireOwn(limits, given);
        Subgroups data = given.ofAtLeast(2);
        double sigma = data.sample().scale().steps(limits.sigma());
        return chart(
                List.of(
                        new LocationPanel(data, "mean").about(limits.centre(), n -> sigma / Math.sqrt(n)),
                        DispersionPanels.ranges(data, null, sigma)),
                estimate(limits),
                limits.centre(),
                0,
                data,
                ChartNotes.of(given, data));
    }
}
