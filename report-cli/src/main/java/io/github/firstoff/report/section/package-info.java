/**
 * From what a sheet says to the blocks of a page: one class per part of a sheet, each small, none of which draws or judges.
 *
 * <p>Verdicts, charts and indices arrive finished in a {@link io.github.firstoff.sheet.Sheet}; here they become words, figures
 * with the digits they are entitled to, strips, tables and pictures. May use {@code sheet}, {@code report.model},
 * {@code report.figure} and all of spc-core; knows nothing of PDF. Start with
 * {@link io.github.firstoff.report.section.VerdictSection}, {@link io.github.firstoff.report.section.PieceTable} and
 * {@link io.github.firstoff.report.section.StudySection}.
 */
@NullMarked
package io.github.firstoff.report.section;

import org.jspecify.annotations.NullMarked;
