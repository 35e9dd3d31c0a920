package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.section.FitSection;
import io.github.firstoff.report.section.PairTable;
import io.github.firstoff.report.section.PressCautions;
import io.github.firstoff.report.section.StudyFrame;
import io.github.firstoff.report.section.StudySignOff;
import io.github.firstoff.sheet.FitSheet;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;

/**
 * A press fit: the answer and the caution in one type, what needs a decision, the interference over its consequences and the way from cold to
 * hot; then figures, joining, and the pairs for the bench.
 */
public final class FitReport {
    /** The report; it has no settings. */
    public FitReport() {}

    /** The sheet as blocks, for A4. */
    public ReportModel compose(FitSheet sheet) {
        return compose(sheet, PaperSize.A4);
    }

    /** The sheet as blocks, for the given paper. */
    public ReportModel compose(FitSheet sheet, PaperSize paper) {
        FitSection section = new FitSection(sheet);
        List<Block> blocks = new ArrayList<>();
        blocks.add(section.headline());
        blocks.addAll(new PressCautions(sheet.result().joint()).blocks());
        blocks.addAll(section.decisions());
        blocks.addAll(section.interference());
        blocks.addAll(section.coldToHot());
        blocks.addAll(section.figures());
        blocks.add(section.facts());
        blocks.addAll(section.joining());
        blocks.addAll(section.limits());
        blocks.addAll(new PairTable(sheet).blocks());
        blocks.add(StudySignOff.of(
                Labels.text("sign.study.fit"), sheet.result().verdicts().accepted()));
        return new StudyFrame(Labels.text("kind.fit"), sheet.part(), sheet.name(), sheet.hand(), sheet.provenance())
                .around(
                        paper,
                        Labels.text("press.foot", section.criterion()),
                        Labels.text(sheet.result().verdicts().accepted() ? "press.as-asked" : "press.not-as-asked"),
                        blocks);
    }
}
