package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a certificate shows of its results: a line for each characteristic that was judged, and nothing that was not. */
public final class CertificateTable {
    private final List<Finding> findings;
    private final TableParts parts;
    private final boolean indices;

    /** The table of one sheet. */
    public CertificateTable(Sheet sheet) {
        this.findings = sheet.findings().stream()
                .filter(each -> each.result().characteristic().isJudged())
                .toList();
        this.parts = new TableParts(findings);
        this.indices = findings.stream().anyMatch(each -> index(each).isPresent());
    }

    /** The table. */
    public Block table() {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.narrow(Labels.text("column.number")));
        columns.add(Column.text(Labels.text("column.characteristic"), 4));
        if (parts.isMixed()) {
            columns.add(Column.narrow(Labels.text("column.unit")));
        }
        columns.add(Column.figure(Labels.text("column.pieces"), ""));
        columns.add(parts.figure(Labels.text("column.least")));
        columns.add(parts.figure(Labels.text("column.mean")));
        columns.add(parts.figure(Labels.text("column.greatest")));
        if (indices) {
            columns.add(Column.figure(Labels.text("column.cpk", level()), ""));
        }
        return new Block.Table(columns, findings.stream().map(this::row).toList());
    }

    /** What the columns say that their heads do not. */
    public String legend() {
        return Labels.text("certificate.legend") + (indices ? " " + Labels.text("certificate.legend-cpk") : "");
    }

    private TableRow row(Finding finding) {
        CharacteristicResult result = finding.result();
        Readings readings = new Readings(result);
        Optional<Summary> summary = finding.summary();
        Unit unit = TableParts.readingUnit(result.characteristic().unit());
        List<Cell> cells = new ArrayList<>();
        cells.add(TableParts.number(result));
        cells.add(new Cell.Words(requirement(result)));
        if (parts.isMixed()) {
            cells.add(TableParts.unit(result));
        }
        cells.add(Cell.figure(Integer.toString(readings.pieces())));
        cells.add(value(readings.least(), unit));
        String pass = result.characteristic().isAttribute() ? Labels.text("reading.all-pass") : Figures.DASH;
        cells.add(Cell.figure(
                summary.map(each -> SummaryTable.mean(each, readings)).orElse(pass)));
        cells.add(value(readings.greatest(), unit));
        if (indices) {
            cells.add(Cell.figure(index(finding).orElse(Figures.DASH)));
        }
        return new TableRow.Cells(cells);
    }

    private String level() {
        return findings.stream()
                .flatMap(each -> each.study().stream())
                .map(study -> Figures.rounded(study.capability().level() * 100, 0) + "\u00A0%")
                .findFirst()
                .orElse("");
    }

    /** Feature and requirement on one line; a requirement in words may wrap, one with figures stays whole. */
    private static Text requirement(CharacteristicResult result) {
        boolean attribute = result.characteristic().isAttribute();
        Text feature = Text.of(Wording.feature(result.characteristic()) + (attribute ? ", " : ": "));
        return attribute
                ? feature.plain(
                        result.characteristic().characteristic().requirement().text())
                : feature.notation(Notations.of(result.characteristic().characteristic()));
    }

    private static Cell value(Optional<Reading.Measured> reading, Unit unit) {
        return Cell.figure(reading.map(each -> Readings.shown(each, unit)).orElse(Figures.DASH));
    }

    /** Cpk with its interval, where it may be presented. */
    private static Optional<String> index(Finding finding) {
        return finding.study()
                .filter(study -> study.capability().predicts())
                .flatMap(CapabilitySection::presentedCpk)
                .map(CapabilitySection::figures);
    }
}
