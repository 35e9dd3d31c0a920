package io.github.firstoff.report.kind;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.report.section.DriftSection;
import io.github.firstoff.report.section.JobFacts;
import io.github.firstoff.report.section.SheetFrame;
import io.github.firstoff.sheet.DriftFinding;
import io.github.firstoff.sheet.DriftSheet;
import io.github.firstoff.sheet.DriftWords;
import java.util.ArrayList;
import java.util.List;

/**
 * A study of drift: one sentence, the offset to enter, the picture and what it means; then the figures behind it. Of several characteristics or
 * batches a table comes first, with those that need attention at its head; the first of them has its picture there, and each of the others a page.
 */
public final class DriftReport {
    /** The report; it has no settings. */
    public DriftReport() {}

    /** The sheet as blocks, for A4. */
    public ReportModel compose(DriftSheet sheet) {
        return compose(sheet, PaperSize.A4);
    }

    /** The sheet as blocks, for the given paper. */
    public ReportModel compose(DriftSheet sheet, PaperSize paper) {
        List<Block> blocks = new ArrayList<>();
        DriftFinding first = sheet.findings().get(0);
        String headline = new DriftWords(first).headline();
        blocks.add(new Block.Headline(Text.of(headline), tone(first)));
        if (sheet.findings().size() == 1) {
            DriftSection section = new DriftSection(first);
            blocks.addAll(section.answer());
            blocks.addAll(section.story());
            blocks.addAll(section.details());
            blocks.add(new JobFacts(sheet.sheet()).block());
            blocks.addAll(left(sheet));
            blocks.add(entered());
        } else {
            blocks.add(Block.Heading.of("What needs attention, first things first"));
            blocks.add(new Block.Table(
                    DriftSection.columns(),
                    sheet.findings().stream().map(DriftSection::row).toList()));
            blocks.addAll(new DriftSection(first).answer());
            blocks.addAll(left(sheet));
            blocks.add(new JobFacts(sheet.sheet()).block());
            blocks.add(entered());
            for (DriftFinding finding : sheet.findings()) {
                DriftSection section = new DriftSection(finding);
                blocks.add(new Block.PageBreak());
                blocks.add(Block.Heading.of(new DriftWords(finding).name() + ", " + finding.batch()));
                if (!finding.equals(first)) {
                    blocks.add(new Block.Paragraph(Text.of(new DriftWords(finding).headline())));
                    blocks.addAll(section.answer());
                }
                blocks.addAll(section.story());
                blocks.addAll(section.details());
            }
        }
        return new SheetFrame(sheet.sheet()).around(paper, headline, blocks);
    }

    private static Tone tone(DriftFinding finding) {
        return switch (finding.attention()) {
            case OUT, REACHED -> Tone.OUT;
            case AHEAD, RESTLESS -> Tone.OPEN;
            case QUIET -> Tone.PLAIN;
        };
    }

    private static List<Block> left(DriftSheet sheet) {
        if (sheet.left().isEmpty()) {
            return List.of();
        }
        return List.of(new Block.Note(Text.of("Not followed: "
                + String.join(
                        "; ",
                        sheet.left().stream()
                                .map(each -> each.number() + " " + each.reason())
                                .toList())
                + ".")));
    }

    private static Block entered() {
        return new Block.SignOff(
                Text.of("Offset entered, and the first piece after it measured:"),
                List.of(new Block.SignLine("Entered by", "", ""), new Block.SignLine("Checked by", "", "")));
    }
}
