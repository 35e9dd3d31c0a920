/**
 * How big: units, exact amounts, and how uncertain they are.
 *
 * <p>Knows no other package. Everything here is exact decimal; no {@code double} appears in any field or signature.
 * {@link io.github.firstoff.quantity.SourcedTable} reads the tables of published values that this package and those above it rest on.
 * Start with {@link io.github.firstoff.quantity.Unit}, then {@link io.github.firstoff.quantity.UncertaintyBudget}.
 */
@NullMarked
package io.github.firstoff.quantity;

import org.jspecify.annotations.NullMarked;
