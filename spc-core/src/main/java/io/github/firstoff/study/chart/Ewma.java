package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.EwmaRunLength;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Exponentially weighted moving average of individuals or means: small lasting shifts show early.
 *
 * <p>z<sub>i</sub> = λx̄<sub>i</sub> + (1 − λ)z<sub>i−1</sub>, z<sub>0</sub> the centre; limits centre ± L√V<sub>i</sub> with
 * V<sub>i</sub> = λ²σ²/n<sub>i</sub> + (1 − λ)²V<sub>i−1</sub>, V<sub>0</sub> = 0, which for equal n is
 * σ²/n λ/(2 − λ) (1 − (1 − λ)<sup>2i</sup>), the exact limits that widen at the start (Roberts 1959, Technometrics 1; Lucas and
 * Saccucci 1990, Technometrics 32, 1–29; NIST/SEMATECH e-Handbook 6.3.2.4, which draws only their final width). A break makes the
 * average and its variance begin anew at the centre; an excluded point leaves them as they were.
 *
 * <p>σ is MR̄/d2 of individuals or pooled s/c4 within subgroups unless chosen otherwise; the centre is the mean of the baseline, or a
 * stated target. Points share readings: only the test for points beyond a limit applies.
 */
public final class Ewma extends DriftChart {
    /** The usual weight. */
    public static final double USUAL_WEIGHT = 0.2;
    /** The usual width. */
    public static final double USUAL_WIDTH = 3;

    private final double lambda;
    private final double width;

    /** With λ 0.2, L 3, the mean as centre. */
    public Ewma() {
        this(USUAL_WEIGHT, USUAL_WIDTH, Optional.empty(), Optional.empty());
    }

    /**
     * With other settings.
     *
     * @param lambda λ, above 0, at most 1
     * @param width L, above 0
     * @param estimator of the spread, if not the usual one
     * @param target the centre, if not the mean
     * @throws IllegalArgumentException outside these ranges
     */
    public Ewma(double lambda, double width, Optional<SpreadEstimator> estimator, Optional<BigDecimal> target) {
        super(estimator, target);
        if (!(lambda > 0 && lambda <= 1)) {
            throw new IllegalArgumentException("the weight lambda is above 0 and at most 1, not " + lambda);
        }
        if (!(width > 0) || Double.isInfinite(width)) {
            throw new IllegalArgumentException("the width L is above 0, not " + width);
        }
        this.lambda = lambda;
        this.width = width;
    }

    @Override
    public String kind() {
        return "ewma";
    }

    @Override
    public String title() {
        return "Exponentially weighted moving average";
    }

    @Override
    List<Remark> design(Subgroups data) {
        return List.of(Remark.of("chart.ewma-design", "Weight lambda {0}, width L {1}.", lambda, width));
    }

    @Override
    Panel panel(Subgroups data, double centre, double sigma) {
        Scale scale = data.sample().scale();
        Panel.Builder panel = new Panel.Builder(
                PanelKind.LOCATION, PanelNature.DEPENDENT, "weighted moving average", data, data.count());
        boolean anyExcluded = !data.exclusions().isEmpty();
        Scale.Means means = scale.means();
        double centreValue = scale.value(centre);
        // both in steps, the average as its distance from the centre
        double average = 0;
        double variance = 0;
        for (int g = 0; g < data.count(); g++) {
            if (data.startsSegment(g)) {
                average = 0;
                variance = 0;
            }
            if (!(anyExcluded && data.isExcluded(g))) {
                average += lambda * (mean(data, g) - centre - average);
                variance = lambda * lambda * sigma * sigma / data.size(g) + (1 - lambda) * (1 - lambda) * variance;
            }
            double reach = width * Math.sqrt(variance);
            panel.ruled(centreValue, means.value(centre - reach), means.value(centre + reach))
                    .addJudged(
                            g,
                            means.value(centre + average),
                            data.size(g),
                            LineJudge.compare(average, 0, sigma),
                            LineJudge.beyond(average, -reach, reach, sigma));
        }
        return panel.build();
    }

    @Override
    public FalseSignals falseSignals(RuleSet tests) {
        if (!anyJudges(tests)) {
            return FalseSignals.never();
        }
        double average = EwmaRunLength.of(lambda, width, 0, true).average();
        return new FalseSignals(
                average,
                true,
                Remark.of(
                        "false-signals.ewma",
                        "A process in control, with normal points and known spread, gives a false signal on the weighted moving"
                                + " average once in {0} points on average.",
                        FalseSignals.figure(average)));
    }
}
