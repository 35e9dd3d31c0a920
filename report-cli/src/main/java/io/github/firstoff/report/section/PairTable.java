package io.github.firstoff.report.section;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Width;
import io.github.firstoff.sheet.FitSheet;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.study.pressfit.Matching;
import io.github.firstoff.words.Labels;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Which bore goes with which ring, for the bench; and which pieces stay, and why. */
public final class PairTable {
    private static final double UM = 1000;
    private static final double KILO = 1000;

    private final FitSheet sheet;
    private final FitWords words;

    /** The table of one sheet. */
    public PairTable(FitSheet sheet) {
        this.sheet = sheet;
        this.words = new FitWords(sheet.result());
    }

    /** The table; empty unless both parts were measured and not paired. */
    public List<Block> blocks() {
        return sheet.result().matching().map(this::blocks).orElse(List.of());
    }

    private List<Block> blocks(Matching matching) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.PageBreak());
        blocks.add(Block.Heading.of(Labels.text("press.title.pairs")));
        blocks.add(new Block.Paragraph(Text.of(Labels.text(
                "press.pairs",
                matching.pairs().size(),
                sheet.hand()
                        .map(hand -> Labels.text("press.pairs-hand", Wording.hand(hand)))
                        .orElse(""),
                bound(matching.least(), RoundingMode.CEILING),
                bound(matching.greatest(), RoundingMode.FLOOR),
                FitWords.micrometres(matching.wanted()),
                matching.rootMeanSquare().isPresent()
                        ? Labels.text(
                                "press.pairs-off",
                                FitWords.rounded(
                                        UM * matching.rootMeanSquare().getAsDouble(), 2, RoundingMode.HALF_EVEN))
                        : ""))));
        if (!matching.pairs().isEmpty()) {
            List<TableRow> rows = new ArrayList<>();
            for (Matching.Pair pair : matching.pairs()) {
                rows.add(TableRow.of(
                        new Cell.Words(Text.bold(pair.outer().name())),
                        new Cell.Words(Text.bold(pair.inner().name())),
                        Cell.figure(Figures.of(pair.outer().size())),
                        Cell.figure(Figures.of(pair.inner().size())),
                        Cell.figure(FitWords.micrometres(pair.interference())),
                        Cell.figure(FitWords.micrometres(pair.effective())),
                        Cell.figure(FitWords.rounded(pair.pressIn() / KILO, 2, RoundingMode.UP)),
                        Cell.figure(FitWords.rounded(pair.holding() / KILO, 2, RoundingMode.DOWN))));
            }
            blocks.add(new Block.Table(
                    List.of(
                            Column.text(Labels.text("press.column.bore"), 1),
                            Column.text(capital(words.inner()), 1),
                            wide(Labels.text("press.column.size-of", Labels.text("press.bore")), "mm"),
                            wide(Labels.text("press.column.size-of", words.inner()), "mm"),
                            wide(Labels.text("press.column.interference"), "µm"),
                            wide(Labels.text("press.column.smoothed"), "µm"),
                            wide(Labels.text("press.column.presses-in"), "kN"),
                            wide(Labels.text("press.column.holds"), "kN")),
                    rows));
        }
        if (!matching.left().isEmpty()) {
            blocks.add(Block.Heading.of(Labels.text("press.title.left")));
            List<TableRow> rows = new ArrayList<>();
            for (Matching.Left left : matching.left()) {
                rows.add(TableRow.of(
                        new Cell.Words(Text.bold(left.piece().name())),
                        Cell.text(left.bore() ? Labels.text("press.bore") : words.inner()),
                        Cell.figure(Figures.of(left.piece().size())),
                        Cell.figure(FitWords.micrometres(left.nearest())),
                        Cell.text(Labels.text(left.why().remark()))));
            }
            blocks.add(new Block.Table(
                    List.of(
                            Column.text(Labels.text("press.column.piece"), 2),
                            Column.narrow(Labels.text("press.column.part")),
                            Column.figure(Labels.text("press.column.size"), "mm"),
                            Column.figure(Labels.text("press.column.nearest"), "µm"),
                            Column.text(Labels.text("press.column.why"), 4)),
                    rows));
        }
        return blocks;
    }

    /** A column of figures that takes its share of the room, so that its head need not break. */
    private static Column wide(String head, String unit) {
        return new Column(head, unit, Column.Kind.FIGURE, Width.share(1.2));
    }

    /** A bound is rounded to its safe side. */
    private static String bound(double millimetres, RoundingMode rounding) {
        return FitWords.minus(FitWords.rounded(UM * millimetres, 1, rounding));
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
