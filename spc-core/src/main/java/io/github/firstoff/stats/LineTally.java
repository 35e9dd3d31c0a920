package io.github.firstoff.stats;

import java.math.BigInteger;

/**
 * What a straight line y = a + bx through whole numbers needs, exact and mergeable in any order.
 *
 * <p>b = Sxy/Sxx, residual sum of squares Syy − Sxy²/Sxx, residual standard deviation with n − 2 (least squares; NIST Statistical
 * Reference Datasets, linear regression). Each figure is a quotient of whole numbers rounded once, or the root of one.
 *
 * @param count how many points
 * @param x the sum of x
 * @param y the sum of y
 * @param xx the sum of x²
 * @param xy the sum of xy
 * @param yy the sum of y²
 */
public record LineTally(long count, BigInteger x, BigInteger y, BigInteger xx, BigInteger xy, BigInteger yy) {
    /** The tally of nothing. */
    public static final LineTally EMPTY =
            new LineTally(0, BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO);

    /** The points ({@code from}, y[from]) to ({@code to} − 1, y[to − 1]): x is the position in the array. */
    public static LineTally ofSeries(long[] y, int from, int to) {
        DeviationTally tally = DeviationTally.of(y, from, to);
        ProductSum xy = new ProductSum();
        for (int i = from; i < to; i++) {
            xy.add(y[i], i);
        }
        BigInteger before = BigInteger.valueOf(from);
        BigInteger after = BigInteger.valueOf(to);
        return new LineTally(
                to - from,
                below(after).subtract(below(before)),
                tally.sum(),
                squaresBelow(after).subtract(squaresBelow(before)),
                xy.value(),
                tally.sumOfSquares());
    }

    /** 0 + 1 + … + (k − 1). */
    private static BigInteger below(BigInteger k) {
        return k.multiply(k.subtract(BigInteger.ONE)).shiftRight(1);
    }

    /** 0² + 1² + … + (k − 1)². */
    private static BigInteger squaresBelow(BigInteger k) {
        return k.multiply(k.subtract(BigInteger.ONE))
                .multiply(k.shiftLeft(1).subtract(BigInteger.ONE))
                .divide(BigInteger.valueOf(6));
    }

    /** This tally and one more point. */
    public LineTally plus(long atX, long atY) {
        BigInteger px = BigInteger.valueOf(atX);
        BigInteger py = BigInteger.valueOf(atY);
        return merge(new LineTally(1, px, py, px.multiply(px), px.multiply(py), py.multiply(py)));
    }

    /** Both as one. */
    public LineTally merge(LineTally other) {
        return new LineTally(
                Math.addExact(count, other.count),
                x.add(other.x),
                y.add(other.y),
                xx.add(other.xx),
                xy.add(other.xy),
                yy.add(other.yy));
    }

    private BigInteger n() {
        return BigInteger.valueOf(count);
    }

    private BigInteger sxx() {
        return n().multiply(xx).subtract(x.multiply(x));
    }

    private BigInteger sxy() {
        return n().multiply(xy).subtract(x.multiply(y));
    }

    private BigInteger syy() {
        return n().multiply(yy).subtract(y.multiply(y));
    }

    /** Whether there is a line: at least two points with different x. */
    public boolean isDefined() {
        return count > 1 && sxx().signum() > 0;
    }

    private void requireDefined() {
        if (!isDefined()) {
            throw new IllegalStateException("a line needs at least 2 points with different x");
        }
    }

    /** b. */
    public double slope() {
        requireDefined();
        return ExactRatio.of(sxy(), sxx());
    }

    /** a, the height of the line at x = 0. */
    public double intercept() {
        requireDefined();
        return ExactRatio.of(y.multiply(xx).subtract(x.multiply(xy)), sxx());
    }

    /** The height of the line at a whole x, rounded once. */
    public double at(long position) {
        requireDefined();
        BigInteger p = BigInteger.valueOf(position);
        BigInteger top = y.multiply(xx).subtract(x.multiply(xy)).add(sxy().multiply(p));
        return ExactRatio.of(top, sxx());
    }

    /** The mean of x. */
    public double meanX() {
        requireDefined();
        return ExactRatio.of(x, n());
    }

    /** The mean of y. */
    public double meanY() {
        requireDefined();
        return ExactRatio.of(y, n());
    }

    /** Σ(x − x̄)². */
    public double squaresOfX() {
        requireDefined();
        return ExactRatio.of(sxx(), n());
    }

    /** The residual sum of squares, not below 0. */
    public double residualSquares() {
        requireDefined();
        BigInteger top = syy().multiply(sxx()).subtract(sxy().multiply(sxy()));
        return ExactRatio.of(top, n().multiply(sxx()));
    }

    /**
     * The residual standard deviation, with n − 2.
     *
     * @throws IllegalStateException for fewer than three points
     */
    public double residualStandardDeviation() {
        if (count < 3) {
            throw new IllegalStateException("the spread about a line needs at least 3 points, not " + count);
        }
        return Math.sqrt(residualSquares() / (count - 2));
    }

    /** The standard error of the slope, s/√Σ(x − x̄)². */
    public double slopeError() {
        return residualStandardDeviation() / Math.sqrt(squaresOfX());
    }

    /** The standard error of the intercept, s√(1/n + x̄²/Σ(x − x̄)²). */
    public double interceptError() {
        return residualStandardDeviation() * Math.sqrt(ExactRatio.of(xx, sxx()));
    }

    /** The share of Σ(y − ȳ)² that the line explains; refused for equal y, which have nothing to explain. */
    public double explained() {
        requireDefined();
        if (syy().signum() == 0) {
            throw new IllegalStateException("equal y have nothing to explain");
        }
        return ExactRatio.of(sxy().multiply(sxy()), sxx().multiply(syy()));
    }
}
