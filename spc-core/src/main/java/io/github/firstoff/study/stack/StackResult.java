package io.github.firstoff.study.stack;

import io.github.firstoff.assembly.DimensionLoop;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a loop of dimensions comes to, in the unit of the loop.
 *
 * @param loop what was asked
 * @param nominal the gap of all nominals; empty if a member has none
 * @param worst the least and the greatest gap that conforming parts can leave, exact; empty if a member has no limits
 * @param rootSumSquare the statistical range by limits; empty if a member has no limits
 * @param mean the mean gap by the distributions of the members
 * @param deviation its standard deviation
 * @param drawn the simulation
 * @param normal the share outside the wanted gap if the gap is normal with that mean and deviation; empty if nothing is asked
 * @param members what each member contributes, in the order of the loop
 */
public record StackResult(
        DimensionLoop loop,
        Optional<BigDecimal> nominal,
        Optional<Exact> worst,
        Optional<Around> rootSumSquare,
        double mean,
        double deviation,
        Drawn drawn,
        Optional<Outside> normal,
        List<Contribution> members) {
    /** Copies the list. */
    public StackResult {
        members = List.copyOf(members);
    }

    /**
     * An exact range.
     *
     * @param minimum the least
     * @param maximum the greatest
     */
    public record Exact(BigDecimal minimum, BigDecimal maximum) {}

    /**
     * A middle and a half-width.
     *
     * @param middle the gap of all members in the middle of their limits
     * @param half √Σ(cᵢTᵢ/2)²
     */
    public record Around(double middle, double half) {}

    /**
     * Shares outside the wanted gap.
     *
     * @param below less than the least gap
     * @param above more than the greatest
     */
    public record Outside(double below, double above) {
        /** Both. */
        public double total() {
            return below + above;
        }
    }

    /**
     * A simulation.
     *
     * @param draws how many assemblies
     * @param seed where the random numbers began
     * @param mean their mean gap
     * @param deviation the standard deviation of their gaps
     * @param low the gap below which 0.135 % lie
     * @param middle the median gap
     * @param high the gap above which 0.135 % lie
     * @param outside the shares outside the wanted gap; empty if nothing is asked
     * @param upperBound the share outside that is not exceeded with 95 % confidence, by the number of draws alone; empty alike
     * @param bins counts of gaps in equal bins, for pictures
     * @param from where the first bin begins
     * @param width of a bin; 0 if every gap is the same
     */
    public record Drawn(
            int draws,
            long seed,
            double mean,
            double deviation,
            double low,
            double middle,
            double high,
            Optional<Outside> outside,
            OptionalDouble upperBound,
            List<Long> bins,
            double from,
            double width) {
        /** Copies the list. */
        public Drawn {
            bins = List.copyOf(bins);
        }
    }

    /**
     * What one member contributes.
     *
     * @param member the member
     * @param mean its mean
     * @param deviation its standard deviation
     * @param ofVariance its share of the variance of the gap; 0 if nothing varies
     * @param ofWidth its share of the width between the worst cases; empty if that is not known
     */
    public record Contribution(
            DimensionLoop.Member member, double mean, double deviation, double ofVariance, OptionalDouble ofWidth) {}

    /** Whether no conforming part can take the gap out of what is asked; empty if nothing is asked or a member has no limits. */
    public Optional<Boolean> worstFits() {
        if (loop.gap().isOpen()) {
            return Optional.empty();
        }
        return worst.map(range ->
                loop.gap().contains(range.minimum(), loop.unit()) && loop.gap().contains(range.maximum(), loop.unit()));
    }
}
