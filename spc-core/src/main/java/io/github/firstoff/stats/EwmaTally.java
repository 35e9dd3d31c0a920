package io.github.firstoff.stats;

/**
 * What a stretch of points does to an exponentially weighted moving average, mergeable between neighbours.
 *
 * <p>One point x turns the average z into λx + (1 − λ)z. Any number of points in order turn z into keep · z + moved, with keep =
 * (1 − λ)<sup>n</sup>: an affine step, and two affine steps one after the other are one again. So a stretch can be tallied before
 * it is known where the average stood when it began, by whoever has its points, and stretches merge in their order. The variance V
 * of the average goes the same way, from V to keep² · V + variance (Roberts 1959, Technometrics 1; the formulas follow from the
 * definition). Merging is associative, not commutative; split and merged results agree with sequential ones to about 10⁻¹² of the
 * greatest value.
 *
 * @param lambda the weight λ of the newest point, above 0, at most 1
 * @param count how many points
 * @param keep the share that is left of the average before, (1 − λ)<sup>count</sup>
 * @param moved what the points add, in their unit
 * @param variance what the points add to the variance of the average, in their unit squared
 */
public record EwmaTally(double lambda, long count, double keep, double moved, double variance) {
    /** Checks the weight and the count. */
    public EwmaTally {
        if (!(lambda > 0 && lambda <= 1)) {
            throw new IllegalArgumentException("the weight lambda is above 0 and at most 1, not " + lambda);
        }
        if (count < 0 || !(keep >= 0 && keep <= 1) || !(variance >= 0) || Double.isNaN(moved)) {
            throw new IllegalArgumentException("no tally has count " + count + ", keeps " + keep + ", moves " + moved
                    + " and has variance " + variance);
        }
    }

    /**
     * The tally of nothing: it leaves every average as it is.
     *
     * @throws IllegalArgumentException unless λ is above 0 and at most 1
     */
    public static EwmaTally empty(double lambda) {
        return new EwmaTally(lambda, 0, 1, 0, 0);
    }

    /** Tallies points of variance 1 each, in their order; allocates nothing per point. */
    public static EwmaTally of(double lambda, double... points) {
        return of(lambda, points, 0, points.length);
    }

    /** Tallies the part {@code from} (inclusive) to {@code to} (exclusive) of points of variance 1 each. */
    public static EwmaTally of(double lambda, double[] points, int from, int to) {
        if (from < 0 || to > points.length || from > to) {
            throw new IndexOutOfBoundsException("from " + from + " to " + to + " of " + points.length);
        }
        double keep = 1;
        double moved = 0;
        double variance = 0;
        for (int i = from; i < to; i++) {
            keep *= 1 - lambda;
            moved = lambda * points[i] + (1 - lambda) * moved;
            variance = lambda * lambda + (1 - lambda) * (1 - lambda) * variance;
        }
        return new EwmaTally(lambda, to - from, keep, moved, variance);
    }

    /** This stretch and the point that follows it, with the variance of that point. */
    public EwmaTally plus(double point, double varianceOfPoint) {
        return merge(new EwmaTally(lambda, 1, 1 - lambda, lambda * point, lambda * lambda * varianceOfPoint));
    }

    /** This stretch and a point of variance 1 that follows it. */
    public EwmaTally plus(double point) {
        return plus(point, 1);
    }

    /**
     * This stretch and the one that follows it.
     *
     * @throws IllegalArgumentException if the weights differ
     */
    public EwmaTally merge(EwmaTally next) {
        if (lambda != next.lambda) {
            throw new IllegalArgumentException(
                    "averages of weight " + lambda + " and " + next.lambda + " do not go together");
        }
        return new EwmaTally(
                lambda,
                Math.addExact(count, next.count),
                keep * next.keep,
                next.keep * moved + next.moved,
                next.keep * next.keep * variance + next.variance);
    }

    /** The average after the stretch, if it stood at {@code before}. */
    public double after(double before) {
        return keep * before + moved;
    }

    /** The variance of the average after the stretch, if it was {@code before}; 0 before the first point. */
    public double varianceAfter(double before) {
        return keep * keep * before + variance;
    }
}
