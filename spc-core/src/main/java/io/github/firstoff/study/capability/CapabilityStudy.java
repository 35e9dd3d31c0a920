package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
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
 * <p>Where {@link DistributionSetting} leads to another distribution than the normal one, Pp, PPL, PPU and Ppk are those of its
 * percentiles at 0.135 %, 50 % and 99.865 % (ISO 22514-2). The indices of the spread within subgroups stay those of the
 * normal distribution and are not {@linkplain Capability#presented presented}.
 *
 * <p>Intervals: chi-squared for Cp and Pp; noncentral t, exact, for CPL, CPU, PPL, PPU and for Cpk and Ppk of one-sided
 * requirements; Bissell for Cpk and Ppk of two-sided ones; Boyles for Cpm. The degrees of freedom are n − 1 for s and the
 * effective ones for σ ({@link SigmaEstimators}). Of percentile indices: the delta method from the information matrix of
 * maximum likelihood, or a parametric bootstrap where there is none.
 *
 * <p>An index of one reading, of no spread or of a missing side has no right to exist and says why. A natural lower bound is no limit
 * that a process could miss: only the upper index exists, and Cpk is that.
 *
 * @param level the confidence level of the intervals, above 0 and below 1
 * @param fewestReadings below this many readings no index is presented, at least 2
 * @param distribution how the distribution behind performance is found
 * @param checks how the readings are looked at
 */
public record CapabilityStudy(
        double level, int fewestReadings, DistributionSetting distribution, DataCheckStudy checks) {
    /** What is said of indices while control is not assessed. */
    public static final Remark NOT_ASSESSED = Remark.of(
            "indices.not-assessed", "Control is not assessed: the indices describe these readings and do not predict.");

    /** What is said of indices of a process out of control. */
    public static final Remark OUT_OF_CONTROL = Remark.of(
            "indices.out-of-control",
            "The process is not in control: the indices describe these readings and do not predict.");

    /** The usual level. */
    public static final double USUAL_LEVEL = 0.95;

    /** Measured; the figures stand in docs/methods.md. */
    private static final Remark WEIBULL_BOUNDS = Remark.of(
            "indices.weibull-bounds",
            "One-sided lower bounds by the Weibull distribution are approximate: of simulated"
                    + " samples of 50 and of 125 readings they held 93 to 94 in 100 where 95 were meant.");

    /**
     * The usual least number of readings. Common practice asks for 100 or more for a process and 50 for a machine; with
     * 25 the interval of Cp reaches from 28 % below to 28 % above it (√(χ²(0.025; 24)/24) = 0.72), and with fewer it says nothing.
     */
    public static final int USUAL_FEWEST = 25;

    /** Checks level and number. */
    public CapabilityStudy {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("a confidence level lies between 0 and 1, not at " + level);
        }
        if (fewestReadings < 2) {
            throw new IllegalArgumentException("no index exists of fewer than 2 readings, so not " + fewestReadings);
        }
    }

    /** Intervals of 95 %, 25 readings, the distribution found automatically. */
    public static CapabilityStudy withDefaults() {
        return new CapabilityStudy(
                USUAL_LEVEL, USUAL_FEWEST, DistributionSetting.automatic(), DataCheckStudy.withDefaults());
    }

    /** The study with another confidence level. */
    public CapabilityStudy withConfidence(double other) {
        return new CapabilityStudy(other, fewestReadings, distribution, checks);
    }

    /** The study with another least number of readings. */
    public CapabilityStudy withFewestReadings(int other) {
        return new CapabilityStudy(level, other, distribution, checks);
    }

    /** The study with another way to find the distribution. */
    public CapabilityStudy with(DistributionSetting other) {
        return new CapabilityStudy(level, fewestReadings, other, checks);
    }

    /** The study with a given distribution. */
    public CapabilityStudy with(CapabilityMethod method) {
        return with(DistributionSetting.fixed(method));
    }

    /** The study with another look at the readings. */
    public CapabilityStudy with(DataCheckStudy other) {
        return new CapabilityStudy(level, fewestReadings, distribution, other);
    }

    /**
     * Analyses readings; never fails for want of data.
     *
     * @param sample all readings, in production order
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
        DataChecks found = checks.check(sample, bounds, within);
        DistributionChoice choice =
                new DistributionChooser(sample, distribution, found.discreteness()).choose(bounds, control);
        Performance performance = choice.method().isNormal()
                ? NormalIndices.performance(tally, scale, bounds, overallSteps, level)
                : Performance.byPercentiles(sample, bounds, choice, level);
        List<Index> indices = new ArrayList<>(NormalIndices.capability(tally, scale, bounds, withinSteps, level));
        indices.addAll(performance.indices());
        indices.add(NormalIndices.cpm(
                tally, scale, bounds, overallSteps, level, choice.method().isNormal()));
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
                this,
                indices,
                Outside.observed(sample, bounds, level).with(performance),
                choice,
                found,
                notes(bounds, control, choice));
    }

    private List<Remark> notes(Bounds bounds, ControlState control, DistributionChoice choice) {
        List<Remark> notes = new ArrayList<>();
        switch (control) {
            case OUT_OF_CONTROL -> notes.add(OUT_OF_CONTROL);
            case NOT_ASSESSED -> notes.add(NOT_ASSESSED);
            case IN_CONTROL -> {}
        }
        if (bounds.naturalLower()) {
            notes.add(Remark.of(
                    "indices.natural-bound",
                    "The lower bound is natural, not a requirement: only the upper index exists."));
        }
        boolean doubtful = choice.chosen()
                .map(candidate -> candidate.isRefuted(distribution.significance()))
                .orElse(false);
        if (!choice.method().isNormal() || choice.fixed() || doubtful) {
            notes.add(choice.why());
        }
        if (choice.method().equals(CapabilityMethod.WEIBULL) && choice.fitted().isPresent()) {
            notes.add(WEIBULL_BOUNDS);
        }
        return notes;
    }
}
