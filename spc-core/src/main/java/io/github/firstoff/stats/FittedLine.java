package io.github.firstoff.stats;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * A straight line y = ȳ + b(x − x̄) by least squares, with what is needed to say how well it is known.
 *
 * <p>With s the residual standard deviation on ν degrees of freedom, h(x) = 1/n + (x − x̄)²/Sxx and t the quantile of Student's
 * distribution at (1 + level)/2:
 *
 * <ul>
 *   <li>slope: b ± t s/√Sxx;
 *   <li>the line at x: ŷ ± t s√h;
 *   <li>a single new value at x: ŷ ± t s√(1 + h) (Natrella 1963, NBS Handbook 91, 5-4.1; the same as predict.lm of R);
 *   <li>where the line, moved k residual standard deviations towards a limit L, meets it: the x at which (L − ŷ(x))/(s√h(x)) lies between
 *       the quantiles of the noncentral t distribution with ν degrees of freedom and noncentrality k/√h(x). For k = 0 these are the bounds of
 *       Fieller (1954, Journal of the Royal Statistical Society B 16, 175–185); for k above 0 the same pivot with the spread estimated too.
 * </ul>
 *
 * <p>Assumes independent residuals of one normal distribution. All of it is exact then; of the last, the connected part of the confidence set
 * that holds the estimate is stated, and a side on which it does not end is infinite.
 *
 * @param count n, for h; above 0
 * @param meanX x̄
 * @param meanY ȳ
 * @param squaresOfX Sxx = Σ(x − x̄)², above 0
 * @param slope b
 * @param deviation s, not below 0
 * @param degreesOfFreedom ν, at least 1
 */
