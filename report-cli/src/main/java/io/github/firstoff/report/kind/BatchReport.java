package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.section.Cautions;
import io.github.firstoff.report.section.ExceptionsSection;
import io.github.firstoff.report.section.GaugeTable;
import io.github.firstoff.report.section.JobFacts;
import io.github.firstoff.report.section.SheetFrame;
import io.github.firstoff.report.section.SignOffSection;
import io.github.firstoff.report.section.StudySection;
import io.github.firstoff.report.section.SummaryTable;
import io.github.firstoff.report.section.VerdictSection;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import java.util.ArrayList;
import java.util.List;

/**
 * A batch under control charts: the first page answers and is signed, then comes the summary of all characteristics, then a page
 * for each characteristic under study.
 */
public final class BatchReport implements Report {
    /** The report; it has no settings. */
    public BatchReport() {}

    @Override
    public ReportModel compose(Sheet sheet, PaperSize paper) {
        ReportCatalogue.require(sheet, SheetKind.BATCH);
        Cautions cautions = new Cautions(sheet);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new VerdictSection(sheet).headline());
        blocks.addAll(new ExceptionsSection(sheet).blocks());
        blocks.addAll(cautions.blocks());
        blocks.add(new JobFacts(sheet).block());
        blocks.add(new SignOffSection(sheet).block());
        blocks.addAll(new SummaryTable(sheet).blocks());
        blocks.addAll(cautions.fitNotes());
        blocks.addAll(new GaugeTable(sheet).blocks());
        studies(sheet, blocks);
        return new SheetFrame(sheet).around(paper, blocks);
    }

    /** A page for each characteristic under study; two charts of counts, which take half a page, share one. */
    private static void studies(Sheet sheet, List<Block> blocks) {
        boolean roomLeft = false;
        for (Finding finding : sheet.findings()) {
            if (finding.study().isEmpty()) {
                continue;
            }
            List<Block> study = new StudySection(sheet, finding).blocks();
            boolean isShort = finding.study().get().isCounted();
            boolean wordsOnly = study.stream().noneMatch(block -> block instanceof Block.FigureBlock);
            if (wordsOnly) {
                // too few readings for a picture: a few lines need no page of their own
                blocks.add(new Block.KeepTogether(study));
            } else if (isShort && roomLeft) {
                blocks.add(new Block.KeepTogether(study));
                roomLeft = false;
            } else {
                blocks.add(new Block.PageBreak());
                blocks.addAll(study);
                roomLeft = isShort;
            }
        }
    }
}
