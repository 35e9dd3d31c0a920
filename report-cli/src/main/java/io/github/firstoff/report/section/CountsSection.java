package io.github.firstoff.report.section;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ObservedShare;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a chart of counts leaves to say beside its picture: from where to where the counts went, and what they do not give. */
final class CountsSection {
    private final ControlChart chart;
    private final ChartWords words;
    private final Optional<ObservedShare> share;

    CountsSection(Finding finding) {
        this.share = ObservedShare.of(finding.result());
        ProcessStudy study = finding.study().orElseThrow();
        this.chart = study.chart();
        this.words = new ChartWords(study);
    }

    List<Block> blocks() {
        Panel panel = chart.location();
        if (panel.count() == 0) {
            return List.of();
        }
        int least = 0;
        int greatest = 0;
        for (int i = 1; i < panel.count(); i++) {
            least = panel.value(i) < panel.value(least) ? i : least;
            greatest = panel.value(i) > panel.value(greatest) ? i : greatest;
        }
        String sizes = sizes(panel);
        String text = Labels.text(
                "counts.range",
                words.statistics(panel.kind()),
                panel.count(),
                words.nouns(),
                sizes,
                figure(panel.value(least)),
                words.point(panel.number(least)),
                figure(panel.value(greatest)),
                words.point(panel.number(greatest)));
        List<Block> blocks = new ArrayList<>(List.of(new Block.Paragraph(Text.of(text))));
        share.ifPresent(each -> blocks.add(new Block.Note(Text.of(CapabilitySection.observed(each)))));
        blocks.add(new Block.Note(
                Text.of(Labels.text(share.isPresent() ? "counts.pieces.no-indices" : "counts.no-indices"))));
        return blocks;
    }

    private static String sizes(Panel panel) {
        int fewest = panel.point(0).size();
        int most = fewest;
        for (int i = 1; i < panel.count(); i++) {
            fewest = Math.min(fewest, panel.point(i).size());
            most = Math.max(most, panel.point(i).size());
        }
        return most == 1 ? "" : Labels.text("counts.sizes", fewest == most, fewest, most);
    }

    private static String figure(double value) {
        return value == Math.rint(value) ? Figures.rounded(value, 0) : Figures.twoDigits(value);
    }
}
