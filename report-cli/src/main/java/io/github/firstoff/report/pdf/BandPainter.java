package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.BandFigure;
import io.github.firstoff.report.figure.BandFigure.Panel;
import io.github.firstoff.report.figure.BandFigure.Point;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.Scale;
import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.DoubleStream;

/** Draws bands over a common axis, panel beside panel. */
final class BandPainter {
    private static final double GAP = 12;

    /** Room for half of the last figure on the axis. */
    private static final double MARGIN = 8;

    private final Pen pen;
    private final BandFigure figure;

    BandPainter(Pen pen, BandFigure figure) {
        this.pen = pen;
        this.figure = figure;
    }

    void paint(double width, double height) {
        int count = figure.panels().size();
        double each = (width - GAP * (count - 1)) / count;
        for (int i = 0; i < count; i++) {
            panel(figure.panels().get(i), i * (each + GAP), each, height, i == count - 1);
        }
    }

    private void panel(Panel panel, double x, double width, double height, boolean last) {
        Axis axis = Axis.around(
                DoubleStream.concat(
                                panel.points().stream()
                                        .flatMapToDouble(
                                                point -> DoubleStream.of(point.low(), point.middle(), point.high())),
                                panel.lines().stream().mapToDouble(LevelLine::at))
                        .toArray(),
                5);
        double left =
                pen.widest(DoubleStream.of(axis.ticks()).map(tick -> pen.width(axis.label(tick)))) + Pen.TICK_GAP + 2;
        Rectangle2D area =
                new Rectangle2D.Double(x + left, Pen.TITLE, width - left - MARGIN, height - Pen.TITLE - Pen.FOOT);
        List<Point> points = panel.points();
        double from = points.get(0).at();
        double to = points.get(points.size() - 1).at();
        Axis along = Axis.between(new Scale(from, to), 5);
        Path2D band = new Path2D.Double();
        double[][] low = new double[2][points.size()];
        double[][] middle = new double[2][points.size()];
        double[][] high = new double[2][points.size()];
        for (int i = 0; i < points.size(); i++) {
            Point point = points.get(i);
            low[0][i] = point.at();
            middle[0][i] = point.at();
            high[0][i] = point.at();
            low[1][i] = point.low();
            middle[1][i] = point.middle();
            high[1][i] = point.high();
            double px = along.along(point.at(), area);
            double py = axis.place(point.low(), area);
            if (i == 0) {
                band.moveTo(px, py);
            } else {
                band.lineTo(px, py);
            }
        }
        for (int i = points.size() - 1; i >= 0; i--) {
            band.lineTo(
                    along.along(points.get(i).at(), area),
                    axis.place(points.get(i).high(), area));
        }
        band.closePath();
        pen.graphics().setPaint(Ink.TINT.colour());
        pen.graphics().fill(band);
        Plots.Lines lines = new Plots.Lines();
        lines.add(low, Pen.HAIR, Ink.BLUE);
        lines.add(high, Pen.HAIR, Ink.BLUE);
        lines.add(middle, new BasicStroke(1f), Ink.BLUE);
        lines.draw(pen.graphics(), from, to, axis.low, axis.high, area);
        pen.title(panel.name(), panel.unit(), new Rectangle2D.Double(x, area.getY(), width, area.getHeight()));
        pen.rangeAxis(axis, area);
        for (LevelLine line : panel.lines()) {
            double y = axis.place(line.at(), area);
            pen.line(area.getX(), y, area.getMaxX(), y, Pen.stroke(line.kind()), Pen.ink(line.kind()));
            String label = pen.label(line);
            double baseline = y - 2 < area.getY() + Pen.SIZE ? y + 2 + Pen.SIZE * Type.CAPITALS : y - 2;
            pen.text(label, area.getMaxX() - pen.width(label), baseline, true, Ink.BLACK);
        }
        pen.valueAxis(along, last ? pen.faces().fit(figure.axis()) : "", area, x + width);
    }
}
