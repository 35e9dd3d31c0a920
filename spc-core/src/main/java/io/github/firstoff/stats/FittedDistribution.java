package io.github.firstoff.stats;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** One member of a {@link DistributionFamily}. Immutable. */
public interface FittedDistribution {
    /** The family. */
    DistributionFamily family();

    /** A copy of the parameters, in the order of {@link DistributionFamily#parameterNames}. */
    double[] parameters();

    /** P(X ≤ x). */
    double probability(double x);

    /** P(X &gt; x), accurate far out. */
    double survival(double x);

    /**
     * The x with P(X ≤ x) = p; infinite where the family has no finite one.
     *
     * @param p strictly between 0 and 1
     */
    double quantile(double p);

    /** ln of the density; negative infinity outside the support. */
    double logDensity(double x);

    /** A random value. */
    default double sample(SplittableRandom random) {
        return quantile(Uniform.open(random));
    }

    /**
     * The large-sample covariance matrix of the maximum likelihood estimates from {@code n} values; empty for families whose
     * estimates have none that could be trusted (parameters on a boundary, estimates by percentiles).
     */
    default Optional<double[][]> covariance(long n) {
        return Optional.empty();
    }

    /**
     * Members on the boundary of the likelihood region of this fit, for families without a {@link #covariance} that have one: the
     * extremes of a function over them are the ends of its profile likelihood interval. Empty for other families.
     *
     * @param sorted the values that this distribution was fitted to, in ascending order
     * @param level the confidence level, between 0 and 1
     */
    default List<FittedDistribution> likelihoodBoundary(double[] sorted, double level) {
        return List.of();
    }

    /** The log-likelihood of values. */
    default double logLikelihood(double[] values) {
        double sum = 0;
        for (double x : values) {
            sum += logDensity(x);
        }
        return sum;
    }

    /** Uniform numbers that are never 0. */
    final class Uniform {
        private static final double STEP = 0x1p-53;

        private Uniform() {}

        /** A number strictly between 0 and 1. */
        public static double open(SplittableRandom random) {
            return ((random.nextLong() >>> 11) + 0.5) * STEP;
        }

        /** A standard normal number (Marsaglia and Bray 1964, polar method; the second of each pair is not kept). */
        public static double normal(SplittableRandom random) {
            while (true) {
                double u = 2 * open(random) - 1;
                double v = 2 * open(random) - 1;
                double s = u * u + v * v;
                if (s < 1 && s > 0) {
                    return u * Math.sqrt(-2 * Math.log(s) / s);
                }
            }
        }
    }
}
