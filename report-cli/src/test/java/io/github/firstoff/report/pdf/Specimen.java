package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.ControlFigure.Panel;
import io.github.firstoff.report.figure.ControlFigure.PhaseBreak;
import io.github.firstoff.report.figure.ControlFigure.Point;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.ExceptionItem;
import io.github.firstoff.report.model.Block.Fact;
import io.github.firstoff.report.model.Block.FactGroup;
import io.github.firstoff.report.model.Block.Heading;
import io.github.firstoff.report.model.Block.IndexMark;
import io.github.firstoff.report.model.Block.MarkedItem;
import io.github.firstoff.report.model.Block.Paragraph;
import io.github.firstoff.report.model.Block.Part;
import io.github.firstoff.report.model.Block.SignLine;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.DimensionSign;
import io.github.firstoff.report.model.DocumentInfo;
import io.github.firstoff.report.model.GeometricSymbol;
import io.github.firstoff.report.model.Hand;
import io.github.firstoff.report.model.Modifier;
import io.github.firstoff.report.model.Notation;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.SheetFoot;
import io.github.firstoff.report.model.SheetHead;
import io.github.firstoff.report.model.Strip;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;

/** A sheet of made-up data that holds every kind of block and figure; made to be looked at. */
final class Specimen {
    private Specimen() {}

    static ReportModel sheet(Hand hand) {
        return sheet(hand, PaperSize.A4, blocks());
    }

    static ReportModel sheet(Hand hand, PaperSize paper, List<Block> blocks) {
        return new ReportModel(
                paper,
                "First article inspection",
                "FA-0419",
                new SheetHead("HQ-310-P", "Winch drum bearing housing", "C", "B-2207", hand),
                new SheetFoot(
                        "Decided with guard bands (ISO 14253-1): a reading conforms when it lies inside the limits by at "
                                + "least the gauge's expanded uncertainty U.",
                        "firstoff 0.1.0",
                        "9f3ac2d01b7e"),
                new DocumentInfo(
                        "First article inspection FA-0419, HQ-310-P revision C",
                        "Hollin Quay Deck Gear",
                        "A specimen",
                        Locale.UK,
                        Instant.parse("2026-11-20T09:30:00Z")),
                blocks);
    }

