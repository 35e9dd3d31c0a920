package io.github.firstoff.plan;

import java.util.OptionalInt;

/**
 * How a characteristic is followed through a batch.
 *
 * @param chart the chart's name, for example {@code xbar-r}; names are those of the catalogue of charts
 * @param subgroup how many consecutive readings make a subgroup, where the chart has subgroups
 * @param baseline how many first points set the limits; empty if all do
 */
public record Study(String chart, OptionalInt subgroup, OptionalInt baseline) {}
