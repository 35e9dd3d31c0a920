package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.DriftFigure;
import io.github.firstoff.report.figure.DriftFigure.Continued;
import io.github.firstoff.report.figure.DriftFigure.Point;
import io.github.firstoff.report.figure.DriftFigure.Stretch;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.Scale;
import io.github.firstoff.words.Labels;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** Draws a drift: readings and lines, and the last line dotted on to the limit, with the piece number where it meets. */
final class DriftPainter {
    private static final Stroke LINE = new BasicStroke(1.1f);
    private static final Stroke DOTTED =
            new BasicStroke(0.9f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, new float[] {0.1f, 2.6f}, 0);
    private static final Stroke BOUND = new BasicStroke(2.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);

    /** The continuation is shown for so many times the length that was measured; what lies further is named at the edge. */
    private static final double AHEAD = 2.5;

    private static final int MANY = 400;
    /** Rows of names above the picture. */
    private static final int ROWS = 2;

    private static final int NO_ROW = -1;
    private static final double RING = 3.4;

    private final Pen pen;
    private final DriftFigure figure;

    DriftPainter(Pen pen, DriftFigure figure) {
        this.pen = pen;
        this.figure = figure;
    }

    void paint(double width, double height) {
        Axis axis = Axis.around(values(), 7);
        Scale reach = reach();
        Axis along = Axis.between(reach, 9);
        double left =
                pen.widest(DoubleStream.of(axis.ticks()).map(tick -> pen.width(axis.label(tick)))) + Pen.TICK_GAP + 4;
        double right = pen.widest(figure.lines().stream().mapToDouble(line -> pen.width(pen.label(line)))) + 6;
        List<Integer> rows = rows(along, new Rectangle2D.Double(left, 0, width - left - right, height));
        double top = Pen.TITLE + (1 + Math.max(0, Collections.max(rows))) * Pen.LABEL_STEP + 4;
        Rectangle2D area = new Rectangle2D.Double(left, top, width - left - right, height - top - Pen.FOOT - 4);
        pen.text(pen.titleOf(figure.name(), figure.unit()), area.getX(), Pen.TITLE - 3, true, Ink.BLACK);
        stretches(along, area, rows);
        levels(axis, area);
        Shape clip = pen.graphics().getClip();
        pen.graphics().clip(area);
        plot(axis, along, area);
        pen.graphics().setClip(clip);
        rings(axis, along, area);
        pen.rangeAxis(axis, area);
        pen.valueAxis(along, pen.faces().fit(Labels.text("noun.piece")), area, width);
        figure.continued().ifPresent(continued -> meeting(continued, axis, along, area));
    }

    private double[] values() {
        Stream<Double> lines = figure.stretches().stream()
                .filter(stretch -> Double.isFinite(stretch.start()))
                .flatMap(each -> Stream.of(
                        each.start() - each.band(),
                        each.start() + each.band(),
                        each.end() - each.band(),
                        each.end() + each.band()));
        return DoubleStream.concat(
                        DoubleStream.concat(
                                figure.points().stream().mapToDouble(Point::value),
                                figure.lines().stream().mapToDouble(LevelLine::at)),
                        lines.mapToDouble(Double::doubleValue))
                .toArray();
    }

    /** From before the first piece to some way past the place where the limit is met, if that is near enough to be drawn. */
    private Scale reach() {
        double first = figure.points().get(0).piece();
        double last = figure.points().get(figure.points().size() - 1).piece();
        double length = Math.max(last - first, 1);
        double end = last;
        if (figure.continued().isPresent()) {
            Continued continued = figure.continued().get();
            double far = last + AHEAD * length;
            end = Math.max(last, Math.min(far, continued.piece()));
            double latest = Double.isFinite(continued.high()) ? continued.high() : end * 1.1;
            end = Math.max(end, Math.min(Math.max(end + 0.15 * length, end), latest));
            end = Math.min(Math.max(end, Math.min(latest, far)), far);
        }
        double air = 0.02 * (end - first + 1);
        return new Scale(first - air, end + air + 0.5);
    }

    /**
     * In which of two rows above the picture each stretch is named: in the lower one if the name ends before the next stretch begins, in the
     * upper one if it does not, and nowhere if that is taken; one stretch alone needs no name.
     */
    private List<Integer> rows(Axis along, Rectangle2D area) {
        List<Integer> rows = new ArrayList<>();
        double[] taken = new double[ROWS];
        Arrays.fill(taken, Double.NEGATIVE_INFINITY);
        int count = figure.stretches().size();
        for (int i = 0; i < count; i++) {
            double from = nameAt(i, along, area);
            double to =
                    from + pen.width(pen.faces().fit(figure.stretches().get(i).label()));
            double next = i + 1 < count ? nameAt(i + 1, along, area) - 2 : area.getMaxX();
            int row = to <= next && from > taken[0] + 2 ? 0 : to <= area.getMaxX() && from > taken[1] + 2 ? 1 : NO_ROW;
            if (count > 1 && row != NO_ROW) {
                taken[row] = to;
            }
            rows.add(count > 1 ? row : NO_ROW);
        }
        return rows;
    }

    private double nameAt(int stretch, Axis along, Rectangle2D area) {
        return 2
                + (stretch == 0
                        ? area.getX()
                        : along.along(figure.stretches().get(stretch).from() - 0.5, area));
    }

    private void stretches(Axis along, Rectangle2D area, List<Integer> rows) {
        for (int i = 0; i < figure.stretches().size(); i++) {
            double x = nameAt(i, along, area) - 2;
            int row = rows.get(i);
            if (i > 0) {
                double top = area.getY() - (1 + Math.max(row, 0)) * Pen.LABEL_STEP;
                pen.line(x, top, x, area.getMaxY(), Pen.ZONE, Ink.GREY);
            }
            if (row != NO_ROW) {
                String name = pen.faces().fit(figure.stretches().get(i).label());
                pen.text(name, x + 2, area.getY() - 3 - row * Pen.LABEL_STEP, false, Ink.GREY);
            }
        }
    }

