package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
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
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Every characteristic of the drawing with what was read: one column per piece up to six, beyond that the least and the greatest
 * reading and their count.
 */
public final class PieceTable {
    /** More pieces than this have no column of their own. */
    static final int COLUMNS = 6;

    /** Up to so many pieces have room for whatever their serial numbers are, one more for the gauges as well. */
    private static final int FEW = 3;

    /** Serial numbers up to this length head a column; longer ones of many pieces stand in a note. */
    private static final int SHORT = 8;

    /** So many repeated readings of one piece stand under one another; more are given by their ends. */
    private static final int STACKED = 3;

    private final Sheet sheet;
    private final TableParts parts;
    private final List<String> serials;
    private final boolean byPiece;
    private final boolean numbered;
    private final boolean crowded;

    /** The table of one sheet. */
    public PieceTable(Sheet sheet) {
        this.sheet = sheet;
        this.parts = new TableParts(sheet.findings());
        this.serials =
                sheet.result().record().parts().stream().map(PartRecord::serial).toList();
        this.byPiece = serials.size() <= COLUMNS;
        this.numbered = byPiece && serials.size() > FEW && serials.stream().anyMatch(serial -> serial.length() > SHORT);
        this.crowded = byPiece && serials.size() > FEW + 1;
    }

    /** A heading, the table and the notes that it needs. */
    public List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of(Labels.text("table.characteristics")));
        blocks.add(new Block.Table(
                columns(),
                sheet.findings().stream().map(each -> row(each.result())).toList()));
        sheet.plan()
                .plan()
                .thermal()
                .filter(each -> isCorrected())
                .ifPresent(thermal ->
                        blocks.add(new Block.Note(Text.of(Labels.text("pieces.thermal", thermal.origin())))));
        if (numbered) {
            blocks.add(new Block.Note(Text.of(Labels.text(
                    "pieces.names",
                    serials.stream()
                            .map(serial -> Labels.text("pieces.name", name(serial), serial))
                            .collect(Collectors.joining(", "))))));
        }
        blocks.add(new Block.Note(Text.of(legend())));
        for (String note : particulars()) {
            blocks.add(new Block.Note(Text.of(note)));
        }
        for (String note : bonuses()) {
            blocks.add(new Block.Note(Text.of(note)));
        }
        return blocks;
    }

    private List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.narrow(Labels.text("column.number")));
        columns.add(TableParts.requirement(3));
        columns.add(parts.figure(Labels.text("column.limits")));
        if (parts.isMixed()) {
            columns.add(Column.narrow(Labels.text("column.unit")));
        }
        if (byPiece) {
            serials.forEach(serial -> columns.add(parts.figure(Labels.text("column.piece", name(serial)))));
        } else {
            columns.add(parts.figure(Labels.text("column.least")));
            columns.add(parts.figure(Labels.text("column.greatest")));
            columns.add(Column.figure(Labels.text("column.count"), ""));
        }
        columns.add(
                crowded
                        ? new Column(Labels.text("column.place"), "", Column.Kind.STRIP, Width.mm(28))
                        : Column.strip(Labels.text("column.place")));
        columns.add(Column.verdict(Labels.text("column.verdict"), 2));
        if (!crowded) {
            columns.add(Column.narrow(Labels.text("column.gauge")));
        }
        return columns;
    }

    /** How the table names a piece: by its serial number, or by its place where the numbers are too long for heads. */
    private String name(String serial) {
        return numbered ? Integer.toString(serials.indexOf(serial) + 1) : serial;
    }

    private TableRow row(CharacteristicResult result) {
        List<Cell> cells = new ArrayList<>();
        cells.add(TableParts.number(result));
        cells.add(TableParts.requirement(result));
        cells.add(TableParts.limits(result));
        if (parts.isMixed()) {
            cells.add(TableParts.unit(result));
        }
        if (byPiece) {
            serials.forEach(serial -> cells.add(piece(result, serial)));
        } else {
            Readings readings = new Readings(result);
            cells.add(extreme(result, readings.least()));
            cells.add(extreme(result, readings.greatest()));
            cells.add(Cell.figure(Integer.toString(result.judgements().size())));
        }
        cells.add(byPiece ? Strips.everyReading(result) : Strips.summarised(result, java.util.OptionalDouble.empty()));
        cells.add(TableParts.verdict(Wording.verdict(result, this::named), result));
        if (!crowded) {
            cells.add(TableParts.gauge(result));
        }
        return new TableRow.Cells(cells);
    }

    private String named(String serial) {
        return numbered ? Labels.text("pieces.piece", name(serial)) : serial;
    }

    private static Cell extreme(CharacteristicResult result, Optional<Reading.Measured> reading) {
        if (reading.isEmpty()) {
            return Cell.figure(Figures.DASH);
        }
        boolean out = result.judgements().stream()
                .anyMatch(each -> each.reading().equals(reading.get()) && each.verdict() == Verdict.NONCONFORMING);
        return new Cell.Figure(Readings.shown(reading.get(), column(result)), out ? Tone.OUT : Tone.PLAIN);
    }

    private static Unit column(CharacteristicResult result) {
        return TableParts.readingUnit(result.characteristic().unit());
    }

    private static Cell piece(CharacteristicResult result, String serial) {
        List<Judgement> found = result.judgements().stream()
                .filter(each -> each.part().equals(serial))
                .toList();
        if (found.isEmpty()) {
            boolean due = result.characteristic().isJudged()
                    && (result.judgements().isEmpty() || result.missing().contains(serial));
            return new Cell.Figure(
                    due ? Labels.text("pieces.not-measured") : Figures.DASH, due ? Tone.OPEN : Tone.PLAIN);
        }
        boolean out = found.stream().anyMatch(each -> each.verdict() == Verdict.NONCONFORMING)
                && result.characteristic().isJudged();
        return new Cell.Figure(String.join("\n", lines(result, found)), out ? Tone.OUT : Tone.PLAIN);
    }

    private static List<String> lines(CharacteristicResult result, List<Judgement> found) {
        Unit column = column(result);
        List<String> lines = new ArrayList<>();
        if (result.characteristic().isAttribute()) {
            checks(result, found, lines);
        } else if (found.size() <= STACKED) {
            for (Judgement each : found) {
                lines.add(Readings.shown(each.reading(), column));
                Readings.corrected(each).ifPresent(figure -> lines.add(figure + "*"));
            }
        } else {
            Readings readings = new Readings(new CharacteristicResult(
                    result.characteristic(), result.rule(), found, List.of(), 0, result.verdict()));
            lines.add(Readings.shown(readings.least().orElseThrow(), column));
            lines.add(Readings.shown(readings.greatest().orElseThrow(), column));
            lines.add(Labels.text("pieces.of", found.size()));
        }
        found.get(0)
                .allowed()
                .bonus()
                .flatMap(bonus -> found.get(0).allowed().limits().upper())
                .ifPresent(upper -> lines.add("≤ " + Figures.of(upper)));
        return lines;
    }

    /** One word for one check; more are counted, and those left out as well. */
    private static void checks(CharacteristicResult result, List<Judgement> found, List<String> lines) {
        long passed = found.stream()
                .filter(each -> each.verdict() == Verdict.CONFORMING)
                .count();
        long failed = found.size() - passed;
        String serial = found.get(0).part();
        long missing = result.absent().stream()
                .filter(each -> each.part().equals(serial) && each.setting().isPresent())
                .count();
        if (found.size() == 1 && missing == 0) {
            lines.add(Labels.text(passed == 1 ? "reading.pass" : "reading.fail"));
            return;
        }
        if (passed > 0) {
            lines.add(passed + " " + Labels.text("reading.pass"));
        }
        if (failed > 0) {
            lines.add(failed + " " + Labels.text("reading.fail"));
        }
        if (missing > 0) {
            lines.add(Labels.text("pieces.missing", missing));
        }
    }

    private String legend() {
        boolean guarded = sheet.result().judged().stream()
                .anyMatch(each -> each.characteristic().rule() == RuleChoice.GUARDED
                        && !each.characteristic().isAttribute());
        StringBuilder text = new StringBuilder(Labels.text("legend.line"));
        if (guarded) {
            text.append(' ').append(Labels.text("legend.guarded"));
        }
        text.append(' ')
                .append(Labels.text(byPiece ? "legend.each" : "legend.extremes"))
                .append(' ')
                .append(Labels.text("legend.arrow"));
        boolean sampled = sheet.result().judged().stream().anyMatch(each -> Wording.isSampled(sheet, each));
        if (crowded) {
            text.append(' ').append(Labels.text("legend.gauges"));
        }
        if (sampled) {
            text.append(' ').append(Labels.text("legend.sampled"));
        }
        return text.toString();
    }

    private boolean isCorrected() {
        return sheet.result().characteristics().stream()
                .flatMap(each -> each.judgements().stream())
                .anyMatch(each -> each.correction().isPresent());
    }

    /** The settings of checks, and the coordinates behind positions. */
    private List<String> particulars() {
        List<String> notes = new ArrayList<>();
        for (Finding finding : sheet.findings()) {
            List<String> settings =
                    finding.result().characteristic().characteristic().options().settings();
            if (!settings.isEmpty()) {
                notes.add(Labels.text("pieces.settings", finding.number(), String.join(", ", settings)));
            }
            List<String> offsets = finding.result().judgements().stream()
                    .filter(each -> byPiece && !Readings.offsets(each.reading()).isEmpty())
                    .map(each -> named(each.part()) + Readings.offsets(each.reading()))
                    .toList();
            if (!offsets.isEmpty()) {
                notes.add(Labels.text("pieces.offsets", finding.number(), String.join(", ", offsets)));
            }
        }
        return notes;
    }

    /** Why a piece had the tolerance it had, where a feature's size can add to it. */
    private List<String> bonuses() {
        List<String> notes = new ArrayList<>();
        for (Finding finding : sheet.findings()) {
            List<Judgement> earning = finding.result().judgements().stream()
                    .filter(each -> each.allowed().bonus().isPresent())
                    .toList();
            if (earning.isEmpty()) {
                continue;
            }
            if (byPiece) {
                notes.add(Labels.text(
                        "pieces.allowed",
                        finding.number(),
                        earning.stream()
                                .map(each -> named(each.part()) + " "
                                        + Labels.text(each.allowed()
                                                .bonus()
                                                .orElseThrow()
                                                .why()))
                                .collect(Collectors.joining("; "))));
            } else {
                long bonus = earning.stream()
                        .filter(each ->
                                each.allowed().bonus().orElseThrow().amount().signum() > 0)
                        .count();
                notes.add(Labels.text("pieces.bonus", finding.number(), bonus, earning.size()));
            }
        }
        return notes;
    }
}
