package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Three panels for subgroups that a fixture, a load or a pour moves as wholes: means as individuals, their moving ranges, and the
 * ranges within.
 *
 * <p>Means: centre the mean of all readings, limits ± 3 MR̄/d2 from the moving ranges of successive means, so that ordinary
 * movement between subgroups gives no signal; moving ranges: MR̄, 0, D4 MR̄ (n = 2); ranges within: as on {@link XbarRange}
 * (Wheeler 1995, Advanced Topics in Statistical Process Control, the three-way chart; the same construction as
 * {@link Individuals} applied to means). The standard deviation between subgroups is √(σ²(means) − σ²(within)/n), 0 where that is
 * negative.
 *
 * <p>With unequal sizes n of the last formula is the mean size, which is said. Fewer than two subgroups give no limits.
 */
public final class BetweenWithin extends ShewhartChart {
    private static final ChartConstants OF_TWO = ChartConstants.of(2);

    private final SpreadEstimator estimator;

    /** With the spread within from the mean range. */
    public BetweenWithin() {
        this(SpreadEstimators.MEAN_RANGE);
    }

    /** With another estimate of the spread within. */
    public BetweenWithin(SpreadEstimator estimator) {
        this.estimator = estimator;
    }

    @Override
    public String kind() {
        return "between-within";
    }

    @Override
    public String title() {
        return "Mean, between and within";
    }

    @Override
    public ControlChart fromData(Subgroups given, Baseline baseline) {
        Subgroups data = given.ofAtLeast(2);
        List<Remark> notes = ChartNotes.of(given, data);
        LocationPanel location = new LocationPanel(data, "mean");
        Basis basis = Basis.of(data, baseline);
        Optional<SigmaEstimate> within = estimator.estimate(basis);
        double meanRange = 0;
        int ranges = 0;
        for (int i = 1; i < basis.count(); i++) {
            if (basis.followsAtOnce(i)) {
                meanRange += movingRange(data, basis.group(i));
                ranges++;
            }
        }
        if (within.isEmpty() || ranges == 0) {
            notes.add(Remark.of(
                    "chart.between-needs-two",
                    "Limits between subgroups need at least two complete subgroups in succession."));
            return withoutLimits(
                    List.of(location.withoutLines(), between(data, -1), DispersionPanels.ranges(data, null, -1)),
                    data,
                    notes);
        }
        double pointSigma = meanRange / ranges / OF_TWO.d2();
        SigmaEstimate sigma = within.get();
        if (estimator != SpreadEstimators.MEAN_RANGE) {
            ChartNotes.addEstimator(notes, sigma.estimator());
        }
        ExactCentre centre = location.centre(basis);
        ChartNotes.addProvisional(notes, basis.count(), ChartNotes.Setting.SUBGROUP);
        ChartNotes.addZeroSpread(notes, sigma.sigma());
        return finish(
                chart(
                        List.of(
                                location.about(centre, n -> pointSigma),
                                between(data, pointSigma),
                                DispersionPanels.ranges(data, null, sigma.sigma())),
                        inUnit(sigma, data),
                        data.sample().scale().mean(centre.sum(), centre.count()),
                        basis.count(),
                        data,
                        notes),
                data.sample().scale().length(pointSigma));
    }

    private static ControlChart finish(ControlChart chart, double pointSigma) {
        Subgroups data = chart.data();
        double n = 0;
        for (int g = 0; g < data.count(); g++) {
            n += data.size(g);
        }
        n = n / Math.max(1, data.count());
        double within = chart.sigmaWithin().orElseThrow().sigma();
        double between = Math.sqrt(Math.max(0, pointSigma * pointSigma - within * within / n));
        ControlChart result = chart.withSigmaBetween(between)
                .withFrozen(chart.frozen().orElseThrow().withPointSigma(pointSigma));
        return data.commonSize().isPresent()
                ? result
                : result.withMoreNotes(List.of(Remark.of(
                        "chart.between-sizes",
                        "Subgroups differ in size: the spread between them is reckoned with the mean size, and their means share one"
                                + " pair of limits.")));
    }

    @Override
    public ControlChart withLimits(Subgroups given, FrozenLimits limits) {
        requireOwn(limits, given);
        Subgroups data = given.ofAtLeast(2);
        Scale scale = data.sample().scale();
        double pointSigma = limits.pointSigma()
                .orElseThrow(() -> new IllegalArgumentException(
                        "limits of a chart between-within need the standard deviation of its points"));
        double steps = scale.steps(pointSigma);
        return finish(
                chart(
                        List.of(
                                new LocationPanel(data, "mean").about(limits.centre(), n -> steps),
                                between(data, steps),
                                DispersionPanels.ranges(data, null, scale.steps(limits.sigma()))),
                        estimate(limits),
                        limits.centre(),
                        0,
                        data,
                        ChartNotes.of(given, data)),
                pointSigma);
    }

    private static double mean(Subgroups data, int group) {
        double sum = 0;
        for (int m = 0; m < data.size(group); m++) {
            sum += data.deviation(group, m);
        }
        return sum / data.size(group);
    }

    private static double movingRange(Subgroups data, int group) {
        return Math.abs(mean(data, group) - mean(data, group - 1));
    }

    /** The moving ranges of the means, none across a break; sigma of the means in steps, below 0: there are no lines. */
    private static Panel between(Subgroups data, double sigma) {
        Scale scale = data.sample().scale();
        int count = 0;
        for (int g = 1; g < data.count(); g++) {
            count += data.startsSegment(g) ? 0 : 1;
        }
        Panel.Builder panel =
                new Panel.Builder(PanelKind.BETWEEN, PanelNature.DEPENDENT, "moving range of means", data, count);
        double middle = OF_TWO.d2() * Math.max(0, sigma);
        double upper = OF_TWO.bigD4() * middle;
        Lines lines = new Lines(scale.length(middle), 0, scale.length(upper), OptionalDouble.empty());
        for (int g = 1; g < data.count(); g++) {
            if (data.startsSegment(g)) {
                continue;
            }
            double range = movingRange(data, g);
            if (sigma < 0) {
                panel.add(g, scale.length(range), 2);
            } else {
                panel.add(
                        g,
                        scale.length(range),
                        2,
                        lines,
                        LineJudge.compare(range, middle, sigma),
                        LineJudge.beyond(range, 0, upper, sigma));
            }
            if (data.isExcluded(g - 1)) {
                panel.exclude();
            }
        }
        return panel.build();
    }
}
