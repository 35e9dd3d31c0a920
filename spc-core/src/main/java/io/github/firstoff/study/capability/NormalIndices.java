package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.SigmaEstimate;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * The four indices of one estimate of the spread, for a normal distribution.
 *
 * @param both the name of the index of both limits
 * @param low the name of the index of the lower limit
 * @param high the name of the index of the upper limit
 * @param least the name of the lesser of the two
 */
record NormalIndices(String both, String low, String high, String least) {
    private static final NormalIndices CAPABILITY = new NormalIndices("Cp", "CPL", "CPU", "Cpk");
    private static final NormalIndices PERFORMANCE = new NormalIndices("Pp", "PPL", "PPU", "Ppk");
    private static final Remark NO_SPREAD =
            Remark.of("no-index.no-spread", "The readings do not spread: no index exists.");
    static final Remark NO_READINGS = Remark.of("no-index.no-readings", "There are no readings.");
    private static final Remark ONE_READING = Remark.of("no-index.one-reading", "One reading has no spread.");

    /** Cp, CPL, CPU, Cpk, from σ within subgroups in steps. */
    static List<Index> capability(
            DeviationTally tally, Scale scale, Bounds bounds, Optional<SigmaEstimate> within, double level) {
        return CAPABILITY.indices(
                tally,
                scale,
                bounds,
                within,
                Remark.of("no-index.no-estimate", "There is no estimate of the spread within subgroups."),
                level);
    }

    /** Pp, PPL, PPU, Ppk and the expected shares, from s in steps. */
    static Performance performance(
            DeviationTally tally, Scale scale, Bounds bounds, Optional<SigmaEstimate> overall, double level) {
        Remark reason = tally.count() == 0 ? NO_READINGS : ONE_READING;
        List<Index> indices = PERFORMANCE.indices(tally, scale, bounds, overall, reason, level);
        if (overall.isEmpty() || overall.get().sigma() == 0) {
            Performance none = Performance.none(overall.isEmpty() ? reason : NO_SPREAD);
            return new Performance(indices, none.expected(), none.below(), none.above());
        }
        return shares(indices, tally, scale, bounds, overall.get(), level);
    }

    private static Performance shares(
            List<Index> indices, DeviationTally tally, Scale scale, Bounds bounds, SigmaEstimate s, double level) {
        long n = tally.count();
        double df = s.degreesOfFreedom();
        Optional<Double> below =
                bounds.requiredLower().map(limit -> -scale.aboveMean(limit, tally.sum(), n) / s.sigma());
        Optional<Double> above = bounds.upper().map(limit -> scale.aboveMean(limit, tally.sum(), n) / s.sigma());
        // the score of one share is three times the index of that side, and so are the ends of their intervals
        Index low = below.map(score -> oneSide(Outside.BELOW, score, indices.get(1), level))
                .orElseGet(() -> noLower(Outside.BELOW, bounds));
        Index high = above.map(score -> oneSide(Outside.ABOVE, score, indices.get(2), level))
                .orElseGet(() -> noUpper(Outside.ABOVE));
        Index both;
        if (below.isPresent() && above.isPresent()) {
            double score =
                    Scores.ofShare(Distributions.normalAbove(below.get()) + Distributions.normalAbove(above.get()));
            Optional<double[]> ends = Optional.empty();
            if (Double.isFinite(score)) {
                double half = Distributions.normalQuantile((1 + level) / 2)
                        * IndexIntervals.scoreError(below.get(), above.get(), score, n, df);
                ends = Optional.of(new double[] {score - half, score + half});
            }
            both = Outside.expected(Outside.EXPECTED, score, ends, level, "delta");
        } else if (below.isPresent() || above.isPresent()) {
            both = oneSide(Outside.EXPECTED, below.orElseGet(above::orElseThrow), indices.get(3), level);
        } else {
            both = Index.none(Outside.EXPECTED, oneSided(bounds));
        }
        return new Performance(indices, both, low, high);
    }

    private static Index oneSide(String name, double score, Index index, double level) {
        Interval ends = index.interval().orElseThrow();
        return Outside.expected(
                name, score, Optional.of(new double[] {3 * ends.lower(), 3 * ends.upper()}), level, ends.method());
    }

