/**
 * A loop of dimensions: which gap its members leave, at worst and usually, and which of them matters.
 *
 * <p>May use the spine, {@code sample} and {@code stats}; no other study. Start at
 * {@link io.github.firstoff.study.stack.StackStudy}.
 */
@NullMarked
package io.github.firstoff.study.stack;

import org.jspecify.annotations.NullMarked;
