package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.report.model.Width;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Every characteristic of a batch on one line: limits, how many, from where to where, and how many did not conform. */
public final class SummaryTable {
    private final Sheet sheet;
    private final TableParts parts;

    /** The table of one sheet. */
    public SummaryTable(Sheet sheet) {
        this.sheet = sheet;
        this.parts = new TableParts(sheet.findings());
    }

    /** A heading, the table and its legend. */
    public List<Block> blocks() {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.narrow(Labels.text("column.number")));
        columns.add(TableParts.requirement(3));
        columns.add(parts.figure(Labels.text("column.limits")));
        if (parts.isMixed()) {
            columns.add(Column.narrow(Labels.text("column.unit")));
        }
        columns.add(Column.figure("n", ""));
        columns.add(parts.figure(Labels.text("column.least")));
        columns.add(parts.figure(Labels.text("column.mean")));
        columns.add(parts.figure(Labels.text("column.greatest")));
        columns.add(parts.figure("s"));
        columns.add(Column.figure(Labels.text("column.out"), ""));
        columns.add(new Column(Labels.text("column.place"), "", Column.Kind.STRIP, Width.mm(30)));
        columns.add(Column.verdict(Labels.text("column.verdict"), 1.6));
        List<Block> blocks = List.of(
                Block.Heading.of(Labels.text("table.characteristics")),
                new Block.Table(
                        columns, sheet.findings().stream().map(this::row).toList()),
                new Block.Note(Text.of(
                        Labels.text("summary.legend") + (hasBonus() ? " " + Labels.text("summary.bonus") : ""))));
        return blocks;
    }

    private boolean hasBonus() {
        return sheet.findings().stream()
                .anyMatch(each -> !each.result().characteristic().zone().isFixed());
    }

    private TableRow row(Finding finding) {
        CharacteristicResult result = finding.result();
        Readings readings = new Readings(result);
        Unit unit = TableParts.readingUnit(result.characteristic().unit());
        Optional<Summary> summary = finding.summary();
        List<Cell> cells = new ArrayList<>();
        cells.add(TableParts.number(result));
        cells.add(TableParts.requirement(result));
        cells.add(TableParts.limits(result));
        if (parts.isMixed()) {
            cells.add(TableParts.unit(result));
        }
        cells.add(Cell.figure(Integer.toString(result.judgements().size())));
        cells.add(extreme(result, readings.least(), unit));
        cells.add(Cell.figure(summary.map(each -> mean(each, readings)).orElse(Figures.DASH)));
        cells.add(extreme(result, readings.greatest(), unit));
        cells.add(Cell.figure(summary.filter(each -> each.standardDeviation().isPresent())
                .map(each -> Figures.spread(
                        TableParts.inColumn(
                                each.standardDeviation().getAsDouble(),
                                each.sample().unit()),
                        each.count()))
                .orElse(Figures.DASH)));
        int out = result.characteristic().isJudged() ? result.count(Verdict.NONCONFORMING) : 0;
        cells.add(new Cell.Figure(
                result.characteristic().isJudged() && !result.judgements().isEmpty()
                        ? Integer.toString(out)
                        : Figures.DASH,
                out > 0 ? Tone.OUT : Tone.PLAIN));
        cells.add(Strips.summarised(
                result, summary.map(each -> OptionalDouble.of(each.mean())).orElse(OptionalDouble.empty())));
        cells.add(TableParts.verdict(Wording.verdict(result), result));
        return new TableRow.Cells(cells);
    }

    /**
     * The mean with one decimal more than its readings, unless these are too few or spread too widely for it; in the unit of the
     * column.
     */
    static String mean(Summary summary, Readings readings) {
        Unit unit = summary.sample().unit();
        int places = readings.places();
        double error = TableParts.inColumn(summary.standardDeviation().orElse(0), unit) / Math.sqrt(summary.count());
        return Figures.rounded(
                TableParts.inColumn(summary.mean(), unit),
                Math.min(places + 1, Math.max(places, Figures.placesOf(error))));
    }

    /** The same with its unit. */
    static String meanWithUnit(Summary summary, Readings readings) {
        return Figures.with(
                mean(summary, readings), TableParts.readingUnit(summary.sample().unit()));
    }

    private static Cell extreme(CharacteristicResult result, Optional<Reading.Measured> reading, Unit unit) {
        if (reading.isEmpty()) {
            return Cell.figure(Figures.DASH);
        }
        boolean out = result.characteristic().isJudged()
                && result.judgements().stream()
                        .anyMatch(each ->
                                each.reading().equals(reading.get()) && each.verdict() == Verdict.NONCONFORMING);
        return new Cell.Figure(Readings.shown(reading.get(), unit), out ? Tone.OUT : Tone.PLAIN);
    }
}
