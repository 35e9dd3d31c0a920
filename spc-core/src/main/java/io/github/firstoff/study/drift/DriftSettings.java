package io.github.firstoff.study.drift;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.stats.LineBreaks;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * What is chosen of a study of drift.
 *
 * @param level the confidence level of all intervals, between 0 and 1; a slope counts as shown where it is significant at 1 − level
 * @param sigmas how many standard deviations about the line must stay inside the limit, 0 to 10
 * @param requiredIndex the index that a tool life must keep, above 0
 * @param increment the step of the machine's offset, above 0, in the unit of the readings; empty for {@link #usualIncrement}
 * @param least the fewest readings of a stretch that may carry a forecast of its own
 * @param detection how change points are found
 */
public record DriftSettings(
        double level,
        double sigmas,
        double requiredIndex,
        Optional<BigDecimal> increment,
        int least,
        LineBreaks detection) {
    private static final BigDecimal MILLIMETRES = new BigDecimal("0.001");
    private static final BigDecimal INCHES = new BigDecimal("0.0001");

    /** Checks ranges. */
    public DriftSettings {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("a confidence level lies between 0 and 1, not at " + level);
        }
        if (!(sigmas >= 0 && sigmas <= 10)) {
            throw new IllegalArgumentException("0 to 10 standard deviations are kept from a limit, not " + sigmas);
        }
        if (!(requiredIndex > 0 && requiredIndex <= 10)) {
            throw new IllegalArgumentException("a required index is above 0 and at most 10, not " + requiredIndex);
        }
        if (increment.filter(step -> step.signum() <= 0).isPresent()) {
            throw new IllegalArgumentException(
                    "an increment is above 0, not " + increment.get().toPlainString());
        }
        if (least < 4) {
            throw new IllegalArgumentException("a forecast needs at least 4 readings, not " + least);
        }
    }

    /** 95 %, three standard deviations, index 1.33 (common practice), eight readings. */
    public static DriftSettings withDefaults() {
        return new DriftSettings(0.95, 3, 1.33, Optional.empty(), 8, LineBreaks.withDefaults());
    }

    /** The same with another distance from the limit. */
    public DriftSettings withSigmas(double other) {
        return new DriftSettings(level, other, requiredIndex, increment, least, detection);
    }

    /** The same with another required index. */
    public DriftSettings withRequiredIndex(double other) {
        return new DriftSettings(level, sigmas, other, increment, least, detection);
    }

    /** The same with a stated increment. */
    public DriftSettings withIncrement(BigDecimal step) {
        return new DriftSettings(level, sigmas, requiredIndex, Optional.of(step), least, detection);
    }

    /** The increment: as stated, else that of usual machines: 0.001 mm, 0.0001 inch, otherwise 0.001 of the unit (common practice). */
    BigDecimal incrementFor(Unit unit) {
        return increment.orElse(usualIncrement(unit));
    }

    /** What an offset is rounded to where nothing is stated. */
    public static BigDecimal usualIncrement(Unit unit) {
        return unit == Unit.INCH ? INCHES : MILLIMETRES;
    }
}
