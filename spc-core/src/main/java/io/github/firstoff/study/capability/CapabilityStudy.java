package io.github.firstoff.study.capability;

import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Capability (from the spread within subgroups) and performance (from the spread of all readings) against limits.
 *
 * <p>With limits L and U, target T, mean x̄ of all readings: Cp = (U − L)/(6σ), CPL = (x̄ − L)/(3σ), CPU = (U − x̄)/(3σ), Cpk
 * the lesser of these two, with σ the estimate within subgroups; Pp, PPL, PPU, Ppk the same with the standard deviation s of all
 * readings; Cpm = (U − L)/(6√(s² + (x̄ − T)²)) (NIST/SEMATECH e-Handbook 6.1.6; ISO 22514-2; Chan, Cheng and Spiring 1988).
 * Without a stated target T is the middle of the limits.
 *
 * <p>Intervals: chi-squared for Cp and Pp, Bissell for the one-sided indices, Cpk and Ppk, Boyles for Cpm. The degrees of
 * freedom are n − 1 for s and the effective ones for σ ({@link SigmaEstimators}).
 *
 * <p>Assumes a normal distribution. An index of one reading, of no spread or of a missing side has no right to exist and says
 * why. A natural lower bound is no limit that a process could miss: only the upper index exists, and Cpk is that.
 *
 * @param level the confidence level of the intervals, above 0 and below 1
 */
public record CapabilityStudy(double level) {
    /** The usual level. */
    public static final double USUAL_LEVEL = 0.95;

