package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.ControlFigure.Panel;
import io.github.firstoff.report.figure.ControlFigure.PhaseBreak;
import io.github.firstoff.report.figure.ControlFigure.Point;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.Fact;
import io.github.firstoff.report.model.Block.FactGroup;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.Notation;
import io.github.firstoff.report.model.Strip;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.report.model.Width;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;

/** Sheets at the edges of what figures and tables must hold, and a certificate. */
final class OddSheets {
    private OddSheets() {}

    private static ControlFigure chart(
            List<Point> points, List<Point> ranges, List<String> labels, List<PhaseBreak> breaks) {
        Point last = points.get(points.size() - 1);
        List<LevelLine> lines = Double.isNaN(last.centre())
                ? List.of()
                : List.of(
                        new LevelLine(
                                LevelLine.Kind.CONTROL_LIMIT,
                                "UCL",
                                String.format(Locale.ROOT, "%.4f", last.upper()),
                                last.upper()),
                        new LevelLine(
                                LevelLine.Kind.CENTRE,
                                "mean",
                                String.format(Locale.ROOT, "%.4f", last.centre()),
                                last.centre()),
                        new LevelLine(
                                LevelLine.Kind.CONTROL_LIMIT,
                                "LCL",
                                String.format(Locale.ROOT, "%.4f", last.lower()),
                                last.lower()));
        return new ControlFigure(
                new Panel("diameter", "mm", points, List.of(), true, lines, Optional.empty()),
                ranges.isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                                new Panel("moving range", "mm", ranges, List.of(), false, List.of(), Optional.empty())),
                labels,
                "piece",
                breaks,
                Optional.empty());
    }

    private static List<String> labels(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(Integer::toString).toList();
    }

    static List<Block> oddFigures() {
        Random random = new Random(2);
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of("One point, equal points, no limits, gaps"));
        ControlFigure one =
                chart(List.of(Point.of(12.5, Double.NaN, Double.NaN, Double.NaN)), List.of(), labels(1), List.of());
        ControlFigure equal = chart(
                List.of(Point.of(8, 8, 8, 8), Point.of(8, 8, 8, 8), Point.of(8, 8, 8, 8)),
                List.of(),
                labels(3),
                List.of());
        ControlFigure gaps = chart(
                List.of(
                        Point.of(-1, -3, 0, 3),
                        Point.of(Double.NaN, -3, 0, 3),
                        Point.of(2, -3, 0, 3),
                        Point.of(4, -3, 0, 3).marked("1, 2").outOfSpecification(),
                        Point.of(-4, -3, 0, 3).marked("1")),
                List.of(),
                labels(5),
                List.of());
        blocks.add(new Block.SideBySide(List.of(
                Block.Part.of(4, new Block.FigureBlock(one, 45, "one")),
                Block.Part.of(4, new Block.FigureBlock(equal, 45, "equal")),
                Block.Part.of(4, new Block.FigureBlock(gaps, 45, "gaps")))));
        blocks.add(Block.Heading.of("A thousand points with ranges, four phases, runs of signals"));
        List<Point> many = new ArrayList<>();
        List<Point> ranges = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            int phase = i / 250;
            double centre = 8 + phase * 0.006;
            double value = centre + random.nextGaussian() * 0.008 + (i > 300 && i < 320 ? 0.016 : 0);
            Point point = Point.of(value, centre - 0.024, centre, centre + 0.024);
            many.add(
                    i > 306 && i < 320
                            ? point.marked("3")
                            : Math.abs(value - centre) > 0.024 ? point.marked("1") : point);
            ranges.add(Point.of(Math.abs(random.nextGaussian() * 0.009), Double.NaN, 0.009, 0.0295));
        }
        blocks.add(new Block.FigureBlock(
                chart(
                        many,
                        ranges,
                        labels(1000),
                        List.of(
                                new PhaseBreak(251, "insert 2"),
                                new PhaseBreak(501, "insert 3"),
                                new PhaseBreak(751, "insert 4, new coolant"))),
                80,
                "many"));
        blocks.add(Block.Heading.of("Histograms: one bin, no limits, limits close together, negative values"));
        blocks.add(new Block.SideBySide(List.of(
                Block.Part.of(
                        4,
                        new Block.FigureBlock(
                                new HistogramFigure(
                                        "bore",
                                        "mm",
                                        List.of(new HistogramFigure.Bin(8, 8.1, 3)),
                                        List.of(),
                                        Optional.empty(),
                                        Optional.empty()),
                                45,
                                "one bin")),
                Block.Part.of(
                        4,
                        new Block.FigureBlock(
                                Specimen.histogram(random, 8, 0.05, 2000, 7.99, 8.01, 0.03), 45, "close limits")),
                Block.Part.of(
                        4,
                        new Block.FigureBlock(
                                Specimen.histogram(random, -0.002, 0.004, 30, -0.02, 0.02, 0.002), 45, "negative")))));
        return blocks;
    }

    static List<Block> oddTable() {
        Random random = new Random(4);
        List<Column> columns = new ArrayList<>();
        columns.add(Column.narrow("No."));
        columns.add(new Column("Feature and requirement", "", Column.Kind.NOTATION, Width.share(3)));
        columns.add(Column.figure("Limits", "mm"));
        for (int i = 1; i <= 6; i++) {
            columns.add(Column.figure("Piece " + i, "mm"));
        }
        columns.add(Column.strip("Place in the tolerance"));
        columns.add(Column.verdict("Verdict", 2));
        List<TableRow> rows = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            List<Cell> cells = new ArrayList<>();
            cells.add(Cell.text(Integer.toString(i)));
            cells.add(new Cell.Requirement("bearing bore " + i, Notation.of("Ø52 P7")));
            cells.add(Cell.figure("51.979\n51.949"));
            double[] places = new double[6];
            for (int k = 0; k < 6; k++) {
                places[k] = 0.5 + random.nextGaussian() * 0.18;
                cells.add(Cell.figure(String.format(Locale.ROOT, "%.4f", 51.949 + places[k] * 0.03)));
            }
            cells.add(new Cell.Line(Strip.between(places)));
            cells.add(Cell.verdict("conforms", Tone.GOOD));
            rows.add(TableRow.of(cells.toArray(Cell[]::new)));
        }
        double[] crowd = random.doubles(125, 0.1, 0.9).toArray();
        return List.of(
                Block.Heading.of("Six pieces in one table"),
                new Block.Table(columns, rows),
                Block.Heading.of("A hundred and twenty-five readings on a strip; three outside"),
                new Block.Table(
                        List.of(
                                Column.narrow("No."),
                                Column.figure("Least", "mm"),
                                Column.figure("Greatest", "mm"),
                                Column.figure("Count", ""),
                                Column.strip("Place in the tolerance"),
                                Column.verdict("Verdict", 1)),
                        List.of(
                                TableRow.of(
                                        Cell.text("1"),
                                        Cell.figure("51.9532"),
                                        Cell.figure("51.9761"),
                                        Cell.figure("125"),
                                        new Cell.Line(Strip.between(crowd)),
                                        Cell.verdict("all conform", Tone.GOOD)),
                                TableRow.of(
                                        Cell.text("2"),
                                        Cell.figure("1.2"),
                                        Cell.figure("1.7"),
                                        Cell.figure("3"),
                                        new Cell.Line(new Strip(
                                                false,
                                                true,
                                                OptionalDouble.empty(),
                                                0,
                                                0.1,
                                                List.of(
                                                        new Strip.Mark(1.2, "0.2"),
                                                        new Strip.Mark(1.7, "0.7"),
                                                        new Strip.Mark(1.1, "0.1")))),
                                        Cell.verdict("3 over, the most by 0.7", Tone.OUT)))));
    }

    static List<Block> certificate() {
        List<Column> columns = List.of(
                Column.narrow("No."),
                new Column("Characteristic", "", Column.Kind.NOTATION, Width.share(3)),
                Column.figure("Pieces", ""),
                Column.figure("Least", "mm"),
                Column.figure("Mean", "mm"),
                Column.figure("Greatest", "mm"),
                Column.text("Ppk (95 % interval)", 2));
        List<TableRow> rows = new ArrayList<>();
        for (int i = 1; i <= 9; i++) {
            rows.add(TableRow.of(
                    Cell.text(Integer.toString(i)),
                    new Cell.Requirement("feature " + i, Notation.of("12.5 ±0.05")),
                    Cell.figure("125"),
                    Cell.figure("12.478"),
                    Cell.figure("12.5012"),
                    Cell.figure("12.531"),
                    Cell.text(i % 4 == 0 ? "not stated: not in control" : "1.52 (1.33 to 1.71)")));
        }
        return List.of(
                new Block.Headline(
                        Text.of(
                                "All 125 pieces delivered conform to HQ-310-P revision C in the 9 characteristics listed."),
                        Tone.GOOD),
                new Block.Exceptions(
                        "What needs a decision",
                        List.of(),
                        "Nothing: no characteristic is out, unproven or unmeasured."),
                new Block.Facts(List.of(
                        FactGroup.of(
                                "Issuer",
                                Fact.of("name", "Hollin Quay Deck Gear"),
                                Fact.of("address", "2 Ropewalk, Hollin Quay")),
                        FactGroup.of("Customer", Fact.of("name", "Marrow Bay Yachts"), Fact.of("order", "PO 7781")),
                        FactGroup.of(
                                "Delivery",
                                Fact.of("quantity", "125"),
                                Fact.of("serials", "2207-001 to 2207-125"),
                                Fact.of("material", "EN AW-6061 T6, heat H55213")))),
                Block.Heading.of("Results"),
                new Block.Table(columns, rows),
                new Block.SignOff(
                        Text.NONE, List.of(new Block.SignLine("Issued by", "A. Quill, inspector", "2026-11-20"))));
    }
}
