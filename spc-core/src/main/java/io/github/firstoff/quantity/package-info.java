/**
 * How big: units, exact amounts, and how uncertain they are.
 *
 * <p>Knows no other package. Everything here is exact decimal; no {@code double} appears in any field or signature.
 * Start with {@link io.github.firstoff.quantity.Unit}, then {@link io.github.firstoff.quantity.UncertaintyBudget}.
 */
@NullMarked
package io.github.firstoff.quantity;

import org.jspecify.annotations.NullMarked;
