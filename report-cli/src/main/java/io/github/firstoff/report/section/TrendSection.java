package io.github.firstoff.report.section;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.IndexMark;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.capability.TrendedCapability;
import io.github.firstoff.study.capability.TrendedCapability.Line;
import io.github.firstoff.study.capability.TrendedCapability.Segment;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * A process that drifts along a line from one tool change to the next, in indices side by side: what the spread about the lines
 * alone would give, what whole tool lives gave, and the worst moment.
 */
final class TrendSection {
    /** Slopes are told over so many pieces. */
    private static final int PIECES = 100;

    private final Finding finding;
    private final TrendedCapability trended;
    private final OptionalDouble demanded;

    TrendSection(Finding finding, TrendedCapability trended, OptionalDouble demanded) {
        this.finding = finding;
        this.trended = trended;
        this.demanded = demanded;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        List<IndexMark> marks = new ArrayList<>();
        trended.potential().forEach(index -> add(marks, index));
        trended.wholeLife().forEach(index -> add(marks, index));
        add(marks, trended.worst());
        if (!marks.isEmpty()) {
            blocks.add(new Block.Heading(Labels.text("trend.title"), Block.Level.SUBSECTION));
            blocks.add(new Block.IndexScale(marks, demanded, Text.of(conditions())));
        }
        blocks.add(new Block.Note(Text.of(words(marks.isEmpty()))));
        trended.remarks().forEach(remark -> blocks.add(new Block.Note(Text.of(Labels.text(remark)))));
        return blocks;
    }

    private static void add(List<IndexMark> marks, Index index) {
        if (index.value().isPresent() && Double.isFinite(index.value().getAsDouble())) {
            marks.add(CapabilitySection.mark(index));
        }
    }

    private String conditions() {
        long lives = lines().size();
        return Labels.text(
                "trend.conditions",
                lives,
                trended.withinTrend().stream()
                        .mapToObj(each -> Figures.amount(
                                each, finding.summary().orElseThrow().sample().unit()))
                        .findFirst()
                        .orElse(Figures.DASH),
                trended.degreesOfFreedom());
    }

    private List<Line> lines() {
        return trended.segments().stream()
                .map(Segment::line)
                .flatMap(Optional::stream)
                .toList();
    }

    private String words(boolean none) {
        if (none) {
            return Labels.text(
                    "trend.none",
                    trended.wholeLife().stream()
                            .map(Index::why)
                            .filter(why -> !why.isEmpty())
                            .findFirst()
                            .map(Labels::text)
                            .orElseGet(() -> Labels.text("trend.too-few")));
        }
        return drift() + Labels.text("trend.meaning");
    }

    private String drift() {
        return drift(trended, finding.summary().orElseThrow().sample().unit())
                .map(told -> Wording.capital(told) + ". ")
                .orElseGet(() -> lines().isEmpty() ? "" : Labels.text("trend.differing") + " ");
    }

    /** By how much the level drifts, where every tool life drifts the same way; no sentence yet. */
    static Optional<String> drift(TrendedCapability trended, Unit unit) {
        double[] slopes = trended.segments().stream()
                .flatMap(segment -> segment.line().stream())
                .mapToDouble(Line::slope)
                .toArray();
        double least = DoubleStream.of(slopes).min().orElse(0);
        double most = DoubleStream.of(slopes).max().orElse(0);
        if (!(least * most > 0)) {
            return Optional.empty();
        }
        String amounts = Figures.amounts(
                Math.min(Math.abs(least), Math.abs(most)) * PIECES,
                Math.max(Math.abs(least), Math.abs(most)) * PIECES,
                unit);
        return Optional.of(Labels.text(most > 0 ? "trend.rises" : "trend.falls", slopes.length, amounts, PIECES));
    }
}
