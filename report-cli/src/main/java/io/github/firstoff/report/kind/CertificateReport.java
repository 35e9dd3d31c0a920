package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.section.Cautions;
import io.github.firstoff.report.section.CertificateSection;
import io.github.firstoff.report.section.CertificateTable;
import io.github.firstoff.report.section.GaugeTable;
import io.github.firstoff.report.section.SheetFrame;
import io.github.firstoff.report.section.SignOffSection;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import java.util.ArrayList;
import java.util.List;

/** A certificate of conformity: the supplier's declaration, the results in summary, and the line to sign. */
public final class CertificateReport implements Report {
    /** The report; it has no settings. */
    public CertificateReport() {}

    @Override
    public ReportModel compose(Sheet sheet, PaperSize paper) {
        ReportCatalogue.require(sheet, SheetKind.CERTIFICATE);
        if (!sheet.refusals().isEmpty()) {
            throw new IllegalArgumentException(
                    "a refused certificate is not composed: " + String.join(" ", sheet.refusals()));
        }
        CertificateSection section = new CertificateSection(sheet);
        List<Block> blocks = new ArrayList<>(section.statement());
        blocks.add(section.facts());
        CertificateTable table = new CertificateTable(sheet);
        blocks.add(table.table());
        blocks.add(new GaugeTable(sheet).inShort());
        blocks.add(
                section.notes(table.legend(), new Cautions(sheet).fitSentences().orElse("")));
        blocks.add(new SignOffSection(sheet).forCertificate());
        return new SheetFrame(sheet).around(paper, blocks);
    }
}
