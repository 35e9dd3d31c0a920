/**
 * What the drawing allows: requirements as written, and the limits they come to.
 *
 * <p>A {@link io.github.firstoff.tolerance.Requirement} is the drawing's own text as a value; {@code resolve} turns it into a
 * {@link io.github.firstoff.tolerance.ToleranceZone}, and the zone says which
 * {@link io.github.firstoff.tolerance.Limits} hold for one part. Only {@code quantity} lies below. Everything is exact decimal.
 */
@NullMarked
package io.github.firstoff.tolerance;

import org.jspecify.annotations.NullMarked;
