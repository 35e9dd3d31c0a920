/**
 * Capability and performance indices with confidence intervals.
 *
 * <p>May use the exact spine, {@code sample} and {@code stats}; no other study. Start with
 * {@link io.github.firstoff.study.capability.CapabilityStudy}.
 */
@NullMarked
package io.github.firstoff.study.capability;

import org.jspecify.annotations.NullMarked;
