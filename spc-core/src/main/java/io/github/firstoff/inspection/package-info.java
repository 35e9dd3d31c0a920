/**
 * What was found: readings, the parts they belong to, and the job they are about.
 *
 * <p>Start with {@link io.github.firstoff.inspection.InspectionRecord}. May use {@code plan}, {@code tolerance} and
 * {@code quantity}. Reads no file and no clock.
 */
@NullMarked
package io.github.firstoff.inspection;

import org.jspecify.annotations.NullMarked;
