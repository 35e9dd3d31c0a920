package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * The normal distribution, density exp(−(x − μ)²/(2σ²))/(σ√(2π)).
 *
 * <p>Maximum likelihood: μ the mean, σ² = Σ(x − x̄)²/n (divisor n, not n − 1). Covariance diag(σ²/n, σ²/(2n)).
 */
public final class NormalFamily implements DistributionFamily {
    /** The family. */
    public static final NormalFamily INSTANCE = new NormalFamily();

    private static final double HALF_LN_2PI = 0.5 * Math.log(2 * Math.PI);

    private NormalFamily() {}

    @Override
    public String name() {
        return "normal";
    }

    @Override
    public List<String> parameterNames() {
        return List.of("mean", "standard deviation");
    }

    @Override
    public boolean isPositive() {
        return false;
    }

    @Override
    public Optional<Remark> obstacle(double[] sorted) {
        return Obstacles.spread(sorted, 2);
    }

    @Override
    public FittedDistribution fit(double[] sorted) {
        requireFittable(sorted);
        Moments m = Moments.of(sorted);
        return new Member(m.mean(), Math.sqrt(m.m2() / m.count()));
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        return new Member(
                Obstacles.finiteParameter(parameters[0], "mean"),
                Obstacles.positiveParameter(parameters[1], "standard deviation"));
    }

    private record Member(double mean, double sigma) implements FittedDistribution {
        @Override
        public DistributionFamily family() {
            return INSTANCE;
        }

        @Override
        public double[] parameters() {
            return new double[] {mean, sigma};
        }

        @Override
        public double probability(double x) {
            return Distributions.normal((x - mean) / sigma);
        }

        @Override
        public double survival(double x) {
            return Distributions.normalAbove((x - mean) / sigma);
        }

        @Override
        public double quantile(double p) {
            return mean + sigma * Distributions.normalQuantile(Obstacles.probability(p));
        }

        @Override
        public double logDensity(double x) {
            double z = (x - mean) / sigma;
            return -z * z / 2 - Math.log(sigma) - HALF_LN_2PI;
        }

        @Override
        public double sample(SplittableRandom random) {
            return mean + sigma * Uniform.normal(random);
        }

        @Override
        public Optional<double[][]> covariance(long n) {
            double v = sigma * sigma / n;
            return Optional.of(new double[][] {{v, 0}, {0, v / 2}});
        }
    }
}
