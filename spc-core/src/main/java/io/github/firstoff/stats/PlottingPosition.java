package io.github.firstoff.stats;

/** Where the i-th of n ordered values stands on a probability plot. */
public enum PlottingPosition {
    /**
     * Medians of uniform order statistics, approximately: 1 − 0.5<sup>1/n</sup>, (i − 0.3175)/(n + 0.365), 0.5<sup>1/n</sup>
     * (Filliben 1975, Technometrics 17, 111–117; NIST/SEMATECH e-Handbook 1.3.3.21).
     */
    FILLIBEN("Filliben (median ranks)") {
        @Override
        double position(int i, int n) {
            double last = Math.pow(0.5, 1.0 / n);
            if (i == n) {
                return last;
            }
            return i == 1 ? 1 - last : (i - 0.3175) / (n + 0.365);
        }
    },
    /** (i − 3/8)/(n + 1/4) (Blom 1958), for normal scores. */
    BLOM("Blom") {
        @Override
        double position(int i, int n) {
            return (i - 0.375) / (n + 0.25);
        }
    },
    /** (i − 0.3)/(n + 0.4) (Benard and Bos-Levenbach 1953), usual for the Weibull distribution. */
    BENARD("Benard") {
        @Override
        double position(int i, int n) {
            return (i - 0.3) / (n + 0.4);
        }
    },
    /** (i − 1/2)/n (Hazen 1914). */
    HAZEN("Hazen") {
        @Override
        double position(int i, int n) {
            return (i - 0.5) / n;
        }
    };

    private final String title;

    PlottingPosition(String title) {
        this.title = title;
    }

    /** The name as a sheet prints it. */
    public String title() {
        return title;
    }

    /**
     * The probability at which value {@code i} of {@code n} stands.
     *
     * @param i from 1 to n
     * @throws IllegalArgumentException if {@code i} is not 1 to {@code n}
     */
    public double of(int i, int n) {
        if (i < 1 || i > n) {
            throw new IllegalArgumentException("position " + i + " of " + n);
        }
        return position(i, n);
    }

    abstract double position(int i, int n);
}
