package io.github.firstoff.study.capability;

import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.stats.ParametricBootstrap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Performance by the percentiles of a fitted distribution (ISO 22514-2): with X₁, X₂, X₃ its percentiles at 0.135 %, 50 % and
 * 99.865 %, Pp = (U − L)/(X₃ − X₁), PPL = (X₂ − L)/(X₂ − X₁), PPU = (U − X₂)/(X₃ − X₂).
 *
 * @param lower the lower limit as a distance from the origin of the fit
 * @param upper the upper limit, likewise
 * @param tail the outer probability
 */
record PercentileIndices(OptionalDouble lower, OptionalDouble upper, double tail) {
    /** The outer probability of ISO 22514-2. */
    static final double USUAL_TAIL = 0.00135;

    double both(FittedDistribution d) {
        return (upper.orElseThrow() - lower.orElseThrow()) / (d.quantile(1 - tail) - d.quantile(tail));
    }

    double below(FittedDistribution d) {
        double middle = d.quantile(0.5);
        return (middle - lower.orElseThrow()) / (middle - d.quantile(tail));
    }

    double above(FittedDistribution d) {
        double middle = d.quantile(0.5);
        return (upper.orElseThrow() - middle) / (d.quantile(1 - tail) - middle);
    }

    double least(FittedDistribution d) {
        return Math.min(
                lower.isPresent() ? below(d) : Double.POSITIVE_INFINITY,
                upper.isPresent() ? above(d) : Double.POSITIVE_INFINITY);
    }

    /** The share outside, as the normal score z with that share above it. */
    double scoreOutside(FittedDistribution d) {
        return Scores.ofShare((lower.isPresent() ? d.probability(lower.getAsDouble()) : 0)
                + (upper.isPresent() ? d.survival(upper.getAsDouble()) : 0));
    }

    /** Values, intervals and lower bounds of functions of the fit. */
    static final class Uncertain {
        /** Replicates behind a percentile interval. */
        private static final int REPLICATES = 499;

        private static final double RELATIVE_STEP = 1e-5;
        /** More readings take too long along a likelihood boundary. */
        private static final int MOST_ALONG_A_BOUNDARY = 20_000;

        private final FittedDistribution fitted;
        private final int n;
        private final double level;
        private final List<ToDoubleFunction<FittedDistribution>> functions;
        private final Optional<double[][]> covariance;
        private final List<FittedDistribution> boundary;
        private final Optional<ParametricBootstrap.Result> bootstrap;

        /** Of a distribution that was fitted to these values, in ascending order. */
        Uncertain(
                FittedDistribution fitted,
                double[] sorted,
                double level,
                List<ToDoubleFunction<FittedDistribution>> functions) {
            this.fitted = fitted;
            this.n = sorted.length;
            this.level = level;
            this.functions = List.copyOf(functions);
            covariance = fitted.covariance(n);
            boundary = covariance.isEmpty() && n <= MOST_ALONG_A_BOUNDARY
                    ? fitted.likelihoodBoundary(sorted, level)
                    : List.of();
            bootstrap = covariance.isEmpty() && boundary.isEmpty() && n <= DistributionChooser.MOST_SIMULATED
                    ? ParametricBootstrap.run(
                            fitted,
                            n,
                            REPLICATES,
                            functions.stream().map(ParametricBootstrap::ofFit).toList())
                    : Optional.empty();
        }

        double value(int function) {
            return functions.get(function).applyAsDouble(fitted);
        }

        Optional<Interval> interval(int function) {
            return ends(function).map(ends -> new Interval(ends[0], ends[1], level, method()));
        }

        private String method() {
            return covariance.isPresent() ? "delta" : boundary.isEmpty() ? "bootstrap" : "profile likelihood";
        }

        /**
         * By the delta method that of the level; otherwise the lower end of the two-sided interval: one-sided bounds of the level
         * itself held in 88 to 92 of 100 simulated samples where 95 were claimed, these hold at least as often as claimed.
         */
        OptionalDouble lowerBound(int function) {
            Optional<double[]> bounds = covariance.isPresent() ? byDelta(function, 1 - level, level) : ends(function);
            return bounds.filter(ends -> Double.isFinite(ends[0]))
                    .map(ends -> OptionalDouble.of(ends[0]))
                    .orElseGet(OptionalDouble::empty);
        }

        /** May reach infinity where the distribution is bounded and the limit lies beyond its bound. */
        private Optional<double[]> ends(int function) {
            double value = value(function);
            if (Double.isNaN(value)) {
                return Optional.empty();
            }
            double tail = (1 - level) / 2;
            if (covariance.isPresent()) {
                return byDelta(function, tail, 1 - tail);
            }
            if (!boundary.isEmpty()) {
                double least = value;
                double most = value;
                for (FittedDistribution member : boundary) {
                    double there = functions.get(function).applyAsDouble(member);
                    least = Math.min(least, there);
                    most = Math.max(most, there);
                }
                return Optional.of(new double[] {least, most});
            }
            return bootstrap.map(result ->
                    new double[] {result.corrected(function, value, tail), result.corrected(function, value, 1 - tail)
                    });
        }

        private Optional<double[]> byDelta(int function, double low, double high) {
            double value = value(function);
            if (!Double.isFinite(value)) {
                return Optional.empty();
            }
            double error = standardError(functions.get(function), covariance.orElseThrow());
            return Optional.of(new double[] {
                value + Distributions.normalQuantile(low) * error, value + Distributions.normalQuantile(high) * error
            });
        }

        /** √(g′Vg) with the gradient by central differences. */
        private double standardError(ToDoubleFunction<FittedDistribution> function, double[][] v) {
            double[] at = fitted.parameters();
            double[] gradient = new double[at.length];
            for (int i = 0; i < at.length; i++) {
                // in units of the parameter's own error times √n: right for a mean of 0 as well
                double step = RELATIVE_STEP * Math.sqrt(v[i][i] * n);
                double[] up = at.clone();
                double[] down = at.clone();
                up[i] += step;
                down[i] -= step;
                gradient[i] = (function.applyAsDouble(fitted.family().of(up))
                                - function.applyAsDouble(fitted.family().of(down)))
                        / (up[i] - down[i]);
            }
            double sum = 0;
            for (int i = 0; i < at.length; i++) {
                for (int k = 0; k < at.length; k++) {
                    sum += gradient[i] * v[i][k] * gradient[k];
                }
            }
            return Math.sqrt(sum);
        }
    }

    /** The functions of a family of indices, in the order both, below, above, least, score. */
    List<ToDoubleFunction<FittedDistribution>> functions() {
        List<ToDoubleFunction<FittedDistribution>> functions = new ArrayList<>();
        functions.add(d -> lower.isPresent() && upper.isPresent() ? both(d) : Double.NaN);
        functions.add(d -> lower.isPresent() ? below(d) : Double.NaN);
        functions.add(d -> upper.isPresent() ? above(d) : Double.NaN);
        functions.add(this::least);
        functions.add(this::scoreOutside);
        return functions;
    }
}
