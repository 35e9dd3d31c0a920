/**
 * Capability and performance indices with confidence intervals, the distribution behind them, and what to know of the readings first.
 *
 * <p>May use the exact spine, {@code sample} and {@code stats}; no other study. Start with
 * {@link io.github.firstoff.study.capability.CapabilityStudy}; processes with a trend go to
 * {@link io.github.firstoff.study.capability.TrendedStudy}.
 */
@NullMarked
package io.github.firstoff.study.capability;

import org.jspecify.annotations.NullMarked;