    /** Checks the level. */
    public CapabilityStudy {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("a confidence level lies between 0 and 1, not at " + level);
        }
    }

    /** The study with intervals of 95 %. */
    public static CapabilityStudy withDefaults() {
        return new CapabilityStudy(USUAL_LEVEL);
    }

    /** The study with another confidence level. */
    public CapabilityStudy withConfidence(double other) {
        return new CapabilityStudy(other);
    }

    /**
     * Analyses readings; never fails for want of data.
     *
     * @param sample all readings
     * @param bounds limits and target, in the unit of the readings
     * @param within the standard deviation within subgroups, in the unit of the readings; empty if there is none
     * @param subgroupSize the size of the subgroups behind {@code within}; empty if none or unequal
     * @param control what the control chart of the readings says
     */
    public Capability analyse(
            Sample sample,
            Bounds bounds,
            Optional<SigmaEstimate> within,
            OptionalInt subgroupSize,
            ControlState control) {
        DeviationTally tally = DeviationTally.of(sample.deviations());
        Scale scale = sample.scale();
        int n = sample.size();
        Optional<SigmaEstimate> overallSteps =
                n < 2 ? Optional.empty() : Optional.of(SigmaEstimators.sample(tally.standardDeviation(), n));
        Optional<SigmaEstimate> withinSteps = within.map(s -> s.withSigma(scale.steps(s.sigma())));
        List<Index> indices = new ArrayList<>();
        indices.addAll(
                new Family("Cp", "CPL", "CPU", "Cpk").indices(tally, scale, bounds, withinSteps, NO_WITHIN, level));
        indices.addAll(new Family("Pp", "PPL", "PPU", "Ppk")
                .indices(
                        tally,
                        scale,
                        bounds,
                        overallSteps,
                        n == 0 ? "There are no readings." : "One reading has no spread.",
                        level));
        indices.add(cpm(tally, scale, bounds, overallSteps));
        return new Capability(
                n,
                n == 0 ? Optional.empty() : Optional.of(scale.exactValue(tally.minimum())),
                n == 0 ? Optional.empty() : Optional.of(scale.exactValue(tally.maximum())),
                n == 0 ? OptionalDouble.empty() : OptionalDouble.of(scale.mean(tally.sum(), n)),
                within,
                overallSteps.map(s -> s.withSigma(scale.length(s.sigma()))),
                subgroupSize,
                bounds,
                control,
                level,
                indices,
                notes(bounds, control));
    }

    private static final String NO_WITHIN = "There is no estimate of the spread within subgroups.";
    private static final String NO_SPREAD = "The readings do not spread: no index exists.";

    private static List<String> notes(Bounds bounds, ControlState control) {
        List<String> notes = new ArrayList<>();
        switch (control) {
            case OUT_OF_CONTROL ->
                notes.add("The process is not in control: the indices describe these readings and do not predict.");
            case NOT_ASSESSED ->
                notes.add("Control is not assessed: the indices describe these readings and do not predict.");
            case IN_CONTROL -> {}
        }
        if (bounds.naturalLower()) {
            notes.add("The lower bound is natural, not a requirement: only the upper index exists.");
        }
        return notes;
    }

    private Index cpm(DeviationTally tally, Scale scale, Bounds bounds, Optional<SigmaEstimate> overall) {
        if (!bounds.isTwoSided()) {
            return Index.none("Cpm", oneSided(bounds));
        }
        if (overall.isEmpty()) {
            return Index.none("Cpm", tally.count() == 0 ? "There are no readings." : "One reading has no spread.");
        }
        double s = overall.get().sigma();
        double offTarget = scale.aboveMean(bounds.aim().orElseThrow(), tally.sum(), tally.count());
        double spread = Math.hypot(s, offTarget);
        if (s == 0) {
            return Index.none("Cpm", NO_SPREAD);
        }
        double width =
                scale.stepsBetween(bounds.lower().orElseThrow(), bounds.upper().orElseThrow());
        double value = width / (6 * spread);
        return Index.of("Cpm", value).with(IndexIntervals.boyles(value, offTarget / s, tally.count(), level));
    }

    private static String oneSided(Bounds bounds) {
        if (bounds.naturalLower()) {
            return "The lower bound is natural: the requirement has one side only.";
        }
        if (bounds.lower().isEmpty() && bounds.upper().isEmpty()) {
            return "The requirement has no limits.";
        }
        return "The requirement has one side only.";
    }

    /** The four indices of one estimate of the spread. */
    private record Family(String both, String low, String high, String least) {
        List<Index> indices(
                DeviationTally tally,
                Scale scale,
                Bounds bounds,
                Optional<SigmaEstimate> estimate,
                String noEstimate,
                double level) {
            if (tally.count() == 0) {
                return none("There are no readings.");
            }
            if (estimate.isEmpty()) {
                return none(noEstimate);
            }
            SigmaEstimate sigma = estimate.get();
            if (sigma.sigma() == 0) {
                return none(NO_SPREAD);
            }
            Optional<BigDecimal> lower = bounds.requiredLower();
            Optional<BigDecimal> upper = bounds.upper();
            Index ratio = bounds.isTwoSided()
                    ? Index.of(both, scale.stepsBetween(lower.orElseThrow(), upper.orElseThrow()) / (6 * sigma.sigma()))
                    : Index.none(both, oneSided(bounds));
            Index below = lower.map(limit ->
                            Index.of(low, -scale.aboveMean(limit, tally.sum(), tally.count()) / (3 * sigma.sigma())))
                    .orElseGet(() -> Index.none(
                            low, bounds.naturalLower() ? oneSided(bounds) : "The requirement has no lower limit."));
            Index above = upper.map(limit ->
                            Index.of(high, scale.aboveMean(limit, tally.sum(), tally.count()) / (3 * sigma.sigma())))
                    .orElseGet(() -> Index.none(high, "The requirement has no upper limit."));
            Index lesser = below.value().isEmpty() && above.value().isEmpty()
                    ? Index.none(least, oneSided(bounds))
                    : Index.of(
                            least,
                            Math.min(
                                    below.value().orElse(Double.POSITIVE_INFINITY),
                                    above.value().orElse(Double.POSITIVE_INFINITY)));
            double df = sigma.degreesOfFreedom();
            return List.of(
                    ratio.value().isPresent()
                            ? ratio.with(IndexIntervals.chiSquared(ratio.value().getAsDouble(), df, level))
                            : ratio,
                    bissell(below, tally.count(), df, level),
                    bissell(above, tally.count(), df, level),
                    bissell(lesser, tally.count(), df, level));
        }

        private static Index bissell(Index index, long n, double df, double level) {
            return index.value().isPresent()
                    ? index.with(IndexIntervals.bissell(index.value().getAsDouble(), n, df, level))
                    : index;
        }

        private List<Index> none(String reason) {
            return List.of(
                    Index.none(both, reason),
                    Index.none(low, reason),
                    Index.none(high, reason),
                    Index.none(least, reason));
        }
    }
}
