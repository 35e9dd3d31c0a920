package io.github.firstoff.study.capability;

/**
 * A two-sided confidence interval.
 *
 * @param lower the lower end
 * @param upper the upper end
 * @param level the confidence level, between 0 and 1
 * @param method how it was made, as a sheet prints it: {@code chi-squared}, {@code Bissell}, {@code noncentral t}, {@code Boyles},
 *     {@code delta}, {@code profile likelihood}, {@code bootstrap}, {@code Clopper–Pearson}
 */
public record Interval(double lower, double upper, double level, String method) {}
