package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.ProbabilityFigure;
import io.github.firstoff.report.figure.ProbabilityFigure.Place;
import io.github.firstoff.words.Labels;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** Draws probability plots: values along, shares upwards on a scale that is stretched towards both ends. */
final class ProbabilityPainter {
    /** A share with its standard normal quantile (to four places; a place in a picture, no figure). */
    private record Share(String label, double score) {}

    private static final List<Share> SHARES = List.of(
            new Share("0.01", -3.7190),
            new Share("0.1", -3.0902),
            new Share("1", -2.3263),
            new Share("5", -1.6449),
            new Share("20", -0.8416),
            new Share("50", 0),
            new Share("80", 0.8416),
            new Share("95", 1.6449),
            new Share("99", 2.3263),
            new Share("99.9", 3.0902),
            new Share("99.99", 3.7190));

    /** Where along the line its name stands, as a share of the lower half. */
    private static final double LOW = 0.55;

    private final Pen pen;
    private final ProbabilityFigure figure;

    ProbabilityPainter(Pen pen, ProbabilityFigure figure) {
        this.pen = pen;
        this.figure = figure;
    }

    void paint(double width, double height) {
        double reach = figure.points().stream()
                        .mapToDouble(point -> Math.abs(point.score()))
                        .max()
                        .orElse(2)
                + 0.25;
        List<Place> fitted = figure.fitted().stream()
                .filter(place -> Math.abs(place.score()) <= reach)
                .toList();
        Axis axis = Axis.around(
                DoubleStream.concat(
                                Stream.concat(figure.points().stream(), fitted.stream())
                                        .mapToDouble(Place::value),
                                figure.lines().stream().mapToDouble(LevelLine::at))
                        .toArray(),
                6);
        List<Share> shares = SHARES.stream()
                .filter(share -> Math.abs(share.score()) <= reach)
                .toList();
        double left = pen.widest(shares.stream().mapToDouble(share -> pen.width(share.label()))) + Pen.TICK_GAP + 3;
        double plotWidth = width - left - 4;
        LabelsAbove labels = new LabelsAbove(pen, figure.lines(), axis, left, plotWidth);
        double top = Pen.TITLE + 5 + labels.height();
        Rectangle2D area = new Rectangle2D.Double(left, top, plotWidth, height - top - Pen.FOOT);
        List<Double> labelled = new ArrayList<>();
        for (Share share : byImportance(shares)) {
            double y = up(share.score(), reach, area);
            pen.line(area.getX() - 2, y, area.getX(), y, Pen.HAIR, Ink.GREY);
            pen.line(area.getX(), y, area.getMaxX(), y, Pen.ZONE, Ink.HAIRLINE);
            if (labelled.stream().allMatch(at -> Math.abs(at - y) >= Pen.SIZE)) {
                labelled.add(y);
                pen.text(
                        share.label(),
                        area.getX() - Pen.TICK_GAP - pen.width(share.label()),
                        y + Pen.SIZE * Type.CAPITALS / 2,
                        false,
                        Ink.GREY);
            }
        }
        pen.line(area.getX(), area.getY(), area.getX(), area.getMaxY(), Pen.HAIR, Ink.GREY);
        labels.draw(area);
        plot(fitted, reach, axis, area);
        pen.valueAxis(axis, pen.titleOf(figure.name(), figure.unit()), area, width);
        pen.text(Labels.text("probability-plot.axis"), 0, area.getMaxY() + 2.5 + 2 * Pen.SIZE + 2, false, Ink.BLACK);
        name(fitted, reach, axis, area);
    }

    /** The outermost shares and the middle first, so that these are named where not all have room. */
    private static List<Share> byImportance(List<Share> shares) {
        return shares.stream()
                .sorted(Comparator.comparingDouble(share -> share.score() == 0 ? -10 : -Math.abs(share.score())))
                .toList();
    }

    private void plot(List<Place> fitted, double reach, Axis axis, Rectangle2D area) {
        // A fitted line must not leave the area where a distribution runs off.
        Shape clip = pen.graphics().getClip();
        pen.graphics().clip(area);
        Plots.Lines lines = new Plots.Lines();
        lines.add(path(fitted), new BasicStroke(1f), Ink.BLUE);
        int points = lines.add(path(figure.points()), new BasicStroke(0.4f), Ink.BLACK);
        int count = figure.points().size();
        lines.dots(points, count <= 60 ? 1.5 : count <= 250 ? 1.1 : 0.8, false, false);
        lines.draw(pen.graphics(), axis.low, axis.high, -reach, reach, area);
        pen.graphics().setClip(clip);
    }

    /** The name of the line stands beside its lower part, on the side where no point can be. */
    private void name(List<Place> fitted, double reach, Axis axis, Rectangle2D area) {
        String name = pen.faces().fit(figure.curve());
        fitted.stream()
                .filter(place -> place.score() >= -reach * LOW)
                .findFirst()
                .ifPresent(place -> {
                    double x = axis.along(place.value(), area) + 9;
                    double y = up(place.score(), reach, area) + Pen.SIZE;
                    pen.text(name, Math.min(x, area.getMaxX() - pen.width(name)), y, false, Ink.BLUE);
                });
    }

    private static double up(double score, double reach, Rectangle2D area) {
        return area.getMaxY() - (score + reach) / (2 * reach) * area.getHeight();
    }

    private static double[][] path(List<Place> places) {
        double[][] path = new double[2][places.size()];
        for (int i = 0; i < places.size(); i++) {
            path[0][i] = places.get(i).value();
            path[1][i] = places.get(i).score();
        }
        return path;
    }
}
