package io.github.firstoff.study.capability;

import java.util.OptionalInt;

/**
 * How many readings lie outside, and how many more are to be expected. Parts per million.
 *
 * @param count how many readings lie outside the required limits; empty without limits or readings
 * @param observed {@code count} per million readings, with the interval of Clopper and Pearson
 * @param expected the share of the chosen distribution outside the required limits, with its interval
 * @param expectedBelow the share below the lower limit
 * @param expectedAbove the share above the upper limit
 */
public record Nonconforming(
        OptionalInt count, Index observed, Index expected, Index expectedBelow, Index expectedAbove) {}
