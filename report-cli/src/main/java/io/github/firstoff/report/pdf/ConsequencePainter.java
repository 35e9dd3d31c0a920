package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.ConsequenceFigure;
import io.github.firstoff.report.figure.ConsequenceFigure.Ladder;
import io.github.firstoff.report.figure.ConsequenceFigure.Place;
import io.github.firstoff.report.figure.Scale;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** Draws a distribution over its scale, and under it a ladder for each consequence, rung under rung. */
final class ConsequencePainter {
    /** Height of one ladder. */
    private static final double LADDER = 19;

    private static final double RUNG = 3.2;
    private static final int MOST_RUNGS = 8;

    private final Pen pen;
    private final ConsequenceFigure figure;

    ConsequencePainter(Pen pen, ConsequenceFigure figure) {
        this.pen = pen;
        this.figure = figure;
    }

    void paint(double width, double height) {
        Axis axis = Axis.between(figure.scale(), 9);
        double left = Math.max(
                        pen.width(title(figure.name(), figure.unit())),
                        pen.widest(figure.ladders().stream()
                                .mapToDouble(ladder -> pen.width(title(ladder.name(), ladder.unit())))))
                + 10;
        double plotWidth = width - left - 6;
        LabelsAbove labels = new LabelsAbove(pen, figure.lines(), axis, left, plotWidth);
        double top = 5 + labels.height();
        double foot = LADDER * (figure.ladders().size() + 1);
        Rectangle2D area = new Rectangle2D.Double(left, top, plotWidth, height - top - foot);
        curve(axis, area);
        for (double mark : figure.marks()) {
            double x = axis.along(mark, area);
            pen.line(x, area.getMaxY() - 5, x, area.getMaxY(), new BasicStroke(0.7f), Ink.BLUE);
        }
        labels.draw(area);
        double y = area.getMaxY();
        pen.line(area.getX(), y, area.getMaxX(), y, Pen.CENTRE, Ink.BLACK);
        name(figure.name(), figure.unit(), left, y, true);
        double before = Double.NEGATIVE_INFINITY;
        for (double tick : axis.ticks()) {
            before = rung(axis.along(tick, area), y, axis.label(tick), before, area, Ink.BLACK);
        }
        for (Ladder ladder : figure.ladders()) {
            y += LADDER;
            ladder(ladder, axis, area, y);
        }
    }

    private void curve(Axis axis, Rectangle2D area) {
        List<Place> places = figure.curve();
        double most = places.stream().mapToDouble(Place::height).max().orElse(0);
        if (most <= 0) {
            return;
        }
        Path2D shape = new Path2D.Double();
        double[][] path = new double[2][places.size()];
        shape.moveTo(axis.along(places.get(0).at(), area), area.getMaxY());
        for (int i = 0; i < places.size(); i++) {
            path[0][i] = places.get(i).at();
            path[1][i] = places.get(i).height();
            shape.lineTo(
                    axis.along(places.get(i).at(), area),
                    area.getMaxY() - places.get(i).height() / (most * 1.05) * area.getHeight());
        }
        shape.lineTo(axis.along(places.get(places.size() - 1).at(), area), area.getMaxY());
        shape.closePath();
        pen.graphics().setPaint(Ink.TINT.colour());
        pen.graphics().fill(shape);
        Plots.Lines lines = new Plots.Lines();
        lines.add(path, new BasicStroke(1f), Ink.BLUE);
        lines.draw(pen.graphics(), axis.low, axis.high, 0, most * 1.05, area);
    }

    private void ladder(Ladder ladder, Axis axis, Rectangle2D area, double y) {
        double from = Math.max(axis.low, ladder.zero());
        name(ladder.name(), ladder.unit(), area.getX(), y, false);
        pen.line(area.getX(), y, area.getMaxX(), y, Pen.HAIR, Ink.HAIRLINE);
        if (from >= axis.high) {
            return;
        }
        double one = ladder.start() + ladder.slope() * (from - ladder.zero());
        double other = ladder.start() + ladder.slope() * (axis.high - ladder.zero());
        pen.line(axis.along(from, area), y, area.getMaxX(), y, Pen.CENTRE, Ink.BLACK);
        Axis values = Axis.between(new Scale(Math.min(one, other), Math.max(one, other)), MOST_RUNGS);
        double[] ticks = values.ticks();
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ticks.length; i++) {
            // A falling ladder has its greatest rung at the left.
            double value = ladder.slope() > 0 ? ticks[i] : ticks[ticks.length - 1 - i];
            double x = axis.along(ladder.zero() + (value - ladder.start()) / ladder.slope(), area);
            before = rung(x, y, values.label(value), before, area, Ink.BLACK);
        }
        double limit = ladder.zero() + (ladder.limit() - ladder.start()) / ladder.slope();
        if (!Double.isNaN(ladder.limit()) && limit >= from && limit <= axis.high) {
            double x = axis.along(limit, area);
            pen.line(x, y - RUNG - 1, x, y + RUNG + 1, new BasicStroke(2f), Ink.RED);
        }
    }

    /** A rung with its figure; the figure is left out where it would touch the one before. */
    private double rung(double x, double y, String label, double before, Rectangle2D area, Ink ink) {
        pen.line(x, y, x, y + RUNG, Pen.CENTRE, ink);
        double half = pen.width(label) / 2;
        double at = Math.max(area.getX(), Math.min(x - half, area.getMaxX() + 5 - 2 * half));
        if (at < before + 4) {
            return before;
        }
        pen.text(label, at, y + RUNG + 1.5 + Pen.SIZE, false, ink);
        return at + 2 * half;
    }

    private void name(String name, String unit, double left, double y, boolean strong) {
        String title = title(name, unit);
        pen.text(title, left - 8 - pen.width(title), y + Pen.SIZE * Type.CAPITALS / 2, strong, Ink.BLACK);
    }

    private String title(String name, String unit) {
        return pen.titleOf(name, unit);
    }
}
