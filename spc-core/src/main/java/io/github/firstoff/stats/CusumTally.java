package io.github.firstoff.stats;

/**
 * What a stretch of points does to a one-sided cumulative sum, mergeable between neighbours.
 *
 * <p>One point x turns the sum s into max(0, s + x − k) (Page 1954, Biometrika 41). Any number of points in order turn s into
 * max(floor, s + sum), and two such steps one after the other are one again: max(f₂, max(f₁, s + b₁) + b₂) = max(max(f₂, f₁ + b₂), s + b₁ +
 * b₂). The highest that the sum stood within the stretch has the same form. So a stretch can be tallied before it is known where
 * the sum stood when it began, and whether a signal fell within it is answered later by {@link #peak}, whichever way a long series was
 * cut: a climb that lies across a cut is found. For the lower sum, tally the points with the other sign.
 *
 * <p>Merging is associative, not commutative; split and merged results agree with sequential ones to about 10⁻¹² of the sum of
 * the distances |x − k|. Starts are 0 or above, as sums are.
 *
 * @param reference k, what a point must exceed for the sum to rise, in the unit of the points
 * @param count how many points
 * @param sum the sum of all x − k
 * @param floor where the sum stands after the stretch, if it began too low for that to matter; negative infinity of no points
 * @param peakSum the greatest sum of the first of all x − k; negative infinity of no points
 * @param peakFloor the highest the sum stood if it began too low for that to matter; negative infinity of no points
 */
public record CusumTally(double reference, long count, double sum, double floor, double peakSum, double peakFloor) {
    /** Checks what can be checked of a tally that comes from elsewhere. */
    public CusumTally {
        if (!Double.isFinite(reference)) {
            throw new IllegalArgumentException("the reference value k is finite, not " + reference);
        }
        if (count < 0
                || !Double.isFinite(sum)
                || (count > 0 && !(floor >= 0 && peakFloor >= floor && peakSum >= sum))) {
            throw new IllegalArgumentException("no tally has count " + count + ", sum " + sum + ", floor " + floor
                    + " and peaks " + peakSum + " and " + peakFloor);
        }
    }

    /** The tally of nothing: it leaves every sum as it is. */
    public static CusumTally empty(double reference) {
        return new CusumTally(
                reference, 0, 0, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY);
    }

    /** Tallies points in their order; allocates nothing per point. */
    public static CusumTally of(double reference, double... points) {
        return of(reference, points, 0, points.length);
    }

    /** Tallies the part {@code from} (inclusive) to {@code to} (exclusive) of points. */
    public static CusumTally of(double reference, double[] points, int from, int to) {
        if (from < 0 || to > points.length || from > to) {
            throw new IndexOutOfBoundsException("from " + from + " to " + to + " of " + points.length);
        }
        if (from == to) {
            return empty(reference);
        }
        double sum = 0;
        double floor = 0;
        double peakSum = Double.NEGATIVE_INFINITY;
        double peakFloor = 0;
        for (int i = from; i < to; i++) {
            double step = points[i] - reference;
            sum += step;
            floor = i == from ? 0 : Math.max(0, floor + step);
            peakSum = Math.max(peakSum, sum);
            peakFloor = Math.max(peakFloor, floor);
        }
        return new CusumTally(reference, to - from, sum, floor, peakSum, peakFloor);
    }

    /** This stretch and the point that follows it. */
    public CusumTally plus(double point) {
        double step = point - reference;
        return merge(new CusumTally(reference, 1, step, 0, step, 0));
    }

    /**
     * This stretch and the one that follows it.
     *
     * @throws IllegalArgumentException if the reference values differ
     */
    public CusumTally merge(CusumTally next) {
        if (reference != next.reference) {
            throw new IllegalArgumentException(
                    "sums of reference value " + reference + " and " + next.reference + " do not go together");
        }
        if (count == 0) {
            return next;
        }
        if (next.count == 0) {
            return this;
        }
        return new CusumTally(
                reference,
                Math.addExact(count, next.count),
                sum + next.sum,
                Math.max(next.floor, floor + next.sum),
                Math.max(peakSum, sum + next.peakSum),
                Math.max(peakFloor, Math.max(next.peakFloor, floor + next.peakSum)));
    }

    /**
     * The sum after the stretch, if it stood at {@code before}.
     *
     * @param before 0 or above; the head start of a first stretch
     * @throws IllegalArgumentException if {@code before} is below 0
     */
    public double after(double before) {
        return Math.max(floor, requireStart(before) + sum);
    }

    /**
     * The highest the sum stood after any point of the stretch, if it stood at {@code before} when the stretch began: above the
     * decision interval, there was a signal. Negative infinity of no points.
     *
     * @throws IllegalArgumentException if {@code before} is below 0
     */
    public double peak(double before) {
        return Math.max(peakFloor, requireStart(before) + peakSum);
    }

    private static double requireStart(double before) {
        if (!(before >= 0)) {
            throw new IllegalArgumentException("a cumulative sum is not below 0, as " + before);
        }
        return before;
    }
}
