package io.github.firstoff.study.capability;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.ChartConstants;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.LagTally;
import io.github.firstoff.stats.LineTally;
import io.github.firstoff.stats.MovingRangeTally;
import io.github.firstoff.stats.OutlierTests;
import io.github.firstoff.stats.SigmaEstimate;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Looks at readings before they are believed: resolution, ties, autocorrelation, outliers, trend. Reports, never removes.
 *
 * @param significance of each test, between 0 and 1
 * @param mostOutliers the most outliers looked for, at least 1; never more than a tenth of the readings, and only one among fewer than 25
 *     (Rosner 1983)
 * @param gaugeResolution the resolution of the gauge in the unit of the readings, above 0; empty if unknown
 */
public record DataCheckStudy(double significance, int mostOutliers, Optional<BigDecimal> gaugeResolution) {
    /** The usual significance. */
    public static final double USUAL_SIGNIFICANCE = 0.05;

    /** The usual number of outliers looked for. */
    public static final int USUAL_OUTLIERS = 10;

    /** Below this many readings Rosner's critical values are not accurate for more than one outlier. */
    private static final int FEWEST_FOR_SEVERAL = 25;

    private static final int FEWEST_POSSIBLE_RANGES = 4;

    private static final int TEN = 10;

    /** Smaller changes are told in micrometres, as a shop speaks of them. */
    private static final double LEAST_IN_MILLIMETRES = 0.1;

    private static final double MICROMETRES = 1000;

    /** Checks the ranges. */
    public DataCheckStudy {
        if (!(significance > 0 && significance < 1)) {
            throw new IllegalArgumentException("a significance lies between 0 and 1, not at " + significance);
        }
        if (mostOutliers < 1) {
            throw new IllegalArgumentException("at least one outlier is looked for, not " + mostOutliers);
        }
        gaugeResolution.ifPresent(resolution -> {
            if (resolution.signum() <= 0) {
                throw new IllegalArgumentException("a resolution is above 0, not " + resolution.toPlainString());
            }
        });
    }

    /** 5 %, up to ten outliers, resolution from the readings. */
    public static DataCheckStudy withDefaults() {
        return new DataCheckStudy(USUAL_SIGNIFICANCE, USUAL_OUTLIERS, Optional.empty());
    }

    /** The same with the resolution of the gauge. */
    public DataCheckStudy withGaugeResolution(BigDecimal resolution) {
        return new DataCheckStudy(significance, mostOutliers, Optional.of(resolution));
    }

    /**
     * Looks at readings; never fails for want of data.
     *
     * @param sample the readings in production order
     * @param bounds the limits, for the share of the tolerance that one step takes
     * @param within the standard deviation within subgroups, in the unit of the readings; empty if there is none
     */
    public DataChecks check(Sample sample, Bounds bounds, Optional<SigmaEstimate> within) {
        long[] deviations = sample.deviations();
        DeviationTally tally = DeviationTally.of(deviations);
        boolean spreads = deviations.length > 1 && tally.minimum() < tally.maximum();
        long[] sorted = deviations.clone();
        Arrays.sort(sorted);
        List<Remark> remarks = new ArrayList<>();
        Optional<DataChecks.Discreteness> discreteness = spreads
                ? Optional.of(discreteness(sample, deviations, sorted, tally, bounds, within))
                : Optional.empty();
        discreteness.filter(DataChecks.Discreteness::isCoarse).ifPresent(found -> remarks.add(coarse(found, sample)));
        Optional<DataChecks.Ties> ties = deviations.length == 0 ? Optional.empty() : Optional.of(ties(sorted));
        Optional<DataChecks.Autocorrelation> autocorrelation =
                spreads ? Optional.of(autocorrelation(deviations)) : Optional.empty();
        autocorrelation
                .filter(DataChecks.Autocorrelation::isBeyond)
                .ifPresent(found -> remarks.add(Remark.of(
                        "readings.autocorrelated",
                        "Neighbouring readings {0|resemble each other|alternate} (lag-1 autocorrelation {1}, limits ±{2}): limits from"
                                + " moving ranges and all intervals assume that they are independent.",
                        found.lagOne() > 0,
                        text(found.lagOne()).replace('-', '\u2212'),
                        text(found.limit()))));
        Optional<DataChecks.Outliers> outliers =
                spreads && deviations.length >= 3 ? Optional.of(outliers(sample, deviations)) : Optional.empty();
        outliers.filter(found -> !found.values().isEmpty()).ifPresent(found -> remarks.add(outlying(found)));
        Optional<DataChecks.Trend> trend =
                spreads && deviations.length >= 3 ? Optional.of(trend(sample, deviations)) : Optional.empty();
        trend.filter(found -> found.p() < significance)
                .ifPresent(found -> remarks.add(Remark.of(
                        "readings.trend",
                        "The readings {0|rise|fall} by {1} along a straight line (p {2}).",
                        found.slope() > 0,
                        pace(Math.abs(found.slope()), sample),
                        small(found.p()))));
        return new DataChecks(discreteness, ties, autocorrelation, outliers, trend, remarks);
    }