    static Index cpm(
            DeviationTally tally,
            Scale scale,
            Bounds bounds,
            Optional<SigmaEstimate> overall,
            double level,
            boolean isNormal) {
        if (!bounds.isTwoSided()) {
            return Index.none("Cpm", oneSided(bounds));
        }
        if (overall.isEmpty()) {
            return Index.none("Cpm", tally.count() == 0 ? NO_READINGS : ONE_READING);
        }
        double s = overall.get().sigma();
        if (s == 0) {
            return Index.none("Cpm", NO_SPREAD);
        }
        double offTarget = scale.aboveMean(bounds.aim().orElseThrow(), tally.sum(), tally.count());
        double width =
                scale.stepsBetween(bounds.lower().orElseThrow(), bounds.upper().orElseThrow());
        double value = width / (6 * Math.hypot(s, offTarget));
        Index index = Index.of("Cpm", value);
        if (!isNormal) {
            // the index is one of moments and stands for any distribution; its interval does not
            return index;
        }
        double xi = offTarget / s;
        return index.with(IndexIntervals.boyles(value, xi, tally.count(), level))
                .atLeast(IndexIntervals.chiSquaredBound(
                        value, IndexIntervals.boylesDegreesOfFreedom(xi, tally.count()), 1 - level));
    }

    static Remark oneSided(Bounds bounds) {
        if (bounds.naturalLower()) {
            return Remark.of(
                    "no-index.natural-bound", "The lower bound is natural: the requirement has one side only.");
        }
        if (bounds.lower().isEmpty() && bounds.upper().isEmpty()) {
            return Remark.of("no-index.no-limits", "The requirement has no limits.");
        }
        return Remark.of("no-index.one-sided", "The requirement has one side only.");
    }

    static Index noLower(String name, Bounds bounds) {
        return Index.none(
                name,
                bounds.naturalLower()
                        ? oneSided(bounds)
                        : Remark.of("no-index.no-lower-limit", "The requirement has no lower limit."));
    }

    static Index noUpper(String name) {
        return Index.none(name, Remark.of("no-index.no-upper-limit", "The requirement has no upper limit."));
    }

    private List<Index> indices(
            DeviationTally tally,
            Scale scale,
            Bounds bounds,
            Optional<SigmaEstimate> estimate,
            Remark noEstimate,
            double level) {
        if (tally.count() == 0) {
            return none(NO_READINGS);
        }
        if (estimate.isEmpty()) {
            return none(noEstimate);
        }
        SigmaEstimate sigma = estimate.get();
        if (sigma.sigma() == 0) {
            return none(NO_SPREAD);
        }
        long n = tally.count();
        double df = sigma.degreesOfFreedom();
        Optional<BigDecimal> lower = bounds.requiredLower();
        Optional<BigDecimal> upper = bounds.upper();
        Index ratio = bounds.isTwoSided()
                ? ofBoth(scale.stepsBetween(lower.orElseThrow(), upper.orElseThrow()) / (6 * sigma.sigma()), df, level)
                : Index.none(both, oneSided(bounds));
        Index below = lower.map(limit ->
                        ofOne(low, -scale.aboveMean(limit, tally.sum(), n) / (3 * sigma.sigma()), n, df, level))
                .orElseGet(() -> noLower(low, bounds));
        Index above = upper.map(limit ->
                        ofOne(high, scale.aboveMean(limit, tally.sum(), n) / (3 * sigma.sigma()), n, df, level))
                .orElseGet(() -> noUpper(high));
        return List.of(ratio, below, above, lesser(below, above, bounds, n, df, level));
    }

    private Index lesser(Index below, Index above, Bounds bounds, long n, double df, double level) {
        if (below.value().isEmpty() && above.value().isEmpty()) {
            return Index.none(least, oneSided(bounds));
        }
        if (below.value().isEmpty() || above.value().isEmpty()) {
            Index only = below.value().isPresent() ? below : above;
            return new Index(least, only.value(), only.interval(), only.lowerBound(), Remark.none());
        }
        double value = Math.min(below.value().getAsDouble(), above.value().getAsDouble());
        return Index.of(least, value)
                .with(IndexIntervals.bissell(value, (double) n, df, level))
                .atLeast(IndexIntervals.bissellBound(value, (double) n, df, 1 - level));
    }

    private Index ofBoth(double value, double df, double level) {
        return Index.of(both, value)
                .with(IndexIntervals.chiSquared(value, df, level))
                .atLeast(IndexIntervals.chiSquaredBound(value, df, 1 - level));
    }

    private static Index ofOne(String name, double value, long n, double df, double level) {
        return Index.of(name, value)
                .with(IndexIntervals.oneSided(value, (double) n, df, level))
                .atLeast(IndexIntervals.oneSidedBound(value, (double) n, df, 1 - level));
    }

    private List<Index> none(Remark reason) {
        return List.of(
                Index.none(both, reason), Index.none(low, reason), Index.none(high, reason), Index.none(least, reason));
    }
}
