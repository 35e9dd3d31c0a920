package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import io.github.firstoff.stats.MovingRangeTally;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Individuals and moving ranges of two.
 *
 * <p>Centre x̄, limits x̄ ± 3 MR̄/d2 with d2 = 1.12838 (the exact 2/√π, where older pages print 1.128); moving ranges MRᵢ =
 * |xᵢ − xᵢ₋₁| with centre MR̄, lower limit 0, upper limit D4 MR̄ = 3.2665 MR̄ (NIST/SEMATECH e-Handbook 6.3.2.2;
 * Montgomery, chapter 6). The first moving range belongs to the second reading and has its number.
 *
 * <p>Assumes independent readings of a nearly normal process. Fewer than two readings give no limits.
 */
public final class Individuals extends ShewhartChart {
    private static final ChartConstants OF_TWO = ChartConstants.of(2);

    /** The method; it has no settings. */
    public Individuals() {}

    @Override
    public String kind() {
        return "individuals";
    }

    @Override
    public String title() {
        return "Individuals and moving range";
    }

    @Override
    public ControlChart fromData(Subgroups data, int baseline) {
        requireBaseline(baseline);
        requireSingles(data);
        List<String> notes = ChartNotes.of(data, data);
        LocationPanel location = new LocationPanel(data, "individual value");
        int setting = Math.min(baseline, data.count());
        if (setting < 2) {
            notes.add("Limits of individuals need at least two readings.");
            return withoutLimits(location.withoutLines(), ranges(data, null, 0), data, notes);
        }
        MovingRangeTally ranges = MovingRangeTally.of(deviations(data, setting));
        SigmaEstimate sigma = SigmaEstimators.meanMovingRange(ranges.mean(), setting);
        ExactCentre centre = location.centre(setting);
        ChartNotes.addProvisional(notes, setting, "readings");
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        return chart(
                location.about(centre, n -> sigma.sigma()),
                ranges(data, new ExactCentre(ranges.sum(), ranges.ranges()), sigma.sigma()),
                inUnit(sigma, data),
                data.sample().scale().mean(centre.sum(), centre.count()),
                setting,
                data,
                notes);
    }

    @Override
    public ControlChart withLimits(Subgroups data, FrozenLimits limits) {
        requireOwn(limits, data);
        requireSingles(data);
        double sigma = data.sample().scale().steps(limits.sigma());
        return chart(
                new LocationPanel(data, "individual value").about(limits.centre(), n -> sigma),
                ranges(data, null, sigma),
                estimate(limits),
                limits.centre(),
                0,
                data,
                ChartNotes.of(data, data));
    }

    private static long[] deviations(Subgroups data, int count) {
        long[] deviations = new long[count];
        for (int i = 0; i < count; i++) {
            deviations[i] = data.deviation(i, 0);
        }
        return deviations;
    }

    /** Sigma 0 without a centre means: no lines yet; or a frozen sigma of 0, whose lines would all lie at 0. */
    private Panel ranges(Subgroups data, @Nullable ExactCentre centre, double sigma) {
        Sample sample = data.sample();
        Scale scale = sample.scale();
        int count = Math.max(0, data.count() - 1);
        Panel.Builder panel = new Panel.Builder(PanelKind.DISPERSION, "moving range", 2, count, i -> data.label(i + 1));
        boolean lines = centre != null || sigma > 0;
        double middle = centre != null ? centre.deviation() : OF_TWO.d2() * sigma;
        double upper = OF_TWO.bigD4() * middle;
        for (int i = 1; i < data.count(); i++) {
            long range = Math.abs(data.deviation(i, 0) - data.deviation(i - 1, 0));
            double steps = (double) range;
            double value = scale.length(steps);
            if (!lines) {
                panel.add(value, 2);
                continue;
            }
            int side = centre != null ? centre.side(range, 1) : LineJudge.compare(steps, middle, sigma);
            panel.add(
                    value,
                    2,
                    scale.length(middle),
                    0,
                    scale.length(upper),
                    side,
                    LineJudge.beyond(steps, 0, upper, sigma));
        }
        return panel.build();
    }

    private static void requireSingles(Subgroups data) {
        for (int g = 0; g < data.count(); g++) {
            if (data.size(g) != 1) {
                throw new IllegalArgumentException(
                        "a chart of individuals takes readings one by one, not in subgroups of " + data.size(g));
            }
        }
    }
}
