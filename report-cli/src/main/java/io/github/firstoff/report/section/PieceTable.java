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
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
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
        blocks.add(Block.Heading.of("Characteristics"));
        blocks.add(new Block.Table(
                columns(),
                sheet.findings().stream().map(each -> row(each.result())).toList()));
        sheet.plan()
                .plan()
                .thermal()
                .filter(each -> isCorrected())
                .ifPresent(thermal -> blocks.add(new Block.Note(Text.of(
                        "* The length at 20 °C, which was judged; above it the reading at the temperature of the piece (ISO 1). Expansion: "
                                + thermal.source() + "."))));
        if (numbered) {
            blocks.add(new Block.Note(Text.of("Pieces: "
                    + serials.stream()
                            .map(serial -> name(serial) + " is " + serial)
                            .collect(Collectors.joining(", "))
                    + ".")));
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
        columns.add(Column.narrow("No."));
        columns.add(TableParts.requirement(3));
        columns.add(parts.figure("Limits"));
        if (parts.isMixed()) {
            columns.add(Column.narrow("Unit"));
        }
        if (byPiece) {
            serials.forEach(serial -> columns.add(parts.figure("Piece " + name(serial))));
        } else {
            columns.add(parts.figure("Least"));
            columns.add(parts.figure("Greatest"));
            columns.add(Column.figure("Count", ""));
        }
        columns.add(
                crowded
                        ? new Column("Place in the tolerance", "", Column.Kind.STRIP, Width.mm(28))
                        : Column.strip("Place in the tolerance"));
        columns.add(Column.verdict("Verdict", 2));
        if (!crowded) {
            columns.add(Column.narrow("Gauge"));
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
        return numbered ? "piece " + name(serial) : serial;
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
            return new Cell.Figure(due ? "not\nmeasured" : Figures.DASH, due ? Tone.OPEN : Tone.PLAIN);
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
            lines.add("of " + found.size());
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
        long missing = result.missing().stream()
                .filter(each -> each.startsWith(serial + " at "))
                .count();
        if (found.size() == 1 && missing == 0) {
            lines.add(passed == 1 ? "pass" : "fail");
            return;
        }
        if (passed > 0) {
            lines.add(passed + " pass");
        }
        if (failed > 0) {
            lines.add(failed + " fail");
        }
        if (missing > 0) {
            lines.add(missing + " missing");
        }
    }

    private String legend() {
        boolean guarded = sheet.result().judged().stream()
                .anyMatch(each -> each.characteristic().rule() == RuleChoice.GUARDED
                        && !each.characteristic().isAttribute());
        StringBuilder text =
                new StringBuilder("Place in the tolerance: the line runs from the lower to the upper limit, dots"
                        + " where there is none; the triangle is the target; ");
        if (guarded) {
            text.append("thin ends are guard bands; ");
        }
        text.append(
                byPiece
                        ? "each upright mark is one reading; "
                        : "the upright marks are the least and the greatest reading; ");
        text.append("an arrowhead is a reading outside, with its excess.");
        boolean sampled = sheet.result().judged().stream().anyMatch(each -> Wording.isSampled(sheet, each));
        if (crowded) {
            text.append(" Which gauge was used for what stands in the table of gauges.");
        }
        if (sampled) {
            text.append(" A dash under a piece: the plan asks for this characteristic on a sample of the pieces only.");
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
                notes.add(finding.number() + ", checked at each setting: " + String.join(", ", settings) + ".");
            }
            List<String> offsets = finding.result().judgements().stream()
                    .filter(each -> byPiece && !Readings.offsets(each.reading()).isEmpty())
                    .map(each -> named(each.part()) + Readings.offsets(each.reading()))
                    .toList();
            if (!offsets.isEmpty()) {
                notes.add(finding.number() + ", the diameter follows from the deviations along the axes: "
                        + String.join(", ", offsets) + ". It is rounded here and was judged unrounded.");
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
                notes.add(finding.number() + ", what each piece is allowed (≤): "
                        + earning.stream()
                                .map(each -> named(each.part()) + " "
                                        + each.allowed().bonus().orElseThrow().reason())
                                .collect(Collectors.joining("; "))
                        + ".");
            } else {
                long bonus = earning.stream()
                        .filter(each ->
                                each.allowed().bonus().orElseThrow().amount().signum() > 0)
                        .count();
                notes.add(finding.number() + ": the tolerance grows with the size of a feature; "
                        + bonus + " of " + Phrases.counted(earning.size(), "reading", "readings")
                        + " had such a bonus, and each is placed within the tolerance of its own piece.");
            }
        }
        return notes;
    }
}