    private DataChecks.Discreteness discreteness(
            Sample sample,
            long[] deviations,
            long[] sorted,
            DeviationTally tally,
            Bounds bounds,
            Optional<SigmaEstimate> within) {
        Scale scale = sample.scale();
        BigDecimal step = scale.step().multiply(BigDecimal.valueOf(commonStep(sorted)));
        if (gaugeResolution.isPresent() && gaugeResolution.get().compareTo(step) > 0) {
            step = gaugeResolution.get();
        }
        double steps = scale.stepsBetween(BigDecimal.ZERO, step);
        double sigma = within.filter(estimate -> estimate.sigma() > 0)
                .map(estimate -> scale.steps(estimate.sigma()))
                .orElseGet(tally::standardDeviation);
        OptionalDouble share = OptionalDouble.empty();
        if (bounds.lower().isPresent() && bounds.upper().isPresent()) {
            double width =
                    scale.stepsBetween(bounds.lower().get(), bounds.upper().get());
            share = width > 0 ? OptionalDouble.of(steps / width) : OptionalDouble.empty();
        }
        double meanRange = MovingRangeTally.of(deviations).mean();
        long possible = 1 + (long) (meanRange * ChartConstants.of(2).bigD4() / steps);
        double ratio = steps / sigma;
        return new DataChecks.Discreteness(
                step,
                ratio,
                share,
                distinct(sorted),
                distinct(ranges(deviations)),
                possible,
                ratio > 1 || possible < FEWEST_POSSIBLE_RANGES);
    }

    /** The greatest number of steps of which all differences are multiples. */
    private static long commonStep(long[] sorted) {
        long common = 0;
        for (int i = 1; i < sorted.length && common != 1; i++) {
            long a = Math.subtractExact(sorted[i], sorted[i - 1]);
            while (a != 0) {
                long rest = common % a;
                common = a;
                a = rest;
            }
        }
        return common;
    }

    private static long[] ranges(long[] deviations) {
        long[] ranges = new long[deviations.length - 1];
        for (int i = 0; i < ranges.length; i++) {
            ranges[i] = Math.abs(Math.subtractExact(deviations[i + 1], deviations[i]));
        }
        Arrays.sort(ranges);
        return ranges;
    }

    private static int distinct(long[] sorted) {
        int distinct = sorted.length == 0 ? 0 : 1;
        for (int i = 1; i < sorted.length; i++) {
            if (sorted[i] != sorted[i - 1]) {
                distinct++;
            }
        }
        return distinct;
    }

