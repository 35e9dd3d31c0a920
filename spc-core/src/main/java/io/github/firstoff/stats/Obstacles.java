package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.Optional;

/** The reasons why values cannot be fitted that several families share. */
final class Obstacles {
    private Obstacles() {}

    /** Too few values, or all of them equal. */
    static Optional<Remark> spread(double[] sorted, int least) {
        if (sorted.length < least) {
            return Optional.of(
                    Remark.of("fit.too-few", "A fit needs at least {0} values, not {1}.", least, sorted.length));
        }
        if (least > 1 && sorted[0] == sorted[sorted.length - 1]) {
            return Optional.of(Remark.of("fit.no-spread", "The values do not spread: nothing can be fitted."));
        }
        return Optional.empty();
    }

    /** As {@link #spread}, and a value at or below 0. */
    static Optional<Remark> positive(double[] sorted, int least, String name) {
        if (sorted.length > 0 && !(sorted[0] > 0)) {
            return Optional.of(Remark.of(
                    "fit.at-bound",
                    "A value at or below the bound 0 is impossible for the {0} distribution.",
                    Remark.word("distribution", name)));
        }
        return spread(sorted, least);
    }

    /** As {@link #spread}, and a value below 0. */
    static Optional<Remark> notNegative(double[] sorted, int least, String name) {
        if (sorted.length > 0 && !(sorted[0] >= 0)) {
            return Optional.of(Remark.of(
                    "fit.below-bound",
                    "A value below the bound 0 is impossible for the {0} distribution.",
                    Remark.word("distribution", name)));
        }
        return spread(sorted, least);
    }

    static double positiveParameter(double value, String name) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException("the " + name + " is finite and above 0, not " + value);
        }
        return value;
    }

    static double finiteParameter(double value, String name) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("the " + name + " is finite, not " + value);
        }
        return value;
    }

    static void count(double[] parameters, DistributionFamily family) {
        if (parameters.length != family.parameterNames().size()) {
            throw new IllegalArgumentException("the " + family.name() + " distribution has the parameters "
                    + family.parameterNames() + ", not " + parameters.length + " of them");
        }
    }

    static double probability(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a probability strictly between 0 and 1, not " + p);
        }
        return p;
    }
}
