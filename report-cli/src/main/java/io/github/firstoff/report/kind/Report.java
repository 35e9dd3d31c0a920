package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Sheet;

/** One kind of sheet. */
public interface Report {
    /**
     * The sheet as blocks, for the given paper.
     *
     * @throws IllegalArgumentException if the sheet is of another kind, or a certificate that is refused
     */
    ReportModel compose(Sheet sheet, PaperSize paper);

    /** The sheet as blocks, for A4. */
    default ReportModel compose(Sheet sheet) {
        return compose(sheet, PaperSize.A4);
    }
}
