package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.stats.AndersonDarling;
import io.github.firstoff.stats.FittedDistribution;
import io.github.firstoff.stats.JohnsonFamily;
import io.github.firstoff.stats.ParametricBootstrap;
import io.github.firstoff.stats.ShapiroWilk;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds the distribution behind performance; the rule is that of {@link DistributionSetting}. */
final class DistributionChooser {
    /** Replicates of a simulated p-value: its own standard error is then at most 0.022, and 0.0045 at 0.01. */
    static final int REPLICATES = 499;

    /** Beyond this many readings a p-value by simulation takes longer than it is worth. */
    static final int MOST_SIMULATED = 1000;

    private final Sample sample;
    private final DistributionSetting setting;
    private final double step;
    private final boolean tooCoarse;

    DistributionChooser(Sample sample, DistributionSetting setting, Optional<DataChecks.Discreteness> discreteness) {
        this.sample = sample;
        this.setting = setting;
        step = sample.scale()
                .length(sample.scale()
                        .stepsBetween(
                                BigDecimal.ZERO,
                                discreteness
                                        .map(DataChecks.Discreteness::step)
                                        .orElse(sample.scale().step())));
        tooCoarse = discreteness.map(DataChecks.Discreteness::isCoarse).orElse(false);
    }

    DistributionChoice choose(Bounds bounds, ControlState control) {
        if (setting.fixed().isPresent()) {
            return fixed(setting.fixed().get(), bounds);
        }
        if (bounds.naturalLower()) {
            return bounded(bounds);
        }
        return unbounded(control);
    }

    private DistributionChoice fixed(CapabilityMethod method, Bounds bounds) {
        BigDecimal origin = origin(method, bounds);
        DistributionCandidate candidate = tested(consider(method, origin));
        Remark reason = Remark.of(
                "distribution-choice.fixed",
                "The plan fixes the {0} distribution.",
                method.family().remark());
        if (candidate.isRefuted(setting.significance())) {
            reason = reason.then(
                    Remark.of("distribution-choice.fixed-refuted", "The readings refute it ({0}).", pText(candidate)));
        }
        return choice(method, origin, true, List.of(candidate), reason);
    }

    private DistributionChoice bounded(Bounds bounds) {
        BigDecimal origin = bounds.lower().orElseThrow();
        List<DistributionCandidate> ranked = new ArrayList<>();
        for (CapabilityMethod method : CapabilityMethod.BOUNDED) {
            ranked.add(consider(method, origin));
        }
        ranked.sort(Comparator.comparingDouble(candidate ->
                candidate.aicc().orElse(candidate.fitted().isPresent() ? Double.MAX_VALUE : Double.POSITIVE_INFINITY)));
        if (ranked.get(0).fitted().isEmpty()) {
            return choice(
                    ranked.get(0).method(),
                    origin,
                    false,
                    ranked,
                    Remark.of("distribution-choice.bound-none", "No family with a natural bound can be fitted.")
                            .then(ranked.get(0).hindrance()));
        }
        for (int i = 0; i < ranked.size() && ranked.get(i).fitted().isPresent(); i++) {
            DistributionCandidate candidate = tested(ranked.get(i));
            ranked.set(i, candidate);
            if (!candidate.isRefuted(setting.significance())) {
                // the chosen one stands first
                ranked.remove(i);
                ranked.add(0, candidate);
                return choice(
                        candidate.method(),
                        origin,
                        false,
                        ranked,
                        Remark.of(
                                "distribution-choice.bound",
                                "The characteristic has a natural bound; of the families with one the {0} distribution fits best by"
                                        + " AICc{1|| of those not refuted} ({2}).",
                                candidate.method().family().remark(),
                                i == 0,
                                pText(candidate)));
            }
        }
        DistributionCandidate best = ranked.get(0);
        return choice(
                best.method(),
                origin,
                false,
                ranked,
                Remark.of(
                        "distribution-choice.bound-refuted",
                        "The characteristic has a natural bound, but every family with one is refuted; the {0} distribution is the"
                                + " best by AICc ({1}). Percentiles and indices are doubtful.",
                        best.method().family().remark(),
                        pText(best)));
    }

