package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.List;
import java.util.Optional;

/**
 * Individuals and moving ranges of two.
 *
 * <p>Centre x̄, limits x̄ ± 3 MR̄/d2 with d2 = 1.12838 (the exact 2/√π, where older pages print 1.128); moving ranges MRᵢ =
 * |xᵢ − xᵢ₋₁| with centre MR̄, lower limit 0, upper limit D4 MR̄ = 3.2665 MR̄ (NIST/SEMATECH e-Handbook 6.3.2.2;
 * Montgomery, chapter 6). A moving range has the number of its later reading; there is none across a break, and those that touch
 * an excluded reading set no limits. With another estimator of spread, for example the median moving range, the moving ranges
 * have centre d2σ.
 *
 * <p>Assumes independent readings of a nearly normal process. Fewer than two readings give no limits.
 */
public final class Individuals extends ShewhartChart {
    private final SpreadEstimator estimator;

    /** With limits from the mean moving range. */
    public Individuals() {
        this(SpreadEstimators.MEAN_MOVING_RANGE);
    }

    /** With limits from another estimate of spread. */
    public Individuals(SpreadEstimator estimator) {
        this.estimator = estimator;
    }

    @Override
    public String kind() {
        return "individuals";
    }

    @Override
    public String title() {
        return "Individuals and moving range";
    }

    @Override
    public ControlChart fromData(Subgroups data, Baseline baseline) {
        requireSingles(data);
        List<Remark> notes = ChartNotes.of(data, data);
        Basis basis = Basis.of(data, baseline);
        LocationPanel location = location(data);
        Optional<SigmaEstimate> estimated = estimator.estimate(basis);
        if (estimated.isEmpty()) {
            notes.add(Remark.of(
                    "chart.individuals-need-two", "Limits of individuals need at least two readings in succession."));
            return withoutLimits(
                    List.of(location.withoutLines(), DispersionPanels.movingRanges(data, null, -1)), data, notes);
        }
        SigmaEstimate sigma = estimated.get();
        ExactCentre middle = null;
        if (estimator == SpreadEstimators.MEAN_MOVING_RANGE) {
            long[] ranges = basis.movingRanges();
            middle = new ExactCentre(DeviationTally.of(ranges).sum(), ranges.length);
        } else {
            ChartNotes.addEstimator(notes, sigma.estimator());
        }
        ExactCentre centre = location.centre(basis);
        ChartNotes.addProvisional(notes, basis.count(), ChartNotes.Setting.READING);
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        return chart(
                List.of(
                        location.about(centre, n -> sigma.sigma()),
                        DispersionPanels.movingRanges(data, middle, sigma.sigma())),
                inUnit(sigma, data),
                data.sample().scale().mean(centre.sum(), centre.count()),
                basis.count(),
                data,
                notes);
    }

    @Override
    public ControlChart withLimits(Subgroups data, FrozenLimits limits) {
        requireOwn(limits, data);
        requireSingles(data);
        double sigma = data.sample().scale().steps(limits.sigma());
        return chart(
                List.of(
                        location(data).about(limits.centre(), n -> sigma),
                        DispersionPanels.movingRanges(data, null, sigma)),
                estimate(limits),
                limits.centre(),
                0,
                data,
                ChartNotes.of(data, data));
    }

    private static LocationPanel location(Subgroups data) {
        return new LocationPanel(data, "individual value");
    }

    static void requireSingles(Subgroups data) {
        for (int g = 0; g < data.count(); g++) {
            if (data.size(g) != 1) {
                throw new IllegalArgumentException(
                        "a chart of individuals takes readings one by one, not in subgroups of " + data.size(g));
            }
        }
    }
}
