package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.section.Cautions;
import io.github.firstoff.report.section.ExceptionsSection;
import io.github.firstoff.report.section.GaugeTable;
import io.github.firstoff.report.section.JobFacts;
import io.github.firstoff.report.section.PieceTable;
import io.github.firstoff.report.section.SheetFrame;
import io.github.firstoff.report.section.SignOffSection;
import io.github.firstoff.report.section.VerdictSection;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import java.util.ArrayList;
import java.util.List;

/**
 * A first article: the first page answers and is signed (verdict, exceptions, facts, lines to sign, gauges), the pages after it hold
 * every characteristic.
 */
public final class FirstArticleReport implements Report {
    /** The report; it has no settings. */
    public FirstArticleReport() {}

    @Override
    public ReportModel compose(Sheet sheet, PaperSize paper) {
        ReportCatalogue.require(sheet, SheetKind.FIRST_ARTICLE);
        Cautions cautions = new Cautions(sheet);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new VerdictSection(sheet).headline());
        blocks.addAll(new ExceptionsSection(sheet).blocks());
        blocks.addAll(cautions.blocks());
        blocks.add(new JobFacts(sheet).block());
        blocks.add(new SignOffSection(sheet).block());
        blocks.addAll(new GaugeTable(sheet).blocks());
        blocks.addAll(new PieceTable(sheet).blocks());
        blocks.addAll(cautions.fitNotes());
        return new SheetFrame(sheet).around(paper, blocks);
    }
}
