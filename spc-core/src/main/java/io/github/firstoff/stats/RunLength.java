package io.github.firstoff.stats;

import java.util.Arrays;
import java.util.function.DoubleSupplier;

/**
 * The distribution of the number of points until the first signal.
 *
 * <p>With S(n) the probability of no signal within n points, the average is Σ S(n) and E(N²) = Σ (2n + 1) S(n), from n = 0. S is
 * computed by carrying the distribution of the state from point to point (Brook and Evans 1972, Biometrika 59, 539–549), until
 * it falls by the same factor at every point; the rest is a geometric series, summed in closed form. Nothing is simulated.
 *
 * <p>Accuracy: the factor is taken over {@link #STRIDE} points once it is steady to 1e-15, which leaves about 1e-15 times the
 * average as relative error, besides what the carrying costs.
 */
public final class RunLength {
    /** The target that stands for a signal in {@link #ofChain}. */
    public static final int SIGNAL = -1;

    /** Points over which the factor is measured. */
    private static final int STRIDE = 64;

    private static final double STEADY = 2e-15;
    private static final int LONGEST = 4_000_000;
    private static final double NEVER = 1e-300;

    private final double average;
    private final double standardDeviation;
    private final double[] survival;
    private final double factor;

    private RunLength(double average, double standardDeviation, double[] survival, double factor) {
        this.average = average;
        this.standardDeviation = standardDeviation;
        this.survival = survival;
        this.factor = factor;
    }

    /**
     * The run length of an absorbing Markov chain that starts in state 0.
     *
     * @param targets for each state and each outcome of a point the state that follows, or {@link #SIGNAL}
     * @param probabilities of the outcomes, the same in every state; they sum to 1
     * @throws IllegalArgumentException if a target does not exist or a probability is below 0
     */
    public static RunLength ofChain(int[][] targets, double[] probabilities) {
        boolean reachable = false;
        for (int[] row : targets) {
            for (int outcome = 0; outcome < row.length; outcome++) {
                if (row[outcome] < SIGNAL || row[outcome] >= targets.length) {
                    throw new IllegalArgumentException("no state " + row[outcome] + " among " + targets.length);
                }
                reachable |= row[outcome] == SIGNAL && probabilities[outcome] > 0;
            }
        }
        for (double p : probabilities) {
            if (!(p >= 0)) {
                throw new IllegalArgumentException("a probability is not below 0, as " + p);
            }
        }
        if (!reachable) {
            return never();
        }
        double[][] mass = {new double[targets.length], new double[targets.length]};
        mass[0][0] = 1;
        return of(new DoubleSupplier() {
            private int now;

            @Override
            public double getAsDouble() {
                double[] from = mass[now];
                now = 1 - now;
                double[] to = mass[now];
                Arrays.fill(to, 0);
                double left = 0;
                for (int state = 0; state < targets.length; state++) {
                    if (from[state] == 0) {
                        continue;
                    }
                    for (int outcome = 0; outcome < probabilities.length; outcome++) {
                        int target = targets[state][outcome];
                        if (target != SIGNAL) {
                            double share = from[state] * probabilities[outcome];
                            to[target] += share;
                            left += share;
                        }
                    }
                }
                return left;
            }
        });
    }

    private static RunLength never() {
        return new RunLength(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, new double[] {1}, 1);
    }

    /** The run length whose probabilities of no signal within 1, 2, 3, … points are supplied one after the other. */
    static RunLength of(DoubleSupplier nextSurvival) {
        double[] s = new double[1024];
        s[0] = 1;
        int n = 0;
        double sum = 1;
        double squares = 1;
        double earlier = 0;
        while (true) {
            n++;
            if (n == s.length) {
                s = Arrays.copyOf(s, 2 * n);
            }
            s[n] = nextSurvival.getAsDouble();
            if (s[n] < NEVER || n == LONGEST) {
                double left = Math.max(0, s[n]);
                return finish(sum + left, squares + (2.0 * n + 1) * left, Arrays.copyOf(s, n + 1), 0);
            }
            if (n % STRIDE == 0) {
                double factor = Math.exp(Math.log(s[n] / s[n - STRIDE]) / STRIDE);
                if (n > 2 * STRIDE && Math.abs(factor - earlier) <= STEADY) {
                    double rest = s[n] / (1 - factor);
                    return finish(
                            sum + rest,
                            squares + (2.0 * n + 1) * rest + 2 * factor / (1 - factor) * rest,
                            Arrays.copyOf(s, n + 1),
                            factor);
                }
                earlier = factor;
            }
            sum += s[n];
            squares += (2.0 * n + 1) * s[n];
        }
    }

    private static RunLength finish(double average, double squares, double[] survival, double factor) {
        return new RunLength(average, Math.sqrt(Math.max(0, squares - average * average)), survival, factor);
    }

    /** The average number of points up to and including the first signal; infinite if there is never one. */
    public double average() {
        return average;
    }

    /** The standard deviation of that number. */
    public double standardDeviation() {
        return standardDeviation;
    }

    /**
     * The probability of a signal within {@code points} points.
     *
     * @throws IllegalArgumentException if {@code points} is below 0
     */
    public double signalWithin(int points) {
        if (points < 0) {
            throw new IllegalArgumentException("a number of points is not below 0, as " + points);
        }
        int last = survival.length - 1;
        double left = points <= last ? survival[points] : survival[last] * Math.pow(factor, points - last);
        return 1 - left;
    }

    @Override
    public String toString() {
        return "run length with average " + average + ", standard deviation " + standardDeviation;
    }
}
