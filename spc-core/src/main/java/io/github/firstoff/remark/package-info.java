/**
 * What the library says in words: sentences that keep what they are made of, so that whoever prints them can word them in another
 * language without knowing how they came about.
 *
 * <p>Knows no other package, and every other may use it. Start with {@link io.github.firstoff.remark.Remark}.
 */
@NullMarked
package io.github.firstoff.remark;

import org.jspecify.annotations.NullMarked;
