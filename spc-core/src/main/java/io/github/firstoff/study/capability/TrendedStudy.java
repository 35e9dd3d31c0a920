package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.LineTally;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Capability and performance of a process with a trend, such as tool wear: the time-dependent distribution model C3 of ISO 22514-2,
 * location changing systematically, spread constant (the letter from memory).
 *
 * <p>Each tool life has its own straight line by least squares; s, the root of the pooled mean square about the lines with N − 2k
 * degrees of freedom, is the spread within the trend. With it
 *
 * <ul>
 *   <li><em>potential</em>: Cp = (U − L)/(6s), Cpk from the mean of all readings;
 *   <li><em>whole life</em>: the readings follow the mixture F(x) = (1/N) Σ Φ((x − ŷᵢ)/s) over all fitted locations ŷᵢ; Pp and Ppk are
 *       those of its percentiles at 0.135 %, 50 % and 99.865 % (ISO 22514-2), and the expected share outside is 1 − F(U) + F(L);
 *   <li><em>worst moment</em>: the least of (U − ŷᵢ)/(3s) and (ŷᵢ − L)/(3s).
 * </ul>
 *
 * <p>Intervals: chi-squared for the potential Cp, Bissell for its Cpk; noncentral t for the worst moment, cautious because which moment is the
 * worst is guessed from the same readings; for the whole life the delta method over the locations, slopes and spread, whose estimates
 * are independent with variances s²/n, s²/Σ(x − x̄)² and s²/(2ν). The delta method is approximate, and a note says what it held.
 *
 * <p>A segment of fewer than three readings has no line of its own; its readings are left out of the spread and the mixture, and a
 * note says so.
 *
 * @param level the confidence level, between 0 and 1
 */
public record TrendedStudy(double level) {
    private static final double STEP = 1e-5;
    private static final double ROOT_OF_TWO_PI = Math.sqrt(2 * Math.PI);

    /** Measured; the figures stand in docs/methods.md. */
    private static final Remark WHOLE_LIFE = Remark.of(
            "trend.intervals",
            "The intervals of the whole life are approximate: of simulated processes they held"
                    + " 93 to 95 in 100 where 95 were meant.");

