/**
 * How big: units and exact amounts.
 *
 * <p>Knows no other package. Everything here is exact decimal; no {@code double} appears in any field or signature.
 * Start with {@link io.github.firstoff.quantity.Unit}.
 */
@NullMarked
package io.github.firstoff.quantity;

import org.jspecify.annotations.NullMarked;
