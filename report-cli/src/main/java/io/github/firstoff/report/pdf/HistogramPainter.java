package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.words.Labels;
import java.awt.BasicStroke;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Draws histograms: upright on their own, or turned on their side at the right of a control chart, on its scale. */
final class HistogramPainter {
    /** The name of a curve stands where its flank has fallen to this share of the peak: there is room beside it. */
    private static final double NAMED_AT = 0.3;

    private final Pen pen;
    private final HistogramFigure figure;

    HistogramPainter(Pen pen, HistogramFigure figure) {
        this.pen = pen;
        this.figure = figure;
    }

    /** On its side, on the scale of the panel at its left. */
    void turned(Axis axis, Rectangle2D area) {
        double most = most() * 1.05;
        pen.title(figure.name(), "", area);
        plot(axis, most, true, area);
        pen.line(area.getX(), area.getY(), area.getX(), area.getMaxY(), Pen.HAIR, Ink.GREY);
        for (LevelLine line : figure.lines()) {
            double y = axis.place(line.at(), area);
            if (Pen.inside(y, area)) {
                pen.line(area.getX(), y, area.getMaxX(), y, Pen.stroke(line.kind()), Pen.ink(line.kind()));
            }
        }
        countAxis(most, area, true);
        figure.curve()
                .ifPresent(curve -> flank(curve).ifPresent(point -> {
                    String name = pen.faces().fit(curve.name());
                    double x = area.getX() + point.count() / most * area.getWidth() + 5;
                    double left = Math.min(x, area.getMaxX() - pen.width(name));
                    pen.text(
                            name,
                            left,
                            clearLine(left, axis.place(point.at(), area) - 1, axis, most, area),
                            false,
                            Ink.BLUE);
                }));
    }

    /** The lowest line at or above this one on which a name from {@code left} to the edge meets no bar, curve or limit. */
    private double clearLine(double left, double from, Axis axis, double most, Rectangle2D area) {
        double reach = (left - 2 - area.getX()) / area.getWidth() * most;
        for (double y = from; y > area.getY() + Pen.SIZE; y--) {
            double top = y - Pen.SIZE * Type.CAPITALS - 1.5;
            double foot = y + 2.5;
            boolean bars = figure.bins().stream()
                    .anyMatch(bin -> bin.count() > reach
                            && axis.place(bin.to(), area) < foot
                            && axis.place(bin.from(), area) > top);
            boolean curve = figure.curve().stream()
                    .flatMap(each -> each.points().stream())
                    .anyMatch(point -> point.count() > reach
                            && axis.place(point.at(), area) > top
                            && axis.place(point.at(), area) < foot);
            boolean lines = figure.lines().stream()
                    .mapToDouble(line -> axis.place(line.at(), area))
                    .anyMatch(at -> at > top && at < foot);
            if (!bars && !curve && !lines) {
                return y;
            }
        }
        return from;
    }

    private static Optional<HistogramFigure.CurvePoint> flank(HistogramFigure.Curve curve) {
        double peak = curve.points().stream()
                .mapToDouble(HistogramFigure.CurvePoint::count)
                .max()
                .orElse(0);
        return curve.points().stream()
                .filter(point -> point.count() >= peak * NAMED_AT)
                .max(Comparator.comparingDouble(HistogramFigure.CurvePoint::at));
    }

