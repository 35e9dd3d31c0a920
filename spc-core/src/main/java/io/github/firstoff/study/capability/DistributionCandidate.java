package io.github.firstoff.study.capability;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.stats.FittedDistribution;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One family that was considered, and the evidence.
 *
 * @param method the family
 * @param fitted the fit; empty if there is none
 * @param logLikelihood of the fit, in units of the readings
 * @param aicc Akaike's criterion with the correction for small samples, 2k − 2 ln L + 2k(k + 1)/(n − k − 1) (Hurvich and Tsai 1989,
 *     Biometrika 76, 297–307); smaller is better; empty without a fit, for n at most k + 1, and for families that are not fitted by
 *     maximum likelihood
 * @param andersonDarling A² of the readings, ties spread over the step that made them equal
 * @param p its p-value; empty where none was found
 * @param source where the p-value comes from, or why there is none
 * @param hindrance why there is no fit, a sentence; empty text with one
 */
public record DistributionCandidate(
        CapabilityMethod method,
        Optional<FittedDistribution> fitted,
        OptionalDouble logLikelihood,
        OptionalDouble aicc,
        OptionalDouble andersonDarling,
        OptionalDouble p,
        Remark source,
        Remark hindrance) {
    /** Where the p-value comes from, or why there is none, in English. */
    public String pMethod() {
        return source.english();
    }

    /** Why there is no fit, in English; empty text with one. */
    public String obstacle() {
        return hindrance.english();
    }

    static DistributionCandidate none(CapabilityMethod method, Remark hindrance) {
        return new DistributionCandidate(
                method,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Remark.none(),
                hindrance);
    }

    DistributionCandidate withP(OptionalDouble found, Remark how) {
        return new DistributionCandidate(method, fitted, logLikelihood, aicc, andersonDarling, found, how, hindrance);
    }

    /** Whether the test refutes the family at this significance; false where there is no p-value. */
    public boolean isRefuted(double significance) {
        return p.isPresent() && p.getAsDouble() < significance;
    }
}
