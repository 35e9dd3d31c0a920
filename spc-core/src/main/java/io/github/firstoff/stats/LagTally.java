package io.github.firstoff.stats;

import java.math.BigInteger;

/**
 * What the lag-1 autocorrelation of whole deviations in order needs, exact and mergeable between neighbours.
 *
 * <p>r₁ = Σ(xᵢ − x̄)(xᵢ₊₁ − x̄)/Σ(xᵢ − x̄)² (Box and Jenkins 1976; NIST/SEMATECH e-Handbook 1.3.5.12), a quotient of whole numbers
 * rounded once. Merging is associative, not commutative, as with {@link MovingRangeTally}.
 *
 * @param count how many deviations
 * @param first the first; 0 of none
 * @param last the last; 0 of none
 * @param sum their sum
 * @param squares the sum of their squares
 * @param products the sum of the products of neighbours
 */
public record LagTally(long count, long first, long last, BigInteger sum, BigInteger squares, BigInteger products) {
    /** The tally of nothing. */
    public static final LagTally EMPTY = new LagTally(0, 0, 0, BigInteger.ZERO, BigInteger.ZERO, BigInteger.ZERO);

    /** Tallies all of an array in its order. */
    public static LagTally of(long... deviations) {
        if (deviations.length == 0) {
            return EMPTY;
        }
        DeviationTally tally = DeviationTally.of(deviations);
        ProductSum products = new ProductSum();
        for (int i = 1; i < deviations.length; i++) {
            products.add(deviations[i - 1], deviations[i]);
        }
        return new LagTally(
                deviations.length,
                deviations[0],
                deviations[deviations.length - 1],
                tally.sum(),
                tally.sumOfSquares(),
                products.value());
    }

    /** This segment and the deviation that follows it. */
    public LagTally plus(long deviation) {
        return merge(of(deviation));
    }

    /** This segment and the one that follows it. */
    public LagTally merge(LagTally next) {
        if (count == 0) {
            return next;
        }
        if (next.count == 0) {
            return this;
        }
        return new LagTally(
                Math.addExact(count, next.count),
                first,
                next.last,
                sum.add(next.sum),
                squares.add(next.squares),
                products.add(next.products).add(BigInteger.valueOf(last).multiply(BigInteger.valueOf(next.first))));
    }

    /** Whether r₁ exists: at least two deviations that spread. */
    public boolean isDefined() {
        return count > 1 && spread().signum() > 0;
    }

    private BigInteger spread() {
        return BigInteger.valueOf(count).multiply(squares).subtract(sum.multiply(sum));
    }

    /**
     * r₁, rounded once.
     *
     * @throws IllegalStateException unless {@link #isDefined}
     */
    public double lagOneAutocorrelation() {
        if (!isDefined()) {
            throw new IllegalStateException("an autocorrelation needs at least 2 values that spread");
        }
        BigInteger n = BigInteger.valueOf(count);
        // n² times Σ(xᵢ − x̄)(xᵢ₊₁ − x̄) = n²P − nS(2S − x₁ − xₙ) + (n − 1)S²
        BigInteger ends = BigInteger.valueOf(first).add(BigInteger.valueOf(last));
        BigInteger numerator = n.multiply(n)
                .multiply(products)
                .subtract(n.multiply(sum).multiply(sum.shiftLeft(1).subtract(ends)))
                .add(n.subtract(BigInteger.ONE).multiply(sum).multiply(sum));
        return ExactRatio.of(numerator, n.multiply(spread()));
    }
}
