package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.Moments;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.Arrays;
import java.util.List;
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
 * <p>Frozen limits: x̿ ± 3σ/√n, and c4σ with B5σ and B6σ. A subgroup of one reading has no standard deviation and is left off
 * the chart.
 */
public final class XbarStandardDeviation extends ShewhartChart {
    /** The method; it has no settings. */
    public XbarStandardDeviation() {}

    @Override
    public String kind() {
        return "xbar-s";
    }

    @Override
    public String title() {
        return "Mean and standard deviation";
    }

    @Override
    public ControlChart fromData(Subgroups given, int baseline) {
        requireBaseline(baseline);
        Subgroups data = given.ofAtLeast(2);
        List<String> notes = ChartNotes.of(given, data);
        LocationPanel location = new LocationPanel(data, "mean");
        double[] deviations = standardDeviations(data);
        int setting = Math.min(baseline, data.count());
        if (setting < 1) {
            notes.add("There is no complete subgroup, so there are no limits.");
            return withoutLimits(location.withoutLines(), panel(data, deviations, n -> 0, 0), data, notes);
        }
        double[] settingDeviations = Arrays.copyOf(deviations, setting);
        SigmaEstimate sigma;
        double middle;
        if (data.commonSize().isPresent()) {
            middle = Moments.of(settingDeviations).mean();
            sigma = SigmaEstimators.meanStandardDeviation(
                    middle, data.commonSize().getAsInt(), setting);
        } else {
            double squares = 0;
            long df = 0;
            for (int g = 0; g < setting; g++) {
                squares += (data.size(g) - 1) * deviations[g] * deviations[g];
                df += data.size(g) - 1;
            }
            middle = Math.sqrt(squares / df);
            sigma = SigmaEstimators.pooled(middle, df);
        }
        ExactCentre centre = location.centre(setting);
        ChartNotes.addProvisional(notes, setting, "subgroups");
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        return chart(
                location.about(centre, n -> middle / ChartConstants.of(n).c4()),
                panel(data, deviations, n -> middle, sigma.sigma()),
                inUnit(sigma, data),
                data.sample().scale().mean(centre.sum(), centre.count()),
                setting,
                data,
                notes);
    }

    @Override
    public ControlChart withLimits(Subgroups given, FrozenLimits limits) {
        requireOwn(limits, given);
        Subgroups data = given.ofAtLeast(2);
        double sigma = data.sample().scale().steps(limits.sigma());
        return chart(
                new LocationPanel(data, "mean").about(limits.centre(), n -> sigma),
                panel(data, standardDeviations(data), n -> ChartConstants.of(n).c4() * sigma, sigma),
                estimate(limits),
                limits.centre(),
                0,
                data,
                ChartNotes.of(given, data));
    }

    private static double[] standardDeviations(Subgroups data) {
        double[] result = new double[data.count()];
        for (int g = 0; g < result.length; g++) {
            long[] members = new long[data.size(g)];
            for (int m = 0; m < members.length; m++) {
                members[m] = data.deviation(g, m);
            }
            result[g] = DeviationTally.of(members).standardDeviation();
        }
        return result;
    }

    private static Panel panel(Subgroups data, double[] deviations, IntToDoubleFunction centreOfSize, double sigma) {
        Scale scale = data.sample().scale();
        Panel.Builder panel =
                new Panel.Builder(PanelKind.DISPERSION, "standard deviation", 1, deviations.length, data::label);
        for (int g = 0; g < deviations.length; g++) {
            int n = data.size(g);
            ChartConstants c = ChartConstants.of(n);
            double centre = centreOfSize.applyAsDouble(n);
            double lower = c.b3() * centre;
            double upper = c.b4() * centre;
            panel.add(
                    scale.length(deviations[g]),
                    n,
                    scale.length(centre),
                    scale.length(lower),
                    scale.length(upper),
                    LineJudge.compare(deviations[g], centre, sigma),
                    LineJudge.beyond(deviations[g], lower, upper, sigma));
        }
        return panel.build();
    }
}
