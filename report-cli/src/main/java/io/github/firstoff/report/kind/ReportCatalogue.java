package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;

/** Which class composes which kind of sheet. */
public final class ReportCatalogue {
    private ReportCatalogue() {}

    /**
     * The report of that kind.
     *
     * @throws IllegalArgumentException for a study of drift, which is more than a sheet: see {@link DriftReport}
     */
    public static Report of(SheetKind kind) {
        return switch (kind) {
            case FIRST_ARTICLE -> new FirstArticleReport();
            case BATCH -> new BatchReport();
            case CERTIFICATE -> new CertificateReport();
            case DRIFT -> throw new IllegalArgumentException("a study of drift is composed by DriftReport");
        };
    }

    /**
     * The sheet as blocks, for A4.
     *
     * @throws IllegalArgumentException if it is a certificate that is refused
     */
    public static ReportModel compose(Sheet sheet) {
        return compose(sheet, PaperSize.A4);
    }

    /**
     * The sheet as blocks, for the given paper.
     *
     * @throws IllegalArgumentException if it is a certificate that is refused
     */
    public static ReportModel compose(Sheet sheet, PaperSize paper) {
        return of(sheet.kind()).compose(sheet, paper);
    }

    /**
     * The sheet as blocks on a firm's stationery, in its language.
     *
     * @throws IllegalArgumentException if it is a certificate that is refused
     */
    public static ReportModel compose(Sheet sheet, Stationery stationery) {
        return stationery.on(() -> compose(sheet, stationery.paper()));
    }

    static void require(Sheet sheet, SheetKind kind) {
        if (sheet.kind() != kind) {
            throw new IllegalArgumentException("this composes a " + kind.command() + ", not a "
                    + sheet.kind().command());
        }
    }
}
