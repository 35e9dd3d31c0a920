package io.github.firstoff.study.chart;

/**
 * Decides beyond which lines a point lies, in steps of the readings' resolution.
 *
 * <p>The side of a centre line that is itself a mean of readings is decided in whole numbers by the callers, never here. Sigma
 * lines and control limits are irrational, as d2, c4 and square roots are, and a mean of whole steps cannot lie exactly on
 * one unless the spread is zero; but lines that were frozen or stated as decimals can be hit exactly, and then the
 * arithmetic in {@code double} is a few units in the last place wide. So a point counts as beyond a line only when it
 * exceeds it by more than {@link #TIE} of a sigma plus four units in the last place of the values compared. Readings whose
 * distance to a line is that small are the same as the line to any gauge.
 */
final class LineJudge {
    /** The tie tolerance, in sigmas of the plotted statistic. */
    static final double TIE = 1e-12;

    private LineJudge() {}

    /** −1, 0 or 1: below, on or above a line, with the tie tolerance. */
    static int compare(double value, double line, double sigma) {
        double tie = TIE * sigma + 4 * Math.ulp(Math.max(Math.abs(value), Math.abs(line)));
        double difference = value - line;
        if (Math.abs(difference) <= tie) {
            return 0;
        }
        return difference > 0 ? 1 : -1;
    }

    /** Added to the zone of a point that lies exactly on the line at one sigma: not beyond it, and not within it. */
    static final int ON_ONE_SIGMA = 4;

    /**
     * Beyond how many of the lines at one, two, three sigma a point lies on the given side (0: on the centre line);
     * {@link #ON_ONE_SIGMA} if it lies exactly on the first.
     */
    static int zone(double value, double centre, double sigma, int side) {
        if (side == 0) {
            return 0;
        }
        int zone = 0;
        while (zone < 3 && compare(value, centre + side * (zone + 1) * sigma, sigma) == side) {
            zone++;
        }
        return zone == 0 && compare(value, centre + side * sigma, sigma) == 0 ? ON_ONE_SIGMA : zone;
    }

    /** Beyond which of two limits: −1 below the lower, 1 above the upper, 0 neither. */
    static int beyond(double value, double lower, double upper, double sigma) {
        if (compare(value, upper, sigma) > 0) {
            return 1;
        }
        return compare(value, lower, sigma) < 0 ? -1 : 0;
    }
}
