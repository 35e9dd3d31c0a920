package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The folded normal distribution: |N(μ, σ)| with μ ≥ 0; the half-normal for μ = 0. Deviations of form, squareness or run-out whose sign
 * is lost.
 *
 * <p>Maximum likelihood: σ² = mean of x² − μ², and μ solves μ = mean of x tanh(μx/σ²) (Tsagris, Beneki and Hassani 2014, Mathematics
 * 2, 12–28). Where the fourth moment is at least three times the square of the second, the greatest likelihood lies at μ = 0. There
 * the information about μ vanishes, so the family offers no covariance: intervals come from the likelihood itself
 * ({@link FittedDistribution#likelihoodBoundary}).
 */
public final class FoldedNormalFamily implements DistributionFamily {
    /** The family. */
    public static final FoldedNormalFamily INSTANCE = new FoldedNormalFamily();

    private static final double HALF_LN_2PI = 0.5 * Math.log(2 * Math.PI);

    private FoldedNormalFamily() {}

    @Override
    public String name() {
        return "folded normal";
    }

    @Override
    public List<String> parameterNames() {
        return List.of("mean before folding", "standard deviation before folding");
    }

    @Override
    public boolean isPositive() {
        return true;
    }

    @Override
    public Optional<Remark> obstacle(double[] sorted) {
        return Obstacles.notNegative(sorted, 2, name());
    }

    @Override
    public FittedDistribution fit(double[] sorted) {
        requireFittable(sorted);
        int n = sorted.length;
        double greatest = sorted[n - 1];
        double[] x = new double[n];
        double second = 0;
        double fourth = 0;
        for (int i = 0; i < n; i++) {
            x[i] = sorted[i] / greatest;
            double square = x[i] * x[i];
            second += square / n;
            fourth += square * square / n;
        }
        double m2 = second;
        // μ = mean of x tanh(μx/σ²) as μ³(1/m2 − m4/(3 m2³)) + … near 0: no root but 0 if the fourth moment is large
        if (fourth >= 3 * m2 * m2) {
            return of(0, greatest * Math.sqrt(m2));
        }
        double root = Math.sqrt(m2);
        double high = root * (1 - 1e-12);
        double low = root;
        do {
            low /= 2;
        } while (balance(x, m2, low) <= 0 && low > 1e-4 * root);
        if (balance(x, m2, low) <= 0) {
            return of(0, greatest * root);
        }
        if (balance(x, m2, high) >= 0) {
            // the spread is so small beside the mean that folding is nothing: the plain normal
            Moments m = Moments.of(sorted);
            return of(m.mean(), Math.sqrt(m.m2() / n));
        }
        double mu = new BrentSolver(1e-13, 1e-15).solve(300, t -> balance(x, m2, t), low, high);
        return of(greatest * mu, greatest * Math.sqrt((root - mu) * (root + mu)));
    }

    private static double balance(double[] x, double m2, double mu) {
        double variance = m2 - mu * mu;
        double sum = 0;
        for (double value : x) {
            sum += value * Math.tanh(mu * value / variance);
        }
        return sum / x.length - mu;
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        double mu = Obstacles.finiteParameter(parameters[0], "mean before folding");
        if (mu < 0) {
            throw new IllegalArgumentException("the mean before folding is not below 0, not " + mu);
        }
        return new Member(mu, Obstacles.positiveParameter(parameters[1], "standard deviation before folding"));
    }

    private record Member(double mu, double sigma) implements FittedDistribution {
        @Override
        public DistributionFamily family() {
            return INSTANCE;
        }

        @Override
        public double[] parameters() {
            return new double[] {mu, sigma};
        }

        @Override
        public double probability(double x) {
            if (!(x > 0)) {
                return 0;
            }
            double above = (x - mu) / sigma;
            return above < 0 ? Distributions.normal(above) - Distributions.normal((-x - mu) / sigma) : 1 - survival(x);
        }

        @Override
        public double survival(double x) {
            return x > 0
                    ? Distributions.normalAbove((x - mu) / sigma) + Distributions.normalAbove((x + mu) / sigma)
                    : 1;
        }

        @Override
        public double quantile(double p) {
            Obstacles.probability(p);
            double high = mu + sigma;
            while (probability(high) < p) {
                high += high + sigma;
            }
            double top = high;
            return p < 0.5
                    ? new BrentSolver(1e-14, 1e-16 * top).solve(500, x -> probability(x) / p - 1, 0, top)
                    : new BrentSolver(1e-14, 1e-16 * top).solve(500, x -> 1 - survival(x) / (1 - p), 0, top);
        }

        @Override
        public double logDensity(double x) {
            if (!(x >= 0)) {
                return Double.NEGATIVE_INFINITY;
            }
            double z = (x - mu) / sigma;
            return -z * z / 2 - Math.log(sigma) - HALF_LN_2PI + Math.log1p(Math.exp(-2 * x * mu / (sigma * sigma)));
        }

        @Override
        public List<FittedDistribution> likelihoodBoundary(double[] sorted, double level) {
            return new FoldedNormalRegion(sorted, this, level).boundary(mu / sigma);
        }

        @Override
        public double sample(SplittableRandom random) {
            return Math.abs(mu + sigma * Uniform.normal(random));
        }
    }
}
