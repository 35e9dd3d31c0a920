package io.github.firstoff.study.pressfit;

import io.github.firstoff.assembly.Joint;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a joint comes to. Interferences are ring less bore on the diameter, in mm.
 *
 * @param joint what was asked
 * @param basis what it was reckoned from
 * @param outer the sizes of the bores
 * @param inner the sizes of what goes in
 * @param least the least interference at 20 °C before smoothing, exact: over limits, over all pairs of measured pieces, or over measured pairs
 * @param greatest the greatest
 * @param mean the mean
 * @param deviation the standard deviation
 * @param smoothing what smoothing takes of each
 * @param states at assembly, at the coldest and at the hottest, in this order
 * @param bounds between which interferences pairs do what they must
 * @param chances how probable that is
 * @param share the share of pairs that must do it; 1 means every one within limits
 * @param verdicts whether they do
 * @param joining temperatures at which even the tightest pair slips together
 * @param ordinary the interference that all but 1 in 1000 pairs exceed; the least of limits
 * @param matching which bore goes with which ring; empty unless both were measured and are not paired
 * @param profile the distribution of the interference, for pictures
 * @param model the mechanics
 */
public record FitResult(
        Joint joint,
        Basis basis,
        Sizes outer,
        Sizes inner,
        BigDecimal least,
        BigDecimal greatest,
        double mean,
        double deviation,
        double smoothing,
        List<State> states,
        Bounds bounds,
        Chances chances,
        double share,
        Verdicts verdicts,
        Joining joining,
        double ordinary,
        Optional<Matching> matching,
        Profile profile,
        ElasticJoint model) {
    /** Copies the list. */
    public FitResult {
        states = List.copyOf(states);
    }

    /**
     * Whether the share is reached.
     *
     * @param grip the joint holds
     * @param stress both parts stay elastic
     * @param clearance the bearing keeps its clearance; true where that is not asked or not known
     */
    public record Verdicts(boolean grip, boolean stress, boolean clearance) {
        /** Whether everything is. */
        public boolean accepted() {
            return grip && stress && clearance;
        }
    }

    /**
     * Joining without force: by heating the outer part or by cooling the inner one, the other staying at the assembly temperature.
     *
     * @param gap the clearance wanted on the diameter, in mm
     * @param interference of the tightest pair at the assembly temperature, before smoothing
     * @param heating the temperature of the outer part, in degrees Celsius
     * @param cooling the temperature of the inner part; empty where it would lie below absolute zero
     */
    public record Joining(double gap, double interference, double heating, OptionalDouble cooling) {}

    /**
     * The distribution of the interference at 20 °C before smoothing.
     *
     * @param at places, ascending, in mm
     * @param density the density there, per mm
     * @param measured interferences of measured pairs; empty otherwise
     */
    public record Profile(List<Double> at, List<Double> density, List<Double> measured) {
        /** Copies the lists. */
        public Profile {
            at = List.copyOf(at);
            density = List.copyOf(density);
            measured = List.copyOf(measured);
        }
    }

    /** The state at a moment. */
    public State at(State.Moment moment) {
        return states.stream()
                .filter(state -> state.moment() == moment)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("a joint is looked at " + moment.word()));
    }

    /** The service state in which the joint holds least. */
    public State weakest() {
        State cold = at(State.Moment.COLDEST);
        State hot = at(State.Moment.HOTTEST);
        return cold.axial().minimum() < hot.axial().minimum() ? cold : hot;
    }

    /** The state, assembly included, in which the parts are stressed most. */
    public State tightest() {
        State most = at(State.Moment.ASSEMBLY);
        for (State each : states) {
            if (each.pressure().maximum() > most.pressure().maximum()) {
                most = each;
            }
        }
        return most;
    }
}
