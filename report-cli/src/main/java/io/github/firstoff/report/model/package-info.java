/**
 * What a sheet says, as plain values: the frame of the sheet ({@link io.github.firstoff.report.model.ReportModel}), and the
 * blocks that follow one another down its pages ({@link io.github.firstoff.report.model.Block}).
 *
 * <p>Nothing here measures, draws, rounds or judges. Figures arrive as the text that is to be printed; only the marks of a
 * {@link io.github.firstoff.report.model.Strip} and an {@link io.github.firstoff.report.model.Block.IndexScale} are numbers,
 * because their place on a line is all that matters. The package may use {@code report.figure} and the JDK, nothing else.
 *
 * <p>Start at {@link io.github.firstoff.report.model.ReportModel}, then {@link io.github.firstoff.report.model.Block}.
 */
@NullMarked
package io.github.firstoff.report.model;

import org.jspecify.annotations.NullMarked;
