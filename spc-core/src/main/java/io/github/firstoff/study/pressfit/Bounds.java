package io.github.firstoff.study.pressfit;

import java.util.OptionalDouble;

/**
 * Between which interferences, on the diameter at 20 °C before smoothing, a pair does what it must at every temperature.
 *
 * @param grip from here on it holds
 * @param gripItselfHolds whether a pair exactly there holds: yes where a load is asked for, no where only any grip is
 * @param yield up to here both parts stay elastic
 * @param clearance up to here even a bearing with the least clearance of its group keeps what is asked; empty without one
 */
public record Bounds(double grip, boolean gripItselfHolds, double yield, OptionalDouble clearance) {
    /** The upper bound that is met first. */
    public double upper() {
        return Math.min(yield, clearance.orElse(yield));
    }
}
