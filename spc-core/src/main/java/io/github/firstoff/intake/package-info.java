/**
 * The edge in: plan, job and readings files become values, or a list of everything that is wrong with them.
 *
 * <p>Start with {@link io.github.firstoff.intake.PlanFile}, {@link io.github.firstoff.intake.JobFile} and
 * {@link io.github.firstoff.intake.ReadingFiles}. Every {@link io.github.firstoff.intake.Fault} names file, line, column, what was
 * found and what was expected; a file's faults are collected, not only the first. Numbers are read as exact decimals from their
 * literal text, never through {@code double}, and nothing that can be read in two ways is guessed.
 *
 * <p>May use {@code inspection}, {@code plan}, {@code tolerance} and {@code quantity}. The only package that knows the JSON and CSV
 * libraries, and the only one of this module that opens files.
 */
@NullMarked
package io.github.firstoff.intake;

import org.jspecify.annotations.NullMarked;
