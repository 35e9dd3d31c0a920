package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.stats.PlottingPosition;
import io.github.firstoff.stats.ProbabilityPlot;
import io.github.firstoff.stats.ShapiroWilk;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The distribution by which performance is stated, and why it and no other.
 *
 * @param method the family
 * @param fitted the fit, of distances from {@code origin} in the unit of the readings; empty if there is none
 * @param origin the value from which the fitted distribution measures: the natural bound, 0, or the reference of the sample
 * @param fixed whether the plan fixed the family
 * @param evidence the families considered, the best first
 * @param shapiroWilk the test of normality of Shapiro and Wilk, ties spread as for A²; empty for fewer than 3 or more than 5000 readings
 * @param why why this family, a sentence
 */
public record DistributionChoice(
        CapabilityMethod method,
        Optional<FittedDistribution> fitted,
        BigDecimal origin,
        boolean fixed,
        List<DistributionCandidate> evidence,
        Optional<ShapiroWilk.Result> shapiroWilk,
        Remark why) {
    /** Copies the evidence. */
    public DistributionChoice {
        evidence = List.copyOf(evidence);
    }

    /** Why this family, in English. */
    public String reason() {
        return why.english();
    }

    /** The evidence on the chosen family; empty if there was nothing to fit. */
    public Optional<DistributionCandidate> chosen() {
        return evidence.stream()
                .filter(candidate -> candidate.method().equals(method))
                .findFirst();
    }

    /**
     * The percentile of the readings themselves (not of their distance from the origin), in their unit; empty without a fit, or where
     * the fitted distribution has no finite percentile.
     *
     * @param probability strictly between 0 and 1
     */
    public OptionalDouble percentile(Sample sample, double probability) {
        if (fitted.isEmpty()) {
            return OptionalDouble.empty();
        }
        double distance = fitted.get().quantile(probability);
        Scale scale = sample.scale();
        return Double.isFinite(distance)
                ? OptionalDouble.of(scale.value(scale.deviation(origin) + scale.steps(distance)))
                : OptionalDouble.empty();
    }

    /** The probability plot of the readings, as distances from the origin; empty without a fit or a spread. */
    public Optional<ProbabilityPlot> probabilityPlot(Sample sample, PlottingPosition positions) {
        double[] sorted = Distances.sorted(sample, origin);
        if (fitted.isEmpty() || sorted.length < 2 || sorted[0] == sorted[sorted.length - 1]) {
            return Optional.empty();
        }
        return Optional.of(ProbabilityPlot.of(sorted, fitted.get(), positions));
    }

    /** Readings as distances from an origin, in their unit. */
    static final class Distances {
        private Distances() {}

        static double[] sorted(Sample sample, BigDecimal origin) {
            long[] deviations = sample.deviations();
            Arrays.sort(deviations);
            double offset = sample.scale().stepsBetween(origin, sample.scale().reference());
            double[] distances = new double[deviations.length];
            for (int i = 0; i < distances.length; i++) {
                // whole steps below 2^53: the sum is exact wherever the origin lies on a step
                distances[i] = sample.scale().length(deviations[i] + offset);
            }
            return distances;
        }

        /**
         * The same with tied readings spread evenly over the step that made them equal, a reading on a bound over its half step
         * above it. Rounding makes ties, and the test of a continuous distribution takes ties for evidence against it: of 125 normal
         * readings in steps of half their standard deviation it would refute every sample.
         */
        static double[] untied(double[] sorted, double step, boolean positive) {
            double[] spread = new double[sorted.length];
            int from = 0;
            while (from < sorted.length) {
                int to = from + 1;
                while (to < sorted.length && sorted[to] == sorted[from]) {
                    to++;
                }
                double low = sorted[from] - step / 2;
                if (positive && low < 0) {
                    low = 0;
                }
                double width = sorted[from] + step / 2 - low;
                for (int i = from; i < to; i++) {
                    // a single reading stays where it is, unless it stands on the bound itself
                    spread[i] = to - from == 1 && sorted[from] - step / 2 >= low
                            ? sorted[from]
                            : low + width * (i - from + 0.5) / (to - from);
                }
                from = to;
            }
            return spread;
        }
    }
}
