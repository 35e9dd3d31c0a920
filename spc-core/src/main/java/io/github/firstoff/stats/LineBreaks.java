package io.github.firstoff.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Finds where a series that follows a straight line begins to follow another one.
 *
 * <p>Every place that leaves at least {@code least} points on both sides is tried: F = ((R − R₁ − R₂)/2)/((R₁ + R₂)/(n − 4)) compares the
 * residual sum of squares R about one line with those about a line of its own on each side; the greatest of these F is the evidence (Quandt
 * 1960, Journal of the American Statistical Association 55, 324–330; Andrews 1993, Econometrica 61, 821–856). Its probability without a
 * change is found by simulation of normal series on the same places (a Monte Carlo test: Barnard 1963; the statistic depends on neither line nor
 * spread, so the test is exact, and its generator is seeded). Where it is at most {@code level}, the series is cut there, and both parts are looked at in
 * the same way (binary segmentation: Vostrikova 1981, Soviet Mathematics Doklady 24, 55–59). At the end each cut is placed and tested anew between its
 * neighbours, and one that fails is dropped.
 *
 * <p>So a series without a change shows one with probability {@code level}. Assumes independent normal residuals: waves and long memory are
 * taken for changes.
 *
 * @param level the probability of finding a change in a series that has none, between 0.005 and 0.5
 * @param least the fewest points between two changes, at least 4
 */
public record LineBreaks(double level, int least) {
    /** Longer series are refused: the simulation would take minutes. */
    public static final int LONGEST = 200_000;

    private static final int MOST_SIMULATIONS = 999;
    private static final int FEWEST_SIMULATIONS = 199;
    private static final double WORK = 1e7;
    private static final int MOST_ROUNDS = 10;
    private static final long SEED = 20_261;

    /** Checks ranges. */
    public LineBreaks {
        if (!(level >= 0.005 && level <= 0.5) || least < 4) {
            throw new IllegalArgumentException(
                    "a level from 0.005 to 0.5 and at least 4 points, not " + level + " and " + least);
        }
    }

    /** One false change in a hundred straight series; eight points at least between two changes. */
    public static LineBreaks withDefaults() {
        return new LineBreaks(0.01, 8);
    }

    /**
     * A change.
     *
     * @param at the first point (from 0) of the new line
     * @param statistic the greatest F
     * @param significance its probability without a change; never less than one in the simulations made, and a bound from below where it is above the level
     */
    public record Change(int at, double statistic, double significance) {}

    /**
     * The changes of a series, ascending.
     *
     * @param x where each value stands, ascending
     * @param y the values
     * @throws IllegalArgumentException if the arrays differ in length or are longer than {@link #LONGEST}
     */
    public List<Change> find(long[] x, long[] y) {
        if (x.length != y.length || x.length > LONGEST) {
            throw new IllegalArgumentException(x.length + " places for " + y.length + " values, at most " + LONGEST);
        }
        if (y.length < 2 * least) {
            return List.of();
        }
        Series series = new Series(x, flattened(x, y));
        List<Change> found = new ArrayList<>();
        split(series, 0, y.length, found);
        found.sort(java.util.Comparator.comparingInt(Change::at));
        return settled(series, found);
    }

    private void split(Series series, int from, int to, List<Change> found) {
        Optional<Change> change = test(series, from, to);
        if (change.isPresent()) {
            found.add(change.get());
            split(series, from, change.get().at(), found);
            split(series, change.get().at(), to, found);
        }
    }

