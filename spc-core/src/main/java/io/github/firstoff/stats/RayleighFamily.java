package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;

/**
 * The Rayleigh distribution, P(X &gt; x) = exp(−x²/(2σ²)): the distance of a point from its true position when both coordinates
 * scatter normally about it with the same σ.
 *
 * <p>Maximum likelihood: σ² = Σx²/(2n); its variance is σ²/(4n).
 */
public final class RayleighFamily implements DistributionFamily {
    /** The family. */
    public static final RayleighFamily INSTANCE = new RayleighFamily();

    private RayleighFamily() {}

    @Override
    public String name() {
        return "Rayleigh";
    }

    @Override
    public List<String> parameterNames() {
        return List.of("scale");
    }

    @Override
    public boolean isPositive() {
        return true;
    }

    @Override
    public Optional<Remark> obstacle(double[] sorted) {
        return Obstacles.notNegative(sorted, 1, name())
                .or(() -> sorted[sorted.length - 1] > 0
                        ? Optional.empty()
                        : Optional.of(Remark.of("fit.all-zero", "All values are 0: nothing can be fitted.")));
    }

    @Override
    public FittedDistribution fit(double[] sorted) {
        requireFittable(sorted);
        double squares = 0;
        for (double x : sorted) {
            squares += x * x;
        }
        return of(Math.sqrt(squares / (2.0 * sorted.length)));
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        return new Member(Obstacles.positiveParameter(parameters[0], "scale"));
    }

    private record Member(double sigma) implements FittedDistribution {
        @Override
        public DistributionFamily family() {
            return INSTANCE;
        }

        @Override
        public double[] parameters() {
            return new double[] {sigma};
        }

        @Override
        public double probability(double x) {
            return x > 0 ? -Math.expm1(-x * x / (2 * sigma * sigma)) : 0;
        }

        @Override
        public double survival(double x) {
            return x > 0 ? Math.exp(-x * x / (2 * sigma * sigma)) : 1;
        }

        @Override
        public double quantile(double p) {
            return sigma * Math.sqrt(-2 * Math.log1p(-Obstacles.probability(p)));
        }

        @Override
        public double logDensity(double x) {
            return x >= 0 ? Math.log(x) - 2 * Math.log(sigma) - x * x / (2 * sigma * sigma) : Double.NEGATIVE_INFINITY;
        }

        @Override
        public Optional<double[][]> covariance(long n) {
            return Optional.of(new double[][] {{sigma * sigma / (4 * n)}});
        }
    }
}
