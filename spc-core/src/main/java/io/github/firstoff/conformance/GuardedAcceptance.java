package io.github.firstoff.conformance;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Optional;

/** See {@link DecisionRule#guarded()}. */
record GuardedAcceptance() implements DecisionRule {

    @Override
    public String name() {
        return "guarded";
    }

    @Override
    public String statement() {
        return "guarded acceptance: proven inside the limits less the expanded uncertainty of the gauge (ISO 14253-1)";
    }

    @Override
    public Verdict decide(Limits limits, BigDecimal value, Unit unit, Optional<BigDecimal> uncertainty) {
        if (uncertainty.isEmpty()) {
            return Verdict.INCONCLUSIVE;
        }
        BigDecimal guard = uncertainty.get();
        Optional<Limits> proven = limits.narrowedBy(guard);
        if (proven.isPresent() && proven.get().contains(value, unit)) {
            return Verdict.CONFORMING;
        }
        // Widening cannot cross the limits, so the result is always there. A value below a natural bound is impossible
        // rather
        // than nonconforming; intake refuses it, and here it simply does not prove anything.
        Limits possible = limits.narrowedBy(guard.negate()).orElseThrow();
        return possible.contains(value, unit) ? Verdict.INCONCLUSIVE : Verdict.NONCONFORMING;
    }

    @Override
    public BigDecimal guardBand(Optional<BigDecimal> uncertainty) {
        return uncertainty.orElse(BigDecimal.ZERO);
    }
}
