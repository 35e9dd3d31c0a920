package io.github.firstoff.stats;

/**
 * Each value of a series held against the line through those before it, as a normal score.
 *
 * <p>The recursive residual wᵢ = (yᵢ − ŷᵢ)/√(1 + h) with the line through the points before i of the same stretch (Brown, Durbin and Evans
 * 1975, Journal of the Royal Statistical Society B 37, 149–192) is independent of all before it and has the variance σ². Divided by the root
 * mean square of the m before it, it follows Student's t with m degrees of freedom, and Φ⁻¹(T<sub>m</sub>(·)) makes it a standard normal score
 * (Quesenberry 1991, Journal of Quality Technology 23, 213–224). So the scores of normal residuals about straight lines are independent
 * and standard normal exactly, from the first on, and none changes when more values come.
 *
 * <p>The first two points of a stretch have no line before them and no score, nor has the first that has a line; σ is carried from stretch to
 * stretch.
 */
public final class RecursiveScores {
    /** Beyond this a normal probability is no number any more. */
    private static final double FURTHEST = 38;

    private RecursiveScores() {}

    /**
     * The scores.
     *
     * @param x where each value stands
     * @param y the values
     * @param starts for each value whether a new stretch begins with it
     * @return a score for each value, NaN where there is none
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public static double[] of(long[] x, long[] y, boolean[] starts) {
        if (x.length != y.length || x.length != starts.length) {
            throw new IllegalArgumentException("series of different length");
        }
        double[] scores = new double[y.length];
        long originX = 0;
        long originY = 0;
        double n = 0;
        double meanX = 0;
        double meanY = 0;
        double sxx = 0;
        double sxy = 0;
        double squares = 0;
        int known = 0;
        for (int i = 0; i < y.length; i++) {
            if (i == 0 || starts[i]) {
                originX = x[i];
                originY = y[i];
                n = 0;
                meanX = 0;
                meanY = 0;
                sxx = 0;
                sxy = 0;
            }
            double px = x[i] - originX;
            double py = y[i] - originY;
            scores[i] = Double.NaN;
            if (n >= 2 && sxx > 0) {
                double away = px - meanX;
                double w = (py - meanY - sxy / sxx * away) / Math.sqrt(1 + 1 / n + away * away / sxx);
                if (known > 0 && squares > 0) {
                    scores[i] = score(w / Math.sqrt(squares / known), known);
                }
                squares += w * w;
                known++;
            }
            n++;
            double before = px - meanX;
            meanX += before / n;
            meanY += (py - meanY) / n;
            sxx += before * (px - meanX);
            sxy += before * (py - meanY);
        }
        return scores;
    }

    private static double score(double t, int df) {
        double tail = Distributions.studentT(-Math.abs(t), df);
        double size = tail > 0 ? Math.min(FURTHEST, -Distributions.normalQuantile(tail)) : FURTHEST;
        return Math.copySign(size, t);
    }
}