    private DistributionChoice unbounded(ControlState control) {
        BigDecimal origin = sample.scale().reference();
        DistributionCandidate normal = tested(consider(CapabilityMethod.NORMAL, origin));
        List<DistributionCandidate> evidence = new ArrayList<>(List.of(normal));
        if (normal.fitted().isEmpty()) {
            return choice(CapabilityMethod.NORMAL, origin, false, evidence, normal.hindrance());
        }
        if (!normal.isRefuted(setting.significance())) {
            Remark reason = normal.p().isPresent()
                    ? Remark.of(
                            "distribution-choice.normal",
                            "The readings do not refute the normal distribution ({0}, level {1}).",
                            pText(normal),
                            Double.toString(setting.significance()))
                    : Remark.of(
                            "distribution-choice.too-few", "The readings are too few to test the normal distribution.");
            return choice(CapabilityMethod.NORMAL, origin, false, evidence, reason);
        }
        if (tooCoarse) {
            return choice(
                    CapabilityMethod.NORMAL,
                    origin,
                    false,
                    evidence,
                    Remark.of(
                            "distribution-choice.too-coarse",
                            "The readings refute the normal distribution ({0}), but they are so coarsely rounded that any"
                                    + " distribution would be; it is kept.",
                            pText(normal)));
        }
        if (control != ControlState.IN_CONTROL) {
            return choice(
                    CapabilityMethod.NORMAL,
                    origin,
                    false,
                    evidence,
                    Remark.of(
                            "distribution-choice.no-control",
                            "The readings refute the normal distribution ({0}), but no distribution can be fitted to a process that"
                                    + " is not known to be in control; it is kept, and the indices are doubtful.",
                            pText(normal)));
        }
        DistributionCandidate johnson = tested(consider(CapabilityMethod.JOHNSON, origin));
        evidence.add(johnson);
        if (johnson.fitted().isEmpty()) {
            return choice(
                    CapabilityMethod.NORMAL,
                    origin,
                    false,
                    evidence,
                    Remark.of(
                                    "distribution-choice.no-other",
                                    "The readings refute the normal distribution ({0}), but no other can be fitted; it is kept, and"
                                            + " the indices are doubtful.",
                                    pText(normal))
                            .then(johnson.hindrance()));
        }
        if (johnson.isRefuted(setting.significance())) {
            return choice(
                    CapabilityMethod.NORMAL,
                    origin,
                    false,
                    evidence,
                    Remark.of(
                            "distribution-choice.both-refuted",
                            "The readings refute the normal distribution ({0}), and a Johnson curve as well ({1}); the normal one is"
                                    + " kept, and the indices are doubtful.",
                            pText(normal),
                            pText(johnson)));
        }
        evidence.add(0, evidence.remove(1));
        return choice(
                CapabilityMethod.JOHNSON,
                origin,
                false,
                evidence,
                Remark.of(
                        "distribution-choice.johnson",
                        "The readings refute the normal distribution ({0}), but not the Johnson curve {1} ({2}).",
                        pText(normal),
                        JohnsonFamily.curve(johnson.fitted().get()).symbol(),
                        pText(johnson)));
    }

    private DistributionChoice choice(
            CapabilityMethod method,
            BigDecimal origin,
            boolean fixed,
            List<DistributionCandidate> evidence,
            Remark reason) {
        Optional<FittedDistribution> fitted = evidence.stream()
                .filter(candidate -> candidate.method().equals(method))
                .findFirst()
                .flatMap(DistributionCandidate::fitted);
        return new DistributionChoice(
                method,
                fitted,
                origin,
                fixed,
                evidence,
                ShapiroWilk.test(untied(DistributionChoice.Distances.sorted(sample, origin), false)),
                reason);
    }