    private static DataChecks.Ties ties(long[] sorted) {
        int tied = 0;
        int most = 0;
        int run = 0;
        for (int i = 0; i < sorted.length; i++) {
            run = i > 0 && sorted[i] == sorted[i - 1] ? run + 1 : 1;
            most = Math.max(most, run);
            // the second of a run makes two of them tied, each further one one more
            if (run > 1) {
                tied += run == 2 ? 2 : 1;
            }
        }
        return new DataChecks.Ties(tied, most);
    }

    private DataChecks.Autocorrelation autocorrelation(long[] deviations) {
        return new DataChecks.Autocorrelation(
                LagTally.of(deviations).lagOneAutocorrelation(),
                Distributions.normalQuantile(1 - significance / 2) / Math.sqrt(deviations.length));
    }

    private DataChecks.Outliers outliers(Sample sample, long[] deviations) {
        int most = deviations.length < FEWEST_FOR_SEVERAL
                ? 1
                : Math.max(1, Math.min(mostOutliers, deviations.length / 10));
        OutlierTests.Result result = OutlierTests.generalised(deviations, most, significance);
        return new DataChecks.Outliers(
                result, result.outlierIndices().stream().map(sample::exactValue).toList());
    }

    private static DataChecks.Trend trend(Sample sample, long[] deviations) {
        LineTally line = LineTally.ofSeries(deviations, 0, deviations.length);
        double slope = line.slope();
        double error = line.slopeError();
        double t = error == 0 ? Double.POSITIVE_INFINITY : Math.abs(slope) / error;
        double p = Double.isInfinite(t) ? 0 : 2 * Distributions.studentT(-t, deviations.length - 2);
        Scale scale = sample.scale();
        return new DataChecks.Trend(
                scale.length(slope), scale.length(error), p, scale.length(line.residualStandardDeviation()));
    }

    private static Remark coarse(DataChecks.Discreteness found, Sample sample) {
        return Remark.of(
                "readings.coarse",
                "The readings go in steps of {0} {1}, {2} of their standard deviation, and take {3} different values: the gauge is too"
                        + " coarse to describe this process.",
                found.step().stripTrailingZeros().toPlainString(),
                sample.unit().symbol(),
                text(found.stepOverSigma()),
                found.distinctValues());
    }

    private Remark outlying(DataChecks.Outliers found) {
        List<Remark> named = new ArrayList<>();
        for (int i = 0; i < found.values().size(); i++) {
            named.add(Remark.of(
                    "readings.one",
                    "reading {0} ({1})",
                    Integer.toString(found.readings().get(i) + 1),
                    found.values().get(i).toPlainString()));
        }
        return Remark.of(
                "readings.outlying",
                "{0|One reading lies|{0} readings lie} farther out than a normal distribution explains (generalised extreme Studentised"
                        + " deviate, {1} %): {2}. Nothing was removed.",
                named.size(),
                text(100 * significance),
                Remark.joined(", ", named));
    }

    /** A change over as many readings as it takes to amount to a micrometre, or to ten steps in other units, if there are so many. */
    private static Remark pace(double slope, Sample sample) {
        double least = sample.unit() == Unit.MILLIMETRE
                ? 1 / MICROMETRES
                : TEN * sample.scale().length(1);
        int readings = 1;
        while (slope * readings < least && readings * TEN <= sample.size()) {
            readings *= TEN;
        }
        double change = slope * readings;
        boolean small = sample.unit() == Unit.MILLIMETRE && change < LEAST_IN_MILLIMETRES;
        return Remark.of(
                "readings.pace",
                "{0} {1} per {2|reading|{2} readings}",
                text(small ? change * MICROMETRES : change),
                (small ? Unit.MICROMETRE : sample.unit()).symbol(),
                readings);
    }

    private static String text(double value) {
        return new java.math.BigDecimal(value, new java.math.MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static Remark small(double p) {
        return p < 0.001
                ? Remark.of("readings.p-below", "below 0.001")
                : Remark.verbatim(String.format(Locale.ROOT, "%.3f", p));
    }
}
