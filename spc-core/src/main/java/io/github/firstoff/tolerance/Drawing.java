package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** What the rest of the drawing says that one requirement may need to know. Supplied by the plan. */
public interface Drawing {

    /** The unit of lengths on this drawing. */
    Unit unit();

    /** The general tolerance in the title block, for sizes printed without one. */
    Optional<GeneralTolerance> generalTolerance();

    /** Whether the characteristic is a hole or a shaft, where the plan says so. */
    Optional<Form> form();

    /** The feature of size whose actual size gives a geometric tolerance its bonus, where the plan names one. */
    Optional<SizeFeature> sizeFeature();

    /**
     * The length of the shorter leg of an angle printed without a tolerance, in the drawing's unit of length, where the plan
     * states it: ISO 2768-1, Table 3 is entered with it.
     */
    default Optional<BigDecimal> shorterLeg() {
        return Optional.empty();
    }

    /** Whether a feature of size is internal or external. */
    enum Form {
        /** Internal: maximum material is the least size. */
        HOLE,
        /** External: maximum material is the greatest size. */
        SHAFT
    }

    /**
     * A feature of size elsewhere in the plan.
     *
     * @param number its characteristic number
     * @param limits its limits of size
     * @param form hole or shaft
     */
    record SizeFeature(String number, Limits limits, Form form) {}
}
