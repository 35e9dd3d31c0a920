/**
 * Will it fit: two parts pressed into one another, from their limits or from the sizes that were made.
 *
 * <p>Thick-walled elastic cylinders (Lamé), smoothing of the surfaces, friction, heat, the clearance of a rolling bearing, and which bore
 * goes with which ring. May use the spine, {@code sample} and {@code stats}; no other study. Start at
 * {@link io.github.firstoff.study.pressfit.FitStudy}; the mechanics alone are {@link io.github.firstoff.study.pressfit.ElasticJoint}.
 */
@NullMarked
package io.github.firstoff.study.pressfit;

import org.jspecify.annotations.NullMarked;
