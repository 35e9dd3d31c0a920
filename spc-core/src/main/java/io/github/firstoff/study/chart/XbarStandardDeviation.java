package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import io.github.firstoff.stats.Moments;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/**
 * Means and standard deviations of subgroups.
 *
 * <p>Equal sizes: centre x̿, limits x̿ ± A3 s̄, A3 = 3/(c4√n); standard deviations with centre s̄ and limits B3 s̄ and B4 s̄
 * (ASTM E2587; Montgomery, section 6.3.1).
 *
 * <p>Unequal sizes (Montgomery, section 6.3.2): x̿ is the mean of all readings, s̄ the root of Σ(nᵢ−1)sᵢ²/Σ(nᵢ−1), and every
 * point has its own limits with A3, B3 and B4 of its own size. What is frozen then is that pooled s as σ.
 *
 * <p>Frozen limits, and limits from another estimator of spread: x̿ ± 3σ/√n, and c4σ with B5σ and B6σ. A subgroup of one reading
 * has no standard deviation and is left off the chart.
 */
public final class XbarStandardDeviation extends ShewhartChart {
    private final Optional<SpreadEstimator> estimator;

    /** With limits from the mean standard deviation; of unequal subgroups, from the pooled one. */
    public XbarStandardDeviation() {
        this.estimator = Optional.empty();
    }

    /** With limits from another estimate of spread. */
    public XbarStandardDeviation(SpreadEstimator estimator) {
        this.estimator = Optional.of(estimator);
    }

    @Override
    public String kind() {
        return "xbar-s";
    }

    @Override
    public String title() {
        return "Mean and standard deviation";
    }

    @Override
    public ControlChart fromData(Subgroups given, Baseline baseline) {
        Subgroups data = given.ofAtLeast(2);
        List<Remark> notes = ChartNotes.of(given, data);
        LocationPanel location = new LocationPanel(data, "mean");
        Basis basis = Basis.of(data, baseline);
        Optional<SigmaEstimate> chosen = estimator.flatMap(e -> e.estimate(basis));
        if (basis.count() == 0 || (estimator.isPresent() && chosen.isEmpty())) {
            ChartNotes.addNoLimits(notes, basis, estimator);
            return withoutLimits(
                    List.of(location.withoutLines(), DispersionPanels.standardDeviations(data, n -> 0, -1)),
                    data,
                    notes);
        }
        SigmaEstimate sigma;
        IntToDoubleFunction centreOfSize;
        IntToDoubleFunction sigmaOfSize;
        if (chosen.isPresent()) {
            sigma = chosen.get();
            centreOfSize = n -> ChartConstants.of(n).c4() * sigma.sigma();
            sigmaOfSize = n -> sigma.sigma();
            ChartNotes.addEstimator(notes, sigma.estimator());
        } else {
            double[] deviations = basis.standardDeviations();
            double middle;
            boolean oneSize = basis.commonSize().isPresent();
            if (oneSize) {
                middle = Moments.of(deviations).mean();
                sigma = SigmaEstimators.meanStandardDeviation(
                        middle, basis.commonSize().getAsInt(), basis.count());
            } else {
                double squares = 0;
                long df = 0;
                for (int i = 0; i < basis.count(); i++) {
                    int n = data.size(basis.group(i));
                    squares += (n - 1) * deviations[i] * deviations[i];
                    df += n - 1;
                }
                middle = Math.sqrt(squares / df);
                sigma = SigmaEstimators.pooled(middle, df);
            }
            if (oneSize && data.commonSize().isEmpty()) {
                // a smaller subgroup among those that set no limits: lines for its size from the sigma of the others
                centreOfSize = n -> ChartConstants.of(n).c4() * sigma.sigma();
                sigmaOfSize = n -> sigma.sigma();
            } else {
                centreOfSize = n -> middle;
                sigmaOfSize = n -> middle / ChartConstants.of(n).c4();
            }
        }
        ExactCentre centre = location.centre(basis);
        ChartNotes.addProvisional(notes, basis.count(), ChartNotes.Setting.SUBGROUP);
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        return chart(
                List.of(
                        location.about(centre, n -> sigmaOfSize.applyAsDouble(n) / Math.sqrt(n)),
                        DispersionPanels.standardDeviations(data, centreOfSize, sigma.sigma())),
                inUnit(sigma, data),
                data.sample().scale().mean(centre.sum(), centre.count()),
                basis.count(),
                data,
                notes);
    }

    @Override
    public ControlChart withLimits(Subgroups given, FrozenLimits limits) {
        requireOwn(limits, given);
        Subgroups data = given.ofAtLeast(2);
        double sigma = data.sample().scale().steps(limits.sigma());
        // sigma is then the pooled s of subgroups of differing sizes, which A3(n), B3(n) and B4(n) belong to
        boolean pooled = limits.estimator().equals(SigmaEstimators.POOLED);
        return chart(
                List.of(
                        new LocationPanel(data, "mean")
                                .about(
                                        limits.centre(),
                                        n -> sigma
                                                / (pooled ? ChartConstants.of(n).c4() : 1)
                                                / Math.sqrt(n)),
                        DispersionPanels.standardDeviations(
                                data, n -> pooled ? sigma : ChartConstants.of(n).c4() * sigma, sigma)),
                estimate(limits),
                limits.centre(),
                0,
                data,
                ChartNotes.of(given, data));
    }
}
