package io.github.firstoff.report.pdf;

/** Round steps for axes. */
final class Ticks {
    private Ticks() {}

    /** The smallest of 1, 2, 5 times a power of ten that cuts the range into no more than the given number of steps. */
    static double step(double low, double high, int most) {
        double least = (high - low) / most;
        if (!(least > 0)) {
            return 1;
        }
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double factor : new double[] {1, 2, 5, 10}) {
            if (factor * power >= least * (1 - 1e-9)) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    /** How many decimals print such a step exactly. */
    static int decimals(double step) {
        return Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9));
    }
}
