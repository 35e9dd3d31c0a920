package io.github.firstoff.study.capability;

import io.github.firstoff.stats.BoxCoxFamily;
import io.github.firstoff.stats.DistributionFamily;
import io.github.firstoff.stats.FoldedNormalFamily;
import io.github.firstoff.stats.GammaFamily;
import io.github.firstoff.stats.JohnsonFamily;
import io.github.firstoff.stats.LognormalFamily;
import io.github.firstoff.stats.NormalFamily;
import io.github.firstoff.stats.RayleighFamily;
import io.github.firstoff.stats.WeibullFamily;
import java.util.List;
import java.util.Optional;

/**
 * A family of distributions by which performance can be stated, under the word that a plan uses for it.
 *
 * <p>To add one: write its {@link DistributionFamily} and add a line here.
 *
 * @param word the word, for example {@code folded-normal}
 * @param family the family
 */
public record CapabilityMethod(String word, DistributionFamily family) {
    /** Mean and standard deviation. */
    public static final CapabilityMethod NORMAL = new CapabilityMethod("normal", NormalFamily.INSTANCE);
    /** Normal logarithms. */
    public static final CapabilityMethod LOGNORMAL = new CapabilityMethod("lognormal", LognormalFamily.INSTANCE);
    /** Weibull with two parameters. */
    public static final CapabilityMethod WEIBULL = new CapabilityMethod("weibull", WeibullFamily.INSTANCE);
    /** Gamma with two parameters. */
    public static final CapabilityMethod GAMMA = new CapabilityMethod("gamma", GammaFamily.INSTANCE);
    /** The size of normal deviations whose sign is lost. */
    public static final CapabilityMethod FOLDED_NORMAL =
            new CapabilityMethod("folded-normal", FoldedNormalFamily.INSTANCE);
    /** The distance of two-dimensional normal deviations. */
    public static final CapabilityMethod RAYLEIGH = new CapabilityMethod("rayleigh", RayleighFamily.INSTANCE);
    /** A power that is normal. */
    public static final CapabilityMethod BOX_COX = new CapabilityMethod("box-cox", BoxCoxFamily.INSTANCE);
    /** The system of Johnson. */
    public static final CapabilityMethod JOHNSON = new CapabilityMethod("johnson", JohnsonFamily.INSTANCE);

    /** All methods. */
    public static final List<CapabilityMethod> CATALOGUE =
            List.of(NORMAL, LOGNORMAL, WEIBULL, GAMMA, FOLDED_NORMAL, RAYLEIGH, BOX_COX, JOHNSON);

    /** Those tried for a characteristic with a natural lower bound. */
    static final List<CapabilityMethod> BOUNDED = List.of(FOLDED_NORMAL, RAYLEIGH, WEIBULL, GAMMA, LOGNORMAL);

    /** The method of that word, whatever its letter case. */
    public static Optional<CapabilityMethod> named(String word) {
        return CATALOGUE.stream()
                .filter(method -> method.word.equalsIgnoreCase(word))
                .findFirst();
    }

    /** Whether this is the normal distribution. */
    public boolean isNormal() {
        return family == NormalFamily.INSTANCE;
    }
}
