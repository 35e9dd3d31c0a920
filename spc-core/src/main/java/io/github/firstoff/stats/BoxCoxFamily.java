package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * Positive values whose power transform (x<sup>λ</sup> − 1)/λ, or ln x for λ = 0, is normal with mean μ and standard deviation σ.
 *
 * <p>Maximum likelihood: λ makes −(n/2) ln σ²(λ) + (λ − 1) Σ ln x greatest, where σ²(λ) is the variance (divisor n) of the
 * transformed values (Box and Cox 1964, Journal of the Royal Statistical Society B 26, 211–252; NIST/SEMATECH e-Handbook 6.5.2). λ is
 * sought from −5 to 5. The interval of λ holds all values whose log-likelihood lies within χ²/2 of the greatest.
 *
 * <p>For λ ≠ 0 the transform is bounded on one side. A percentile beyond that bound is 0 (λ &gt; 0) or infinite (λ &lt; 0).
 */
public final class BoxCoxFamily implements DistributionFamily {
    /** The family. */
    public static final BoxCoxFamily INSTANCE = new BoxCoxFamily();

    /** The greatest absolute value of λ that is tried. */
    public static final double FURTHEST = 5;

    /** Below this λ ln x the transform is its series: the power would lose digits. */
    private static final double NEAR_LOGARITHM = 1e-10;

    private BoxCoxFamily() {}

    @Override
    public String name() {
        return "Box-Cox";
    }

    @Override
    public List<String> parameterNames() {
        return List.of("lambda", "mean of the transformed", "standard deviation of the transformed");
    }

    @Override
    public boolean isPositive() {
        return true;
    }

    @Override
    public Optional<Remark> obstacle(double[] sorted) {
        return Obstacles.positive(sorted, 3, name());
    }

    @Override
    public FittedDistribution fit(double[] sorted) {
        requireFittable(sorted);
        Profile profile = new Profile(sorted);
        double lambda = profile.best();
        return profile.member(lambda);
    }

    /** The transform of x &gt; 0. */
    public static double transform(double x, double lambda) {
        double log = Math.log(x);
        return Math.abs(lambda * log) < NEAR_LOGARITHM
                ? log * (1 + lambda * log / 2)
                : Math.expm1(lambda * log) / lambda;
    }

    /** The profile log-likelihood of λ, without constants, as in the class comment. */
    public static double logLikelihood(double[] values, double lambda) {
        return new Profile(values).at(lambda);
    }

    /** The interval of λ by the likelihood ratio; ends at ±{@value #FURTHEST} if it reaches further. */
    public static double[] lambdaInterval(double[] values, double level) {
        Profile profile = new Profile(values);
        double best = profile.best();
        double drop = profile.at(best) - Distributions.chiSquaredQuantile(level, 1) / 2;
        return new double[] {profile.end(best, -FURTHEST, drop), profile.end(best, FURTHEST, drop)};
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        return new Member(
                Obstacles.finiteParameter(parameters[0], "lambda"),
                NormalFamily.INSTANCE.of(parameters[1], parameters[2]));
    }

    /** The likelihood of λ for values divided by their geometric mean, which leaves λ as it is and avoids overflow. */
    private static final class Profile {
        private final double[] logs;
        private final double meanLog;

        Profile(double[] values) {
            logs = new double[values.length];
            for (int i = 0; i < logs.length; i++) {
                logs[i] = Math.log(values[i]);
            }
            meanLog = Moments.of(logs).mean();
            for (int i = 0; i < logs.length; i++) {
                logs[i] -= meanLog;
            }
        }

        double at(double lambda) {
            int n = logs.length;
            double sum = 0;
            double squares = 0;
            for (double log : logs) {
                double y = Math.abs(lambda * log) < NEAR_LOGARITHM
                        ? log * (1 + lambda * log / 2)
                        : Math.expm1(lambda * log) / lambda;
                sum += y;
                squares += y * y;
            }
            double variance = (squares - sum * sum / n) / n;
            // σ²(λ) scales with the geometric mean to the power 2λ: the two terms of the mean combine to −n ln
            return -n / 2.0 * Math.log(variance) - n * meanLog;
        }

        double best() {
            return new BrentOptimizer(1e-9, 1e-9)
                    .optimize(
                            new MaxEval(500),
                            new UnivariateObjectiveFunction(this::at),
                            GoalType.MAXIMIZE,
                            new SearchInterval(-FURTHEST, FURTHEST))
                    .getPoint();
        }

        double end(double best, double limit, double drop) {
            return at(limit) >= drop
                    ? limit
                    : new BrentSolver(1e-10, 1e-10)
                            .solve(300, t -> at(t) - drop, Math.min(best, limit), Math.max(best, limit));
        }

        Member member(double lambda) {
            double[] y = new double[logs.length];
            for (int i = 0; i < y.length; i++) {
                double log = logs[i] + meanLog;
                y[i] = Math.abs(lambda * log) < NEAR_LOGARITHM
                        ? log * (1 + lambda * log / 2)
                        : Math.expm1(lambda * log) / lambda;
            }
            return new Member(lambda, NormalFamily.INSTANCE.fit(y));
        }
    }

    private record Member(double lambda, FittedDistribution transformed) implements FittedDistribution {
        @Override
        public DistributionFamily family() {
            return INSTANCE;
        }

        @Override
        public double[] parameters() {
            double[] normal = transformed.parameters();
            return new double[] {lambda, normal[0], normal[1]};
        }

        @Override
        public double probability(double x) {
            return x > 0 ? transformed.probability(transform(x, lambda)) : 0;
        }

        @Override
        public double survival(double x) {
            return x > 0 ? transformed.survival(transform(x, lambda)) : 1;
        }

        @Override
        public double quantile(double p) {
            double y = transformed.quantile(p);
            if (Math.abs(lambda * y) < NEAR_LOGARITHM) {
                return Math.exp(y);
            }
            double base = lambda * y;
            if (base <= -1) {
                return lambda > 0 ? 0 : Double.POSITIVE_INFINITY;
            }
            return Math.exp(Math.log1p(base) / lambda);
        }

        @Override
        public double logDensity(double x) {
            return x > 0
                    ? transformed.logDensity(transform(x, lambda)) + (lambda - 1) * Math.log(x)
                    : Double.NEGATIVE_INFINITY;
        }
    }
}
