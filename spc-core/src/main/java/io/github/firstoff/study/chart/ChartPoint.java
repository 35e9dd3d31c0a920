package io.github.firstoff.study.chart;

import java.util.Optional;

/**
 * One point of a panel.
 *
 * @param number the number of the subgroup or individual, from 1; a moving range has the number of its later reading
 * @param label the subgroup's label, or its number
 * @param size how many readings the statistic rests on
 * @param value the plotted statistic, in the unit of the readings
 * @param lines the lines of this point; empty while the data give none
 */
public record ChartPoint(int number, String label, int size, double value, Optional<Lines> lines) {}
