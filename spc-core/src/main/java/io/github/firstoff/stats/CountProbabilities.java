package io.github.firstoff.stats;

import java.util.Optional;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.DiscreteDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * The probabilities of all counts that matter, of a binomial or a Poisson distribution: from the least to the most that has a
 * probability above about 10⁻³⁰⁰, or lies within 40 standard deviations of the mean.
 */
public final class CountProbabilities {
    /** Standard deviations on either side. */
    private static final double REACH = 40;
    /** More counts than anybody charts. */
    private static final double MOST = 4_000_000;

    private final int least;
    private final double[] probabilities;

    private CountProbabilities(DiscreteDistribution distribution, double mean, double sigma, int top) {
        least = (int) Math.max(0, Math.floor(mean - REACH * (sigma + 1)));
        int most = (int) Math.min(top, Math.ceil(mean + REACH * (sigma + 1)));
        probabilities = new double[most - least + 1];
        for (int k = least; k <= most; k++) {
            probabilities[k - least] = distribution.probability(k);
        }
    }

    /**
     * Of the number among {@code trials} pieces that each have the given probability.
     *
     * @param trials 1 or more
     * @param probability 0 to 1
     * @return empty if there are more counts than four million to reckon with
     * @throws IllegalArgumentException outside these ranges
     */
    public static Optional<CountProbabilities> binomial(int trials, double probability) {
        if (trials < 1 || !(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a binomial distribution needs a piece or more and a probability, not "
                    + trials + " and " + probability);
        }
        double mean = trials * probability;
        return of(BinomialDistribution.of(trials, probability), mean, Math.sqrt(mean * (1 - probability)), trials);
    }

    /**
     * Of counts with the given mean.
     *
     * @param mean above 0, finite
     * @return empty if there are more counts than four million to reckon with
     * @throws IllegalArgumentException outside this range
     */
    public static Optional<CountProbabilities> poisson(double mean) {
        if (!(mean > 0) || Double.isInfinite(mean)) {
            throw new IllegalArgumentException("a Poisson distribution has a mean above 0, not " + mean);
        }
        return mean > Integer.MAX_VALUE / 2.0
                ? Optional.empty()
                : of(PoissonDistribution.of(mean), mean, Math.sqrt(mean), Integer.MAX_VALUE);
    }

    private static Optional<CountProbabilities> of(
            DiscreteDistribution distribution, double mean, double sigma, int top) {
        return 2 * REACH * (sigma + 1) > MOST
                ? Optional.empty()
                : Optional.of(new CountProbabilities(distribution, mean, sigma, top));
    }

    /** The least count. */
    public int least() {
        return least;
    }

    /** The greatest count. */
    public int most() {
        return least + probabilities.length - 1;
    }

    /**
     * The probability of a count.
     *
     * @throws IndexOutOfBoundsException if it is not between {@link #least} and {@link #most}
     */
    public double of(int count) {
        return probabilities[count - least];
    }
}
