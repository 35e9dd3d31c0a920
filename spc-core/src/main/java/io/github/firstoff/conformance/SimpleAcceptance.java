package io.github.firstoff.conformance;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Found;
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
    public Remark remark() {
        return Remark.of(
                "decision-rule.simple",
                "simple acceptance: a reading within its limits, or on one, conforms (JCGM 106, 8.2)");
    }

    @Override
    public Verdict decide(Limits limits, Found found, Optional<BigDecimal> uncertainty) {
        return limits.contains(found) ? Verdict.CONFORMING : Verdict.NONCONFORMING;
    }

    @Override
    public BigDecimal guardBand(Optional<BigDecimal> uncertainty) {
        return BigDecimal.ZERO;
    }
}
