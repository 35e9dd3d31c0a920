/**
 * Is it good: decision rules, and the verdicts on readings, characteristics and whole inspections.
 *
 * <p>Start with {@link io.github.firstoff.conformance.Judge}. May use every package of the exact world above it; no
 * {@code double} appears here, so no verdict can pass through one.
 */
@NullMarked
package io.github.firstoff.conformance;

import org.jspecify.annotations.NullMarked;
