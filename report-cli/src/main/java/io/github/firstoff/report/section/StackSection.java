package io.github.firstoff.report.section;

import io.github.firstoff.assembly.DimensionLoop;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.ShareFigure;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.StackSheet;
import io.github.firstoff.sheet.StackWords;
import io.github.firstoff.study.stack.StackResult;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What the sheet of a dimension loop says. */
public final class StackSection {
    private static final double ROW_HEIGHT = 5.5;
    private static final int MOST_BARS = 20;

    private final StackSheet sheet;
    private final StackResult result;
    private final StackWords words;
    private final String unit;

    /** The section of one sheet. */
    public StackSection(StackSheet sheet) {
        this.sheet = sheet;
        this.result = sheet.result();
        this.words = new StackWords(result);
        this.unit = result.loop().unit().symbol();
    }

    /** The answer in one sentence. */
    public Block headline() {
        return new Block.Headline(Text.of(words.answer()), sheet.accepted() ? Tone.GOOD : Tone.OUT);
    }

    /** The three ways to reckon the gap, beside one another. */
    public List<Block> results() {
        List<TableRow> rows = new ArrayList<>();
        result.worst().ifPresent(worst -> {
            int places = Math.max(
                    0, Math.max(worst.minimum().scale(), worst.maximum().scale()));
            rows.add(row(
                    Labels.text("stack.worst-case"),
                    Figures.of(worst.minimum(), places),
                    result.rootSumSquare()
                            .map(around -> words.length(around.middle()))
                            .orElse("—"),
                    Figures.of(worst.maximum(), places),
                    result.worstFits()
                            .map(fits -> Labels.text(fits ? "stack.none-can-be" : "stack.some-can-be"))
                            .orElse("—"),
                    result.nominal()
                            .map(nominal -> Labels.text("stack.worst-case.nominal", Figures.of(nominal) + " " + unit))
                            .orElseGet(() -> Labels.text("stack.worst-case.meaning"))));
        });
        result.rootSumSquare()
                .ifPresent(around -> rows.add(row(
                        Labels.text("stack.root-sum-square"),
                        words.length(around.middle() - around.half()),
                        words.length(around.middle()),
                        words.length(around.middle() + around.half()),
                        result.normal()
                                .map(normal -> StackWords.share(normal.total()))
                                .orElse("—"),
                        Labels.text("stack.root-sum-square.meaning"))));
        StackResult.Drawn drawn = result.drawn();
        rows.add(row(
                Labels.text("stack.drawn"),
                words.length(drawn.low()),
                words.length(drawn.middle()),
                words.length(drawn.high()),
                drawn.outside()
                        .map(outside -> StackWords.share(outside.total()))
                        .orElse("—"),
                drawn.upperBound().isPresent()
                        ? Labels.text(
                                "stack.drawn.bounded",
                                Phrases.count(drawn.draws()),
                                StackWords.share(drawn.upperBound().getAsDouble()))
                        : Labels.text("stack.drawn.meaning", Phrases.count(drawn.draws()))));
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of(result.loop()
                .printed()
                .map(wanted -> Labels.text("stack.title.gap-wanted", wanted + " " + unit))
                .orElseGet(() -> Labels.text("stack.title.gap"))));
        blocks.add(new Block.Table(
                List.of(
                        Column.text(Labels.text("stack.column.reckoned"), 2),
                        Column.figure(Labels.text("stack.column.least"), unit),
                        Column.figure(Labels.text("stack.column.middle"), unit),
                        Column.figure(Labels.text("stack.column.greatest"), unit),
                        Column.narrow(Labels.text("stack.column.outside")),
                        Column.text(Labels.text("stack.column.meaning"), 4)),
                rows));
        return blocks;
    }

    private static TableRow row(String name, String low, String middle, String high, String outside, String meaning) {
        return TableRow.of(
                new Cell.Words(Text.bold(name)),
                Cell.figure(low),
                Cell.figure(middle),
                Cell.figure(high),
                Cell.text(outside),
                Cell.text(meaning));
    }

    /** The drawn gaps. */
    public List<Block> picture() {
        StackResult.Drawn drawn = result.drawn();
        if (drawn.bins().isEmpty()) {
            return List.of();
        }
        List<HistogramFigure.Bin> bins = new ArrayList<>();
        for (int i = 0; i < drawn.bins().size(); i++) {
            double from = drawn.from() + i * drawn.width();
            bins.add(new HistogramFigure.Bin(
                    from, drawn.from() + (i + 1) * drawn.width(), drawn.bins().get(i)));
        }
        List<LevelLine> lines = new ArrayList<>();
        lines.add(new LevelLine(
                LevelLine.Kind.CENTRE, Labels.text("stack.mean"), words.length(result.mean()), result.mean()));
        limit(
                result.loop().gap().lower(),
                Labels.text("stack.least-wanted"),
                LevelLine.Kind.SPECIFICATION_LIMIT,
                lines);
        limit(
                result.loop().gap().upper(),
                Labels.text("stack.greatest-wanted"),
                LevelLine.Kind.SPECIFICATION_LIMIT,
                lines);
        limit(
                result.worst().map(StackResult.Exact::minimum),
                Labels.text("stack.worst-least"),
                LevelLine.Kind.TARGET,
                lines);
        limit(
                result.worst().map(StackResult.Exact::maximum),
                Labels.text("stack.worst-greatest"),
                LevelLine.Kind.TARGET,
                lines);
        return List.of(
                Block.Heading.of(Labels.text("stack.title.drawn", Phrases.count(drawn.draws()))),
                new Block.FigureBlock(
                        new HistogramFigure(
                                result.loop().name(), unit, bins, lines, Optional.empty(), Optional.empty()),
                        58,
                        Labels.text("stack.drawn.alternative")));
    }

    private static void limit(Optional<BigDecimal> at, String name, LevelLine.Kind kind, List<LevelLine> lines) {
        at.ifPresent(value -> lines.add(new LevelLine(kind, name, Figures.of(value), Ratio.of(value, BigDecimal.ONE))));
    }

    /** What each member contributes, as a picture and as a table. */
    public List<Block> members() {
        List<Block> blocks = new ArrayList<>();
        List<StackResult.Contribution> sorted = result.members().stream()
                .sorted(Comparator.comparingDouble((StackResult.Contribution each) -> -each.ofVariance()))
                .limit(MOST_BARS)
                .toList();
        blocks.add(Block.Heading.of(Labels.text("stack.title.members")));
        blocks.add(new Block.FigureBlock(
                new ShareFigure(
                        Labels.text("stack.share-of-variance"),
                        sorted.stream()
                                .map(each -> new ShareFigure.Row(
                                        each.member().name(),
                                        Math.min(1, each.ofVariance()),
                                        percent(each.ofVariance())))
                                .toList()),
                Math.max(20, 6 + ROW_HEIGHT * sorted.size()),
                Labels.text("stack.members.alternative")));
        List<TableRow> rows = new ArrayList<>();
        for (StackResult.Contribution each : result.members()) {
            DimensionLoop.Member member = each.member();
            rows.add(TableRow.of(
                    Cell.text(member.name()),
                    Cell.text(member.printed().isEmpty() ? "—" : FitWords.minus(member.printed())),
                    Cell.figure((member.coefficient().signum() > 0 ? "+" : "")
                            + Figures.of(
                                    member.coefficient().stripTrailingZeros().scale() < 0
                                            ? member.coefficient().setScale(0)
                                            : member.coefficient())),
                    Cell.text(spread(member)),
                    Cell.figure(words.length(each.mean())),
                    Cell.figure(Figures.rounded(each.deviation(), 4)),
                    Cell.figure(percent(each.ofVariance())),
                    Cell.figure(
                            each.ofWidth().isPresent() ? percent(each.ofWidth().getAsDouble()) : "—")));
        }
        blocks.add(new Block.Table(
                List.of(
                        Column.text(Labels.text("stack.column.member"), 3),
                        Column.text(Labels.text("stack.column.requirement"), 2),
                        Column.figure(Labels.text("stack.column.coefficient"), ""),
                        Column.text(Labels.text("stack.column.spread"), 2),
                        Column.figure(Labels.text("stack.column.mean"), unit),
                        Column.figure("σ", unit),
                        Column.figure(Labels.text("stack.column.of-variance"), ""),
                        Column.figure(Labels.text("stack.column.of-worst-case"), "")),
                rows));
        return blocks;
    }

    private static String spread(DimensionLoop.Member member) {
        if (member.distribution() instanceof DimensionLoop.WithinLimits within) {
            return Labels.text("stack.spread.limits", within.sigmas().toPlainString());
        } else if (member.distribution() instanceof DimensionLoop.Measured measured) {
            return Labels.text("figure.readings", measured.readings().size());
        } else if (member.distribution() instanceof DimensionLoop.Stated) {
            return Labels.text("stack.spread.stated");
        }
        return Labels.text("stack.spread.even");
    }

    private static String percent(double share) {
        return FitWords.rounded(100 * share, 1, RoundingMode.HALF_EVEN) + " %";
    }

    /** Where the figures end. */
    public List<Block> limits() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Note(Text.of(Labels.text("stack.limits"))));
        for (Remark notice : sheet.remarks()) {
            blocks.add(new Block.Note(Text.of(Labels.text("notice.line", notice))));
        }
        return blocks;
    }
}
