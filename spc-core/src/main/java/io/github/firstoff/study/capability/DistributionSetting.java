package io.github.firstoff.study.capability;

import java.util.Optional;

/**
 * How the distribution behind performance is found.
 *
 * <p>Automatic means: for a characteristic with a natural lower bound, the first of folded normal, Rayleigh, Weibull, gamma and
 * lognormal, in the order of their AICc, that the Anderson–Darling test does not refute; for any other the normal distribution,
 * unless the process is in control, the readings are many enough and fine enough to tell, the test refutes the normal
 * distribution, and a Johnson curve is not refuted.
 *
 * @param fixed the method that a plan fixes; empty for automatic
 * @param significance the p-value below which a family counts as refuted, between 0 and 1
 */
public record DistributionSetting(Optional<CapabilityMethod> fixed, double significance) {
    /** One per cent: a sheet holds many characteristics, and five would refute one normal one in twenty (common practice). */
    public static final double USUAL_SIGNIFICANCE = 0.01;

    /** Checks the significance. */
    public DistributionSetting {
        if (!(significance > 0 && significance < 1)) {
            throw new IllegalArgumentException("a significance lies between 0 and 1, not at " + significance);
        }
    }

    /** The automatic choice. */
    public static DistributionSetting automatic() {
        return new DistributionSetting(Optional.empty(), USUAL_SIGNIFICANCE);
    }

    /** One given method. */
    public static DistributionSetting fixed(CapabilityMethod method) {
        return new DistributionSetting(Optional.of(method), USUAL_SIGNIFICANCE);
    }

    /** The same with another significance. */
    public DistributionSetting withSignificance(double other) {
        return new DistributionSetting(fixed, other);
    }
}
