package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The Weibull distribution with two parameters, P(X &gt; x) = exp(−(x/λ)<sup>k</sup>), shape k and scale λ.
 *
 * <p>Maximum likelihood: k solves Σxᵏ ln x/Σxᵏ − 1/k = mean of ln x, λᵏ = Σxᵏ/n (NIST/SEMATECH e-Handbook 8.4.1.2). The left side
 * rises in k, so there is one root. Covariance from the expected information: n var(k) = 6k²/π², n var(λ) = (λ/k)²(1 +
 * 6(1 − γ)²/π²), n cov = 6λ(1 − γ)/π², with Euler's γ (Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 1,
 * chapter 21).
 */
public final class WeibullFamily implements DistributionFamily {
    /** The family. */
    public static final WeibullFamily INSTANCE = new WeibullFamily();

    private static final double EULER = 0.5772156649015329;

    private WeibullFamily() {}

    @Override
    public String name() {
        return "Weibull";
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
        int n = sorted.length;
        // logarithms of x over the greatest x: no power can overflow
        double greatest = Math.log(sorted[n - 1]);
        double[] logs = new double[n];
        for (int i = 0; i < n; i++) {
            logs[i] = Math.log(sorted[i]) - greatest;
        }
        Moments m = Moments.of(logs);
        // the extreme value distribution of the logarithms has the standard deviation π/(k√6)
        double guess = Math.PI / Math.sqrt(6 * m.m2() / n);
        double low = guess;
        double high = guess;
        while (slope(logs, m.mean(), low) > 0) {
            low /= 2;
        }
        while (slope(logs, m.mean(), high) < 0) {
            high *= 2;
        }
        double k = low == high
                ? guess
                : new BrentSolver(1e-14, 1e-14 * guess).solve(200, t -> slope(logs, m.mean(), t), low, high);
        double sum = 0;
        for (double log : logs) {
            sum += Math.exp(k * log);
        }
        return of(k, Math.exp(greatest + Math.log(sum / n) / k));
    }

    private static double slope(double[] logs, double meanLog, double k) {
        double powers = 0;
        double weighted = 0;
        for (double log : logs) {
            double power = Math.exp(k * log);
            powers += power;
            weighted += power * log;
        }
        return weighted / powers - 1 / k - meanLog;
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        return new Member(
                Obstacles.positiveParameter(parameters[0], "shape"),
                Obstacles.positiveParameter(parameters[1], "scale"));
    }

    private record Member(double shape, double scale) implements FittedDistribution {
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
            return x > 0 ? -Math.expm1(-Math.pow(x / scale, shape)) : 0;
        }

        @Override
        public double survival(double x) {
            return x > 0 ? Math.exp(-Math.pow(x / scale, shape)) : 1;
        }

        @Override
        public double quantile(double p) {
            return scale * Math.pow(-Math.log1p(-Obstacles.probability(p)), 1 / shape);
        }

        @Override
        public double logDensity(double x) {
            if (!(x > 0)) {
                return Double.NEGATIVE_INFINITY;
            }
            double log = Math.log(x / scale);
            return Math.log(shape / scale) + (shape - 1) * log - Math.exp(shape * log);
        }

        @Override
        public Optional<double[][]> covariance(long n) {
            double c = 6 / (Math.PI * Math.PI);
            double cov = c * scale * (1 - EULER) / n;
            double ratio = scale / shape;
            return Optional.of(new double[][] {
                {c * shape * shape / n, cov}, {cov, ratio * ratio * (1 + c * (1 - EULER) * (1 - EULER)) / n}
            });
        }
    }
}
