/**
 * What the uncertainty of a gauge does to verdicts: how probable conformance is, whether the gauge is fine enough for the tolerance, and
 * the risks of accepting and rejecting in the long run.
 *
 * <p>Nothing here changes a verdict; those are exact decimals of {@code conformance}. Start with
 * {@link io.github.firstoff.study.conformity.ConformanceProbability} for one reading and
 * {@link io.github.firstoff.study.conformity.GaugeCheck} for an inspection. May use the spine, {@code sample} and {@code stats}.
 */
@NullMarked
package io.github.firstoff.study.conformity;

import org.jspecify.annotations.NullMarked;