    private BigDecimal origin(CapabilityMethod method, Bounds bounds) {
        if (!method.family().isPositive()) {
            return sample.scale().reference();
        }
        return bounds.naturalLower() ? bounds.lower().orElseThrow() : BigDecimal.ZERO;
    }

    private DistributionCandidate consider(CapabilityMethod method, BigDecimal origin) {
        double[] sorted = DistributionChoice.Distances.sorted(sample, origin);
        if (sorted.length == 0) {
            return DistributionCandidate.none(method, NormalIndices.NO_READINGS);
        }
        Optional<Remark> obstacle = method.family().obstacle(sorted);
        if (obstacle.isPresent()) {
            return DistributionCandidate.none(method, obstacle.get());
        }
        FittedDistribution fitted = method.family().fit(sorted);
        double likelihood = fitted.logLikelihood(sorted);
        int n = sorted.length;
        int k = method.family().parameterNames().size();
        boolean comparable = n > k + 1 && Double.isFinite(likelihood) && !method.equals(CapabilityMethod.JOHNSON);
        double aicc = 2 * k - 2 * likelihood + 2.0 * k * (k + 1) / (n - k - 1);
        return new DistributionCandidate(
                method,
                Optional.of(fitted),
                Double.isFinite(likelihood) ? OptionalDouble.of(likelihood) : OptionalDouble.empty(),
                comparable ? OptionalDouble.of(aicc) : OptionalDouble.empty(),
                OptionalDouble.of(AndersonDarling.forFormula(
                        untied(sorted, method.family().isPositive()), fitted)),
                OptionalDouble.empty(),
                Remark.of("p.not-asked", "not asked for"),
                Remark.none());
    }

    private double[] untied(double[] sorted, boolean positive) {
        return DistributionChoice.Distances.untied(sorted, step, positive);
    }

    /** The candidate with the p-value of its Anderson–Darling statistic. */
    private DistributionCandidate tested(DistributionCandidate candidate) {
        if (candidate.fitted().isEmpty()) {
            return candidate;
        }
        FittedDistribution fitted = candidate.fitted().get();
        double statistic = candidate.andersonDarling().orElseThrow();
        int n = sample.size();
        OptionalDouble published = AndersonDarling.p(statistic, fitted.family(), n);
        if (published.isPresent()) {
            return candidate.withP(published, Remark.of("p.published", "published formula"));
        }
        if (n < AndersonDarling.FEWEST) {
            return candidate.withP(OptionalDouble.empty(), Remark.of("p.too-few", "too few readings for a test"));
        }
        if (n > MOST_SIMULATED) {
            return candidate.withP(
                    OptionalDouble.empty(),
                    Remark.of("p.too-many", "no published formula, and too many readings to simulate"));
        }
        return ParametricBootstrap.run(
                        fitted, n, REPLICATES, List.of((again, values) -> AndersonDarling.forFormula(values, again)))
                .map(result -> candidate.withP(
                        OptionalDouble.of(result.atLeast(0, statistic)),
                        Remark.of("p.bootstrap", "parametric bootstrap, {0} replicates", result.replicates())))
                .orElseGet(() -> candidate.withP(
                        OptionalDouble.empty(), Remark.of("p.no-fits", "the simulation found no fits")));
    }

    private static Remark pText(DistributionCandidate candidate) {
        if (candidate.p().isEmpty()) {
            return Remark.of("p.none", "no p-value: {0}", candidate.source());
        }
        double p = candidate.p().getAsDouble();
        return p < 0.001
                ? Remark.of("p.small", "Anderson–Darling, p below 0.001")
                : Remark.of("p.value", "Anderson–Darling, p {0}", String.format(java.util.Locale.ROOT, "%.3f", p));
    }
}
