package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.LevelLine;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** What all pictures are drawn with: the type of the sheet, a few strokes, and a memory of where text stands. */
final class Pen {
    /** Size of all type in pictures, in points. */
    static final double SIZE = 7;
    /** Height of the strip over a panel that holds its name. */
    static final double TITLE = 11;
    /** From a tick label to its axis. */
    static final double TICK_GAP = 3;
    /** Least distance of the baselines of two labels. */
    static final double LABEL_STEP = 8;
    /** Room under an axis for its labels and its name. */
    static final double FOOT = 21;

    static final Stroke HAIR = new BasicStroke(0.4f);
    static final Stroke ZONE =
            new BasicStroke(0.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {0.8f, 2f}, 0);
    static final Stroke CENTRE = new BasicStroke(0.6f);
    static final Stroke CONTROL =
            new BasicStroke(0.7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {4f, 2f}, 0);
    static final Stroke TREND =
            new BasicStroke(0.9f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {7f, 2.5f}, 0);
    private static final Stroke SPECIFICATION = new BasicStroke(1.1f);
    private static final Stroke TARGET = new BasicStroke(
            0.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6f, 1.6f, 1f, 1.6f}, 0);

    private final Graphics2D g;
    private final Faces faces;
    private final List<Label> labels = new ArrayList<>();

    Pen(Graphics2D g, Faces faces) {
        this.g = g;
        this.faces = faces;
    }

    /** Text that was set, and the box of its capitals. */
    record Label(String text, Rectangle2D box) {}

    /** The typeface for drawing, opened when the first figure is drawn. */
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

    /** Opens the typefaces of figures. Java cannot open any more while it is shutting down. */
    static void openTypefaces() {
        if (ChartFaces.REGULAR.canDisplay('0') && ChartFaces.SEMIBOLD.canDisplay('0')) {
            return;
        }
        throw new IllegalStateException("the typefaces of figures have no numerals");
    }

    Graphics2D graphics() {
        return g;
    }

    Faces faces() {
        return faces;
    }

    /** Everything that was set in type so far. */
    List<Label> labels() {
        return List.copyOf(labels);
    }

    double width(String text) {
        return faces.width(text, true, SIZE);
    }

    double widest(DoubleStream widths) {
        return widths.max().orElse(0);
    }

    void text(String text, double x, double baseline, boolean strong, Ink ink) {
        if (text.isEmpty()) {
            return;
        }
        labels.add(new Label(text, box(text, x, baseline)));
        g.setPaint(ink.colour());
        g.setFont(strong ? ChartFaces.SEMIBOLD : ChartFaces.REGULAR);
        g.drawString(text, (float) x, (float) baseline);
    }

    /** Text that reads upwards, its right edge at {@code right}, beginning at {@code foot}. */
    void textUpwards(String text, double right, double foot, Ink ink) {
        if (text.isEmpty()) {
            return;
        }
        double capitals = SIZE * Type.CAPITALS;
        labels.add(
                new Label(text, new Rectangle2D.Double(right - capitals, foot - width(text), capitals, width(text))));
        AffineTransform before = g.getTransform();
        g.translate(right, foot);
        g.rotate(-Math.PI / 2);
        g.setPaint(ink.colour());
        g.setFont(ChartFaces.REGULAR);
        g.drawString(text, 0f, 0f);
        g.setTransform(before);
    }

    /** The box of the capitals of a text. */
    Rectangle2D box(String text, double x, double baseline) {
        double capitals = SIZE * Type.CAPITALS;
        return new Rectangle2D.Double(x, baseline - capitals, width(text), capitals);
    }

    void line(double x1, double y1, double x2, double y2, Stroke stroke, Ink ink) {
        g.setPaint(ink.colour());
        g.setStroke(stroke);
        g.draw(new Line2D.Double(x1, y1, x2, y2));
    }

    /** Name and unit of a panel over its area. */
    void title(String name, String unit, Rectangle2D area) {
        text(titleOf(name, unit), area.getX(), area.getY() - 4, true, Ink.BLACK);
    }

    String titleOf(String name, String unit) {
        return faces.fit(unit.isEmpty() ? name : name + ", " + unit);
    }

    /** Name and value of a line, as printed at its end. */
    String label(LevelLine line) {
        return line.value().isEmpty()
                ? faces.fit(line.name())
                : faces.fit(line.name()) + " " + faces.figure(line.value());
    }

    /** The axis of values at the left of an area. */
    void rangeAxis(Axis axis, Rectangle2D area) {
        line(area.getX(), area.getY(), area.getX(), area.getMaxY(), HAIR, Ink.GREY);
        for (double value : axis.ticks()) {
            double y = axis.place(value, area);
            line(area.getX() - 2, y, area.getX(), y, HAIR, Ink.GREY);
            String label = axis.label(value);
            text(label, area.getX() - TICK_GAP - width(label), y + SIZE * Type.CAPITALS / 2, false, Ink.GREY);
        }
    }

    /** The axis of values under an area, with its name; labels stay left of {@code right}. */
    void valueAxis(Axis axis, String name, Rectangle2D area, double right) {
        line(area.getX(), area.getMaxY(), area.getMaxX(), area.getMaxY(), HAIR, Ink.GREY);
        double before = Double.NEGATIVE_INFINITY;
        for (double value : axis.ticks()) {
            double x = axis.along(value, area);
            String label = axis.label(value);
            double half = width(label) / 2;
            line(x, area.getMaxY(), x, area.getMaxY() + 2, HAIR, Ink.GREY);
            if (x - half > before + 4 && x + half <= right) {
                text(label, x - half, area.getMaxY() + 2.5 + SIZE, false, Ink.GREY);
                before = x + half;
            }
        }
        text(name, area.getMaxX() - width(name), area.getMaxY() + 2.5 + 2 * SIZE + 2, false, Ink.BLACK);
    }

    /** How a line across a picture is drawn. */
    static Stroke stroke(LevelLine.Kind kind) {
        return switch (kind) {
            case CENTRE, NAME -> CENTRE;
            case CONTROL_LIMIT -> CONTROL;
            case SPECIFICATION_LIMIT -> SPECIFICATION;
            case TARGET -> TARGET;
        };
    }

    static Ink ink(LevelLine.Kind kind) {
        return kind == LevelLine.Kind.CENTRE ? Ink.GREY : Ink.BLACK;
    }

    static boolean inside(double y, Rectangle2D area) {
        return y >= area.getY() - 0.01 && y <= area.getMaxY() + 0.01;
    }
}
