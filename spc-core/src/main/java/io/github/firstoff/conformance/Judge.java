package io.github.firstoff.conformance;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Characteristic.Extent;
import io.github.firstoff.plan.Characteristic.RuleChoice;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.tolerance.ToleranceZone.Allowed;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Holds readings against their requirements.
 *
 * <p>Each verdict is an exact decimal comparison: a reading on a limit conforms whatever its trailing zeros, and a reading in
 * another unit of length is compared after multiplication by the exact factor. What was not measured is never accepted.
 */
public final class Judge {
    private final ResolvedPlan plan;

    private Judge(ResolvedPlan plan) {
        this.plan = plan;
    }

    /** A judge that decides as the plan says. */
    public static Judge of(ResolvedPlan plan) {
        return new Judge(plan);
    }

    /** The rule that a plan's word stands for. */
    public static DecisionRule ruleOf(RuleChoice choice) {
        return switch (choice) {
            case SIMPLE -> DecisionRule.simple();
            case GUARDED -> DecisionRule.guarded();
        };
    }

    /** The verdict on everything that was read. */
    public InspectionResult assess(InspectionRecord record) {
        List<CharacteristicResult> results = new ArrayList<>();
        Verdict worst = Verdict.CONFORMING;
        for (ResolvedCharacteristic characteristic : plan.characteristics()) {
            CharacteristicResult result = assess(characteristic, record.parts());
            results.add(result);
            if (characteristic.isJudged()) {
                worst = worst.worse(result.verdict());
            }
        }
        return new InspectionResult(record, results, SheetVerdict.ofWorst(worst));
    }

    private CharacteristicResult assess(ResolvedCharacteristic characteristic, List<PartRecord> parts) {
        List<Judgement> judgements = new ArrayList<>();
        List<String> without = new ArrayList<>();
        for (PartRecord part : parts) {
            List<Reading> readings = part.of(characteristic.number());
            if (readings.isEmpty()) {
                without.add(part.serial());
            }
            for (Reading reading : readings) {
                judgements.add(judge(characteristic, part, reading));
            }
        }
        boolean sampled = characteristic.characteristic().options().extent() == Extent.SAMPLE;
        List<String> missing = sampled && !judgements.isEmpty() ? List.of() : without;
        boolean incomplete = judgements.isEmpty() || !missing.isEmpty();
        Verdict verdict = incomplete ? Verdict.NOT_MEASURED : Verdict.CONFORMING;
        for (Judgement judgement : judgements) {
            verdict = verdict.worse(judgement.verdict());
        }
        return new CharacteristicResult(characteristic, ruleOf(characteristic.rule()), judgements, missing, verdict);
    }

    /**
     * The verdict on one reading.
     *
     * @throws IllegalArgumentException if the reading is a pass or fail where a value is required, or the other way round:
     *     intake refuses those, so one that arrives here is a programmer's mistake
     */
    public Judgement judge(ResolvedCharacteristic characteristic, PartRecord part, Reading reading) {
        Allowed allowed = characteristic.zone().allowedFor(part);
        Optional<String> gaugeId = reading.context()
                .gauge()
                .or(() -> characteristic.characteristic().gauge());
        if (reading instanceof Reading.Observed observed) {
            if (!characteristic.isAttribute()) {
                throw new IllegalArgumentException(
                        "characteristic " + characteristic.number() + " needs a value, not pass or fail");
            }
            return new Judgement(
                    part.serial(),
                    reading,
                    allowed,
                    observed.pass() ? Verdict.CONFORMING : Verdict.NONCONFORMING,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    gaugeId);
        }
        Reading.Measured measured = (Reading.Measured) reading;
        if (characteristic.isAttribute()) {
            throw new IllegalArgumentException(
                    "characteristic " + characteristic.number() + " needs pass or fail, not a value");
        }
        return judgeValue(characteristic, part, measured, allowed, gaugeId);
    }

    private Judgement judgeValue(
            ResolvedCharacteristic characteristic,
            PartRecord part,
            Reading.Measured measured,
            Allowed allowed,
            Optional<String> gaugeId) {
        Limits limits = allowed.limits();
        Optional<BigDecimal> uncertainty = gaugeUsed(characteristic, measured)
                .flatMap(Gauge::uncertainty)
                .flatMap(stated -> uncertaintyAt(stated, measured, limits.unit()));
        Verdict verdict = ruleOf(characteristic.rule()).decide(limits, measured.value(), measured.unit(), uncertainty);
        return new Judgement(
                part.serial(),
                measured,
                allowed,
                verdict,
                departure(limits, measured),
                inside(limits, measured),
                uncertainty,
                gaugeId);
    }

    /** The gauge that the reading names, else the plan's; an unlisted gauge has no particulars and borrows none. */
    private Optional<Gauge> gaugeUsed(ResolvedCharacteristic characteristic, Reading reading) {
        Optional<String> named = reading.context().gauge();
        return named.isPresent() ? plan.gauge(named.get()) : characteristic.gauge();
    }

    /** The uncertainty in the unit of the limits; empty if the gauge's unit measures something else. */
    private static Optional<BigDecimal> uncertaintyAt(Uncertainty stated, Reading.Measured measured, Unit unit) {
        if (!stated.unit().isComparableWith(unit)) {
            return Optional.empty();
        }
        BigDecimal length = ExactLengths.in(stated.unit(), measured.value(), measured.unit());
        return Optional.of(ExactLengths.in(unit, stated.at(length), stated.unit()));
    }

    private static Optional<BigDecimal> departure(Limits limits, Reading.Measured measured) {
        BigDecimal value = ExactLengths.in(limits.unit(), measured.value(), measured.unit());
        if (limits.isAbove(measured.value(), measured.unit())) {
            return limits.upper().map(value::subtract);
        }
        if (limits.isBelow(measured.value(), measured.unit())) {
            return limits.lower().map(value::subtract);
        }
        return Optional.empty();
    }

    private static Optional<BigDecimal> inside(Limits limits, Reading.Measured measured) {
        if (!limits.contains(measured.value(), measured.unit())) {
            return Optional.empty();
        }
        BigDecimal value = ExactLengths.in(limits.unit(), measured.value(), measured.unit());
        Optional<BigDecimal> fromLower =
                limits.naturalLower() ? Optional.empty() : limits.lower().map(value::subtract);
        Optional<BigDecimal> fromUpper = limits.upper().map(limit -> limit.subtract(value));
        if (fromLower.isPresent() && fromUpper.isPresent()) {
            return Optional.of(fromLower.get().min(fromUpper.get()));
        }
        return fromLower.or(() -> fromUpper);
    }
}
