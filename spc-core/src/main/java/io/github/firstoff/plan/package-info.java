/**
 * What must be checked: the plan of one part number at one revision.
 *
 * <p>An {@link io.github.firstoff.plan.InspectionPlan} is what the plan file says;
 * {@link io.github.firstoff.plan.InspectionPlan#resolve()} turns it into a {@link io.github.firstoff.plan.ResolvedPlan} with limits,
 * or lists everything in it that contradicts itself. May use {@code tolerance} and {@code quantity}.
 */
@NullMarked
package io.github.firstoff.plan;

import org.jspecify.annotations.NullMarked;
