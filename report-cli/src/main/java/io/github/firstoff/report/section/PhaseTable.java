package io.github.firstoff.report.section;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.MarkedItem;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Lines;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.Stage;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was done to the points of a chart by people: points left out with their written reasons, limits set anew and why. */
final class PhaseTable {
    /** Stands in the chart and in the list for a point that was left out. */
    private static final String LEFT_OUT = "×";

    private final ControlChart chart;
    private final ChartWords words;
    private final ControlChartSection figures;

    PhaseTable(ProcessStudy study, ControlChartSection figures) {
        this.chart = study.chart();
        this.words = new ChartWords(study);
        this.figures = figures;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        if (!chart.data().exclusions().isEmpty()) {
            List<MarkedItem> items = new ArrayList<>();
            for (Exclusion each : chart.data().exclusions()) {
                items.add(new MarkedItem(LEFT_OUT, Text.of(leftOut(each))));
            }
            blocks.add(new Block.MarkedList(items));
        }
        if (chart.stages().size() > 1) {
            blocks.add(stages());
        }
        return blocks;
    }

    private String leftOut(Exclusion each) {
        String reason = each.reason();
        return Labels.text(
                "stages.left-out",
                Wording.capital(words.point(each.number())),
                reason + (reason.endsWith(".") ? "" : "."));
    }

    private Block stages() {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text(Labels.text("stages.stretch"), 1.6));
        columns.add(Column.text(Wording.capital(words.nouns()), 1.6));
        columns.add(Column.figure(Labels.text("stages.set-by"), ""));
        columns.add(Column.figure(Labels.text("line.lcl"), words.unit()));
        columns.add(Column.figure(Wording.capital(Labels.text("line.centre")), words.unit()));
        columns.add(Column.figure(Labels.text("line.ucl"), words.unit()));
        Optional<Panel> spread = chart.panel(PanelKind.DISPERSION);
        spread.ifPresent(panel ->
                columns.add(Column.figure(Labels.text("stages.ucl-of", words.statistic(panel.kind())), words.unit())));
        columns.add(Column.text(Labels.text("stages.why"), 3));
        List<TableRow> rows = new ArrayList<>();
        BreakLetters letters = new BreakLetters(chart);
        for (Stage stage : chart.stages()) {
            List<Cell> cells = new ArrayList<>();
            cells.add(Cell.text(letters.before(stage.from()) + Labels.text(stage.name())));
            cells.add(Cell.text(
                    stage.from() == stage.to()
                            ? words.label(stage.from())
                            : Wording.span(words.label(stage.from()), words.label(stage.to()))));
            cells.add(Cell.figure(stage.limitsFrom() == 0 ? Figures.DASH : Integer.toString(stage.limitsFrom())));
            Optional<Lines> lines = lines(chart.location(), stage);
            cells.add(Cell.figure(lines.map(each -> figures.lowerFigure(chart.location(), each))
                    .orElse(Figures.DASH)));
            cells.add(
                    Cell.figure(lines.map(each -> figures.figure(each.centre())).orElse(Figures.DASH)));
            cells.add(
                    Cell.figure(lines.map(each -> figures.figure(each.upper())).orElse(Figures.DASH)));
            spread.ifPresent(panel -> cells.add(Cell.figure(lines(panel, stage)
                    .map(each -> figures.figure(each.upper()))
                    .orElse(Figures.DASH))));
            cells.add(Cell.text(stage.reason().orElseGet(() -> Labels.text("stages.first"))));
            rows.add(new TableRow.Cells(cells));
        }
        return new Block.Table(columns, rows);
    }

    /** The lines that hold at the end of a stretch. */
    private static Optional<Lines> lines(Panel panel, Stage stage) {
        Optional<Lines> found = Optional.empty();
        for (int i = 0; i < panel.count(); i++) {
            if (panel.number(i) >= stage.from() && panel.number(i) <= stage.to()) {
                found = panel.lines(i);
            }
        }
        return found;
    }
}
