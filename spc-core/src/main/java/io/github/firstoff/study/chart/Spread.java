package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.ExactRatio;
import java.math.BigInteger;
import java.util.Arrays;

/** What one subgroup says of the spread, in steps. */
final class Spread {
    /** Whole numbers below this are exact in a double. */
    private static final double EXACT = 0x1p53;

    private Spread() {}

    static long range(Subgroups data, int group) {
        long least = Long.MAX_VALUE;
        long most = Long.MIN_VALUE;
        for (int m = 0; m < data.size(group); m++) {
            long d = data.deviation(group, m);
            least = Math.min(least, d);
            most = Math.max(most, d);
        }
        return most - least;
    }

    static DeviationTally tally(Subgroups data, int group) {
        long[] members = new long[data.size(group)];
        for (int m = 0; m < members.length; m++) {
            members[m] = data.deviation(group, m);
        }
        return DeviationTally.of(members);
    }

    static double standardDeviation(Subgroups data, int group) {
        return Math.sqrt(variance(data, group));
    }

    /**
     * The variance with n − 1, rounded once; squares of ordinary subgroups are summed in a {@code long}, exact like
     * {@link DeviationTally} and without an object.
     */
    static double variance(Subgroups data, int group) {
        int n = data.size(group);
        long sum = 0;
        long squares = 0;
        long greatest = 0;
        for (int m = 0; m < n; m++) {
            long d = data.deviation(group, m);
            greatest = Math.max(greatest, Math.abs(d));
            sum += d;
            squares += d * d;
        }
        // n Σd² is at most n² times the greatest square; below 2⁵³ the quotient is the only rounding
        double most = (double) n * n * greatest * greatest;
        if (n < 2 || !(most < EXACT)) {
            return tally(data, group).variance();
        }
        return (n * squares - sum * sum) / ((double) n * (n - 1));
    }

    /**
     * The sum of the two middle members, or twice the middle one: twice the median, whole.
     *
     * @param members a place to sort in, at least as long as the subgroup
     */
    static long twiceMedian(Subgroups data, int group, long[] members) {
        int n = data.size(group);
        for (int m = 0; m < n; m++) {
            members[m] = data.deviation(group, m);
        }
        Arrays.sort(members, 0, n);
        return members[(n - 1) / 2] + members[n / 2];
    }

    /** The mean of whole numbers, rounded once. */
    static double mean(long[] values) {
        return ExactRatio.of(DeviationTally.of(values).sum(), BigInteger.valueOf(values.length));
    }

    /** The median of whole numbers: a multiple of one half. */
    static double median(long[] values) {
        long[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + (double) sorted[n / 2]) / 2;
    }
}
