/**
 * What is joined: two parts pressed into one another, and a loop of dimensions, as a file states them.
 *
 * <p>Exact decimals, no calculation. May use {@code plan}, {@code tolerance} and {@code quantity}. Start at
 * {@link io.github.firstoff.assembly.Joint} and {@link io.github.firstoff.assembly.DimensionLoop}.
 */
@NullMarked
package io.github.firstoff.assembly;

import org.jspecify.annotations.NullMarked;
