package io.github.firstoff.report.section;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.FitSheet;
import io.github.firstoff.sheet.FitWords;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.study.pressfit.Matching;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

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
        blocks.add(Block.Heading.of("Which goes with which"));
        blocks.add(new Block.Paragraph(Text.of(Phrases.counted(matching.pairs().size(), "pair", "pairs")
                + sheet.hand().map(hand -> ", all " + hand.word()).orElse("")
                + ": as many as can be made between "
                + bound(matching.least(), RoundingMode.CEILING) + " and "
                + bound(matching.greatest(), RoundingMode.FLOOR)
                + "\u00A0µm, and of all ways to do so the one that keeps nearest to "
                + FitWords.micrometres(matching.wanted()) + "\u00A0µm"
                + (matching.rootMeanSquare().isPresent()
                        ? " (root mean square off it "
                                + FitWords.rounded(
                                        UM * matching.rootMeanSquare().getAsDouble(), 2, RoundingMode.HALF_EVEN)
                                + "\u00A0µm)."
                        : "."))));
        if (!matching.pairs().isEmpty()) {
            List<TableRow> rows = new ArrayList<>();
            for (Matching.Pair pair : matching.pairs()) {
                rows.add(TableRow.of(
                        new Cell.Words(Text.bold(pair.outer().name())),
                        Cell.figure(Figures.of(pair.outer().size())),
                        new Cell.Words(Text.bold(pair.inner().name())),
                        Cell.figure(Figures.of(pair.inner().size())),
                        Cell.figure(FitWords.micrometres(pair.interference())),
                        Cell.figure(FitWords.micrometres(pair.effective())),
                        Cell.figure(FitWords.rounded(pair.pressIn() / KILO, 2, RoundingMode.UP)),
                        Cell.figure(FitWords.rounded(pair.holding() / KILO, 2, RoundingMode.DOWN))));
            }
            blocks.add(new Block.Table(
                    List.of(
                            Column.text("Bore", 2),
                            Column.figure("Size", "mm"),
                            Column.text(capital(words.inner()), 2),
                            Column.figure("Size", "mm"),
                            Column.figure("Interference", "µm"),
                            Column.figure("smoothed", "µm"),
                            Column.figure("presses in, at most", "kN"),
                            Column.figure("holds, at least", "kN")),
                    rows));
        }
        if (!matching.left().isEmpty()) {
            blocks.add(Block.Heading.of("What stays, and why"));
            List<TableRow> rows = new ArrayList<>();
            for (Matching.Left left : matching.left()) {
                rows.add(TableRow.of(
                        new Cell.Words(Text.bold(left.piece().name())),
                        Cell.text(left.bore() ? "bore" : words.inner()),
                        Cell.figure(Figures.of(left.piece().size())),
                        Cell.figure(FitWords.micrometres(left.nearest())),
                        Cell.text(left.why().words())));
            }
            blocks.add(new Block.Table(
                    List.of(
                            Column.text("Piece", 2),
                            Column.narrow("Part"),
                            Column.figure("Size", "mm"),
                            Column.figure("nearest interference", "µm"),
                            Column.text("Why", 4)),
                    rows));
        }
        return blocks;
    }

    /** A bound is rounded to its safe side. */
    private static String bound(double millimetres, RoundingMode rounding) {
        return FitWords.minus(FitWords.rounded(UM * millimetres, 1, rounding));
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
    }
}
