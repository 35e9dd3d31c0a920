package io.github.firstoff.report.pdf;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;

/**
 * The only class that knows the chart library. It plots lines, dots and bars into an area, and nothing else: axes, names and
 * values are set by hand, because panels must share their axes to the point and labels must not collide.
 */
final class Plots {
    private Plots() {}

    /** Lines, drawn in the order in which they are added; {@code NaN} interrupts a line. */
    static final class Lines {
        private final DefaultXYDataset data = new DefaultXYDataset();
        private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);

        /** A line through places: {@code path[0]} the x, {@code path[1]} the y. */
        int add(double[][] path, Stroke stroke, Ink ink) {
            int series = data.getSeriesCount();
            data.addSeries(series, path);
            renderer.setSeriesStroke(series, stroke);
            renderer.setSeriesPaint(series, ink.colour());
            renderer.setSeriesShapesVisible(series, false);
            return series;
        }

        /** A dot on every place of a line; without the line itself where only the places matter. */
        void dots(int series, double radius, boolean filled, boolean joined) {
            Shape dot = new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius);
            renderer.setSeriesShape(series, dot);
            renderer.setSeriesShapesVisible(series, true);
            renderer.setSeriesShapesFilled(series, filled);
            renderer.setSeriesLinesVisible(series, joined);
        }

        void draw(Graphics2D g, double left, double right, double low, double high, Rectangle2D area) {
            plot(g, data, renderer, new double[] {left, right, low, high}, false, area);
        }

        void drawTurned(Graphics2D g, double left, double right, double low, double high, Rectangle2D area) {
            plot(g, data, renderer, new double[] {left, right, low, high}, true, area);
        }
    }

    /** One bar of a histogram. */
    record Bar(double from, double to, double height) {}

    static void bars(Graphics2D g, List<Bar> bars, Axis axis, double most, boolean turned, Rectangle2D area) {
        XYIntervalSeries series = new XYIntervalSeries("bars");
        for (Bar bar : bars) {
            series.add((bar.from + bar.to) / 2, bar.from, bar.to, bar.height, 0, bar.height);
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
        plot(g, data, renderer, new double[] {axis.low, axis.high, 0, most}, turned, area);
    }

    private static void plot(
            Graphics2D g,
            XYDataset data,
            org.jfree.chart.renderer.xy.XYItemRenderer renderer,
            double[] ends,
            boolean turned,
            Rectangle2D area) {
        XYPlot plot = new XYPlot(data, axis(ends[0], ends[1]), axis(ends[2], ends[3]), renderer);
        plot.setOrientation(turned ? PlotOrientation.HORIZONTAL : PlotOrientation.VERTICAL);
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
        plot.draw(g, area, null, null, null);
    }

    private static NumberAxis axis(double low, double high) {
        NumberAxis axis = new NumberAxis();
        axis.setAutoRangeIncludesZero(false);
        axis.setRange(low, high);
        axis.setTickUnit(new NumberTickUnit(high - low));
        axis.setVisible(false);
        return axis;
    }
}
