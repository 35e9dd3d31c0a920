package io.github.firstoff.study.chart;

import java.util.OptionalDouble;

/**
 * The lines that one point is judged by, in the unit of the readings.
 *
 * @param centre the centre line
 * @param lower the lower control limit
 * @param upper the upper control limit
 * @param sigma the standard deviation of the plotted statistic, where the panel has sigma zones
 */
public record Lines(double centre, double lower, double upper, OptionalDouble sigma) {}
