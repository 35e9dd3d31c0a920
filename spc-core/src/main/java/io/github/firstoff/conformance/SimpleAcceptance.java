package io.github.firstoff.conformance;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Optional;

/** See {@link DecisionRule#simple()}. */
record SimpleAcceptance() implements DecisionRule {

    @Override
    public String name() {
        return "simple";
    }

    @Override
    public String statement() {
        return "simple acceptance: a reading within its limits, or on one, conforms (JCGM 106, 8.2)";
    }

    @Override
    public Verdict decide(Limits limits, BigDecimal value, Unit unit, Optional<BigDecimal> uncertainty) {
        return limits.contains(value, unit) ? Verdict.CONFORMING : Verdict.NONCONFORMING;
    }

    @Override
    public BigDecimal guardBand(Optional<BigDecimal> uncertainty) {
        return BigDecimal.ZERO;
    }
}
