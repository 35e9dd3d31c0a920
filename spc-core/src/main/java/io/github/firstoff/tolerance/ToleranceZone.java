package io.github.firstoff.tolerance;

import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.Optional;

/** What a requirement comes to on its drawing: the limits, and whether they depend on the part. */
public interface ToleranceZone {

    /**
     * The limits as the drawing states them, before any bonus. Without either bound for attributes and informative
     * dimensions.
     */
    Limits stated();

    /** The nominal size in the unit of the limits, where the requirement has one. */
    Optional<BigDecimal> nominal();

    /** Whether every part is held to {@link #stated()}; only such zones go into a capability study. */
    boolean isFixed();

    /** The limits that hold for one part. */
    Allowed allowedFor(PartSizes part);

    /**
     * The limits for one part and why they are what they are.
     *
     * @param limits the limits that judge this part
     * @param bonus what was added to the stated tolerance, where the requirement can earn any: zero with a reason if it earned
     *     none
     */
    record Allowed(Limits limits, Optional<Bonus> bonus) {
        /** Limits without any question of a bonus. */
        public static Allowed of(Limits limits) {
            return new Allowed(limits, Optional.empty());
        }
    }

    /**
     * An addition to a geometric tolerance from the departure of a feature of size.
     *
     * @param amount zero or more, in the unit of the limits
     * @param why in words
     */
    record Bonus(BigDecimal amount, Remark why) {
        /** The same in English. */
        public String reason() {
            return why.english();
        }
    }

    /** A zone that is the same for every part. */
    static ToleranceZone fixed(Limits limits, Optional<BigDecimal> nominal) {
        return new FixedZone(limits, nominal);
    }
}