    void paint(double width, double height) {
        DoubleStream edges = figure.bins().stream().flatMapToDouble(bin -> DoubleStream.of(bin.from(), bin.to()));
        DoubleStream lines = figure.lines().stream().mapToDouble(LevelLine::at);
        Axis axis = figure.scale()
                .map(scale -> Axis.between(scale, 6))
                .orElseGet(() -> Axis.around(DoubleStream.concat(edges, lines).toArray(), 6));
        double most = most() * 1.08;
        double left = pen.width(Long.toString(Math.round(most))) + Pen.TICK_GAP + 4;
        double plotWidth = width - left - 4;
        LabelsAbove labels = new LabelsAbove(pen, figure.lines(), axis, left, plotWidth);
        double top = 5 + labels.height();
        Rectangle2D area = new Rectangle2D.Double(left, top, plotWidth, height - top - Pen.FOOT);
        plot(axis, most, false, area);
        countAxis(most, area, false);
        pen.valueAxis(axis, pen.titleOf(figure.name(), figure.unit()), area, width);
        labels.draw(area);
        figure.curve()
                .ifPresent(curve -> flank(curve).ifPresent(point -> {
                    String name = pen.faces().fit(curve.name());
                    double x = Math.min(axis.along(point.at(), area) + 6, area.getMaxX() - pen.width(name) - 3);
                    double y = area.getMaxY() - point.count() / most * area.getHeight() - 4;
                    pen.text(name, besideLines(name, x, axis, area), y, false, Ink.BLUE);
                }));
    }

    /** Where a name stands that would lie across an upright line: beyond the line if there is room, else where it was. */
    private double besideLines(String name, double x, Axis axis, Rectangle2D area) {
        double width = pen.width(name);
        for (LevelLine line : figure.lines()) {
            double at = axis.along(line.at(), area);
            if (at > x - 2 && at < x + width + 2 && at + 4 + width < area.getMaxX()) {
                return at + 4;
            }
        }
        return x;
    }

    private double most() {
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

    private void plot(Axis axis, double most, boolean turned, Rectangle2D area) {
        List<Plots.Bar> bars = figure.bins().stream()
                .filter(bin -> bin.count() > 0)
                .map(bin -> new Plots.Bar(bin.from(), bin.to(), bin.count()))
                .toList();
        Plots.bars(pen.graphics(), bars, axis, most, turned, area);
        figure.curve().ifPresent(curve -> {
            double[][] path = new double[2][curve.points().size()];
            for (int i = 0; i < curve.points().size(); i++) {
                path[0][i] = curve.points().get(i).at();
                path[1][i] = curve.points().get(i).count();
            }
            Plots.Lines line = new Plots.Lines();
            line.add(path, new BasicStroke(1f), Ink.BLUE);
            if (turned) {
                line.drawTurned(pen.graphics(), axis.low, axis.high, 0, most, area);
            } else {
                line.draw(pen.graphics(), axis.low, axis.high, 0, most, area);
            }
        });
    }

    private void countAxis(double most, Rectangle2D area, boolean turned) {
        double step = Math.max(1, Ticks.step(0, most, turned ? 3 : 5));
        for (double count = 0; count <= most; count += step) {
            String label = Long.toString(Math.round(count));
            double share = count / most;
            if (turned) {
                double x = area.getX() + share * area.getWidth();
                pen.line(x, area.getMaxY(), x, area.getMaxY() + 2, Pen.HAIR, Ink.GREY);
                pen.text(label, x - pen.width(label) / 2, area.getMaxY() + 2.5 + Pen.SIZE, false, Ink.GREY);
            } else {
                double y = area.getMaxY() - share * area.getHeight();
                pen.line(area.getX() - 2, y, area.getX(), y, Pen.HAIR, Ink.GREY);
                double right = area.getX() - Pen.TICK_GAP;
                pen.text(label, right - pen.width(label), y + Pen.SIZE * Type.CAPITALS / 2, false, Ink.GREY);
            }
        }
        double nameLine = area.getMaxY() + 2.5 + 2 * Pen.SIZE + 2;
        String count = Labels.text("histogram.count");
        if (turned) {
            pen.line(area.getX(), area.getMaxY(), area.getMaxX(), area.getMaxY(), Pen.HAIR, Ink.GREY);
            pen.text(count, area.getMaxX() - pen.width(count), nameLine, false, Ink.BLACK);
        } else {
            pen.line(area.getX(), area.getY(), area.getX(), area.getMaxY(), Pen.HAIR, Ink.GREY);
            pen.text(count, 0, nameLine, false, Ink.BLACK);
        }
    }
}
