package io.github.firstoff.report.pdf;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfTemplate;
import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.Figure;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.Scale;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;

/**
 * Draws figures as vectors. The chart library plots lines, bars and axes into areas that are computed here, so that panels
 * share their axes to the point; names, values, rings and numbers are set afterwards, because they must not collide.
 */
final class FigurePainter {
    private static final double SIZE = 7;
    private static final double TITLE = 11;
    private static final double TICK_GAP = 3;
    /** Least distance of the baselines of two labels. */
    private static final double LABEL_STEP = 8;

    private static final Stroke HAIR = new BasicStroke(0.4f);
    private static final Stroke ZONE =
            new BasicStroke(0.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {0.8f, 2f}, 0);
    private static final Stroke CENTRE = new BasicStroke(0.6f);
    private static final Stroke CONTROL =
            new BasicStroke(0.7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {4f, 2f}, 0);
    private static final Stroke SPECIFICATION = new BasicStroke(1.1f);
    private static final Stroke TARGET = new BasicStroke(
            0.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6f, 1.6f, 1f, 1.6f}, 0);

    private final Faces faces;
    private final FontMapper mapper;

    FigurePainter(Faces faces) {
        this.faces = faces;
        mapper = new FontMapper() {
            @Override
            public BaseFont awtToPdf(Font font) {
                return faces.font(font.getFontName(Locale.ROOT).contains("Semibold"));
            }

            @Override
            public Font pdfToAwt(BaseFont font, int size) {
                throw new UnsupportedOperationException("drawing goes one way, from the chart to the sheet");
            }
        };
    }

    /** The typeface for the chart library, opened when the first figure is drawn. */
    private static final class ChartFaces {
        static final Font REGULAR = open(Faces.REGULAR);
        static final Font SEMIBOLD = open(Faces.SEMIBOLD);

        private ChartFaces() {}

        private static Font open(String name) {
            try {
                return Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(Faces.bytes(name)))
                        .deriveFont((float) SIZE);
            } catch (FontFormatException e) {
                throw new IllegalStateException("the typeface " + name + " cannot be opened for charts", e);
            } catch (IOException e) {
                throw new UncheckedIOException("the typeface " + name + " cannot be read for charts", e);
            }
        }
    }

    void paint(Canvas canvas, Figure figure, String alternative, double x, double y, double width, double height) {
        PdfDictionary properties = new PdfDictionary();
        properties.put(new PdfName("Alt"), new PdfString(alternative, PdfObject.TEXT_UNICODE));
        canvas.content().beginMarkedContentSequence(new PdfName("Figure"), properties, true);
        PdfTemplate template = canvas.content().createTemplate((float) width, (float) height);
        Graphics2D g = template.createGraphics((float) width, (float) height, mapper);
        try {
            if (figure instanceof ControlFigure control) {
                paint(g, control, width, height);
            } else if (figure instanceof HistogramFigure histogram) {
                paintUpright(g, histogram, width, height);
            }
        } finally {
            g.dispose();
        }
        canvas.content().addTemplate(template, (float) x, (float) canvas.up(y + height));
        canvas.content().endMarkedContentSequence();
    }

    // ---------------------------------------------------------------- control charts

    private void paint(Graphics2D g, ControlFigure figure, double width, double height) {
        Optional<ControlFigure.Panel> dispersion = figure.dispersion();
        Optional<HistogramFigure> aside = figure.histogram();
        Axis locationAxis = axis(figure.location(), aside);
        Optional<Axis> dispersionAxis = dispersion.map(panel -> axis(panel, Optional.empty()));
        double left = Math.max(
                        labelWidth(locationAxis),
                        dispersionAxis.map(this::labelWidth).orElse(0.0))
                + TICK_GAP
                + 2;
        double right = Stream.concat(Stream.of(figure.location()), dispersion.stream())
                        .flatMap(panel -> panel.lines().stream())
                        .mapToDouble(line -> textWidth(lineLabel(line)))
                        .max()
                        .orElse(0)
                + 7;
        double asideWidth = aside.isPresent() ? Math.max(70, width * 0.17) : 0;
        double asideGap = aside.isPresent() ? 10 : 0;
        double plotWidth = width - left - right - asideWidth - asideGap;
        double foot = 21;
        double plots = height - foot - TITLE - (dispersion.isPresent() ? TITLE + 6 : 0);
        double locationHeight = dispersion.isPresent() ? plots * 0.62 : plots;
        Rectangle2D locationArea = new Rectangle2D.Double(left, TITLE, plotWidth, locationHeight);
        List<Rectangle2D> areas = new ArrayList<>(List.of(locationArea));

        if (dispersion.isPresent()) {
            areas.add(new Rectangle2D.Double(
                    left, locationArea.getMaxY() + TITLE + 6, plotWidth, plots - locationHeight));
        }
        List<Rectangle2D> taken = breaks(g, figure, areas);
        panel(g, figure, figure.location(), locationAxis, locationArea, taken);
        if (dispersion.isPresent() && dispersionAxis.isPresent()) {
            panel(g, figure, dispersion.get(), dispersionAxis.get(), areas.get(1), List.of());
        }
        domainAxis(g, figure, areas.get(areas.size() - 1));
        if (aside.isPresent()) {
            Rectangle2D area = new Rectangle2D.Double(width - asideWidth, TITLE, asideWidth, locationHeight);
            turned(g, aside.get(), locationAxis, area);
        }
    }

    private void panel(
            Graphics2D g,
            ControlFigure figure,
            ControlFigure.Panel panel,
            Axis axis,
            Rectangle2D area,
            List<Rectangle2D> taken) {
        int count = panel.points().size();
        double weight = count <= 60 ? 0.8 : count <= 250 ? 0.55 : 0.35;
        double radius = count <= 60 ? 1.7 : count <= 250 ? 1.15 : 0.7;
        title(g, titleOf(panel.name(), panel.unit()), area);

        DefaultXYDataset data = new DefaultXYDataset();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        if (panel.zones()) {
            for (int third = 1; third <= 2; third++) {
                int k = third;
                add(
                        data,
                        renderer,
                        steps(figure, panel, p -> p.centre() + (p.upper() - p.centre()) * k / 3),
                        ZONE,
                        Ink.GREY);
                add(
                        data,
                        renderer,
                        steps(figure, panel, p -> p.centre() + (p.lower() - p.centre()) * k / 3),
                        ZONE,
                        Ink.GREY);
            }
        }
        add(data, renderer, steps(figure, panel, ControlFigure.Point::upper), CONTROL, Ink.BLACK);
        add(data, renderer, steps(figure, panel, ControlFigure.Point::lower), CONTROL, Ink.BLACK);
        add(data, renderer, steps(figure, panel, ControlFigure.Point::centre), CENTRE, Ink.GREY);
        if (!panel.second().isEmpty()) {
            Stroke dashed = new BasicStroke(
                    (float) weight, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {2, 1}, 0);
            int series = add(data, renderer, values(figure, panel.second()), dashed, Ink.BLUE);
            dots(renderer, series, radius, false);
        }
        Stroke line = new BasicStroke((float) weight, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        int main = add(data, renderer, values(figure, panel.points()), line, Ink.BLUE);
        if (count <= 250) {
            dots(renderer, main, radius, true);
        }
        g.setPaint(Ink.BLACK.colour());
        for (LevelLine level : panel.lines()) {
            if (level.kind() == LevelLine.Kind.SPECIFICATION_LIMIT || level.kind() == LevelLine.Kind.TARGET) {
                double at = axis.place(level.at(), area);
                if (inside(at, area)) {
                    g.setStroke(stroke(level.kind()));
                    g.draw(new Line2D.Double(area.getX(), at, area.getMaxX(), at));
                }
            }
        }
        NumberAxis domain = numberAxis(0.5, count + 0.5, 1);
        draw(g, plot(data, domain, numberAxis(axis.low, axis.high, axis.step), renderer), area);

        rangeAxis(g, axis, area);
        lineLabels(g, panel.lines(), axis, area);
        List<Rectangle2D> obstacles = new ArrayList<>(taken);
        String heading = faces.fit(titleOf(panel.name(), panel.unit()));
        obstacles.add(new Rectangle2D.Double(area.getX(), area.getY() - TITLE, textWidth(heading), TITLE - 2));
        marks(g, panel.points(), axis, area, radius, obstacles);
        if (!panel.second().isEmpty()) {
            marks(g, panel.second(), axis, area, radius, obstacles);
        }
    }

    /** Rings, numbers and shapes over the points that need them. */
    private void marks(
            Graphics2D g,
            List<ControlFigure.Point> points,
            Axis axis,
            Rectangle2D area,
            double radius,
            List<Rectangle2D> obstacles) {
        double ring = radius + (radius > 1 ? 1.9 : 1.5);
        double pitch = area.getWidth() / points.size();
        List<Ring> rings = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            ControlFigure.Point point = points.get(i);
            if (Double.isNaN(point.value())) {
                continue;
            }
            double x = area.getX() + (i + 0.5) * pitch;
            double y = axis.place(point.value(), area);
            if (!inside(y, area)) {
                continue;
            }
            if (point.shape() == ControlFigure.Shape.OUT_OF_SPECIFICATION) {
                double half = radius + 1;
                g.setPaint(Ink.RED.colour());
                g.fill(new Rectangle2D.Double(x - half, y - half, 2 * half, 2 * half));
                g.setPaint(Ink.WHITE.colour());
                g.fill(new Rectangle2D.Double(x - half * 0.5, y - half * 0.5, half, half));
            } else if (point.shape() == ControlFigure.Shape.EXCLUDED) {
                double half = radius + 1.2;
                g.setPaint(Ink.WHITE.colour());
                g.fill(new Ellipse2D.Double(x - half, y - half, 2 * half, 2 * half));
                g.setPaint(Ink.GREY.colour());
                g.setStroke(new BasicStroke(0.8f));
                g.draw(new Line2D.Double(x - half, y - half, x + half, y + half));
                g.draw(new Line2D.Double(x - half, y + half, x + half, y - half));
            }
            if (point.marks().isEmpty()) {
                continue;
            }
            g.setPaint(Ink.BLACK.colour());
            g.setStroke(new BasicStroke(0.75f));
            g.draw(new Ellipse2D.Double(x - ring, y - ring, 2 * ring, 2 * ring));
            boolean above = Double.isNaN(point.centre()) || point.value() >= point.centre();
            rings.add(new Ring(faces.fit(point.marks()), x, y, above));
        }
        rings.forEach(one -> obstacles.add(new Rectangle2D.Double(one.x - ring, one.y - ring, 2 * ring, 2 * ring)));
        for (Ring one : speakers(rings)) {
            number(g, one, ring, area, obstacles);
        }
    }

    private record Ring(String mark, double x, double y, boolean above) {
        boolean outside(Ring other) {
            return above ? y < other.y : y > other.y;
        }
    }

    /** Neighbours that say the same share one number, at the ring that lies furthest out. */
    private static List<Ring> speakers(List<Ring> rings) {
        List<Ring> speakers = new ArrayList<>();
        Ring before = null;
        for (Ring ring : rings) {
            int last = speakers.size() - 1;
            boolean sameRun = before != null
                    && ring.mark.equals(before.mark)
                    && ring.above == before.above
                    && ring.x - before.x < 9;
            if (!sameRun) {
                speakers.add(ring);
            } else if (ring.outside(speakers.get(last))) {
                speakers.set(last, ring);
            }
            before = ring;
        }
        return speakers;
    }

    private void number(Graphics2D g, Ring of, double ring, Rectangle2D area, List<Rectangle2D> taken) {
        String mark = of.mark;
        double x = of.x;
        double y = of.y;
        double width = textWidth(mark);
        double capitals = SIZE * Type.CAPITALS;
        for (int attempt = 0; attempt < 10; attempt++) {
            boolean up = of.above == (attempt % 2 == 0);
            int step = attempt / 2;
            double shift = step * LABEL_STEP;
            double baseline = up ? y - ring - 1.4 - shift : y + ring + 1.4 + capitals + shift;
            Rectangle2D box =
                    new Rectangle2D.Double(x - width / 2 - 0.6, baseline - capitals - 0.6, width + 1.2, capitals + 1.2);
            boolean free = box.getY() > area.getY() - TITLE
                    && box.getMaxY() < area.getMaxY()
                    && taken.stream().noneMatch(box::intersects);
            if (free) {
                taken.add(box);
                text(g, mark, x - width / 2, baseline, true, Ink.BLACK);
                return;
            }
        }
    }

    private void lineLabels(Graphics2D g, List<LevelLine> lines, Axis axis, Rectangle2D area) {
        List<LevelLine> sorted = lines.stream()
                .filter(line -> inside(axis.place(line.at(), area), area))
                .sorted(Comparator.comparingDouble(LevelLine::at).reversed())
                .toList();
        double[] places = spread(
                sorted.stream().mapToDouble(line -> axis.place(line.at(), area)).toArray(),
                LABEL_STEP,
                area.getY() - 2,
                area.getMaxY() + 2);
        for (int i = 0; i < sorted.size(); i++) {
            double line = axis.place(sorted.get(i).at(), area);
            boolean moved = Math.abs(places[i] - line) > 0.5;
            g.setPaint(Ink.GREY.colour());
            g.setStroke(HAIR);
            if (moved) {
                g.draw(new Line2D.Double(area.getMaxX(), line, area.getMaxX() + 5, places[i]));
            }
            boolean heavy = sorted.get(i).kind() == LevelLine.Kind.SPECIFICATION_LIMIT;
            text(
                    g,
                    lineLabel(sorted.get(i)),
                    area.getMaxX() + 6,
                    places[i] + SIZE * Type.CAPITALS / 2,
                    heavy,
                    Ink.BLACK);
        }
    }

    /** Moves places, given in ascending order, apart to a least distance, staying between the ends where that is possible. */
    static double[] spread(double[] places, double step, double low, double high) {
        double[] spread = places.clone();
        for (int i = 1; i < spread.length; i++) {
            spread[i] = Math.max(spread[i], spread[i - 1] + step);
        }
        // Where a run was pushed down as a whole, half of the shift is given back upwards.
        for (int end = spread.length - 1; end >= 0; ) {
            int start = end;
            while (start > 0 && spread[start] - spread[start - 1] <= step + 1e-6) {
                start--;
            }
            double shift = 0;
            for (int i = start; i <= end; i++) {
                shift += (spread[i] - places[i]) / (end - start + 1);
            }
            double floor = start > 0 ? spread[start - 1] + step : low;
            shift = Math.min(shift, spread[start] - floor);
            for (int i = start; i <= end && shift > 0; i++) {
                spread[i] -= shift;
            }
            end = start - 1;
        }
        if (spread.length > 0 && spread[spread.length - 1] > high) {
            spread[spread.length - 1] = high;
            for (int i = spread.length - 2; i >= 0; i--) {
                spread[i] = Math.min(spread[i], spread[i + 1] - step);
            }
        }
        return spread;
    }

    /** Marks where phases start; returns the places of the words. */
    private List<Rectangle2D> breaks(Graphics2D g, ControlFigure figure, List<Rectangle2D> areas) {
        List<Rectangle2D> words = new ArrayList<>();
        double pitch = areas.get(0).getWidth() / figure.location().points().size();
        for (ControlFigure.PhaseBreak phase : figure.breaks()) {
            double x = areas.get(0).getX() + (phase.before() - 1) * pitch;
            g.setPaint(Ink.GREY.colour());
            g.setStroke(HAIR);
            for (Rectangle2D area : areas) {
                g.draw(new Line2D.Double(x, area.getY(), x, area.getMaxY()));
            }
            String word = faces.fit(phase.word());
            double room = areas.get(0).getMaxX() - x;
            double at = textWidth(word) + 3 > room ? x - 3 - textWidth(word) : x + 3;
            text(g, word, at, areas.get(0).getY() - 3, false, Ink.BLACK);
            words.add(new Rectangle2D.Double(at, areas.get(0).getY() - TITLE, textWidth(word), TITLE - 1));
        }
        return words;
    }

    private void domainAxis(Graphics2D g, ControlFigure figure, Rectangle2D area) {
        List<String> labels = figure.labels().stream().map(faces::fit).toList();
        double pitch = area.getWidth() / labels.size();
        double widest = labels.stream().mapToDouble(this::textWidth).max().orElse(0);
        int step = labelStep((widest + 5) / pitch);
        g.setStroke(HAIR);
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < labels.size(); i++) {
            boolean due = step == 1 || i == 0 || (i + 1) % step == 0;
            double x = area.getX() + (i + 0.5) * pitch;
            double half = textWidth(labels.get(i)) / 2;
            boolean firstWouldCrowd = i == 0 && step > 1 && (step - 1) * pitch < widest + 5;
            if (due && !firstWouldCrowd && x - half > before + 2) {
                g.setPaint(Ink.GREY.colour());
                g.draw(new Line2D.Double(x, area.getMaxY(), x, area.getMaxY() + 2));
                text(g, labels.get(i), x - half, area.getMaxY() + 2.5 + SIZE, false, Ink.GREY);
                before = x + half;
            }
        }
        g.setPaint(Ink.GREY.colour());
        g.draw(new Line2D.Double(area.getX(), area.getMaxY(), area.getMaxX(), area.getMaxY()));
        String name = faces.fit(figure.axisName());
        text(g, name, area.getMaxX() - textWidth(name), area.getMaxY() + 2.5 + 2 * SIZE + 2, false, Ink.BLACK);
    }

    private static int labelStep(double least) {
        for (int power = 1; power <= 1_000_000; power *= 10) {
            for (int factor : new int[] {1, 2, 5}) {
                if (factor * power >= least) {
                    return factor * power;
                }
            }
        }
        return 1_000_000;
    }

    private interface Level {
        double of(ControlFigure.Point point);
    }

    /** A line that holds its level over the whole width of a point, and is broken where a phase starts. */
    private static double[][] steps(ControlFigure figure, ControlFigure.Panel panel, Level level) {
        List<double[]> path = new ArrayList<>();
        double before = Double.NaN;
        for (int i = 0; i < panel.points().size(); i++) {
            double value = level.of(panel.points().get(i));
            boolean broken = startsPhase(figure, i);
            if (broken) {
                path.add(new double[] {i + 0.5, Double.NaN});
            }
            if (!broken && value == before) {
                path.get(path.size() - 1)[0] = i + 1.5;
            } else {
                path.add(new double[] {i + 0.5, value});
                path.add(new double[] {i + 1.5, value});
            }
            before = value;
        }
        return columns(path);
    }

    private static double[][] values(ControlFigure figure, List<ControlFigure.Point> points) {
        List<double[]> path = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            if (startsPhase(figure, i)) {
                path.add(new double[] {i + 0.5, Double.NaN});
            }
            path.add(new double[] {i + 1, points.get(i).value()});
        }
        return columns(path);
    }

    private static boolean startsPhase(ControlFigure figure, int index) {
        return figure.breaks().stream().anyMatch(phase -> phase.before() == index + 1);
    }

    private static double[][] columns(List<double[]> path) {
        double[][] columns = new double[2][path.size()];
        for (int i = 0; i < path.size(); i++) {
            columns[0][i] = path.get(i)[0];
            columns[1][i] = path.get(i)[1];
        }
        return columns;
    }

    private Axis axis(ControlFigure.Panel panel, Optional<HistogramFigure> aside) {
        if (panel.scale().isPresent()) {
            return Axis.between(panel.scale().get(), 6);
        }
        DoubleStream values = Stream.concat(panel.points().stream(), panel.second().stream())
                .flatMapToDouble(p -> DoubleStream.of(p.value(), p.lower(), p.centre(), p.upper()));
        DoubleStream lines = panel.lines().stream().mapToDouble(LevelLine::at);
        DoubleStream bins = aside.stream()
                .flatMap(histogram -> histogram.bins().stream())
                .flatMapToDouble(bin -> DoubleStream.of(bin.from(), bin.to()));
        return Axis.around(
                DoubleStream.concat(DoubleStream.concat(values, lines), bins).toArray());
    }

    // ---------------------------------------------------------------- histograms

    /** The histogram on its side, on the scale of the panel at its left. */
    private void turned(Graphics2D g, HistogramFigure figure, Axis axis, Rectangle2D area) {
        double most = most(figure) * 1.05;
        title(g, faces.fit(figure.name()), area);
        XYPlot plot = bars(figure, axis, most);
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        draw(g, plot, area);
        g.setPaint(Ink.GREY.colour());
        g.setStroke(HAIR);
        g.draw(new Line2D.Double(area.getX(), area.getY(), area.getX(), area.getMaxY()));
        for (LevelLine line : figure.lines()) {
            double y = axis.place(line.at(), area);
            if (inside(y, area)) {
                g.setPaint(line.kind() == LevelLine.Kind.CENTRE ? Ink.GREY.colour() : Ink.BLACK.colour());
                g.setStroke(stroke(line.kind()));
                g.draw(new Line2D.Double(area.getX(), y, area.getMaxX(), y));
            }
        }
        countAxis(g, most, area, true);
        figure.curve()
                .ifPresent(curve -> flank(curve, 0.3).ifPresent(point -> {
                    String name = faces.fit(curve.name());
                    double x = area.getX() + point.count() / most * area.getWidth() + 5;
                    double y = axis.place(point.at(), area) - 1;
                    text(g, name, Math.min(x, area.getMaxX() - textWidth(name)), y, false, Ink.BLUE);
                }));
    }

    /** The point on the upper flank of a curve where it has fallen to a share of its peak; a name finds room beside it. */
    private static Optional<HistogramFigure.CurvePoint> flank(HistogramFigure.Curve curve, double share) {
        double peak = curve.points().stream()
                .mapToDouble(HistogramFigure.CurvePoint::count)
                .max()
                .orElse(0);
        return curve.points().stream()
                .filter(point -> point.count() >= peak * share)
                .max(Comparator.comparingDouble(HistogramFigure.CurvePoint::at));
    }

    private void paintUpright(Graphics2D g, HistogramFigure figure, double width, double height) {
        DoubleStream edges = figure.bins().stream().flatMapToDouble(bin -> DoubleStream.of(bin.from(), bin.to()));
        DoubleStream lines = figure.lines().stream().mapToDouble(LevelLine::at);
        Axis axis = figure.scale()
                .map(scale -> Axis.between(scale, 6))
                .orElseGet(() -> Axis.around(DoubleStream.concat(edges, lines).toArray()));
        double most = most(figure) * 1.08;
        double left = textWidth(Long.toString(Math.round(most))) + TICK_GAP + 4;
        double plotWidth = width - left - 4;
        List<LineLabel> labels = labelsAbove(figure.lines(), axis, left, plotWidth);
        int levels = labels.stream().mapToInt(label -> label.level + 1).max().orElse(0);
        double top = 5 + levels * (2 * LABEL_STEP + 2);
        Rectangle2D area = new Rectangle2D.Double(left, top, plotWidth, height - top - 21);
        draw(g, bars(figure, axis, most), area);
        countAxis(g, most, area, false);
        g.setPaint(Ink.GREY.colour());
        g.setStroke(HAIR);
        g.draw(new Line2D.Double(area.getX(), area.getMaxY(), area.getMaxX(), area.getMaxY()));
        double before = Double.NEGATIVE_INFINITY;
        for (double value : axis.ticks()) {
            double x = axis.along(value, area);
            String label = axis.label(value);
            double half = textWidth(label) / 2;
            g.setPaint(Ink.GREY.colour());
            g.draw(new Line2D.Double(x, area.getMaxY(), x, area.getMaxY() + 2));
            if (x - half > before + 4 && x + half <= width) {
                text(g, label, x - half, area.getMaxY() + 2.5 + SIZE, false, Ink.GREY);
                before = x + half;
            }
        }
        String name = faces.fit(titleOf(figure.name(), figure.unit()));
        text(g, name, area.getMaxX() - textWidth(name), area.getMaxY() + 2.5 + 2 * SIZE + 2, false, Ink.BLACK);
        for (LineLabel label : labels) {
            double x = axis.along(label.line.at(), area);
            double foot = labelTop(label) + 2 * LABEL_STEP;
            g.setPaint(label.line.kind() == LevelLine.Kind.CENTRE ? Ink.GREY.colour() : Ink.BLACK.colour());
            g.setStroke(stroke(label.line.kind()));
            g.draw(new Line2D.Double(x, Math.min(foot + 3, area.getY()), x, area.getMaxY()));
            g.setStroke(HAIR);
            g.draw(new Line2D.Double(label.middle, foot, x, Math.min(foot + 3, area.getY())));
        }
        for (LineLabel label : labels) {
            double half = Math.max(textWidth(label.name), textWidth(label.value)) / 2;
            g.setPaint(Ink.WHITE.colour());
            g.fill(new Rectangle2D.Double(label.middle - half - 1, labelTop(label), 2 * half + 2, 2 * LABEL_STEP));
            boolean heavy = label.line.kind() == LevelLine.Kind.SPECIFICATION_LIMIT;
            double baseline = labelTop(label) + SIZE - 1.4;
            text(g, label.name, label.middle - textWidth(label.name) / 2, baseline, heavy, Ink.BLACK);
            text(g, label.value, label.middle - textWidth(label.value) / 2, baseline + LABEL_STEP, heavy, Ink.BLACK);
        }
        figure.curve().ifPresent(curve -> curveName(g, curve, axis, most, area));
    }

    private static double labelTop(LineLabel label) {
        return 2 + label.level * (2 * LABEL_STEP + 2);
    }

    private void curveName(Graphics2D g, HistogramFigure.Curve curve, Axis axis, double most, Rectangle2D area) {
        flank(curve, 0.3).ifPresent(point -> {
            String name = faces.fit(curve.name());
            double x = Math.min(axis.along(point.at(), area) + 6, area.getMaxX() - textWidth(name) - 3);
            double y = area.getMaxY() - point.count() / most * area.getHeight() - 4;
            text(g, name, x, y, false, Ink.BLUE);
        });
    }

    private static final class LineLabel {
        private final LevelLine line;
        private final String name;
        private final String value;
        private double middle;
        private int level;

        LineLabel(LevelLine line, String name, String value, double middle) {
            this.line = line;
            this.name = name;
            this.value = value;
            this.middle = middle;
        }
    }

    /** Labels over the lines of an upright histogram, on as many levels as they need not to touch. */
    private List<LineLabel> labelsAbove(List<LevelLine> lines, Axis axis, double left, double plotWidth) {
        Rectangle2D area = new Rectangle2D.Double(left, 0, plotWidth, 1);
        List<LineLabel> labels = new ArrayList<>();
        List<Double> ends = new ArrayList<>();
        List<LevelLine> sorted = lines.stream()
                .filter(line -> line.at() >= axis.low && line.at() <= axis.high)
                .sorted(Comparator.comparingDouble(LevelLine::at))
                .toList();
        for (LevelLine line : sorted) {
            String name = faces.fit(line.name());
            String value = faces.figure(line.value());
            double half = Math.max(textWidth(name), textWidth(value)) / 2;
            double x = axis.along(line.at(), area);
            double middle = Math.max(half, Math.min(left + plotWidth + 4 - half, x));
            LineLabel label = new LineLabel(line, name, value, middle);
            int level = 0;
            while (level < ends.size() && ends.get(level) + 5 > middle - half) {
                level++;
            }
            if (level == ends.size()) {
                ends.add(middle + half);
            } else {
                ends.set(level, middle + half);
            }
            label.level = level;
            labels.add(label);
        }
        if (ends.size() > 1) {
            onOneLevel(labels, left + plotWidth + 4);
        }
        return labels;
    }

    /** Pushes labels apart sideways where they all have room in one row; their lines then reach them aslant. */
    private void onOneLevel(List<LineLabel> labels, double right) {
        double gap = 6;
        double[] half = labels.stream()
                .mapToDouble(label -> Math.max(textWidth(label.name), textWidth(label.value)) / 2)
                .toArray();
        if (2 * DoubleStream.of(half).sum() + gap * (half.length - 1) > right) {
            return;
        }
        double[] middle = labels.stream().mapToDouble(label -> label.middle).toArray();
        // Two sweeps from the middle one: its neighbours give way to either side.
        int pivot = half.length / 2;
        for (int i = pivot + 1; i < half.length; i++) {
            middle[i] = Math.max(middle[i], middle[i - 1] + half[i - 1] + half[i] + gap);
        }
        for (int i = pivot - 1; i >= 0; i--) {
            middle[i] = Math.min(middle[i], middle[i + 1] - half[i] - half[i + 1] - gap);
        }
        double limit = right;
        for (int i = half.length - 1; i >= 0; i--) {
            middle[i] = Math.min(middle[i], limit - half[i]);
            limit = middle[i] - half[i] - gap;
        }
        double floor = 0;
        for (int i = 0; i < half.length; i++) {
            middle[i] = Math.max(middle[i], floor + half[i]);
            floor = middle[i] + half[i] + gap;
        }
        for (int i = 0; i < half.length; i++) {
            labels.get(i).middle = middle[i];
            labels.get(i).level = 0;
        }
    }

    private static double most(HistogramFigure figure) {
        double bars = figure.bins().stream()
                .mapToLong(HistogramFigure.Bin::count)
                .max()
                .orElse(1);
        double curve = figure.curve().stream()
                .flatMap(c -> c.points().stream())
                .mapToDouble(HistogramFigure.CurvePoint::count)
                .max()
                .orElse(0);
        return Math.max(1, Math.max(bars, curve));
    }

    private static XYPlot bars(HistogramFigure figure, Axis axis, double most) {
        XYIntervalSeries series = new XYIntervalSeries("bins");
        for (HistogramFigure.Bin bin : figure.bins()) {
            if (bin.count() > 0) {
                double middle = (bin.from() + bin.to()) / 2;
                double count = (double) bin.count();
                series.add(middle, bin.from(), bin.to(), count, 0, count);
            }
        }
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        data.addSeries(series);
        XYBarRenderer renderer = new XYBarRenderer();
        renderer.setBarPainter(new StandardXYBarPainter());
        renderer.setShadowVisible(false);
        renderer.setDrawBarOutline(true);
        renderer.setSeriesPaint(0, Ink.TINT.colour());
        renderer.setSeriesOutlinePaint(0, Ink.BLUE.colour());
        renderer.setSeriesOutlineStroke(0, new BasicStroke(0.5f));
        XYPlot plot = new XYPlot(data, numberAxis(axis.low, axis.high, axis.step), numberAxis(0, most, most), renderer);
        figure.curve().ifPresent(curve -> {
            double[][] points = new double[2][curve.points().size()];
            for (int i = 0; i < curve.points().size(); i++) {
                points[0][i] = curve.points().get(i).at();
                points[1][i] = curve.points().get(i).count();
            }
            DefaultXYDataset line = new DefaultXYDataset();
            XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
            add(line, lines, points, new BasicStroke(1f), Ink.BLUE);
            plot.setDataset(1, line);
            plot.setRenderer(1, lines);
            plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        });
        return bare(plot);
    }

    private void countAxis(Graphics2D g, double most, Rectangle2D area, boolean turned) {
        double step = Math.max(1, Ticks.step(0, most, turned ? 3 : 5));
        for (double count = 0; count <= most; count += step) {
            String label = Long.toString(Math.round(count));
            double share = count / most;
            g.setPaint(Ink.GREY.colour());
            g.setStroke(HAIR);
            if (turned) {
                double x = area.getX() + share * area.getWidth();
                g.draw(new Line2D.Double(x, area.getMaxY(), x, area.getMaxY() + 2));
                text(g, label, x - textWidth(label) / 2, area.getMaxY() + 2.5 + SIZE, false, Ink.GREY);
            } else {
                double y = area.getMaxY() - share * area.getHeight();
                g.draw(new Line2D.Double(area.getX() - 2, y, area.getX(), y));
                double right = area.getX() - TICK_GAP;
                text(g, label, right - textWidth(label), y + SIZE * Type.CAPITALS / 2, false, Ink.GREY);
            }
        }
        g.setPaint(Ink.GREY.colour());
        g.setStroke(HAIR);
        if (turned) {
            g.draw(new Line2D.Double(area.getX(), area.getMaxY(), area.getMaxX(), area.getMaxY()));
            String name = "count";
            text(g, name, area.getMaxX() - textWidth(name), area.getMaxY() + 2.5 + 2 * SIZE + 2, false, Ink.BLACK);
        } else {
            g.draw(new Line2D.Double(area.getX(), area.getY(), area.getX(), area.getMaxY()));
            text(g, "count", 0, area.getMaxY() + 2.5 + 2 * SIZE + 2, false, Ink.BLACK);
        }
    }

    // ---------------------------------------------------------------- common ground

    private static int add(
            DefaultXYDataset data, XYLineAndShapeRenderer renderer, double[][] path, Stroke stroke, Ink ink) {
        int series = data.getSeriesCount();
        data.addSeries(series, path);
        renderer.setSeriesStroke(series, stroke);
        renderer.setSeriesPaint(series, ink.colour());
        renderer.setSeriesShapesVisible(series, false);
        return series;
    }

    private static void dots(XYLineAndShapeRenderer renderer, int series, double radius, boolean filled) {
        Shape dot = new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius);
        renderer.setSeriesShape(series, dot);
        renderer.setSeriesShapesVisible(series, true);
        renderer.setSeriesShapesFilled(series, filled);
    }

    private static NumberAxis numberAxis(double low, double high, double step) {
        NumberAxis axis = new NumberAxis();
        axis.setAutoRangeIncludesZero(false);
        axis.setRange(low, high);
        axis.setTickUnit(new NumberTickUnit(step));
        axis.setVisible(false);
        return axis;
    }

    private static XYPlot plot(
            DefaultXYDataset data, NumberAxis domain, NumberAxis range, XYLineAndShapeRenderer renderer) {
        return bare(new XYPlot(data, domain, range, renderer));
    }

    /** Nothing but the data: frame, ground, grid and axes are set by hand. */
    private static XYPlot bare(XYPlot plot) {
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setBackgroundPaint(null);
        plot.setBackgroundAlpha(1);
        plot.setForegroundAlpha(1);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        plot.setDomainZeroBaselineVisible(false);
        plot.setRangeZeroBaselineVisible(false);
        return plot;
    }

    private static void draw(Graphics2D g, XYPlot plot, Rectangle2D area) {
        plot.draw(g, area, null, null, null);
    }

    private void rangeAxis(Graphics2D g, Axis axis, Rectangle2D area) {
        g.setStroke(HAIR);
        g.setPaint(Ink.GREY.colour());
        g.draw(new Line2D.Double(area.getX(), area.getY(), area.getX(), area.getMaxY()));
        for (double value : axis.ticks()) {
            double y = axis.place(value, area);
            g.setPaint(Ink.GREY.colour());
            g.draw(new Line2D.Double(area.getX() - 2, y, area.getX(), y));
            String label = axis.label(value);
            text(g, label, area.getX() - TICK_GAP - textWidth(label), y + SIZE * Type.CAPITALS / 2, false, Ink.GREY);
        }
    }

    private static String titleOf(String name, String unit) {
        return unit.isEmpty() ? name : name + ", " + unit;
    }

    private void title(Graphics2D g, String title, Rectangle2D area) {
        text(g, faces.fit(title), area.getX(), area.getY() - 4, true, Ink.BLACK);
    }

    private double labelWidth(Axis axis) {
        return DoubleStream.of(axis.ticks())
                .map(value -> textWidth(axis.label(value)))
                .max()
                .orElse(0);
    }

    private String lineLabel(LevelLine line) {
        return line.value().isEmpty()
                ? faces.fit(line.name())
                : faces.fit(line.name()) + " " + faces.figure(line.value());
    }

    private double textWidth(String text) {
        return faces.width(text, true, SIZE);
    }

    private void text(Graphics2D g, String text, double x, double baseline, boolean strong, Ink ink) {
        if (text.isEmpty()) {
            return;
        }
        g.setPaint(ink.colour());
        g.setFont(strong ? ChartFaces.SEMIBOLD : ChartFaces.REGULAR);
        g.drawString(text, (float) x, (float) baseline);
    }

    private static boolean inside(double y, Rectangle2D area) {
        return y >= area.getY() - 0.01 && y <= area.getMaxY() + 0.01;
    }

    private static Stroke stroke(LevelLine.Kind kind) {
        return switch (kind) {
            case CENTRE -> CENTRE;
            case CONTROL_LIMIT -> CONTROL;
            case SPECIFICATION_LIMIT -> SPECIFICATION;
            case TARGET -> TARGET;
        };
    }

    /** Ends and round steps of an axis. */
    private static final class Axis {
        private final double low;
        private final double high;
        private final double step;
        private final DecimalFormat format;

        private Axis(double low, double high, int most) {
            this.low = low;
            this.high = high;
            step = Ticks.step(low, high, most);
            int decimals = Ticks.decimals(step);
            format = new DecimalFormat(
                    decimals == 0 ? "0" : "0." + "0".repeat(decimals), DecimalFormatSymbols.getInstance(Locale.ROOT));
        }

        static Axis between(Scale scale, int most) {
            return new Axis(scale.low(), scale.high(), most);
        }

        /** An axis that holds all values that are numbers, with some air; none below zero where no value is. */
        static Axis around(double[] values) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (double value : values) {
                if (Double.isFinite(value)) {
                    low = Math.min(low, value);
                    high = Math.max(high, value);
                }
            }
            if (low > high) {
                return new Axis(0, 1, 6);
            }
            double air = high > low ? (high - low) * 0.07 : Math.max(Math.abs(high) * 0.01, 1e-6);
            double foot = low >= 0 && low - air < 0 ? 0 : low - air;
            return new Axis(foot, high + air, 6);
        }

        double[] ticks() {
            long first = (long) Math.ceil(low / step - 1e-9);
            long last = (long) Math.floor(high / step + 1e-9);
            double[] ticks = new double[(int) Math.max(0, last - first + 1)];
            for (int i = 0; i < ticks.length; i++) {
                ticks[i] = (first + i) * step;
            }
            return ticks;
        }

        String label(double value) {
            return IndexScalePainter.minus(format.format(value == 0 ? 0 : value));
        }

        double place(double value, Rectangle2D area) {
            return area.getMaxY() - (value - low) / (high - low) * area.getHeight();
        }

        double along(double value, Rectangle2D area) {
            return area.getX() + (value - low) / (high - low) * area.getWidth();
        }
    }
}