    /** Places and tests each change anew between its neighbours until nothing moves. */
    private List<Change> settled(Series series, List<Change> found) {
        List<Change> changes = new ArrayList<>(found);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean moved = false;
            for (int i = 0; i < changes.size(); i++) {
                int from = i == 0 ? 0 : changes.get(i - 1).at();
                int to = i + 1 == changes.size()
                        ? series.size()
                        : changes.get(i + 1).at();
                Optional<Change> again = test(series, from, to);
                if (again.isEmpty()) {
                    changes.remove(i--);
                    moved = true;
                } else {
                    moved |= again.get().at() != changes.get(i).at();
                    changes.set(i, again.get());
                }
            }
            if (!moved) {
                break;
            }
        }
        return List.copyOf(changes);
    }

    private Optional<Change> test(Series series, int from, int to) {
        int n = to - from;
        if (n < 2 * least) {
            return Optional.empty();
        }
        Best best = series.best(from, to, least);
        if (!(best.statistic > 0)) {
            return Optional.empty();
        }
        double p = significance(series.places(from, to), best.statistic);
        return p <= level ? Optional.of(new Change(best.at, best.statistic, p)) : Optional.empty();
    }

    /** The share of simulated straight series with at least as great an F, the observed one counted among them. */
    private double significance(long[] x, double observed) {
        int simulations = (int) Math.max(FEWEST_SIMULATIONS, Math.min(MOST_SIMULATIONS, WORK / x.length));
        Random random = new Random(SEED + x.length);
        double[] noise = new double[x.length];
        int reached = 1;
        for (int i = 0; i < simulations; i++) {
            for (int k = 0; k < noise.length; k++) {
                noise[k] = random.nextGaussian();
            }
            if (new Series(x, noise).best(0, x.length, least).statistic >= observed) {
                reached++;
                if (reached > level * (simulations + 1)) {
                    return (double) reached / (simulations + 1);
                }
            }
        }
        return (double) reached / (simulations + 1);
    }

    /** The residuals about the line through all points: nothing cancels then, and F is the same. */
    private static double[] flattened(long[] x, long[] y) {
        LineTally tally = LineTally.EMPTY;
        for (int i = 0; i < y.length; i++) {
            tally = tally.plus(x[i], y[i]);
        }
        double[] flat = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            flat[i] = tally.isDefined() ? y[i] - tally.at(x[i]) : 0;
        }
        return flat;
    }

    private record Best(int at, double statistic) {}

    /** Sums up to each point, from which those between any two follow. */
    private static final class Series {
        private final long[] places;
        private final double[] x;
        private final double[] y;
        private final double[] xx;
        private final double[] xy;
        private final double[] yy;

        Series(long[] places, double[] values) {
            int n = values.length;
            this.places = places;
            x = new double[n + 1];
            y = new double[n + 1];
            xx = new double[n + 1];
            xy = new double[n + 1];
            yy = new double[n + 1];
            double middle = (places[0] + places[n - 1]) / 2.0;
            double scale = Math.max(1, places[n - 1] - middle);
            for (int i = 0; i < n; i++) {
                double at = (places[i] - middle) / scale;
                double value = values[i];
                x[i + 1] = x[i] + at;
                y[i + 1] = y[i] + value;
                xx[i + 1] = xx[i] + at * at;
                xy[i + 1] = xy[i] + at * value;
                yy[i + 1] = yy[i] + value * value;
            }
        }

        int size() {
            return places.length;
        }

        long[] places(int from, int to) {
            return java.util.Arrays.copyOfRange(places, from, to);
        }

        Best best(int from, int to, int least) {
            double all = residual(from, to);
            double greatest = 0;
            int at = from;
            int df = to - from - 4;
            for (int cut = from + least; cut <= to - least; cut++) {
                double parts = residual(from, cut) + residual(cut, to);
                double f = parts > 0 ? (all - parts) / 2 / (parts / df) : all > 0 ? Double.MAX_VALUE : 0;
                if (f > greatest) {
                    greatest = f;
                    at = cut;
                }
            }
            return new Best(at, greatest);
        }

        /** The residual sum of squares about the line through the points from one to before another. */
        private double residual(int from, int to) {
            double n = to - from;
            double sx = x[to] - x[from];
            double sy = y[to] - y[from];
            double sxx = xx[to] - xx[from] - sx * sx / n;
            double sxy = xy[to] - xy[from] - sx * sy / n;
            double syy = yy[to] - yy[from] - sy * sy / n;
            return Math.max(0, sxx > 0 ? syy - sxy * sxy / sxx : syy);
        }
    }
}
