package io.github.firstoff.study.chart;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What can be chosen of a chart besides its kind; what is empty is left to the kind.
 *
 * @param estimator the name of the estimator of spread, see {@link SpreadEstimators}
 * @param target the centre of averages and sums, in the unit of the readings
 * @param lambda the weight λ of a weighted moving average
 * @param width the width L of its limits
 * @param reference the reference value k of cumulative sums
 * @param interval their decision interval h
 * @param headStart the share of h at which they start, 0 to 0.5
 * @param dispersion what attributes do when they spread otherwise than their distribution
 */
public record ChartSettings(
        Optional<String> estimator,
        Optional<BigDecimal> target,
        OptionalDouble lambda,
        OptionalDouble width,
        OptionalDouble reference,
        OptionalDouble interval,
        OptionalDouble headStart,
        DispersionPolicy dispersion) {
    /** Everything as is usual. */
    public static final ChartSettings USUAL = new ChartSettings(
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            DispersionPolicy.CHECK);

    /** The same with an estimator of spread, by name. */
    public ChartSettings withEstimator(String name) {
        return new ChartSettings(Optional.of(name), target, lambda, width, reference, interval, headStart, dispersion);
    }

    /** The same with a stated centre of averages and sums. */
    public ChartSettings withTarget(BigDecimal centre) {
        return new ChartSettings(
                estimator, Optional.of(centre), lambda, width, reference, interval, headStart, dispersion);
    }

    /** The same with the weight and width of a weighted moving average. */
    public ChartSettings withAverage(double weight, double limits) {
        return new ChartSettings(
                estimator,
                target,
                OptionalDouble.of(weight),
                OptionalDouble.of(limits),
                reference,
                interval,
                headStart,
                dispersion);
    }

    /** The same with reference value, decision interval and head start of cumulative sums. */
    public ChartSettings withSums(double k, double h, double start) {
        return new ChartSettings(
                estimator,
                target,
                lambda,
                width,
                OptionalDouble.of(k),
                OptionalDouble.of(h),
                OptionalDouble.of(start),
                dispersion);
    }

    /** The same with another policy of dispersion. */
    public ChartSettings withDispersion(DispersionPolicy policy) {
        return new ChartSettings(estimator, target, lambda, width, reference, interval, headStart, policy);
    }

    /**
     * The estimator that was chosen.
     *
     * @throws IllegalArgumentException if there is none of that name
     */
    Optional<SpreadEstimator> spread() {
        return estimator.map(name -> SpreadEstimators.named(name)
                .orElseThrow(() -> new IllegalArgumentException("no estimator of spread is called " + name)));
    }
}
