package io.github.firstoff.study.pressfit;

/**
 * A quantity over the pairs that may meet.
 *
 * @param minimum its value at the least interference
 * @param mean its value at the mean interference
 * @param maximum its value at the greatest interference
 */
public record Range(double minimum, double mean, double maximum) {}
