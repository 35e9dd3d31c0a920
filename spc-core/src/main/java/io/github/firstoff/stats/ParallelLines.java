package io.github.firstoff.stats;

import java.util.List;

/**
 * Lines of one slope, each at its own height, through several sets of points: b = ΣSxyᵢ/ΣSxxᵢ, residual standard deviation with
 * N − k − 1 degrees of freedom; and whether lines of their own would do better (analysis of covariance; Snedecor and Cochran, Statistical
 * Methods, "comparison of regression lines"; from memory).
 *
 * @param lines how many sets k, at least 1
 * @param slope b
 * @param squaresOfX ΣSxxᵢ
 * @param deviation s of the common slope
 * @param degreesOfFreedom N − k − 1
 * @param ownDeviation s when each set has its own slope; 0 without degrees of freedom
 * @param ownDegreesOfFreedom N − 2k
 * @param equality the probability of slopes that differ at least so much if they are one: F test; 1 for one set
 */
public record ParallelLines(
        int lines,
        double slope,
        double squaresOfX,
        double deviation,
        double degreesOfFreedom,
        double ownDeviation,
        double ownDegreesOfFreedom,
        double equality) {

    /**
     * The lines through the points of these tallies.
     *
     * @throws IllegalArgumentException without a tally, if one has no line, or if no degree of freedom is left
     */
    public static ParallelLines of(List<LineTally> tallies) {
        double points = 0;
        double squares = 0;
        double products = 0;
        double own = 0;
        for (LineTally tally : tallies) {
            if (!tally.isDefined()) {
                throw new IllegalArgumentException("a set of points without a line");
            }
            points += tally.count();
            squares += tally.squaresOfX();
            products += tally.slope() * tally.squaresOfX();
            own += tally.residualSquares();
        }
        int k = tallies.size();
        double df = points - k - 1;
        if (k == 0 || df < 1) {
            throw new IllegalArgumentException(points + " points are too few for " + k + " lines");
        }
        double slope = products / squares;
        double between = 0;
        for (LineTally tally : tallies) {
            double away = tally.slope() - slope;
            between += away * away * tally.squaresOfX();
        }
        double ownDf = points - 2.0 * k;
        double equality = 1;
        if (k > 1 && ownDf >= 1 && between > 0) {
            equality = own == 0 ? 0 : 1 - Distributions.fisherF(between / (k - 1) / (own / ownDf), k - 1, ownDf);
        }
        return new ParallelLines(
                k,
                slope,
                squares,
                Math.sqrt((own + between) / df),
                df,
                ownDf >= 1 ? Math.sqrt(own / ownDf) : 0,
                ownDf,
                equality);
    }

    /** The common slope through the middle of one of the sets. */
    public FittedLine through(LineTally set) {
        return new FittedLine(
                set.count(),
                ExactRatio.of(set.x(), java.math.BigInteger.valueOf(set.count())),
                ExactRatio.of(set.y(), java.math.BigInteger.valueOf(set.count())),
                squaresOfX,
                slope,
                deviation,
                degreesOfFreedom);
    }
}
