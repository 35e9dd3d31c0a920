package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.section.HistorySection;
import io.github.firstoff.report.section.StudyFrame;
import io.github.firstoff.report.section.StudySignOff;
import io.github.firstoff.sheet.HistorySheet;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;

/** One characteristic across several batches, on one page as long as the batches have room there. */
public final class HistoryReport {
    /** The report; it has no settings. */
    public HistoryReport() {}

    /** The sheet as blocks, for the given paper. */
    public ReportModel compose(HistorySheet sheet, PaperSize paper) {
        HistorySection section = new HistorySection(sheet);
        List<Block> blocks = new ArrayList<>(section.blocks());
        blocks.add(StudySignOff.of(Labels.text("sign.study.history"), sheet.accepted()));
        return new StudyFrame(
                        Labels.text("kind.history"),
                        sheet.plan().part().number(),
                        sheet.plan().part().name().orElse(""),
                        sheet.plan().part().hand(),
                        sheet.provenance())
                .about(
                        sheet.plan().part().revision(),
                        section.batches(),
                        Labels.text(
                                "history.title",
                                sheet.plan().part().number(),
                                sheet.plan().part().revision(),
                                sheet.characteristic().number()))
                .around(
                        paper,
                        section.rule(),
                        Labels.text("history.subject", sheet.batches().size()),
                        blocks);
    }
}
