package io.github.firstoff.study.capability;

import io.github.firstoff.stats.Distributions;

/** Shares and their normal scores: z is the point above which a standard normal variable lies with that share. */
final class Scores {
    static final double MILLION = 1e6;

    private Scores() {}

    static double ofShare(double share) {
        if (share <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        return share >= 1 ? Double.NEGATIVE_INFINITY : -Distributions.normalQuantile(share);
    }

    static double partsPerMillion(double score) {
        return MILLION * Distributions.normalAbove(score);
    }
}