    /** Checks the level. */
    public TrendedStudy {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("a confidence level lies between 0 and 1, not at " + level);
        }
    }

    /** Intervals of 95 %. */
    public static TrendedStudy withDefaults() {
        return new TrendedStudy(CapabilityStudy.USUAL_LEVEL);
    }

    /**
     * Analyses readings; never fails for want of data.
     *
     * @param sample all readings, in production order
     * @param bounds limits, in the unit of the readings
     * @param starts the readings (from 0) with which a new tool life begins, ascending; 0 may be left out
     * @throws IllegalArgumentException if a start is out of range or not above the one before
     */
    public TrendedCapability analyse(Sample sample, Bounds bounds, List<Integer> starts) {
        List<Life> lives = lives(sample, starts);
        List<Life> fitted = lives.stream().filter(Life::hasLine).toList();
        long readings = fitted.stream().mapToLong(life -> life.tally.count()).sum();
        int df = Math.toIntExact(readings - 2L * fitted.size());
        double squares = fitted.stream()
                .mapToDouble(life -> life.tally.residualSquares())
                .sum();
        List<Remark> notes = new ArrayList<>();
        long left = sample.size() - readings;
        if (left > 0) {
            notes.add(Remark.of(
                    "trend.left-out",
                    "{0} readings stand in tool lives of fewer than three readings and are left out.",
                    left));
        }
        if (df < 1) {
            return nothing(
                    segments(lives, sample.scale(), 0, 0),
                    notes,
                    Remark.of("no-index.no-line", "There are too few readings for a line."));
        }
        double s = Math.sqrt(squares / df);
        List<TrendedCapability.Segment> segments = segments(lives, sample.scale(), s, df);
        if (s == 0) {
            return nothing(
                    segments,
                    notes,
                    Remark.of(
                            "no-index.no-spread-about-line",
                            "The readings do not spread about the line: no index exists."));
        }
        if (bounds.requiredLower().isEmpty() && bounds.upper().isEmpty()) {
            return nothing(segments, notes, NormalIndices.oneSided(bounds));
        }
        notes.add(WHOLE_LIFE);
        return stated(sample, bounds, fitted, segments, s, df, readings, notes);
    }

    private TrendedCapability stated(
            Sample sample,
            Bounds bounds,
            List<Life> fitted,
            List<TrendedCapability.Segment> segments,
            double s,
            int df,
            long readings,
            List<Remark> notes) {
        Scale scale = sample.scale();
        OptionalDouble lower = steps(scale, bounds.requiredLower());
        OptionalDouble upper = steps(scale, bounds.upper());
        Mixture mixture = new Mixture(fitted, s);
        double mean = mixture.mean();
        Index cp = bounds.isTwoSided()
                ? Index.of("Cp within trend", (upper.getAsDouble() - lower.getAsDouble()) / (6 * s))
                : Index.none("Cp within trend", NormalIndices.oneSided(bounds));
        if (cp.value().isPresent()) {
            double value = cp.value().getAsDouble();
            cp = cp.with(IndexIntervals.chiSquared(value, df, level))
                    .atLeast(IndexIntervals.chiSquaredBound(value, df, 1 - level));
        }
        double nearest = Math.min(
                lower.isPresent() ? mean - lower.getAsDouble() : Double.POSITIVE_INFINITY,
                upper.isPresent() ? upper.getAsDouble() - mean : Double.POSITIVE_INFINITY);
        double cpk = nearest / (3 * s);
        Index potential = Index.of("Cpk within trend", cpk)
                .with(IndexIntervals.bissell(cpk, (double) readings, df, level))
                .atLeast(IndexIntervals.bissellBound(cpk, (double) readings, df, 1 - level));
        Delta delta = new Delta(fitted, s, df, level);
        Index pp = bounds.isTwoSided()
                ? delta.index("Pp whole life", mixture.twoSided(lower.getAsDouble(), upper.getAsDouble()))
                : Index.none("Pp whole life", NormalIndices.oneSided(bounds));
        Index ppk = delta.index("Ppk whole life", mixture.least(lower, upper));
        Index worst = new WorstMoment(fitted, s, df, level).index(lower, upper);
        Index score = delta.index("score", mixture.score(lower, upper));
        Index expected = Outside.expected(
                Outside.EXPECTED,
                score.value().orElseThrow(),
                score.interval().map(i -> new double[] {i.lower(), i.upper()}),
                level,
                "delta");
        return new TrendedCapability(
                segments,
                OptionalDouble.of(scale.length(s)),
                df,
                List.of(cp, potential),
                List.of(pp, ppk),
                worst,
                expected,
                notes);
    }

    private static TrendedCapability nothing(
            List<TrendedCapability.Segment> segments, List<Remark> notes, Remark reason) {
        return new TrendedCapability(
                segments,
                OptionalDouble.empty(),
                0,
                List.of(Index.none("Cp within trend", reason), Index.none("Cpk within trend", reason)),
                List.of(Index.none("Pp whole life", reason), Index.none("Ppk whole life", reason)),
                Index.none("Cpk at the worst moment", reason),
                Index.none(Outside.EXPECTED, reason),
                notes);
    }

    private static OptionalDouble steps(Scale scale, Optional<BigDecimal> limit) {
        return limit.map(value -> OptionalDouble.of(scale.stepsBetween(scale.reference(), value)))
                .orElseGet(OptionalDouble::empty);
    }

    private static List<Life> lives(Sample sample, List<Integer> starts) {
        long[] deviations = sample.deviations();
        List<Life> lives = new ArrayList<>();
        int from = 0;
        for (int start : starts) {
            if (start < from || start > deviations.length || (start == from && start != 0)) {
                throw new IllegalArgumentException("tool lives begin in ascending order within " + deviations.length
                        + " readings, not at " + starts);
            }
            if (start > from) {
                lives.add(new Life(from, start, LineTally.ofSeries(deviations, from, start)));
            }
            from = start;
        }
        if (from < deviations.length) {
            lives.add(new Life(from, deviations.length, LineTally.ofSeries(deviations, from, deviations.length)));
        }
        return lives;
    }

    private List<TrendedCapability.Segment> segments(List<Life> lives, Scale scale, double s, int df) {
        return lives.stream()
                .map(life -> new TrendedCapability.Segment(
                        life.from,
                        life.to,
                        life.hasLine() && df > 0 ? Optional.of(line(life, scale, s, df)) : Optional.empty()))
                .toList();
    }

    private TrendedCapability.Line line(Life life, Scale scale, double s, int df) {
        double slope = life.tally.slope();
        double half = Distributions.studentTQuantile((1 + level) / 2, df) * s / Math.sqrt(life.tally.squaresOfX());
        return new TrendedCapability.Line(
                scale.value(life.tally.at(life.from)),
                scale.value(life.tally.at(life.to - 1L)),
                scale.length(slope),
                new Interval(scale.length(slope - half), scale.length(slope + half), level, "Student t"));
    }

    /** The readings of one tool life. */
    private record Life(int from, int to, LineTally tally) {
        boolean hasLine() {
            return tally.count() >= 3;
        }
    }

    /**
     * The least index at any moment. At one end of one life, where the line has leverage h, the margin over s follows the noncentral
     * t distribution, as for the mean of 1/h readings. The truth is the least over all ends, and which it is must be guessed: the
     * lower bound is the least of all lower bounds, the upper bound the least of all upper bounds, each with its share of the tail
     * (Bonferroni). So the interval holds at least as often as it claims.
     */
    private record WorstMoment(List<Life> lives, double s, int df, double level) {
        Index index(OptionalDouble lower, OptionalDouble upper) {
            double tail = (1 - level) / 2;
            int ends = 2 * lives.size() * ((lower.isPresent() ? 1 : 0) + (upper.isPresent() ? 1 : 0));
            double value = Double.POSITIVE_INFINITY;
            double low = Double.POSITIVE_INFINITY;
            double high = Double.POSITIVE_INFINITY;
            double atLeast = Double.POSITIVE_INFINITY;
            for (Life life : lives) {
                for (int at : new int[] {life.from, life.to - 1}) {
                    double height = life.tally.at(at);
                    double away = at - life.tally.meanX();
                    double n = 1 / (1.0 / life.tally.count() + away * away / life.tally.squaresOfX());
                    for (double margin : new double[] {
                        lower.isPresent() ? height - lower.getAsDouble() : Double.POSITIVE_INFINITY,
                        upper.isPresent() ? upper.getAsDouble() - height : Double.POSITIVE_INFINITY
                    }) {
                        if (Double.isInfinite(margin)) {
                            continue;
                        }
                        double index = margin / (3 * s);
                        value = Math.min(value, index);
                        low = Math.min(low, IndexIntervals.oneSidedBound(index, n, df, tail));
                        high = Math.min(high, IndexIntervals.oneSidedBound(index, n, df, 1 - tail / ends));
                        atLeast = Math.min(atLeast, IndexIntervals.oneSidedBound(index, n, df, 1 - level));
                    }
                }
            }
            return Index.of("Cpk at the worst moment", value)
                    .with(new Interval(low, high, level, "noncentral t"))
                    .atLeast(atLeast);
        }
    }

    /** A function of lines and spread: its value and its derivative by each of their parameters. */
    private static final class Estimate {
        private final double value;
        /** Per life by the height at its middle and by the slope; last by the spread. */
        private final double[] gradient;

        Estimate(double value, double[] gradient) {
            this.value = value;
            this.gradient = gradient;
        }

        /** A function of one or two estimates with its two partial derivatives. */
        static Estimate chain(double value, double byFirst, Estimate first, double bySecond, Estimate second) {
            double[] gradient = new double[first.gradient.length];
            for (int i = 0; i < gradient.length; i++) {
                gradient[i] = byFirst * first.gradient[i] + bySecond * second.gradient[i];
            }
            return new Estimate(value, gradient);
        }
    }

    /** Intervals of functions of lines and spread. */
    private record Delta(List<Life> lives, double s, int df, double level) {
        Index index(String name, Estimate estimate) {
            double value = estimate.value;
            Index index = Index.of(name, value);
            if (!Double.isFinite(value)) {
                return index;
            }
            double variance = 0;
            for (int i = 0; i < estimate.gradient.length; i++) {
                double change = estimate.gradient[i] * error(i, estimate.gradient.length);
                variance += change * change;
            }
            double error = Math.sqrt(variance);
            double half = Distributions.normalQuantile((1 + level) / 2) * error;
            return index.with(new Interval(value - half, value + half, level, "delta"))
                    .atLeast(value - Distributions.normalQuantile(level) * error);
        }

        private double error(int parameter, int parameters) {
            if (parameter == parameters - 1) {
                return s / Math.sqrt(2.0 * df);
            }
            LineTally tally = lives.get(parameter / 2).tally;
            return parameter % 2 == 0 ? s / Math.sqrt((double) tally.count()) : s / Math.sqrt(tally.squaresOfX());
        }
    }

    /** Normal distributions along lines, each reading's location weighing the same. */
    private static final class Mixture {
        /** Longer lives are taken in this many equal slices; the mixture then errs by less than 1e-5 of its spread. */
        private static final int MOST_SLICES = 400;

        private final double[] locations;
        private final double[] weights;
        private final int[] lifeOf;
        private final double[] away;
        private final int parameters;
        private final double s;
        private final double first;
        private final double last;

        Mixture(List<Life> lives, double s) {
            int slices = lives.stream().mapToInt(Mixture::slices).sum();
            double readings =
                    lives.stream().mapToInt(life -> life.to - life.from).sum();
            locations = new double[slices];
            weights = new double[slices];
            lifeOf = new int[slices];
            away = new double[slices];
            parameters = 2 * lives.size() + 1;
            this.s = s;
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            int next = 0;
            for (int i = 0; i < lives.size(); i++) {
                Life life = lives.get(i);
                double middle = life.tally.meanX();
                double height = life.tally.meanY();
                double slope = life.tally.slope();
                double width = (life.to - life.from) / (double) slices(life);
                for (int k = 0; k < slices(life); k++) {
                    double x = life.from + (k + 0.5) * width - 0.5;
                    lifeOf[next] = i;
                    away[next] = x - middle;
                    locations[next] = height + slope * (x - middle);
                    weights[next++] = width / readings;
                }
                double start = height + slope * (life.from - middle);
                double end = height + slope * (life.to - 1 - middle);
                least = Math.min(least, Math.min(start, end));
                most = Math.max(most, Math.max(start, end));
            }
            first = least;
            last = most;
        }

        private static int slices(Life life) {
            return Math.min(MOST_SLICES, life.to - life.from);
        }

        double mean() {
            double sum = 0;
            for (int i = 0; i < locations.length; i++) {
                sum += weights[i] * locations[i];
            }
            return sum;
        }

        private double below(double x) {
            double sum = 0;
            for (int i = 0; i < locations.length; i++) {
                sum += weights[i] * Distributions.normal((x - locations[i]) / s);
            }
            return sum;
        }

        private double above(double x) {
            double sum = 0;
            for (int i = 0; i < locations.length; i++) {
                sum += weights[i] * Distributions.normalAbove((x - locations[i]) / s);
            }
            return sum;
        }

        /** How the share below {@code x} changes with each parameter. */
        private double[] gradientBelow(double x) {
            double[] gradient = new double[parameters];
            for (int i = 0; i < locations.length; i++) {
                double z = (x - locations[i]) / s;
                double density = weights[i] * Math.exp(-z * z / 2) / (ROOT_OF_TWO_PI * s);
                gradient[2 * lifeOf[i]] -= density;
                gradient[2 * lifeOf[i] + 1] -= density * away[i];
                gradient[parameters - 1] -= density * z;
            }
            return gradient;
        }

        Estimate outside(OptionalDouble lower, OptionalDouble upper) {
            double share = 0;
            double[] gradient = new double[parameters];
            if (lower.isPresent()) {
                share += below(lower.getAsDouble());
                addTo(gradient, gradientBelow(lower.getAsDouble()), 1);
            }
            if (upper.isPresent()) {
                share += above(upper.getAsDouble());
                addTo(gradient, gradientBelow(upper.getAsDouble()), -1);
            }
            return new Estimate(share, gradient);
        }

        private static void addTo(double[] sum, double[] term, double factor) {
            for (int i = 0; i < sum.length; i++) {
                sum[i] += factor * term[i];
            }
        }

        /** The standard score of that share. */
        Estimate score(OptionalDouble lower, OptionalDouble upper) {
            Estimate outside = outside(lower, upper);
            double share = outside.value;
            double score = Scores.ofShare(share);
            double slope =
                    (Scores.ofShare(share * (1 + STEP)) - Scores.ofShare(share * (1 - STEP))) / (2 * STEP * share);
            return Estimate.chain(score, slope, outside, 0, outside);
        }

        Estimate low() {
            return percentile(solve(x -> below(x) / PercentileIndices.USUAL_TAIL - 1));
        }

        Estimate middle() {
            return percentile(solve(x -> below(x) / 0.5 - 1));
        }

        Estimate high() {
            double tail = PercentileIndices.USUAL_TAIL;
            return percentile(solve(x -> 1 - above(x) / tail));
        }

        /** A percentile moves against the share below it, the slower the denser the distribution is there. */
        private Estimate percentile(double x) {
            double[] gradient = gradientBelow(x);
            double density = 0;
            for (int i = 0; i < gradient.length - 1; i += 2) {
                density -= gradient[i];
            }
            for (int i = 0; i < gradient.length; i++) {
                gradient[i] /= -density;
            }
            return new Estimate(x, gradient);
        }

        private double solve(org.apache.commons.math3.analysis.UnivariateFunction function) {
            // every percentile asked for lies within 3.1 s of the outermost locations
            return new BrentSolver(1e-13, 1e-11 * s).solve(300, function, first - 4 * s, last + 4 * s);
        }

        /** Tolerance over the width between the outer percentiles. */
        Estimate twoSided(double lower, double upper) {
            Estimate low = low();
            Estimate high = high();
            double width = high.value - low.value;
            double index = (upper - lower) / width;
            return Estimate.chain(index, -index / width, high, index / width, low);
        }

        /** The lesser of the two one-sided indices. */
        Estimate least(OptionalDouble lower, OptionalDouble upper) {
            Estimate middle = middle();
            Optional<Estimate> below = lower.isPresent()
                    ? Optional.of(oneSided(middle.value - lower.getAsDouble(), middle, low(), 1))
                    : Optional.empty();
            Optional<Estimate> above = upper.isPresent()
                    ? Optional.of(oneSided(upper.getAsDouble() - middle.value, middle, high(), -1))
                    : Optional.empty();
            if (below.isEmpty() || above.isEmpty()) {
                return below.or(() -> above).orElseThrow();
            }
            return below.get().value < above.get().value ? below.get() : above.get();
        }

        private static Estimate oneSided(double margin, Estimate middle, Estimate outer, int sign) {
            double half = sign * (middle.value - outer.value);
            double index = margin / half;
            return Estimate.chain(index, sign * (1 - index) / half, middle, sign * index / half, outer);
        }
    }
}
