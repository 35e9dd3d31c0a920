/**
 * Control charts and the tests on them.
 *
 * <p>May use the exact spine, {@code sample} and {@code stats}; no other study. Start with
 * {@link io.github.firstoff.study.chart.ChartCatalogue} (the kinds of chart),
 * {@link io.github.firstoff.study.chart.ControlChart} (the result of every kind) and
 * {@link io.github.firstoff.study.chart.RuleSet} (the tests). A new kind of chart is one new class and one line in the
 * catalogue; a new family of tests is one new enum.
 */
@NullMarked
package io.github.firstoff.study.chart;

import org.jspecify.annotations.NullMarked;
