package io.github.firstoff.conformance;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Optional;

/** Maps a value, its limits and its uncertainty to a verdict, in exact decimals. */
public interface DecisionRule {

    /** The rule's word in plans and JSON results. */
    String name();

    /** The rule in one phrase for the foot of a sheet. */
    String statement();

    /**
     * The verdict on one value.
     *
     * @param limits the limits that hold for this part
     * @param value the value as read
     * @param unit its unit; of the same kind as the limits'
     * @param uncertainty the expanded uncertainty in the unit of the limits; empty if none is stated
     */
    Verdict decide(Limits limits, BigDecimal value, Unit unit, Optional<BigDecimal> uncertainty);

    /** The guard band that the rule takes off each limit, in the unit of the limits; zero for simple acceptance. */
    BigDecimal guardBand(Optional<BigDecimal> uncertainty);

    /**
     * Simple acceptance: a reading within the limits, the limits included, conforms (JCGM 106:2012, 8.2.1; the uncertainty is
     * taken to be small enough).
     */
    static DecisionRule simple() {
        return new SimpleAcceptance();
    }

    /**
     * Guarded acceptance of ISO 14253-1:1998 and 2013: conformance is proven where the value lies inside the limits narrowed
     * by the expanded uncertainty U, a value on the narrowed limit included; nonconformance where it lies more than U outside
     * them; between the two nothing is proven. Natural bounds are not narrowed.
     */
    static DecisionRule guarded() {
        return new GuardedAcceptance();
    }
}
