package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.figure.HistoryFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.HistorySheet;
import io.github.firstoff.sheet.HistoryWords;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One characteristic across several batches: a sentence, a picture on one scale, a line for each batch. */
public final class HistorySection {
    /** Height of the picture over few batches, in millimetres. */
    private static final double HEIGHT = 88;

    /** How much lower the picture is for each batch more, so that picture, table and signatures share a page as long as they can. */
    private static final double LOWER_PER_BATCH = 2.5;

    private static final int FEW_BATCHES = 8;
    private static final double LEAST_HEIGHT = 58;

    /** The longest span of batches that the head of a page has room for. */
    private static final int LONGEST_SPAN = 28;

    /** Limits this many times as far apart as the readings stay outside the picture. */
    private static final double LOST = 12;

    private final HistorySheet sheet;
    private final HistoryWords words;
    private final Unit unit;

    /** The section of one history. */
    public HistorySection(HistorySheet sheet) {
        this.sheet = sheet;
        this.words = new HistoryWords(sheet);
        this.unit = TableParts.readingUnit(sheet.characteristic().unit());
    }

    /** Everything that the sheet says. */
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Headline(Text.of(words.headline()), tone()));
        Text required = Text.of(sheet.characteristic().number() + "  " + Wording.feature(sheet.characteristic()) + ": ")
                .notation(Notations.of(sheet.characteristic().characteristic()));
        if (!sheet.characteristic().isAttribute()) {
            required = required.plain(
                    " (" + Figures.limitsInWords(sheet.characteristic().limits()) + ")");
        }
        blocks.add(new Block.Paragraph(required.plain(". ").plain(String.join(" ", words.sentences()))));
        figure().ifPresent(figure -> {
            blocks.add(new Block.FigureBlock(
                    figure,
                    height(figure.batches().size()),
                    Labels.text("history.alternative", figure.batches().size())));
            blocks.add(new Block.Note(Text.of(Labels.text("history.picture"))));
        });
        blocks.add(Block.Heading.of(Labels.text("history.batches")));
        blocks.add(table());
        reasons().ifPresent(text -> blocks.add(new Block.Note(Text.of(text))));
        sheet.remarks().forEach(remark -> blocks.add(new Block.Note(Text.of(Labels.text(remark)))));
        return blocks;
    }

    private static double height(int batches) {
        return Math.max(LEAST_HEIGHT, HEIGHT - LOWER_PER_BATCH * Math.max(0, batches - FEW_BATCHES));
    }

    /** The batches for the head of the page: the one, the first and the last, or how many where their names are long. */
    public String batches() {
        String first = sheet.batches().get(0).name();
        int count = sheet.batches().size();
        if (count == 1) {
            return first;
        }
        String both = Wording.span(first, sheet.batches().get(count - 1).name());
        return both.length() <= LONGEST_SPAN ? both : Labels.text("history.count", count);
    }

    /** The rule that decided, for the foot. */
    public String rule() {
        return sheet.characteristic().isAttribute()
                ? ""
                : Wording.capital(Wording.statement(
                                sheet.batches().get(0).finding().result())) + ".";
    }

    private Tone tone() {
        boolean out = sheet.batches().stream()
                .anyMatch(batch -> batch.finding().result().count(Verdict.NONCONFORMING) > 0);
        return sheet.accepted() ? Tone.GOOD : out ? Tone.OUT : Tone.OPEN;
    }

    private Optional<HistoryFigure> figure() {
        List<HistoryFigure.Batch> batches = new ArrayList<>();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (HistorySheet.Batch batch : sheet.batches()) {
            Optional<Summary> summary = batch.finding().summary();
            if (summary.isEmpty()) {
                continue;
            }
            double least = Places.of(summary.get().minimum());
            double greatest = Places.of(summary.get().maximum());
            low = Math.min(low, least);
            high = Math.max(high, greatest);
            int out = batch.finding().result().count(Verdict.NONCONFORMING);
            batches.add(new HistoryFigure.Batch(
                    batch.name(),
                    least,
                    summary.get().mean(),
                    greatest,
                    summary.get().standardDeviation().orElse(Double.NaN),
                    out > 0 ? Labels.text("history.out-mark", out) : ""));
        }
        if (batches.isEmpty()) {
            return Optional.empty();
        }
        List<LevelLine> lines =
                HistogramSection.specification(sheet.batches().get(0).finding().result());
        double width = high - low;
        double from = low;
        double to = high;
        for (LevelLine line : lines) {
            from = Math.min(from, line.at());
            to = Math.max(to, line.at());
        }
        return Optional.of(new HistoryFigure(
                sheet.characteristic().characteristic().feature(),
                sheet.characteristic().unit().symbol(),
                Labels.text("history.axis"),
                batches,
                to - from > LOST * width ? List.of() : lines));
    }

    private Block table() {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text(Labels.text("history.batch"), 2));
        columns.add(Column.figure("n", ""));
        columns.add(Column.figure(Labels.text("column.least"), unit.symbol()));
        columns.add(Column.figure(Labels.text("column.mean"), unit.symbol()));
        columns.add(Column.figure(Labels.text("column.greatest"), unit.symbol()));
        columns.add(Column.figure("s", unit.symbol()));
        columns.add(Column.figure(Labels.text("column.out"), ""));
        columns.add(Column.figure(Labels.text("history.cpk"), ""));
        columns.add(Column.text(Labels.text("history.control-column"), 2));
        columns.add(Column.verdict(Labels.text("column.verdict"), 2));
        return new Block.Table(columns, sheet.batches().stream().map(this::row).toList());
    }

    private TableRow row(HistorySheet.Batch batch) {
        CharacteristicResult result = batch.finding().result();
        Readings readings = new Readings(result);
        Optional<Summary> summary = batch.finding().summary();
        int out = result.count(Verdict.NONCONFORMING);
        return TableRow.of(
                new Cell.Words(Text.bold(batch.name())),
                Cell.figure(Integer.toString(result.judgements().size())),
                Cell.figure(
                        readings.least().map(each -> Readings.shown(each, unit)).orElse(Figures.DASH)),
                Cell.figure(
                        summary.map(each -> SummaryTable.mean(each, readings)).orElse(Figures.DASH)),
                Cell.figure(readings.greatest()
                        .map(each -> Readings.shown(each, unit))
                        .orElse(Figures.DASH)),
                Cell.figure(summary.filter(each -> each.standardDeviation().isPresent())
                        .map(each -> Figures.spread(
                                TableParts.inColumn(
                                        each.standardDeviation().getAsDouble(),
                                        each.sample().unit()),
                                each.count()))
                        .orElse(Figures.DASH)),
                new Cell.Figure(Integer.toString(out), out > 0 ? Tone.OUT : Tone.PLAIN),
                Cell.figure(
                        batch.showsCpk() ? CapabilitySection.figures(batch.cpk().orElseThrow()) : Figures.DASH),
                Cell.text(HistoryWords.state(batch.control())),
                TableParts.verdict(Wording.verdict(result), result));
    }

    /** Why a batch shows no index, once for each reason. */
    private Optional<String> reasons() {
        Map<String, List<String>> reasons = new LinkedHashMap<>();
        for (HistorySheet.Batch batch : sheet.batches()) {
            if (batch.cpk().isPresent() && !batch.showsCpk()) {
                Remark why = batch.cpk().get().why();
                reasons.computeIfAbsent(
                                why.isEmpty() ? Labels.text("history.not-in-control") : Labels.text(why),
                                each -> new ArrayList<>())
                        .add(batch.name());
            }
        }
        List<String> sentences = new ArrayList<>();
        reasons.forEach(
                (reason, names) -> sentences.add(Labels.text("history.no-cpk", String.join(", ", names), reason)));
        return sentences.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", sentences));
    }
}
