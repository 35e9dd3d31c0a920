package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The system of Johnson: z = γ + η g((x − ξ)/λ) is standard normal, with g = arsinh (S<sub>U</sub>, unbounded), ln(u/(1 − u))
 * (S<sub>B</sub>, bounded on both sides) or ln u (S<sub>L</sub>, the lognormal with free origin; λ = −1 for a long lower tail).
 *
 * <p>Fitted by four percentiles (Slifker and Shapiro 1980, Technometrics 22, 239–246): with the sample percentiles at the normal scores
 * ±z and ±3z, m = x₃ᶻ − xᶻ, n = x₋ᶻ − x₋₃ᶻ, p = xᶻ − x₋ᶻ, the ratio mn/p² above 1 means S<sub>U</sub>, below 1 S<sub>B</sub>, and
 * within {@value #LOGNORMAL_BAND} of 1 S<sub>L</sub>. The percentile at probability P is the ordered value number nP + ½,
 * interpolated. z runs from 0.25 to 1.25 in steps of 0.05, and the fit whose transformed values have the greatest Shapiro–Wilk W is kept
 * (Chou, Polansky and Mason 1998, Journal of Quality Technology 30, 133–141). A bounded fit that leaves a value outside its bounds
 * is dropped.
 *
 * <p>Not maximum likelihood: the likelihood of S<sub>B</sub> and S<sub>L</sub> has no greatest value. Intervals must come from
 * simulation. Four parameters from few values predict tails badly; 50 values are the least to be fitted, 100 are better (common
 * practice).
 */
public final class JohnsonFamily implements DistributionFamily {
    /** The family. */
    public static final JohnsonFamily INSTANCE = new JohnsonFamily();

    /** How near to 1 the ratio mn/p² means lognormal (common practice). */
    public static final double LOGNORMAL_BAND = 0.001;

    /** The fewest values that are fitted. */
    public static final int FEWEST = 50;

    private static final double FIRST_Z = 0.25;
    private static final double STEP_Z = 0.05;
    private static final int STEPS_Z = 20;
    private static final double HALF_LN_2PI = 0.5 * Math.log(2 * Math.PI);

    private JohnsonFamily() {}

    /** The three curves of the system. */
    public enum Curve {
        /** Bounded on both sides. */
        BOUNDED("SB", 0),
        /** Lognormal with free origin. */
        LOGNORMAL("SL", 1),
        /** Unbounded. */
        UNBOUNDED("SU", 2);

        private final String symbol;
        private final int code;

        Curve(String symbol, int code) {
            this.symbol = symbol;
            this.code = code;
        }

        /** The symbol in the literature: SB, SL, SU. */
        public String symbol() {
            return symbol;
        }
    }

    @Override
    public String name() {
        return "Johnson";
    }

    /** The curve is the first parameter: 0 for SB, 1 for SL, 2 for SU. */
    @Override
    public List<String> parameterNames() {
        return List.of("curve", "gamma", "eta", "xi", "lambda");
    }

    @Override
    public String estimator() {
        return "percentiles (Slifker and Shapiro)";
    }

    @Override
    public boolean isPositive() {
        return false;
    }

    @Override
    public Optional<Remark> obstacle(double[] sorted) {
        Optional<Remark> obstacle = Obstacles.spread(sorted, FEWEST);
        if (obstacle.isPresent()) {
            return obstacle;
        }
        return best(sorted) == null
                ? Optional.of(Remark.of(
                        "fit.no-johnson-curve", "No Johnson curve passes through the percentiles of the values."))
                : Optional.empty();
    }

    @Override
    public FittedDistribution fit(double[] sorted) {
        Obstacles.spread(sorted, FEWEST).ifPresent(reason -> {
            throw new IllegalArgumentException(reason.english());
        });
        Member best = best(sorted);
        if (best == null) {
            throw new IllegalArgumentException("No Johnson curve passes through the percentiles of the values.");
        }
        return best;
    }

    @Override
    public FittedDistribution of(double... parameters) {
        Obstacles.count(parameters, this);
        Curve which = Arrays.stream(Curve.values())
                .filter(curve -> curve.code == parameters[0])
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("the curve is 0 (SB), 1 (SL) or 2 (SU), not " + parameters[0]));
        double lambda = Obstacles.finiteParameter(parameters[4], "lambda");
        if (which == Curve.LOGNORMAL ? Math.abs(lambda) != 1 : !(lambda > 0)) {
            throw new IllegalArgumentException("lambda is above 0, and 1 or −1 for SL, not " + lambda);
        }
        return new Member(
                which,
                Obstacles.finiteParameter(parameters[1], "gamma"),
                Obstacles.positiveParameter(parameters[2], "eta"),
                Obstacles.finiteParameter(parameters[3], "xi"),
                lambda);
    }

    /** Which curve a member of this family is. */
    public static Curve curve(FittedDistribution member) {
        if (!(member instanceof Member johnson)) {
            throw new IllegalArgumentException(
                    "a member of the Johnson system, not of " + member.family().name());
        }
        return johnson.curve;
    }

    private static @Nullable Member best(double[] sorted) {
        double[] weights = ShapiroWilk.weights(sorted.length);
        double[] transformed = new double[sorted.length];
        Member best = null;
        double bestW = 0;
        for (int i = 0; i <= STEPS_Z; i++) {
            Member candidate = through(sorted, FIRST_Z + i * STEP_Z);
            if (candidate == null || !candidate.covers(sorted[0]) || !candidate.covers(sorted[sorted.length - 1])) {
                continue;
            }
            for (int k = 0; k < sorted.length; k++) {
                transformed[k] = candidate.score(sorted[k]);
            }
            double w = ShapiroWilk.w(weights, transformed);
            if (w > bestW) {
                bestW = w;
                best = candidate;
            }
        }
        return best;
    }

    /** The curve through the four percentiles; null where there is none. */
    static @Nullable Member through(double[] sorted, double z) {
        double high3 = percentile(sorted, 3 * z);
        double high = percentile(sorted, z);
        double low = percentile(sorted, -z);
        double low3 = percentile(sorted, -3 * z);
        double m = high3 - high;
        double n = low - low3;
        double p = high - low;
        if (!(m > 0 && n > 0 && p > 0)) {
            return null;
        }
        double mp = m / p;
        double np = n / p;
        double middle = (high + low) / 2;
        double ratio = mp * np;
        if (Math.abs(ratio - 1) <= LOGNORMAL_BAND) {
            return lognormal(mp, np, p, middle, z);
        }
        return ratio > 1 ? unbounded(mp, np, p, middle, z) : bounded(1 / mp, 1 / np, p, middle, z);
    }

    private static @Nullable Member lognormal(double mp, double np, double p, double middle, double z) {
        // a long lower tail is a long upper tail of −x
        boolean upper = mp >= np;
        double ratio = upper ? mp : np;
        if (ratio <= 1 + LOGNORMAL_BAND) {
            return null;
        }
        double centre = upper ? middle : -middle;
        double eta = 2 * z / Math.log(ratio);
        double gamma = eta * Math.log((ratio - 1) / (p * Math.sqrt(ratio)));
        double xi = centre - p / 2 * (ratio + 1) / (ratio - 1);
        return checked(Curve.LOGNORMAL, gamma, eta, upper ? xi : -xi, upper ? 1 : -1);
    }

    private static @Nullable Member unbounded(double mp, double np, double p, double middle, double z) {
        double root = Math.sqrt(mp * np - 1);
        double eta = 2 * z / arcosh((mp + np) / 2);
        double gamma = eta * arsinh((np - mp) / (2 * root));
        double lambda = 2 * p * root / ((mp + np - 2) * Math.sqrt(mp + np + 2));
        double xi = middle + p * (np - mp) / (2 * (mp + np - 2));
        return checked(Curve.UNBOUNDED, gamma, eta, xi, lambda);
    }

    private static @Nullable Member bounded(double pm, double pn, double p, double middle, double z) {
        double product = (1 + pm) * (1 + pn);
        double excess = pm * pn - 1;
        double eta = z / arcosh(Math.sqrt(product) / 2);
        double gamma = eta * arsinh((pn - pm) * Math.sqrt(product - 4) / (2 * excess));
        double lambda = p * Math.sqrt((product - 2) * (product - 2) - 4) / excess;
        double xi = middle - lambda / 2 + p * (pn - pm) / (2 * excess);
        return checked(Curve.BOUNDED, gamma, eta, xi, lambda);
    }

    private static @Nullable Member checked(Curve curve, double gamma, double eta, double xi, double lambda) {
        boolean sound = Double.isFinite(gamma)
                && eta > 0
                && Double.isFinite(eta)
                && Double.isFinite(xi)
                && Double.isFinite(lambda)
                && lambda != 0;
        return sound ? new Member(curve, gamma, eta, xi, lambda) : null;
    }

    private static double percentile(double[] sorted, double z) {
        double at = Math.min(sorted.length, Math.max(1, sorted.length * Distributions.normal(z) + 0.5));
        int below = (int) at;
        double rest = at - below;
        return rest == 0 ? sorted[below - 1] : sorted[below - 1] + rest * (sorted[below] - sorted[below - 1]);
    }

    private static double arsinh(double u) {
        double a = Math.abs(u);
        return Math.copySign(Math.log1p(a + a * a / (1 + Math.sqrt(1 + a * a))), u);
    }

    private static double arcosh(double v) {
        return Math.log(v + Math.sqrt((v - 1) * (v + 1)));
    }

    /** One curve. */
    record Member(Curve curve, double gamma, double eta, double xi, double lambda) implements FittedDistribution {
        @Override
        public DistributionFamily family() {
            return INSTANCE;
        }

        @Override
        public double[] parameters() {
            return new double[] {curve.code, gamma, eta, xi, lambda};
        }

        boolean covers(double x) {
            double u = (x - xi) / lambda;
            return switch (curve) {
                case UNBOUNDED -> true;
                case LOGNORMAL -> u > 0;
                case BOUNDED -> u > 0 && u < 1;
            };
        }

        /** The normal score of x, rising in x; infinite outside the bounds. */
        double score(double x) {
            double u = (x - xi) / lambda;
            return switch (curve) {
                case UNBOUNDED -> gamma + eta * arsinh(u);
                case LOGNORMAL -> {
                    double z = u > 0 ? gamma + eta * Math.log(u) : Double.NEGATIVE_INFINITY;
                    yield lambda > 0 ? z : -z;
                }
                case BOUNDED -> {
                    if (u <= 0) {
                        yield Double.NEGATIVE_INFINITY;
                    }
                    yield u >= 1 ? Double.POSITIVE_INFINITY : gamma + eta * Math.log(u / (1 - u));
                }
            };
        }

        @Override
        public double probability(double x) {
            return Distributions.normal(score(x));
        }

        @Override
        public double survival(double x) {
            return Distributions.normalAbove(score(x));
        }

        @Override
        public double quantile(double p) {
            return atScore(Distributions.normalQuantile(Obstacles.probability(p)));
        }

        private double atScore(double z) {
            double rising = curve == Curve.LOGNORMAL && lambda < 0 ? -z : z;
            double g = (rising - gamma) / eta;
            return switch (curve) {
                case UNBOUNDED -> xi + lambda * Math.sinh(g);
                case LOGNORMAL -> xi + lambda * Math.exp(g);
                case BOUNDED -> xi + lambda / (1 + Math.exp(-g));
            };
        }

        @Override
        public double sample(java.util.SplittableRandom random) {
            return atScore(Uniform.normal(random));
        }

        @Override
        public double logDensity(double x) {
            if (!covers(x)) {
                return Double.NEGATIVE_INFINITY;
            }
            double u = (x - xi) / lambda;
            double z = score(x);
            double slope = switch (curve) {
                case UNBOUNDED -> lambda * Math.sqrt(1 + u * u);
                case LOGNORMAL -> Math.abs(x - xi);
                case BOUNDED -> lambda * u * (1 - u);
            };
            return -z * z / 2 - HALF_LN_2PI + Math.log(eta / slope);
        }
    }
}
