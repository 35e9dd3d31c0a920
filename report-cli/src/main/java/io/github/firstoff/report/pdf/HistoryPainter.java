package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.HistoryFigure;
import io.github.firstoff.report.figure.HistoryFigure.Batch;
import io.github.firstoff.report.figure.LevelLine;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.DoubleStream;

/** Draws batches beside one another on one scale. */
final class HistoryPainter {
    private static final double DOT = 2.1;
    private static final double WIDEST = 16;

    private final Pen pen;
    private final HistoryFigure figure;

    HistoryPainter(Pen pen, HistoryFigure figure) {
        this.pen = pen;
        this.figure = figure;
    }

    void paint(double width, double height) {
        List<Batch> batches = figure.batches();
        Axis axis = Axis.around(
                DoubleStream.concat(
                                batches.stream()
                                        .flatMapToDouble(each -> DoubleStream.of(
                                                each.least(),
                                                each.greatest(),
                                                each.mean() - each.spread(),
                                                each.mean() + each.spread())),
                                figure.lines().stream().mapToDouble(LevelLine::at))
                        .toArray(),
                6);
        double left =
                pen.widest(DoubleStream.of(axis.ticks()).map(tick -> pen.width(axis.label(tick)))) + Pen.TICK_GAP + 2;
        double right =
                pen.widest(figure.lines().stream().mapToDouble(line -> pen.width(pen.label(line)))) + 2 * Pen.TICK_GAP;
        Rectangle2D area = new Rectangle2D.Double(
                left, Pen.TITLE, width - left - Math.max(right, 8), height - Pen.TITLE - Pen.FOOT);
        pen.title(figure.name(), figure.unit(), area);
        pen.rangeAxis(axis, area);
        for (LevelLine line : figure.lines()) {
            double y = axis.place(line.at(), area);
            pen.line(area.getX(), y, area.getMaxX(), y, Pen.stroke(line.kind()), Pen.ink(line.kind()));
            pen.text(pen.label(line), area.getMaxX() + Pen.TICK_GAP, y + Pen.SIZE * Type.CAPITALS / 2, true, Ink.BLACK);
        }
        double step = area.getWidth() / batches.size();
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < batches.size(); i++) {
            double x = area.getX() + (i + 0.5) * step;
            if (i > 0) {
                pen.line(
                        x - step,
                        axis.place(batches.get(i - 1).mean(), area),
                        x,
                        axis.place(batches.get(i).mean(), area),
                        Pen.HAIR,
                        Ink.BLUE);
            }
        }
        for (int i = 0; i < batches.size(); i++) {
            Batch batch = batches.get(i);
            double x = area.getX() + (i + 0.5) * step;
            batch(batch, x, Math.min(WIDEST, step * 0.4), axis, area);
            String label = pen.faces().fit(batch.label());
            double start = x - pen.width(label) / 2;
            if (start > before + 4) {
                pen.text(label, start, area.getMaxY() + 2.5 + Pen.SIZE, false, Ink.BLACK);
                before = start + pen.width(label);
            }
        }
        pen.line(area.getX(), area.getMaxY(), area.getMaxX(), area.getMaxY(), Pen.HAIR, Ink.GREY);
        String name = pen.faces().fit(figure.axis());
        pen.text(name, area.getMaxX() - pen.width(name), area.getMaxY() + 2.5 + 2 * Pen.SIZE + 2, false, Ink.BLACK);
    }

    private void batch(Batch batch, double x, double wide, Axis axis, Rectangle2D area) {
        double top = axis.place(batch.greatest(), area);
        double foot = axis.place(batch.least(), area);
        if (batch.spread() > 0) {
            double high = axis.place(batch.mean() + batch.spread(), area);
            double low = axis.place(batch.mean() - batch.spread(), area);
            pen.graphics().setPaint(Ink.TINT.colour());
            pen.graphics().fill(new Rectangle2D.Double(x - wide / 2, high, wide, low - high));
        }
        pen.line(x, top, x, foot, Pen.CENTRE, Ink.BLACK);
        pen.line(x - wide / 4, top, x + wide / 4, top, Pen.CENTRE, Ink.BLACK);
        pen.line(x - wide / 4, foot, x + wide / 4, foot, Pen.CENTRE, Ink.BLACK);
        double mean = axis.place(batch.mean(), area);
        pen.graphics().setPaint(Ink.BLUE.colour());
        pen.graphics().fill(new Ellipse2D.Double(x - DOT, mean - DOT, 2 * DOT, 2 * DOT));
        if (!batch.out().isEmpty()) {
            String out = pen.faces().fit(batch.out());
            pen.text(out, x + wide / 2 + 2, Math.max(top + Pen.SIZE, area.getY() + Pen.SIZE), true, Ink.RED);
        }
    }
}
