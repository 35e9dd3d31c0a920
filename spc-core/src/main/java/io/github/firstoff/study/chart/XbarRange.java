package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.ExactRatio;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Means and ranges of subgroups.
 *
 * <p>Centre x̿, limits x̿ ± A2 R̄, A2 = 3/(d2√n); ranges with centre R̄ and limits D3 R̄ and D4 R̄ (ASTM E2587; Montgomery,
 * section 6.2). With subgroups of unequal size σ is the mean of Rᵢ/d2(nᵢ), and every point has its own limits from σ and its
 * own size (common practice); x̿ is the mean of all readings.
 *
 * <p>Best for subgroups of 2 to 10; above, {@link XbarStandardDeviation} wastes less of the data. A subgroup of one reading
 * has no range and is left off the chart.
 */
public final class XbarRange extends ShewhartChart {
    /** The method; it has no settings. */
    public XbarRange() {}

    @Override
    public String kind() {
        return "xbar-r";
    }

    @Override
    public String title() {
        return "Mean and range";
    }

    @Override
    public ControlChart fromData(Subgroups given, int baseline) {
        requireBaseline(baseline);
        Subgroups data = given.ofAtLeast(2);
        List<String> notes = ChartNotes.of(given, data);
        LocationPanel location = new LocationPanel(data, "mean");
        long[] ranges = ranges(data);
        int setting = Math.min(baseline, data.count());
        if (setting < 1) {
            notes.add("There is no complete subgroup, so there are no limits.");
            return withoutLimits(location.withoutLines(), panel(data, ranges, null, 0), data, notes);
        }
        SigmaEstimate sigma;
        ExactCentre middle = null;
        if (data.commonSize().isPresent()) {
            BigInteger sum = DeviationTally.of(ranges, 0, setting).sum();
            middle = new ExactCentre(sum, setting);
            sigma = SigmaEstimators.meanRange(
                    ExactRatio.of(sum, BigInteger.valueOf(setting)),
                    data.commonSize().getAsInt(),
                    setting);
        } else {
            int[] sizes = new int[setting];
            Arrays.setAll(sizes, data::size);
            sigma = SigmaEstimators.meanRange(
                    Arrays.stream(ranges, 0, setting).asDoubleStream().toArray(), sizes);
        }
        ExactCentre centre = location.centre(setting);
        ChartNotes.addProvisional(notes, setting, "subgroups");
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        double sigmaSteps = sigma.sigma();
        return chart(
                location.about(centre, n -> sigmaSteps),
                panel(data, ranges, middle, sigmaSteps),
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
                panel(data, ranges(data), null, sigma),
                estimate(limits),
                limits.centre(),
                0,
                data,
                ChartNotes.of(given, data));
    }

    private static long[] ranges(Subgroups data) {
        long[] ranges = new long[data.count()];
        for (int g = 0; g < ranges.length; g++) {
            long least = Long.MAX_VALUE;
            long most = Long.MIN_VALUE;
            for (int m = 0; m < data.size(g); m++) {
                long d = data.deviation(g, m);
                least = Math.min(least, d);
                most = Math.max(most, d);
            }
            ranges[g] = most - least;
        }
        return ranges;
    }

    private static Panel panel(Subgroups data, long[] ranges, @Nullable ExactCentre exact, double sigma) {
        Scale scale = data.sample().scale();
        Panel.Builder panel = new Panel.Builder(PanelKind.DISPERSION, "range", 1, ranges.length, data::label);
        int sizeOfLines = 0;
        double centre = 0;
        double lower = 0;
        double upper = 0;
        for (int g = 0; g < ranges.length; g++) {
            int n = data.size(g);
            if (n != sizeOfLines) {
                ChartConstants c = ChartConstants.of(n);
                centre = exact != null ? exact.deviation() : c.d2() * sigma;
                lower = c.bigD3() * centre;
                upper = c.bigD4() * centre;
                sizeOfLines = n;
            }
            double range = (double) ranges[g];
            panel.add(
                    scale.length(range),
                    n,
                    scale.length(centre),
                    scale.length(lower),
                    scale.length(upper),
                    exact != null ? exact.side(ranges[g], 1) : LineJudge.compare(range, centre, sigma),
                    LineJudge.beyond(range, lower, upper, sigma));
        }
        return panel.build();
    }
}
