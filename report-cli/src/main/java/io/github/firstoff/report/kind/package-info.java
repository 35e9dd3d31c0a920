/**
 * The kinds of sheet: each puts the parts of {@code report.section} in order. A new kind is a class here and a line in
 * {@link io.github.firstoff.report.kind.ReportCatalogue}, where a reader should start.
 */
@NullMarked
package io.github.firstoff.report.kind;

import org.jspecify.annotations.NullMarked;
