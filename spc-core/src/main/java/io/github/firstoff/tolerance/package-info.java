/**
 * What the drawing allows: requirements as written, and the limits they come to.
 *
 * <p>A {@link io.github.firstoff.tolerance.Requirement} is the drawing's own text as a value, read by
 * {@link io.github.firstoff.tolerance.RequirementNotation}; {@code resolve} turns it into a
 * {@link io.github.firstoff.tolerance.ToleranceZone}, and the zone says which {@link io.github.firstoff.tolerance.Limits} hold for
 * one part. What cannot be read or resolved is a {@link io.github.firstoff.tolerance.RequirementFault} that names place and remedy.
 *
 * <p>The tables of ISO 286 ({@link io.github.firstoff.tolerance.ToleranceClass}, {@link io.github.firstoff.tolerance.StandardGrade},
 * {@link io.github.firstoff.tolerance.Fit}) and ISO 2768 ({@link io.github.firstoff.tolerance.GeneralTolerance},
 * {@link io.github.firstoff.tolerance.GeneralGeometry}) are text files beside the classes, in folders named for standard and edition.
 *
 * <p>Only {@code quantity} lies below. Everything is exact decimal. A new kind of requirement is one class that implements
 * {@code Requirement} and one line where {@code RequirementNotation} or one of its readers recognises it.
 */
@NullMarked
package io.github.firstoff.tolerance;

import org.jspecify.annotations.NullMarked;