    /** Limits and target across, named at the right end; labels that would touch are pushed apart. */
    private void levels(Axis axis, Rectangle2D area) {
        List<LevelLine> sorted = figure.lines().stream()
                .sorted(Comparator.comparingDouble(LevelLine::at))
                .toList();
        List<Double> baselines = new ArrayList<>();
        double below = Double.POSITIVE_INFINITY;
        for (LevelLine line : sorted) {
            double y = axis.place(line.at(), area);
            pen.line(area.getX(), y, area.getMaxX(), y, Pen.stroke(line.kind()), Pen.ink(line.kind()));
            double baseline = Math.min(y + Pen.SIZE * Type.CAPITALS / 2, below - Pen.LABEL_STEP);
            baselines.add(baseline);
            below = baseline;
        }
        for (int i = 0; i < sorted.size(); i++) {
            boolean heavy = sorted.get(i).kind() == LevelLine.Kind.SPECIFICATION_LIMIT;
            pen.text(pen.label(sorted.get(i)), area.getMaxX() + 4, baselines.get(i), heavy, Ink.BLACK);
        }
    }

    private void plot(Axis axis, Axis along, Rectangle2D area) {
        Plots.Lines lines = new Plots.Lines();
        int points = lines.add(
                path(
                        figure.points().stream().mapToDouble(Point::piece).toArray(),
                        figure.points().stream().mapToDouble(Point::value).toArray()),
                Pen.HAIR,
                Ink.BLUE);
        lines.dots(points, figure.points().size() > MANY ? 0.7 : 1.3, true, false);
        for (Stretch stretch : figure.stretches()) {
            if (!Double.isFinite(stretch.start())) {
                continue;
            }
            double[] ends = {stretch.from(), stretch.to()};
            lines.add(path(ends, new double[] {stretch.start(), stretch.end()}), LINE, Ink.BLACK);
            for (double side : new double[] {-stretch.band(), stretch.band()}) {
                if (side != 0) {
                    lines.add(
                            path(ends, new double[] {stretch.start() + side, stretch.end() + side}),
                            Pen.CONTROL,
                            Ink.BLACK);
                }
            }
        }
        figure.continued().ifPresent(continued -> {
            double end = along.high;
            double rise = continued.slope() * (end - continued.from());
            double[] ends = {continued.from(), end};
            for (double side : new double[] {0, -continued.band(), continued.band()}) {
                lines.add(
                        path(ends, new double[] {continued.start() + side, continued.start() + rise + side}),
                        DOTTED,
                        Ink.BLUE);
            }
        });
        lines.draw(pen.graphics(), along.low, along.high, axis.low, axis.high, area);
    }

    private static double[][] path(double[] x, double[] y) {
        return new double[][] {x, y};
    }

    private void rings(Axis axis, Axis along, Rectangle2D area) {
        for (Point point : figure.points()) {
            if (point.mark().isEmpty()) {
                continue;
            }
            double x = along.along(point.piece(), area);
            double y = axis.place(point.value(), area);
            pen.graphics().setPaint(Ink.RED.colour());
            pen.graphics().setStroke(new BasicStroke(0.8f));
            pen.graphics().draw(new Ellipse2D.Double(x - RING, y - RING, 2 * RING, 2 * RING));
            boolean above = y - RING - 2 - Pen.SIZE > area.getY();
            pen.text(
                    point.mark(),
                    x - pen.width(point.mark()) / 2,
                    above ? y - RING - 1.5 : y + RING + 1.5 + Pen.SIZE * Type.CAPITALS,
                    true,
                    Ink.RED);
        }
    }

    /** The piece number where the limit is met: a drop to the axis, the bounds as a bar on it, and the words. */
    private void meeting(Continued continued, Axis axis, Axis along, Rectangle2D area) {
        String words = pen.faces().fit(continued.words());
        boolean drawn = continued.piece() <= along.high && continued.piece() >= along.low;
        double y = axis.place(continued.limit(), area);
        double low = Math.max(along.low, Math.min(continued.low(), along.high));
        double high = Math.min(along.high, Math.max(continued.high(), along.low));
        if (high > low) {
            pen.line(along.along(low, area), area.getMaxY(), along.along(high, area), area.getMaxY(), BOUND, Ink.BLUE);
        }
        double x = along.along(drawn ? continued.piece() : along.high, area);
        if (drawn) {
            pen.line(x, y, x, area.getMaxY(), Pen.CENTRE, Ink.BLACK);
            pen.graphics().setPaint(Ink.BLACK.colour());
            pen.graphics().fill(new Ellipse2D.Double(x - 2, y - 2, 4, 4));
        }
        double textWidth = pen.width(words);
        // the lines come from the left, so the right of the drop is free wherever there is room
        boolean right = drawn && x + 5 + textWidth <= area.getMaxX();
        double at =
                right ? x + 5 : Math.max(area.getX() + 2, Math.min(x - textWidth - 5, area.getMaxX() - textWidth - 2));
        boolean deep = area.getMaxY() - y > 3 * Pen.LABEL_STEP;
        double baseline = deep ? (y + area.getMaxY()) / 2 : y - 1.5 * Pen.LABEL_STEP;
        pen.graphics().setPaint(Ink.WHITE.colour());
        pen.graphics().fill(new Rectangle2D.Double(at - 2, baseline - Pen.SIZE, textWidth + 4, Pen.SIZE + 3));
        pen.text(words, at, baseline, true, Ink.BLACK);
    }
}