    private static List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.addAll(firstPage());
        blocks.add(new Block.PageBreak());
        blocks.addAll(characteristics());
        blocks.add(new Block.PageBreak());
        blocks.addAll(study());
        blocks.add(new Block.PageBreak());
        blocks.addAll(individuals());
        blocks.add(new Block.PageBreak());
        blocks.addAll(extremes());
        blocks.add(new Block.PageBreak());
        blocks.addAll(symbols());
        return blocks;
    }

    static List<Block> firstPage() {
        return List.of(
                new Block.Headline(
                        Text.of("Not accepted: 1 of 14 characteristics is out and 1 is not proven, on two pieces, "
                                + "decided with guard bands."),
                        Tone.OUT),
                new Block.Exceptions(
                        "What needs a decision",
                        List.of(
                                new ExceptionItem(
                                        "7",
                                        "journal",
                                        Notation.of("Ø19.98").deviations("+0.02", "−0.01"),
                                        Text.of("20.004 mm on piece 2"),
                                        "over by 0.004",
                                        Tone.OUT,
                                        Text.of("Regrind to 19.99 and measure again, or ask Marrow Bay Yachts for a "
                                                + "concession for piece 2.")),
                                new ExceptionItem(
                                        "3",
                                        "bolt pattern",
                                        Notation.frame(
                                                GeometricSymbol.POSITION,
                                                Notation.Cell.of("Ø0.1", Modifier.MAXIMUM_MATERIAL),
                                                Notation.Cell.of("A"),
                                                Notation.Cell.of("B")),
                                        Text.of("Ø0.099 mm on piece 1"),
                                        "not proven (0.001 inside, U 0.002)",
                                        Tone.OPEN,
                                        Text.of("Measure again with a gauge of U ≤ 0.001, or agree a decision rule."))),
                        "Nothing."),
                new Block.Facts(List.of(
                        FactGroup.of(
                                "Part",
                                Fact.of("drawing", "HQ-310-P revision C"),
                                Fact.of("name", "Winch drum bearing housing"),
                                Fact.of("hand", "port"),
                                Fact.of("material", "EN AW-6061 T6, heat H55213, certificate MC-90122"),
                                Fact.of("pieces", "2 of 125: 2207-001, 2207-002")),
                        FactGroup.of(
                                "Order",
                                Fact.of("customer", "Marrow Bay Yachts"),
                                Fact.of("order", "PO 7781"),
                                Fact.of("job", "J-1182"),
                                Fact.of("batch", "B-2207"),
                                Fact.of("concession", "")),
                        FactGroup.of(
                                "Inspection",
                                Fact.of("reason", "new part, full first article"),
                                Fact.of("machine", "lathe 2, program HQ310P-C-07"),
                                Fact.of("inspector", "A. Quill"),
                                Fact.of("measured", "2026-11-19, 08:12 to 10:40 UTC"),
                                Fact.of("temperature", "20.3 °C ± 0.5 °C")))),
                new Block.SignOff(
                        Text.of("By signing, the undersigned confirm that the readings on this sheet were taken on the "
                                + "pieces named above with the gauges listed."),
                        List.of(
                                new SignLine("Inspected by", "A. Quill, inspector", "2026-11-20"),
                                new SignLine("Approved by", "", ""),
                                new SignLine("For the customer", "", ""))));
    }

    static List<Block> characteristics() {
        List<Column> columns = List.of(
                Column.narrow("No."),
                new Column(
                        "Feature and requirement",
                        "",
                        Column.Kind.NOTATION,
                        io.github.firstoff.report.model.Width.share(3)),
                Column.figure("Limits", "mm"),
                Column.figure("Piece 2207-001", "mm"),
                Column.figure("Piece 2207-002", "mm"),
                Column.strip("Place in the tolerance"),
                Column.verdict("Verdict", 2.2),
                Column.narrow("Gauge"));
        List<TableRow> rows = new ArrayList<>();
        rows.add(TableRow.group("Bearing seat"));
        rows.add(row(
                "1",
                "bearing bore",
                Notation.of("Ø52 P7"),
                "51.979\n51.949",
                "51.9532",
                "51.9761",
                guarded(0.14, 0.903),
                "conforms",
                Tone.GOOD,
                "CMM 1"));
        rows.add(row(
                "2",
                "shoulder",
                Notation.of("12.5 ±0.05"),
                "12.55\n12.45",
                "12.49",
                "12.52",
                Strip.between(0.4, 0.7),
                "conforms",
                Tone.GOOD,
                "DC 4"));
        rows.add(row(
                "3",
                "bolt pattern",
                Notation.frame(
                        GeometricSymbol.POSITION,
                        Notation.Cell.of("Ø0.1", Modifier.MAXIMUM_MATERIAL),
                        Notation.Cell.of("A"),
                        Notation.Cell.of("B", Modifier.MAXIMUM_MATERIAL)),
                "0.100\n0",
                "0.099",
                "0.041",
                Strip.of(true, true, OptionalDouble.empty(), 0, 0.02, 0.99, 0.41),
                "not proven (0.001 inside, U 0.002)",
                Tone.OPEN,
                "CMM 1"));
        rows.add(row(
                "4",
                "bolt holes, size",
                Notation.of("4 × Ø6.6").deviations("+0.1", "0"),
                "6.70\n6.60",
                "6.64",
                "6.66",
                Strip.between(0.4, 0.6),
                "conforms",
                Tone.GOOD,
                "PG 6.6"));
        rows.add(row(
                "5",
                "seat flatness",
                Notation.frame(GeometricSymbol.FLATNESS, Notation.Cell.of("0.02")),
                "0.02\n0",
                "0.006",
                "0.0185",
                Strip.of(true, true, OptionalDouble.empty(), 0, 0, 0.3, 0.92),
                "conforms",
                Tone.GOOD,
                "CMM 1"));
        rows.add(row(
                "6",
                "pitch circle",
                Notation.exact("Ø72"),
                "—",
                "—",
                "—",
                null,
                "basic, not judged by itself",
                Tone.PLAIN,
                ""));
        rows.add(TableRow.group("Journal and outside"));
        rows.add(row(
                "7",
                "journal",
                Notation.of("Ø19.98").deviations("+0.02", "−0.01"),
                "20.000\n19.970",
                "19.991",
                "20.004",
                new Strip(
                        true,
                        true,
                        OptionalDouble.of(0.5),
                        0.08,
                        0.08,
                        List.of(new Strip.Mark(0.7, ""), new Strip.Mark(1.133, "0.004"))),
                "piece 2 over by 0.004",
                Tone.OUT,
                "MIC 2"));
        rows.add(row(
                "8",
                "wall",
                Notation.of("12 min"),
                "12.00",
                "12.08",
                "12.31",
                Strip.of(true, false, OptionalDouble.empty(), 0, 0, 0.16, 0.62),
                "conforms",
                Tone.GOOD,
                "DC 4"));
        rows.add(row(
                "9",
                "bore surface",
                Notation.of("Ra 0.8 max"),
                "0.8\n0",
                "0.42",
                "0.55",
                Strip.of(true, true, OptionalDouble.empty(), 0, 0, 0.52, 0.69),
                "conforms",
                Tone.GOOD,
                "RT 1"));
        rows.add(row(
                "10",
                "length over all",
                Notation.bracketed("40"),
                "—",
                "40.02",
                "39.97",
                null,
                "reference, not judged",
                Tone.PLAIN,
                "DC 4"));
        rows.add(row(
                "11",
                "thread",
                Notation.of("M5x0.8-6H go/no-go"),
                "—",
                "pass",
                "pass",
                null,
                "conforms",
                Tone.GOOD,
                "TG M5"));
        rows.add(row(
                "12",
                "edges",
                Notation.of("visual: no burrs, edges broken 0.2 max"),
                "—",
                "pass",
                "pass",
                null,
                "conforms",
                Tone.GOOD,
                "eye"));
        rows.add(row(
                "13",
                "groove width",
                Notation.of("3.2").deviations("+0.05", "+0.02"),
                "3.25\n3.22",
                "3.211",
                "3.262",
                new Strip(
                        true,
                        true,
                        OptionalDouble.of(0.5),
                        0,
                        0,
                        List.of(new Strip.Mark(-0.3, "0.009"), new Strip.Mark(1.4, "0.012"))),
                "under by 0.009; over by 0.012",
                Tone.OUT,
                "DC 4"));
        rows.add(row(
                "14",
                "depth of bore",
                Notation.of("18 ±0.2"),
                "18.2\n17.8",
                "not measured",
                "not measured",
                null,
                "not measured",
                Tone.OPEN,
                ""));
        return List.of(
                Heading.of("Characteristics"),
                new Block.Table(columns, rows),
                new Block.Note(
                        Text.of("Strip: the line runs from limit to limit; the triangle is the target; thin ends are "
                                + "guard bands; each upright mark is one reading; an arrowhead is a reading outside, with its "
                                + "excess in mm.")),
                Heading.of("Gauges"),
                new Block.Table(
                        List.of(
                                Column.narrow("Gauge"),
                                Column.text("What it is", 3),
                                Column.figure("U (k = 2)", "mm"),
                                Column.narrow("Calibrated"),
                                Column.narrow("Next due")),
                        List.of(
                                gauge("CMM 1", "coordinate measuring machine", "0.002"),
                                gauge("DC 4", "digital caliper, 150 mm", "0.02"),
                                gauge("MIC 2", "micrometer, 0 to 25 mm", "0.0024"))));
    }

    private static TableRow gauge(String name, String what, String uncertainty) {
        return TableRow.of(
                Cell.text(name),
                Cell.text(what),
                Cell.figure(uncertainty),
                Cell.text("2026-08-03"),
                Cell.text("2027-08-03"));
    }

    private static Strip guarded(double... places) {
        return Strip.of(true, true, OptionalDouble.of(0.5), 0.067, 0.067, places);
    }

    private static TableRow row(
            String number,
            String feature,
            Notation requirement,
            String limits,
            String first,
            String second,
            @org.jspecify.annotations.Nullable Strip strip,
            String verdict,
            Tone tone,
            String gauge) {
        return TableRow.of(
                Cell.text(number),
                new Cell.Requirement(feature, requirement),
                Cell.figure(limits),
                Cell.figure(first),
                tone == Tone.OUT ? new Cell.Figure(second, Tone.OUT) : Cell.figure(second),
                strip == null ? Cell.EMPTY : new Cell.Line(strip),
                Cell.verdict(verdict, tone),
                Cell.text(gauge));
    }

    static List<Block> study() {
        Random random = new Random(7);
        List<Point> means = new ArrayList<>();
        List<Point> ranges = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            double drift = i < 13 ? 0 : (i - 13) * 0.0004;
            double mean = 51.9645 + random.nextGaussian() * 0.0008 + drift;
            Point point = Point.of(mean, 51.9617, 51.9645, 51.9673);
            if (mean > 51.9673) {
                point = point.marked("1");
            } else if (i >= 20) {
                point = point.marked("2");
            }
            means.add(point);
            ranges.add(Point.of(Math.abs(0.0049 + random.nextGaussian() * 0.0018), 0, 0.0049, 0.0104));
        }
        ControlFigure figure = new ControlFigure(
                new Panel(
                        "mean of 5",
                        "mm",
                        means,
                        List.of(),
                        true,
                        List.of(
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "UCL", "51.9673", 51.9673),
                                new LevelLine(LevelLine.Kind.CENTRE, "mean", "51.9645", 51.9645),
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "LCL", "51.9617", 51.9617)),
                        Optional.empty()),
                Optional.of(new Panel(
                        "range of 5",
                        "mm",
                        ranges,
                        List.of(),
                        false,
                        List.of(
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "UCL", "0.0104", 0.0104),
                                new LevelLine(LevelLine.Kind.CENTRE, "mean", "0.0049", 0.0049),
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "LCL", "0", 0)),
                        Optional.empty())),
                IntStream.rangeClosed(1, 25).mapToObj(Integer::toString).toList(),
                "subgroup",
                List.of(),
                Optional.empty());
        return List.of(
                Heading.of("1  Bearing bore Ø52 P7"),
                new Block.Headline(
                        Text.of("Mean climbs 4 µm from subgroup 14 on; nothing out of tolerance yet; act before "
                                + "piece 150."),
                        Tone.OPEN),
                new Block.SideBySide(List.of(
                        Part.of(
                                8,
                                new Block.FigureBlock(
                                        figure, 92, "Control chart of means and ranges of 25 subgroups.")),
                        Part.of(
                                4,
                                new Block.FigureBlock(
                                        histogram(random, 51.9645, 0.0026, 125, 51.949, 51.979, 0.0015),
                                        60,
                                        "Histogram of 125 bores between their limits."),
                                new Block.Note(Text.of("125 bores, least 51.9532, greatest 51.9761; no reading outside "
                                        + "the limits."))))),
                new Block.MarkedList(List.of(
                        new MarkedItem(
                                "1",
                                Text.of(
                                        "One point beyond the upper control limit (Western Electric 1): subgroups 24 and 25.")),
                        new MarkedItem(
                                "2",
                                Text.of(
                                        "Four of five points beyond one sigma above the centre line (Western Electric 3): "
                                                + "subgroups 19 to 23.")))),
                new Block.IndexScale(
                        List.of(
                                new IndexMark(
                                        "Pp",
                                        1.92,
                                        OptionalDouble.of(1.68),
                                        OptionalDouble.of(2.16),
                                        "1.92 (1.68 to 2.16)"),
                                new IndexMark(
                                        "Ppk",
                                        1.88,
                                        OptionalDouble.of(1.63),
                                        OptionalDouble.of(2.13),
                                        "1.88 (1.63 to 2.13)"),
                                new IndexMark(
                                        "Cpm",
                                        1.21,
                                        OptionalDouble.of(1.02),
                                        OptionalDouble.empty(),
                                        "1.21 (at least 1.02)")),
                        OptionalDouble.of(1.33),
                        Text.of(
                                "n = 125; overall standard deviation; normal distribution; 95 % intervals; the process is "
                                        + "not in control, so these describe the past and do not predict.")),
                new Block.Caution(Text.of("the trend will meet the upper limit less its guard band at about piece 148. "
                        + "Correct the offset before.")),
                new Block.KeyFigure(Text.of("Offset to enter on lathe 2, tool 4, X"), "−0.004", "mm"),
                new Paragraph(Text.of(
                                "The offset takes the mean back to the middle of the tolerance; it is the mean of the "
                                        + "last five subgroups less the target, ")
                        .strong("−0.0041 mm")
                        .plain(", rounded to the step of the control. The requirement is ")
                        .notation(Notation.of("Ø52").deviations("−0.021", "−0.051"))
                        .plain(", the position ")
                        .notation(Notation.frame(
                                GeometricSymbol.POSITION,
                                Notation.Cell.of("Ø0.1", Modifier.MAXIMUM_MATERIAL),
                                Notation.Cell.of("A")))
                        .plain("; see signal ")
                        .ringed("2")
                        .plain(" above. Running text keeps its distance from frames and rings, whatever stands in "
                                + "the line below.")));
    }

    static HistogramFigure histogram(
            Random random, double mean, double sigma, int count, double lower, double upper, double width) {
        int bins = 14;
        double start = mean - bins / 2.0 * width;
        long[] counts = new long[bins];
        for (int i = 0; i < count; i++) {
            int bin = (int) Math.floor((mean + random.nextGaussian() * sigma - start) / width);
            counts[Math.max(0, Math.min(bins - 1, bin))]++;
        }
        List<HistogramFigure.Bin> list = new ArrayList<>();
        List<HistogramFigure.CurvePoint> curve = new ArrayList<>();
        for (int i = 0; i < bins; i++) {
            list.add(new HistogramFigure.Bin(start + i * width, start + (i + 1) * width, counts[i]));
        }
        for (int i = 0; i <= 80; i++) {
            double z = -4 + i * 0.1;
            curve.add(new HistogramFigure.CurvePoint(
                    mean + z * sigma, count * width / sigma * Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI)));
        }
        return new HistogramFigure(
                "bore",
                "mm",
                list,
                List.of(
                        new LevelLine(
                                LevelLine.Kind.SPECIFICATION_LIMIT,
                                "lower limit",
                                String.format(Locale.ROOT, "%.3f", lower),
                                lower),
                        new LevelLine(
                                LevelLine.Kind.TARGET,
                                "target",
                                String.format(Locale.ROOT, "%.3f", (lower + upper) / 2),
                                (lower + upper) / 2),
                        new LevelLine(
                                LevelLine.Kind.SPECIFICATION_LIMIT,
                                "upper limit",
                                String.format(Locale.ROOT, "%.3f", upper),
                                upper)),
                Optional.of(new HistogramFigure.Curve("normal", curve)),
                Optional.empty());
    }

    static List<Block> individuals() {
        Random random = new Random(3);
        List<Point> values = new ArrayList<>();
        List<Point> ranges = new ArrayList<>();
        double before = Double.NaN;
        for (int i = 0; i < 60; i++) {
            boolean second = i >= 36;
            double centre = second ? 19.986 : 19.9885;
            double value = centre + random.nextGaussian() * 0.0024;
            if (i == 30) {
                value = 20.0015;
            }
            Point point = Point.of(value, centre - 0.0072, centre, centre + 0.0072);
            if (i == 30) {
                point = point.marked("1").outOfSpecification();
            }
            if (i == 12) {
                point = new Point(19.981, centre - 0.0072, centre, centre + 0.0072, "", ControlFigure.Shape.EXCLUDED);
            }
            values.add(point);
            ranges.add(Point.of(i == 0 || i == 36 ? Double.NaN : Math.abs(value - before), 0, 0.0027, 0.0088));
            before = value;
        }
        HistogramFigure histogram = new HistogramFigure(
                "60 pieces",
                "mm",
                histogram(random, 19.9875, 0.0027, 60, 19.97, 20.0, 0.0014).bins(),
                List.of(
                        new LevelLine(LevelLine.Kind.SPECIFICATION_LIMIT, "upper limit", "20.000", 20.0),
                        new LevelLine(LevelLine.Kind.SPECIFICATION_LIMIT, "lower limit", "19.970", 19.97)),
                histogram(random, 19.9875, 0.0027, 60, 19.97, 20.0, 0.0014).curve(),
                Optional.empty());
        ControlFigure figure = new ControlFigure(
                new Panel(
                        "diameter",
                        "mm",
                        values,
                        List.of(),
                        true,
                        List.of(
                                new LevelLine(LevelLine.Kind.SPECIFICATION_LIMIT, "upper limit", "20.000", 20.0),
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "UCL", "19.9932", 19.9932),
                                new LevelLine(LevelLine.Kind.CENTRE, "mean", "19.9860", 19.986),
                                new LevelLine(LevelLine.Kind.TARGET, "target", "19.985", 19.985),
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "LCL", "19.9788", 19.9788),
                                new LevelLine(LevelLine.Kind.SPECIFICATION_LIMIT, "lower limit", "19.970", 19.97)),
                        Optional.empty()),
                Optional.of(new Panel(
                        "moving range",
                        "mm",
                        ranges,
                        List.of(),
                        false,
                        List.of(
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "UCL", "0.0088", 0.0088),
                                new LevelLine(LevelLine.Kind.CENTRE, "mean", "0.0027", 0.0027)),
                        Optional.empty())),
                IntStream.rangeClosed(1, 60)
                        .mapToObj(i -> String.format(Locale.ROOT, "2207-%03d", i))
                        .toList(),
                "piece",
                List.of(new PhaseBreak(37, "new insert")),
                Optional.of(histogram));
        return List.of(
                Heading.of("7  Journal Ø19.98 +0.02/−0.01"),
                new Block.Headline(
                        Text.of("In control since the new insert at piece 37; one piece, 2207-031, is over by 0.0015."),
                        Tone.OUT),
                new Block.FigureBlock(
                        figure, 98, "Individuals and moving ranges of 60 journals, histogram at the right."),
                new Block.MarkedList(List.of(new MarkedItem(
                        "1",
                        Text.of(
                                "One point beyond the upper control limit (Western Electric 1): piece 2207-031, which also "
                                        + "lies outside the specification.")))),
                new Block.Heading("Why no indices", Block.Level.SUBSECTION),
                new Paragraph(
                        Text.of("Two phases with different means are one process only after the change is understood. "
                                + "Until twenty-five subgroups of the new phase are known, the sheet shows what was found and "
                                + "claims nothing about pieces that were not measured.")),
                Heading.of("Shop check"),
                new Block.FigureBlock(cusum(), 46, "Two-sided cumulative sum of the journal."));
    }

    static ControlFigure cusum() {
        Random random = new Random(11);
        List<Point> upper = new ArrayList<>();
        List<Point> lower = new ArrayList<>();
        double up = 0;
        double down = 0;
        for (int i = 0; i < 40; i++) {
            double z = random.nextGaussian() + (i > 24 ? 0.9 : 0);
            up = Math.max(0, up + z - 0.5);
            down = Math.min(0, down + z + 0.5);
            Point point = Point.of(up, -5, 0, 5);
            upper.add(up > 5 ? point.marked("1") : point);
            lower.add(Point.of(down, -5, 0, 5));
        }
        return new ControlFigure(
                new Panel(
                        "cumulative sum",
                        "σ",
                        upper,
                        lower,
                        false,
                        List.of(
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "h", "5", 5),
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "−h", "−5", -5)),
                        Optional.empty()),
                Optional.empty(),
                IntStream.rangeClosed(1, 40).mapToObj(Integer::toString).toList(),
                "piece",
                List.of(),
                Optional.empty());
    }

    static List<Block> extremes() {
        Random random = new Random(5);
        List<Point> many = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            double value = 8 + random.nextGaussian() * 0.01 + (i > 700 && i < 740 ? 0.02 : 0);
            Point point = Point.of(value, 7.97, 8, 8.03);
            many.add(value > 8.03 || value < 7.97 ? point.marked("1") : point);
        }
        ControlFigure thousand = new ControlFigure(
                new Panel(
                        "width",
                        "mm",
                        many,
                        List.of(),
                        false,
                        List.of(
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "UCL", "8.030", 8.03),
                                new LevelLine(LevelLine.Kind.CENTRE, "mean", "8.000", 8),
                                new LevelLine(LevelLine.Kind.CONTROL_LIMIT, "LCL", "7.970", 7.97)),
                        Optional.empty()),
                Optional.empty(),
                IntStream.rangeClosed(1, 1000).mapToObj(Integer::toString).toList(),
                "piece",
                List.of(),
                Optional.empty());
        List<Point> few = new ArrayList<>();
        double[] sizes = {50, 80, 80, 120, 64};
        double[] shares = {0.04, 0.0125, 0.0625, 0.025, 0.0156};
        for (int i = 0; i < 5; i++) {
            double limit = 0.03 + 3 * Math.sqrt(0.03 * 0.97 / sizes[i]);
            few.add(Point.of(shares[i], 0, 0.03, limit));
        }
        ControlFigure five = new ControlFigure(
                new Panel(
                        "share rejected",
                        "",
                        few,
                        List.of(),
                        false,
                        List.of(
                                new LevelLine(
                                        LevelLine.Kind.CONTROL_LIMIT,
                                        "last UCL",
                                        "0.094",
                                        0.03 + 3 * Math.sqrt(0.03 * 0.97 / 64)),
                                new LevelLine(LevelLine.Kind.CENTRE, "mean", "0.030", 0.03)),
                        Optional.empty()),
                Optional.empty(),
                List.of("2026-11-16", "2026-11-17", "2026-11-18", "2026-11-19", "2026-11-20"),
                "day",
                List.of(),
                Optional.empty());
        List<TableRow> rows = new ArrayList<>();
        for (int i = 1; i <= 45; i++) {
            rows.add(TableRow.of(
                    Cell.text(String.format(Locale.ROOT, "2207-%03d", i)),
                    Cell.figure(String.format(Locale.ROOT, "%.4f", 19.98 + random.nextGaussian() * 0.004)),
                    Cell.figure(String.format(Locale.ROOT, "%.2f", 100 + random.nextGaussian() * 30)),
                    Cell.figure(i % 7 == 0 ? "—" : String.format(Locale.ROOT, "%d", i * 37)),
                    Cell.text(i % 9 == 0 ? "measured again after cleaning; first reading 19.9812 struck out" : "")));
        }
        return List.of(
                Heading.of("A thousand points and five"),
                new Block.FigureBlock(thousand, 50, "Individuals of a thousand pieces."),
                new Block.FigureBlock(five, 50, "Share rejected on five days."),
                Heading.of("Readings"),
                new Block.Table(
                        List.of(
                                Column.narrow("Piece"),
                                Column.figure("Journal", "mm"),
                                Column.figure("Torque", "N·m"),
                                Column.figure("Cycles", ""),
                                Column.text("Remark", 1)),
                        rows));
    }

    static List<Block> symbols() {
        List<TableRow> rows = new ArrayList<>();
        for (GeometricSymbol symbol : GeometricSymbol.values()) {
            rows.add(TableRow.of(
                    Cell.text(symbol.name().toLowerCase(Locale.ROOT).replace('_', ' ')),
                    new Cell.Requirement("", Notation.frame(symbol, Notation.Cell.of("0.05"), Notation.Cell.of("A"))),
                    Cell.text(symbol.character().equals("○") ? "also circularity" : "")));
        }
        Notation modifiers = Notation.frame(
                GeometricSymbol.POSITION, Notation.Cell.of("Ø0.2", Modifier.values()), Notation.Cell.of("A"));
        Notation signs = new Notation(List.of(
                new Notation.Sign(DimensionSign.DIAMETER),
                new Notation.Words("6.6"),
                new Notation.Sign(DimensionSign.COUNTERBORE),
                new Notation.Words("11"),
                new Notation.Sign(DimensionSign.DEPTH),
                new Notation.Words("6"),
                new Notation.Sign(DimensionSign.COUNTERSINK),
                new Notation.Words("90°"),
                new Notation.Sign(DimensionSign.SQUARE),
                new Notation.Words("14")));
        return List.of(
                Heading.of("Symbols"),
                new Block.KeepTogether(List.of(
                        new Block.Table(
                                List.of(
                                        Column.narrow("Characteristic"),
                                        new Column(
                                                "Frame",
                                                "",
                                                Column.Kind.NOTATION,
                                                io.github.firstoff.report.model.Width.NATURAL),
                                        Column.text("Remark", 1)),
                                rows),
                        new Paragraph(Text.of("Modifiers ").notation(modifiers)),
                        new Paragraph(Text.of("Signs ").notation(signs)),
                        new Paragraph(Text.of(
                                "Coverage: Ø ± µ ° − ≤ ≥ × σ Δ … – — ’ “ ” Ω α β γ ÄÖÜ éèê Łódź Čeština Øre")))));
    }
}
