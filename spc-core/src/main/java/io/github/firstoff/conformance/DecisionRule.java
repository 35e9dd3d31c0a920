package io.github.firstoff.conformance;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Found;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Optional;

/** Maps a value, its limits and its uncertainty to a verdict, in exact decimals. */
public interface DecisionRule {

    /** The rule's word in plans and JSON results. */
    String name();

    /** The rule in one phrase for the foot of a sheet. */
    Remark remark();

    /** The same in English. */
    default String statement() {
        return remark().english();
    }

    /**
     * The verdict on one value.
     *
     * @param limits the limits that hold for this part
     * @param found what was found
     * @param uncertainty the expanded uncertainty in the unit of the limits; empty if none is stated
     */
    Verdict decide(Limits limits, Found found, Optional<BigDecimal> uncertainty);

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
     * Guarded acceptance: conformance is proven where the value lies inside the limits narrowed by the guard band, a value on the
     * narrowed limit included; nonconformance where it lies more than the guard band outside them; between the two nothing is
     * proven. Natural bounds are not narrowed.
     *
     * <p>ISO 14253-1:1998 and 2013 take the expanded uncertainty U (k = 2) as guard band: fraction 1. ISO 14253-1:2017 takes 1.65 u
     * for one limit at 95 %, which is the fraction 0.825 of U at k = 2.
     *
     * @param fraction the guard band as a fraction of U; above 0
     */
    static DecisionRule guarded(BigDecimal fraction) {
        return new GuardedAcceptance(fraction);
    }

    /** Guarded acceptance by the whole expanded uncertainty. */
    static DecisionRule guarded() {
        return guarded(BigDecimal.ONE);
    }
}
