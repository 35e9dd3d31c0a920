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
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A study of drift: one sentence, the offset to enter, the picture and what it means; then the figures behind it. Of several characteristics or
 * batches a table comes first, with those that need attention at its head; the first of them has its picture there, and each of the others a page.
 */
public final class DriftReport {
    /** Up to so many are read in a minute, quiet or not. */
    private static final int ALL_ARE_TOLD = 3;

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
            blocks.add(Block.Heading.of(Labels.text("drift.title.attention")));
            blocks.add(new Block.Table(
                    DriftSection.columns(),
                    sheet.findings().stream().map(DriftSection::row).toList()));
            List<DriftFinding> told = told(sheet.findings());
            if (told.size() < sheet.findings().size()) {
                blocks.add(new Block.Note(Text.of(Labels.text("drift.quiet"))));
            }
            blocks.addAll(left(sheet));
            blocks.add(new Block.KeepTogether(new DriftSection(first).answer()));
            blocks.add(new JobFacts(sheet.sheet()).block());
            blocks.add(entered());
            for (DriftFinding finding : told) {
                DriftSection section = new DriftSection(finding);
                blocks.add(new Block.PageBreak());
                blocks.add(Block.Heading.of(new DriftWords(finding).name() + ", " + new DriftWords(finding).batch()));
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

    /** Those that are told on a page of their own: all while they are few, else the first and what calls for something. */
    private static List<DriftFinding> told(List<DriftFinding> findings) {
        if (findings.size() <= ALL_ARE_TOLD) {
            return findings;
        }
        return IntStream.range(0, findings.size())
                .filter(i -> i == 0 || findings.get(i).attention() != DriftFinding.Attention.QUIET)
                .mapToObj(findings::get)
                .toList();
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
        return List.of(new Block.Note(Text.of(Labels.text("drift.not-followed", DriftSheet.told(sheet.left())))));
    }

    private static Block entered() {
        return new Block.SignOff(
                Text.of(Labels.text("drift.sign")),
                List.of(
                        new Block.SignLine(Labels.text("drift.sign.entered"), "", ""),
                        new Block.SignLine(Labels.text("drift.sign.checked"), "", "")));
    }
}
