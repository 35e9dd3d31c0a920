package io.github.firstoff.study.chart;

/**
 * How often a process in control would cry wolf on the location panel.
 *
 * @param average the average number of points until a false signal; infinite if there is never one
 * @param exact whether it counts every test that was chosen and holds for the points plotted; else it counts only some of the
 *     tests, or approximates counts by the normal distribution
 * @param sentence what a sheet says of it
 */
public record FalseSignals(double average, boolean exact, String sentence) {
    static FalseSignals never() {
        return new FalseSignals(
                Double.POSITIVE_INFINITY, true, "None of the tests judges these points: there is never a signal.");
    }

    /** 91.8 points, 370 points. */
    static String points(double average) {
        return String.format(java.util.Locale.ROOT, average < 100 ? "%.1f points" : "%.0f points", average);
    }
}
