package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;

/**
 * How often a process in control would cry wolf on the location panel.
 *
 * @param average the average number of points until a false signal; infinite if there is never one
 * @param exact whether it counts every test that was chosen and holds for the points plotted; else it counts only some of the
 *     tests, or approximates counts by the normal distribution
 * @param remark what a sheet says of it
 */
public record FalseSignals(double average, boolean exact, Remark remark) {
    /** The same in English. */
    public String sentence() {
        return remark.english();
    }

    static FalseSignals never() {
        return new FalseSignals(
                Double.POSITIVE_INFINITY,
                true,
                Remark.of(
                        "false-signals.none-judges",
                        "None of the tests judges these points: there is never a signal."));
    }

    /** 91.8 or 370. */
    static String figure(double average) {
        return String.format(java.util.Locale.ROOT, average < 100 ? "%.1f" : "%.0f", average);
    }
}