public record FittedLine(
        double count,
        double meanX,
        double meanY,
        double squaresOfX,
        double slope,
        double deviation,
        double degreesOfFreedom) {
    /** Up to here {@link NoncentralT} holds its accuracy. */
    private static final double MOST_EXACT = 10_000;

    private static final int MOST_DOUBLINGS = 60;

    /** Checks ranges. */
    public FittedLine {
        if (!(count > 0) || !(squaresOfX > 0) || !(deviation >= 0) || !(degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException("no line from n = " + count + ", Sxx = " + squaresOfX + ", s = "
                    + deviation + ", degrees of freedom " + degreesOfFreedom);
        }
    }

    /**
     * The line through the points of a tally.
     *
     * @throws IllegalStateException for fewer than three points, or all at one x
     */
    public static FittedLine of(LineTally tally) {
        return new FittedLine(
                tally.count(),
                tally.meanX(),
                tally.meanY(),
                tally.squaresOfX(),
                tally.slope(),
                tally.residualStandardDeviation(),
                tally.count() - 2.0);
    }

    /** The height of the line. */
    public double at(double x) {
        return meanY + slope * (x - meanX);
    }

    /** h(x): the variance of the line's height there, in units of s². */
    public double leverage(double x) {
        double away = x - meanX;
        return 1 / count + away * away / squaresOfX;
    }

    /** s/√Sxx. */
    public double slopeError() {
        return deviation / Math.sqrt(squaresOfX);
    }

    /** The probability of a slope at least as steep if there were none: two-sided, by Student's t. 0 for points exactly on a sloping line. */
    public double significance() {
        if (slope == 0) {
            return 1;
        }
        return deviation == 0 ? 0 : 2 * Distributions.studentT(-Math.abs(slope) / slopeError(), degreesOfFreedom);
    }

    /** The confidence interval of the slope. */
    public ConfidenceInterval slopeInterval(double level) {
        return ConfidenceInterval.about(slope, student(level) * slopeError());
    }

    /** The confidence interval of the line's height. */
    public ConfidenceInterval meanInterval(double x, double level) {
        return ConfidenceInterval.about(at(x), student(level) * deviation * Math.sqrt(leverage(x)));
    }

    /** The interval for a single new value. */
    public ConfidenceInterval predictionInterval(double x, double level) {
        return ConfidenceInterval.about(at(x), student(level) * deviation * Math.sqrt(1 + leverage(x)));
    }

    private double student(double level) {
        return Distributions.studentTQuantile((1 + level) / 2, degreesOfFreedom);
    }

    /**
     * Where the line, moved k residual standard deviations towards a limit, meets it.
     *
     * @param at the estimate
     * @param bounds its confidence interval; a side may be infinite
     */
    public record Crossing(double at, ConfidenceInterval bounds) {}

    /**
     * Where the line, moved {@code k} residual standard deviations towards a limit, meets it.
     *
     * @param limit the limit
     * @param side 1 for an upper limit, −1 for a lower one
     * @param k not below 0
     * @param level between 0 and 1
     * @throws IllegalArgumentException if the line does not slope towards the limit
     * @throws IllegalStateException if the points do not spread about the line: there is no confidence set then
     */
    public Crossing crossing(double limit, int side, double k, double level) {
        if (!(slope * side > 0)) {
            throw new IllegalArgumentException("a slope of " + slope + " leads away from the limit");
        }
        if (deviation == 0) {
            throw new IllegalStateException("points that lie on their line give no bounds");
        }
        double at = meanX + (limit - side * k * deviation - meanY) / slope;
        double tail = (1 - level) / 2;
        double step = deviation * Math.sqrt(leverage(at) + k * k / (2 * degreesOfFreedom)) / Math.abs(slope);
        UnivariateFunction early = x -> pivot(x, limit, side, k) - (1 - tail);
        UnivariateFunction late = x -> pivot(x, limit, side, k) - tail;
        return new Crossing(
                at, new ConfidenceInterval(Math.min(at, root(early, at, -step)), Math.max(at, root(late, at, step))));
    }

    /** P(T ≤ what was observed at x) if the moved line meets the limit exactly there. */
    private double pivot(double x, double limit, int side, double k) {
        double root = Math.sqrt(leverage(x));
        double t = side * (limit - at(x)) / (deviation * root);
        double noncentrality = k / root;
        if (degreesOfFreedom <= MOST_EXACT) {
            return NoncentralT.probability(t, degreesOfFreedom, noncentrality);
        }
        // Johnson and Welch 1940, Biometrika 31, 362–389
        return Distributions.normal(
                (t * (1 - 1 / (4 * degreesOfFreedom)) - noncentrality) / Math.sqrt(1 + t * t / (2 * degreesOfFreedom)));
    }

    /** The root nearest to {@code at} in the direction of the step; infinite if there is none within reach. */
    private static double root(UnivariateFunction function, double at, double step) {
        double sign = Math.signum(function.value(at));
        double inner = at;
        double reach = step;
        for (int i = 0; i < MOST_DOUBLINGS; i++) {
            double outer = at + reach;
            if (function.value(outer) * sign <= 0) {
                return new BrentSolver(1e-12, 1e-9 * Math.abs(step))
                        .solve(200, function, Math.min(inner, outer), Math.max(inner, outer));
            }
            inner = outer;
            reach *= 2;
        }
        return Math.copySign(Double.POSITIVE_INFINITY, step);
    }

    /**
     * The first x, from {@code from} on, at which the interval for a single new value reaches a limit.
     *
     * @param side 1 for an upper limit, −1 for a lower one
     * @return {@code from}, if it does so there already
     * @throws IllegalArgumentException if the line does not slope towards the limit
     */
    public double predictionReaches(double limit, int side, double level, double from) {
        if (!(slope * side > 0)) {
            throw new IllegalArgumentException("a slope of " + slope + " leads away from the limit");
        }
        double t = student(level);
        UnivariateFunction left = x -> side * (limit - at(x)) - t * deviation * Math.sqrt(1 + leverage(x));
        if (left.value(from) <= 0) {
            return from;
        }
        double atTheLatest = meanX + (limit - meanY) / slope;
        return deviation == 0 ? atTheLatest : new BrentSolver(1e-13, 1e-10).solve(200, left, from, atTheLatest);
    }
}
