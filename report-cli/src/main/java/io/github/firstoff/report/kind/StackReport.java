package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.section.StackSection;
import io.github.firstoff.report.section.StudyFrame;
import io.github.firstoff.report.section.StudySignOff;
import io.github.firstoff.sheet.StackSheet;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;

/** A dimension loop: the answer, the gap reckoned in three ways, its picture, and what each member contributes. */
public final class StackReport {
    /** The report; it has no settings. */
    public StackReport() {}

    /** The sheet as blocks, for A4. */
    public ReportModel compose(StackSheet sheet) {
        return compose(sheet, PaperSize.A4);
    }

    /** The sheet as blocks, for the given paper. */
    public ReportModel compose(StackSheet sheet, PaperSize paper) {
        StackSection section = new StackSection(sheet);
        List<Block> blocks = new ArrayList<>();
        blocks.add(section.headline());
        blocks.addAll(section.results());
        blocks.addAll(section.picture());
        blocks.addAll(section.members());
        blocks.addAll(section.limits());
        blocks.add(StudySignOff.of(Labels.text("sign.study.stack"), sheet.accepted()));
        return new StudyFrame(
                        Labels.text("kind.stack"),
                        sheet.result().loop().part().orElse(""),
                        sheet.result().loop().name(),
                        sheet.result().loop().hand(),
                        sheet.provenance())
                .around(
                        paper,
                        Labels.text("stack.foot"),
                        Labels.text(sheet.accepted() ? "stack.as-wanted" : "stack.not-as-wanted"),
                        blocks);
    }
}
