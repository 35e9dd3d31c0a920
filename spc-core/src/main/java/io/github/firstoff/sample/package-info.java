/**
 * The one border between exact decimals and {@code double}: readings as whole steps of their resolution, bounds as distances.
 *
 * <p>May use {@code quantity}; knows no study. This is the only package that turns a {@link java.math.BigDecimal} into a
 * {@code double}. Start with {@link io.github.firstoff.sample.Sample}, then {@link io.github.firstoff.sample.Subgroups}.
 */
@NullMarked
package io.github.firstoff.sample;

import org.jspecify.annotations.NullMarked;
