package io.github.firstoff.report.pdf;

/** Keeps labels apart that belong to places close to one another. */
final class Spread {
    private Spread() {}

    /** Moves places, given in ascending order, apart to a least distance, staying between the ends where that is possible. */
    static double[] apart(double[] places, double step, double low, double high) {
        double[] spread = places.clone();
        for (int i = 1; i < spread.length; i++) {
            spread[i] = Math.max(spread[i], spread[i - 1] + step);
        }
        // Where a run was pushed down as a whole, half of the shift is given back upwards.
        for (int end = spread.length - 1; end >= 0; ) {
            int start = end;
            while (start > 0 && spread[start] - spread[start - 1] <= step + 1e-6) {
                start--;
            }
            double shift = 0;
            for (int i = start; i <= end; i++) {
                shift += (spread[i] - places[i]) / (end - start + 1);
            }
            double floor = start > 0 ? spread[start - 1] + step : low;
            shift = Math.min(shift, spread[start] - floor);
            for (int i = start; i <= end && shift > 0; i++) {
                spread[i] -= shift;
            }
            end = start - 1;
        }
        if (spread.length > 0 && spread[spread.length - 1] > high) {
            spread[spread.length - 1] = high;
            for (int i = spread.length - 2; i >= 0; i--) {
                spread[i] = Math.min(spread[i], spread[i + 1] - step);
            }
        }
        return spread;
    }
}
