package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.MedianConstants;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Medians and ranges of subgroups: a chart that can be kept by hand.
 *
 * <p>Centre the mean of the medians, limits ± Ã2 R̄ = ± 3 σ̃ R̄/d2, with σ̃ the standard deviation of the median of n over σ
 * (Ishikawa, Guide to Quality Control; ASTM STP 15D, part 3; printed Ã2: 1.880, 1.187, 0.796, 0.691, 0.548, 0.508 for n = 2 to 7);
 * ranges as on {@link XbarRange}. Unequal sizes: every point has limits of its own size (common practice). The median of an even
 * number of readings is the mean of the middle two.
 *
 * <p>Subgroups of 2 to {@link MedianConstants#LARGEST}; usual are 3, 5 and 7.
 */
public final class MedianRange extends ShewhartChart {
    private final SpreadEstimator estimator;

    /** With limits from the mean range. */
    public MedianRange() {
        this(SpreadEstimators.MEAN_RANGE);
    }

    /** With limits from another estimate of spread. */
    public MedianRange(SpreadEstimator estimator) {
        this.estimator = estimator;
    }

    @Override
    public String kind() {
        return "median-r";
    }

    @Override
    public String title() {
        return "Median and range";
    }

    @Override
    public ControlChart fromData(Subgroups given, Baseline baseline) {
        Subgroups data = given.ofAtLeast(2);
        List<Remark> notes = ChartNotes.of(given, data);
        LocationPanel location = LocationPanel.ofMedians(data);
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
                        location.about(centre, n -> pointSigma(sigma.sigma(), n)),
                        DispersionPanels.ranges(data, meanRange(basis), sigma.sigma())),
                inUnit(sigma, data),
                data.sample().scale().mean(centre.sum(), centre.count()),
                basis.count(),
                data,
                notes);
    }

    private @Nullable ExactCentre meanRange(Basis basis) {
        if (estimator != SpreadEstimators.MEAN_RANGE
                || basis.data().commonSize().isEmpty()) {
            return null;
        }
        return new ExactCentre(DeviationTally.of(basis.ranges()).sum(), basis.count());
    }

    private static double pointSigma(double sigma, int n) {
        return sigma * MedianConstants.of(n).standardDeviation();
    }

    @Override
    public ControlChart withLimits(Subgroups given, FrozenLimits limits) {
        requireOwn(limits, given);
        Subgroups data = given.ofAtLeast(2);
        double sigma = data.sample().scale().steps(limits.sigma());
        return chart(
                List.of(
                        LocationPanel.ofMedians(data).about(limits.centre(), n -> pointSigma(sigma, n)),
                        DispersionPanels.ranges(data, null, sigma)),
                estimate(limits),
                limits.centre(),
                0,
                data,
                ChartNotes.of(given, data));
    }
}
