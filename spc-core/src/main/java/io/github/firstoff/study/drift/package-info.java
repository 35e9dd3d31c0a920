/**
 * Drift: how the level of a characteristic moves from piece to piece, when it will reach a limit, and what to do about it.
 *
 * <p>May use the exact spine, {@code sample} and {@code stats}; no other study. Start with {@link io.github.firstoff.study.drift.DriftStudy}.
 */
@NullMarked
package io.github.firstoff.study.drift;

import org.jspecify.annotations.NullMarked;
