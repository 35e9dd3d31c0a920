package io.github.firstoff.report.pdf;

import io.github.firstoff.report.figure.Scale;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/** Ends and round steps of an axis of values. */
final class Axis {
    private static final double AIR = 0.07;

    final double low;
    final double high;
    final double step;
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
    static Axis around(double[] values, int most) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            if (Double.isFinite(value)) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
        if (low > high) {
            return new Axis(0, 1, most);
        }
        double air = high > low ? (high - low) * AIR : Math.max(Math.abs(high) * 0.01, 1e-6);
        double foot = low >= 0 && low - air < 0 ? 0 : low - air;
        return new Axis(foot, high + air, most);
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
