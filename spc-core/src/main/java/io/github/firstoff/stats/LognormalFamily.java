package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * The lognormal distribution with two parameters: ln X is normal with mean μ and standard deviation σ.
 *
 * <p>Maximum likelihood: mean and standard deviation (divisor n) of the logarithms. The origin is the bound from which the values
 * are measured and is not estimated: the likelihood of a third parameter has no greatest value (Hill 1963, Journal of the American
 * Statistical Association 58, 72–76). A lognormal with free origin is the system S<sub>L</sub> of {@link JohnsonFamily}.
 */
public final class LognormalFamily implements DistributionFamily {
    /** The family. */
    public static final LognormalFamily INSTANCE = new LognormalFamily();

    private LognormalFamily() {}

    @Override
    public String name() {
        return "lognormal";
    }

    @Override
    public List<String> parameterNames() {
        return List.of("mean of ln", "standard deviation of ln");
    }

    @Override
    public boolean isPositive() {
        return true;
    }

    @Override
    public Optional<Remark> obstacle(double[] sorted) {
        return Obstacles.positive(sorted, 2, name());
    }

    @Override
    public FittedDistribution fit(double[] sorted) {
        requireFittable(sorted);
        double[] logs = new double[sorted.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = Math.log(sorted[i]);
        }
        return new Member(NormalFamily.INSTANCE.fit(logs));
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        return new Member(NormalFamily.INSTANCE.of(parameters));
    }

    private record Member(FittedDistribution ofLogs) implements FittedDistribution {
        @Override
        public DistributionFamily family() {
            return INSTANCE;
        }

        @Override
        public double[] parameters() {
            return ofLogs.parameters();
        }

        @Override
        public double probability(double x) {
            return x > 0 ? ofLogs.probability(Math.log(x)) : 0;
        }

        @Override
        public double survival(double x) {
            return x > 0 ? ofLogs.survival(Math.log(x)) : 1;
        }

        @Override
        public double quantile(double p) {
            return Math.exp(ofLogs.quantile(p));
        }

        @Override
        public double logDensity(double x) {
            return x > 0 ? ofLogs.logDensity(Math.log(x)) - Math.log(x) : Double.NEGATIVE_INFINITY;
        }

        @Override
        public double sample(SplittableRandom random) {
            return Math.exp(ofLogs.sample(random));
        }

        @Override
        public Optional<double[][]> covariance(long n) {
            return ofLogs.covariance(n);
        }
    }
}
