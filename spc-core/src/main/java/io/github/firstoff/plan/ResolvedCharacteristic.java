package io.github.firstoff.plan;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.tolerance.Requirement.Nature;
import io.github.firstoff.tolerance.ToleranceZone;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * A characteristic with the limits that its requirement comes to.
 *
 * @param characteristic what the plan says
 * @param zone what it comes to
 * @param unit the unit of its limits and, unless a reading says otherwise, of its readings
 * @param target where the process aims, if the plan says so, in the unit of the limits
 * @param gauge the gauge that the plan foresees, with its particulars
 * @param decision how its readings are decided
 */
public record ResolvedCharacteristic(
        Characteristic characteristic,
        ToleranceZone zone,
        Unit unit,
        Optional<BigDecimal> target,
        Optional<Gauge> gauge,
        DecisionChoice decision) {

    /** The balloon number. */
    public String number() {
        return characteristic.number();
    }

    /** Which rule decides. */
    public DecisionChoice.RuleChoice rule() {
        return decision.rule();
    }

    /** The limits as the drawing states them, before any bonus. */
    public Limits limits() {
        return zone.stated();
    }

    /** Whether readings are pass or fail. */
    public boolean isAttribute() {
        return characteristic.requirement().nature() == Nature.ATTRIBUTE;
    }

    /** Whether readings get a verdict at all; reference and theoretically exact dimensions do not. */
    public boolean isJudged() {
        return characteristic.requirement().nature() == Nature.MEASURED || isAttribute();
    }
}
