package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.statistics.distribution.GammaDistribution;

/**
 * The gamma distribution, density x<sup>k−1</sup>e<sup>−x/θ</sup>/(Γ(k)θ<sup>k</sup>), shape k and scale θ.
 *
 * <p>Maximum likelihood: k solves ln k − ψ(k) = ln x̄ − mean of ln x, θ = x̄/k (NIST/SEMATECH e-Handbook 1.3.6.6.11; Choi and Wette
 * 1969, Technometrics 11, 683–690). Covariance: the inverse of n times the expected information ((ψ′(k), 1/θ), (1/θ, k/θ²)).
 */
public final class GammaFamily implements DistributionFamily {
    /** The family. */
    public static final GammaFamily INSTANCE = new GammaFamily();

    private GammaFamily() {}

    @Override
    public String name() {
        return "gamma";
    }

    @Override
    public List<String> parameterNames() {
        return List.of("shape", "scale");
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
        double mean = Moments.of(sorted).mean();
        double excess = 0;
        for (double x : sorted) {
            // ln x̄ − mean of ln x, term by term: no two large logarithms cancel
            excess -= Math.log(x / mean);
        }
        double s = excess / sorted.length;
        // 1/(2k) < ln k − ψ(k) < 1/k
        double k = new BrentSolver(1e-14, 1e-15).solve(200, t -> 1 - logLessDigamma(t) / s, 0.49 / s, 1.01 / s);
        return of(k, mean / k);
    }

    /** ln k − ψ(k); by its asymptotic series where the difference would cancel. */
    private static double logLessDigamma(double k) {
        if (k > 50) {
            double r = 1 / k;
            double r2 = r * r;
            return r * (0.5 + r * (1.0 / 12 - r2 * (1.0 / 120 - r2 * (1.0 / 252 - r2 / 240))));
        }
        return Math.log(k) - Gamma.digamma(k);
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        double shape = Obstacles.positiveParameter(parameters[0], "shape");
        double scale = Obstacles.positiveParameter(parameters[1], "scale");
        return new Member(shape, scale, GammaDistribution.of(shape, scale));
    }

    private record Member(double shape, double scale, GammaDistribution distribution) implements FittedDistribution {
        @Override
        public DistributionFamily family() {
            return INSTANCE;
        }

        @Override
        public double[] parameters() {
            return new double[] {shape, scale};
        }

        @Override
        public double probability(double x) {
            return distribution.cumulativeProbability(x);
        }

        @Override
        public double survival(double x) {
            return distribution.survivalProbability(x);
        }

        @Override
        public double quantile(double p) {
            return p <= 0.5
                    ? distribution.inverseCumulativeProbability(Obstacles.probability(p))
                    : distribution.inverseSurvivalProbability(1 - Obstacles.probability(p));
        }

        @Override
        public double logDensity(double x) {
            return x > 0 ? distribution.logDensity(x) : Double.NEGATIVE_INFINITY;
        }

        /** Marsaglia and Tsang 2000, ACM Transactions on Mathematical Software 26, 363–372. */
        @Override
        public double sample(SplittableRandom random) {
            double a = shape < 1 ? shape + 1 : shape;
            double d = a - 1.0 / 3;
            double c = 1 / Math.sqrt(9 * d);
            while (true) {
                double x = Uniform.normal(random);
                double v = 1 + c * x;
                if (v > 0) {
                    v = v * v * v;
                    if (Math.log(Uniform.open(random)) < x * x / 2 + d * (1 - v + Math.log(v))) {
                        double power = shape < 1 ? Math.pow(Uniform.open(random), 1 / shape) : 1;
                        return scale * d * v * power;
                    }
                }
            }
        }

        @Override
        public Optional<double[][]> covariance(long n) {
            double a = Gamma.trigamma(shape);
            double b = 1 / scale;
            double c = shape / (scale * scale);
            double det = (a * c - b * b) * n;
            return Optional.of(new double[][] {{c / det, -b / det}, {-b / det, a / det}});
        }
    }
}
