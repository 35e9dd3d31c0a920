package io.github.firstoff.stats;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Tests for outliers among whole deviations that are otherwise normal. They report; they remove nothing.
 *
 * <p>Grubbs (one outlier on either side): G = max|x − x̄|/s against ((n − 1)/√n)√(t²/(n − 2 + t²)), t the upper α/(2n) point of Student's
 * distribution with n − 2 degrees of freedom (Grubbs 1969, Technometrics 11, 1–21; NIST/SEMATECH e-Handbook 1.3.5.17.1).
 *
 * <p>Generalised extreme Studentised deviate (up to r outliers): Rᵢ is G of the values left after the i − 1 most extreme were set
 * aside, λᵢ = (n − i)t/√((n − i − 1 + t²)(n − i + 1)), t the upper α/(2(n − i + 1)) point with n − i − 1 degrees of freedom; the
 * number of outliers is the greatest i with Rᵢ &gt; λᵢ (Rosner 1983, Technometrics 25, 165–172; e-Handbook 1.3.5.17.3). λᵢ is
 * accurate for 25 or more values (Rosner).
 */
public final class OutlierTests {
    private OutlierTests() {}

    /**
     * One step of the generalised test; the first is that of Grubbs.
     *
     * @param index which value (from 0) was most extreme
     * @param statistic R
     * @param critical λ
     */
    public record Step(int index, double statistic, double critical) {
        /** Whether R exceeds λ. */
        public boolean exceeds() {
            return statistic > critical;
        }
    }

    /**
     * The outcome of the generalised test.
     *
     * @param steps one step per value set aside, in order
     * @param outliers how many of the first steps are outliers
     * @param significance α
     */
    public record Result(List<Step> steps, int outliers, double significance) {
        /** Copies the steps. */
        public Result {
            steps = List.copyOf(steps);
        }

        /** Which values (from 0) are outliers, the most extreme first. */
        public List<Integer> outlierIndices() {
            return steps.stream().limit(outliers).map(Step::index).toList();
        }
    }

    /** The test of Grubbs; no step for fewer than 3 values or values that do not spread. */
    public static Result grubbs(long[] deviations, double significance) {
        return generalised(deviations, 1, significance);
    }

    /**
     * The generalised test.
     *
     * <p>Ends early where fewer than 3 values are left or those left do not spread.
     *
     * @param most r, the most outliers looked for, at least 1
     * @param significance α, between 0 and 1
     */
    public static Result generalised(long[] deviations, int most, double significance) {
        if (most < 1) {
            throw new IllegalArgumentException("at least one outlier is looked for, not " + most);
        }
        Obstacles.probability(significance);
        int n = deviations.length;
        int[] order = IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.comparingLong(i -> deviations[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        long[] sorted = new long[n];
        for (int i = 0; i < n; i++) {
            sorted[i] = deviations[order[i]];
        }
        List<Step> steps = new ArrayList<>();
        int outliers = 0;
        int from = 0;
        int to = n;
        while (steps.size() < most && to - from >= 3 && sorted[from] != sorted[to - 1]) {
            int left = to - from;
            DeviationTally tally = DeviationTally.of(sorted, from, to);
            double mean = tally.mean();
            double below = mean - sorted[from];
            double above = sorted[to - 1] - mean;
            boolean isAbove = above >= below;
            double statistic = Math.max(above, below) / tally.standardDeviation();
            Step step = new Step(order[isAbove ? to - 1 : from], statistic, critical(left, significance / 2));
            steps.add(step);
            if (step.exceeds()) {
                outliers = steps.size();
            }
            if (isAbove) {
                to--;
            } else {
                from++;
            }
        }
        return new Result(steps, outliers, significance);
    }

    /**
     * The critical value of Grubbs for {@code n} values when one given side is tested at {@code significance}.
     *
     * @throws IllegalArgumentException for fewer than 3 values
     */
    public static double critical(int n, double significance) {
        if (n < 3) {
            throw new IllegalArgumentException("the test needs at least 3 values, not " + n);
        }
        double t = -Distributions.studentTQuantile(significance / n, n - 2);
        return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
    }
}
