package io.github.firstoff.study.pressfit;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How probable it is that a pair does what it must.
 *
 * @param reckoned from the distribution of the interference in closed form
 * @param drawn from pairs drawn at random through the whole chain of formulas
 * @param nextPair for one more pair of measured sizes, allowing for how few were measured; empty where limits are part of it
 * @param counted among all pairs that the measured pieces can form, or the measured pairs; empty where limits are part of it
 */
public record Chances(Shares reckoned, Drawn drawn, Optional<Shares> nextPair, Optional<Counted> counted) {

    /**
     * Shares of pairs.
     *
     * @param grip hold what is asked, or hold at all, at every temperature
     * @param noOverstress stay below yield in both parts at every temperature
     * @param clearance keep the clearance that is asked for in service; empty without a bearing whose clearance is known
     */
    public record Shares(double grip, double noOverstress, OptionalDouble clearance) {}

    /**
     * A simulation.
     *
     * @param draws how many pairs
     * @param seed where the random numbers began
     * @param shares what came out
     * @param mean mean interference after smoothing at the assembly temperature, in mm
     * @param deviation its standard deviation
     */
    public record Drawn(int draws, long seed, Shares shares, double mean, double deviation) {
        /** The standard error of a share that is really {@code p}. */
        public double standardError(double p) {
            return Math.sqrt(p * (1 - p) / draws);
        }
    }

    /**
     * A count.
     *
     * @param pairs how many pairs
     * @param grip how many hold
     * @param noOverstress how many stay below yield
     */
    public record Counted(long pairs, long grip, long noOverstress) {}
}
