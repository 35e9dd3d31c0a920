package io.github.firstoff.conformance;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Found;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * See {@link DecisionRule#guarded(BigDecimal)}.
 *
 * @param fraction the guard band as a fraction of the expanded uncertainty
 */
record GuardedAcceptance(BigDecimal fraction) implements DecisionRule {

    @Override
    public String name() {
        return "guarded";
    }

    @Override
    public Remark remark() {
        return Remark.of(
                "decision-rule.guarded",
                "guarded acceptance: proven inside the limits less {0||{1} of }the expanded uncertainty U of the gauge (ISO 14253-1)",
                fraction.compareTo(BigDecimal.ONE) == 0,
                fraction.toPlainString());
    }

    @Override
    public Verdict decide(Limits limits, Found found, Optional<BigDecimal> uncertainty) {
        if (uncertainty.isEmpty()) {
            return Verdict.INCONCLUSIVE;
        }
        BigDecimal guard = guardBand(uncertainty);
        Optional<Limits> proven = limits.narrowedBy(guard);
        if (proven.isPresent() && proven.get().contains(found)) {
            return Verdict.CONFORMING;
        }
        // Widening cannot cross the limits, so the result is always there. A value below a natural bound is impossible
        // rather
        // than nonconforming; intake refuses it, and here it simply does not prove anything.
        Limits possible = limits.narrowedBy(guard.negate()).orElseThrow();
        return possible.contains(found) ? Verdict.INCONCLUSIVE : Verdict.NONCONFORMING;
    }

    @Override
    public BigDecimal guardBand(Optional<BigDecimal> uncertainty) {
        return uncertainty.map(expanded -> expanded.multiply(fraction)).orElse(BigDecimal.ZERO);
    }
}
