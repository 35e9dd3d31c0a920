/**
 * From a {@link io.github.firstoff.report.model.ReportModel} to a PDF file. The only package that knows the PDF library, the
 * chart library and AWT; it knows nothing of studies and verdicts, because the model carries everything.
 */
@NullMarked
package io.github.firstoff.report.pdf;

import org.jspecify.annotations.NullMarked;
