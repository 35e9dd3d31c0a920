package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.CusumRunLength;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Tabular cumulative sums of individuals or means, upper and lower.
 *
 * <p>C⁺<sub>i</sub> = max(0, C⁺<sub>i−1</sub> + x̄<sub>i</sub> − (T + K)), C⁻<sub>i</sub> = max(0, C⁻<sub>i−1</sub> + (T − K) −
 * x̄<sub>i</sub>), a signal beyond H; K = kσ/√n, H = hσ/√n (Page 1954, Biometrika 41; Montgomery, section 9.1; NIST/SEMATECH
 * e-Handbook 6.3.2.3). Both start at 0, or with a fast initial response at a share of H, usually one half (Lucas and Crosier 1982,
 * Technometrics 24, 199–205). The lower sum is plotted below the axis. Sums are in the unit of the readings; with subgroups of
 * unequal size every point counts in standard deviations of its own mean, and so do the sums, which is said.
 *
 * <p>Sums go on after a signal. A break makes them begin anew, head start included; an excluded point leaves them as they were. σ is
 * MR̄/d2 of individuals or pooled s/c4 within subgroups unless chosen otherwise; T is the mean of the baseline, or a stated target.
 * Points share readings: only the test for points beyond a limit applies.
 */
public final class Cusum extends DriftChart {
    /** The usual reference value k: half the shift of one sigma that is to be found. */
    public static final double USUAL_REFERENCE = 0.5;
    /** The usual decision interval h. */
    public static final double USUAL_INTERVAL = 5;

    private static final double GREATEST_HEAD_START = 0.5;

    private final double reference;
    private final double interval;
    private final double headStart;

    /** With k 0.5, h 5, no head start, the mean as target. */
    public Cusum() {
        this(USUAL_REFERENCE, USUAL_INTERVAL, 0, Optional.empty(), Optional.empty());
    }

    /**
     * With other settings.
     *
     * @param reference k, not below 0, in standard deviations of the plotted points
     * @param interval h, above 0, in the same
     * @param headStart the share of h at which the sums start, 0 to 0.5
     * @param estimator of the spread, if not the usual one
     * @param target T, if not the mean
     * @throws IllegalArgumentException outside these ranges
     */
    public Cusum(
            double reference,
            double interval,
            double headStart,
            Optional<SpreadEstimator> estimator,
            Optional<BigDecimal> target) {
        super(estimator, target);
        if (!(reference >= 0) || Double.isInfinite(reference)) {
            throw new IllegalArgumentException("the reference value k is not below 0, as " + reference);
        }
        if (!(interval > 0) || Double.isInfinite(interval)) {
            throw new IllegalArgumentException("the decision interval h is above 0, not " + interval);
        }
        if (!(headStart >= 0 && headStart <= GREATEST_HEAD_START)) {
            throw new IllegalArgumentException("the head start is 0 to 0.5 of the decision interval, not " + headStart);
        }
        this.reference = reference;
        this.interval = interval;
        this.headStart = headStart;
    }

    @Override
    public String kind() {
        return "cusum";
    }

    @Override
    public String title() {
        return "Cumulative sums";
    }

    @Override
    List<Remark> design(Subgroups data) {
        List<Remark> notes = new ArrayList<>();
        notes.add(Remark.of(
                "chart.cusum-design",
                "Reference value k {0}, decision interval h {1}{2|, head start {3} of it|}.",
                reference,
                interval,
                headStart > 0,
                headStart));
        if (data.count() > 0 && data.commonSize().isEmpty()) {
            notes.add(Remark.of(
                    "chart.cusum-sizes",
                    "Subgroups differ in size: the sums count in standard deviations of each mean."));
        }
        return notes;
    }

    @Override
    Panel panel(Subgroups data, double centre, double sigma) {
        Scale scale = data.sample().scale();
        Panel.Builder panel =
                new Panel.Builder(PanelKind.LOCATION, PanelNature.DEPENDENT, "cumulative sum", data, data.count());
        boolean anyExcluded = !data.exclusions().isEmpty();
        boolean standardised = data.commonSize().isEmpty() && sigma > 0;
        // in steps, or in standard deviations of each mean
        double unit = standardised ? 1 : sigma / Math.sqrt(data.commonSize().orElse(1));
        double allowance = reference * unit;
        double limit = interval * unit;
        double plottedLimit = standardised ? limit : scale.length(limit);
        Lines lines = new Lines(0, -plottedLimit, plottedLimit, OptionalDouble.empty());
        double upper = 0;
        double lower = 0;
        for (int g = 0; g < data.count(); g++) {
            if (data.startsSegment(g)) {
                upper = headStart * limit;
                lower = headStart * limit;
            }
            if (!(anyExcluded && data.isExcluded(g))) {
                double distance = mean(data, g) - centre;
                if (standardised) {
                    distance *= Math.sqrt(data.size(g)) / sigma;
                }
                upper = Math.max(0, upper + distance - allowance);
                lower = Math.max(0, lower - distance - allowance);
            }
            int beyond =
                    LineJudge.compare(upper, limit, unit) > 0 ? 1 : LineJudge.compare(lower, limit, unit) > 0 ? -1 : 0;
            panel.addPair(
                    g,
                    standardised ? upper : scale.length(upper),
                    standardised ? -lower : -scale.length(lower),
                    data.size(g),
                    lines,
                    Double.compare(upper, lower),
                    beyond);
        }
        return panel.build();
    }

    @Override
    public FalseSignals falseSignals(RuleSet tests) {
        if (!anyJudges(tests)) {
            return FalseSignals.never();
        }
        double average = CusumRunLength.twoSidedAverage(reference, interval, headStart * interval, 0);
        return new FalseSignals(
                average,
                true,
                Remark.of(
                        "false-signals.cusum",
                        "A process in control, with normal points and known spread, gives a false signal on the cumulative sums once"
                                + " in {0} points on average.",
                        FalseSignals.figure(average)));
    }
}
