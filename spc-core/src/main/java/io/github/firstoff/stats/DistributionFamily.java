package io.github.firstoff.stats;

import io.github.firstoff.remark.Remark;
import java.util.List;
import java.util.Optional;

/**
 * A family of continuous distributions that can be fitted to values.
 *
 * <p>A new family is one new class of this kind. Families on the positive half line measure from 0: a caller with another natural
 * bound passes distances from it.
 */
public interface DistributionFamily {
    /** The name as a sheet prints it, in lower case unless a person's name. */
    String name();

    /** The name, to be worded in the language of a sheet. */
    default Remark remark() {
        return Remark.word("distribution", name());
    }

    /** The names of the parameters, in their order, for example {@code shape}, {@code scale}. */
    List<String> parameterNames();

    /** How the parameters are estimated, as a sheet prints it. */
    default String estimator() {
        return "maximum likelihood";
    }

    /** Whether no value below 0 is possible. */
    boolean isPositive();

    /**
     * Why the family cannot be fitted to these values; empty if it can.
     *
     * @param sorted the values in ascending order, all finite
     */
    Optional<Remark> obstacle(double[] sorted);

    /**
     * Fits the family; the order of the values does not matter.
     *
     * @param sorted the values in ascending order, for which {@link #obstacle} has nothing to say
     * @throws IllegalArgumentException if there is an obstacle
     */
    FittedDistribution fit(double[] sorted);

    /**
     * The member with given parameters.
     *
     * @throws IllegalArgumentException if they are not as many as {@link #parameterNames} or out of range
     */
    FittedDistribution of(double... parameters);

    /** Refuses values that have an obstacle. */
    default void requireFittable(double[] sorted) {
        obstacle(sorted).ifPresent(reason -> {
            throw new IllegalArgumentException(reason.english());
        });
    }
}
