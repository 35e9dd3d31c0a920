/**
 * Guided entry of readings: asks for one after the other in the order of the plan, says the verdict at once, questions what looks like
 * a slip, and keeps each through {@link io.github.firstoff.intake.KeyedReadings} before it asks for the next.
 *
 * <p>Start with {@link io.github.firstoff.keyed.Dialogue}. It reads lines and writes text; whether these belong to a terminal, a pipe or
 * a test is the command's affair. May use {@code sheet} for the words of verdicts, and the spine and {@code intake} of the library. Asks
 * no clock.
 */
@NullMarked
package io.github.firstoff.keyed;

import org.jspecify.annotations.NullMarked;
