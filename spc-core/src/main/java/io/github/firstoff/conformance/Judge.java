package io.github.firstoff.conformance;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Characteristic.Extent;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.DecisionChoice.Comparison;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Found;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.tolerance.PartSizes;
import io.github.firstoff.tolerance.ToleranceZone.Allowed;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Holds readings against their requirements.
 *
 * <p>Each verdict is an exact decimal comparison: a reading on a limit conforms whatever its trailing zeros, a reading in another
 * unit of length is compared after multiplication by the exact factor, and a position from coordinates by its square. What was not
 * measured is never accepted.
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

    /** The rule that a plan's choice stands for. */
    public static DecisionRule ruleOf(DecisionChoice choice) {
        return switch (choice.rule()) {
            case SIMPLE -> DecisionRule.simple();
            case GUARDED -> DecisionRule.guarded(choice.guardFraction());
        };
    }

    /** The verdict on everything that was read. */
    public InspectionResult assess(InspectionRecord record) {
        return assess(record, List.of());
    }

    /**
     * The verdict on some characteristics: on those that are named, and on every other that was read all the same, because what was found
     * is never left out. The result holds no others.
     *
     * @param covered the numbers of the characteristics that must have been measured; all of the plan where none is named
     */
    public InspectionResult assess(InspectionRecord record, List<String> covered) {
        List<CharacteristicResult> results = new ArrayList<>();
        List<ResolvedCharacteristic> wanted = plan.characteristics().stream()
                .filter(each -> covered.isEmpty()
                        || covered.contains(each.number())
                        || record.parts().stream()
                                .anyMatch(part -> !part.of(each.number()).isEmpty()))
                .toList();
        // Where nothing is judged nothing is claimed: such a sheet is incomplete, not accepted.
        boolean judgesNothing = wanted.stream().noneMatch(ResolvedCharacteristic::isJudged);
        // A row that was refused may hold the worst reading of all.
        boolean knowsAll = !judgesNothing && record.refusedRows() == 0;
        Verdict worst = !knowsAll ? Verdict.NOT_MEASURED : Verdict.CONFORMING;
        for (ResolvedCharacteristic characteristic : wanted) {
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
        List<Missing> missing = new ArrayList<>();
        long missingCount = 0;
        boolean sampled = plan.plan().extentOf(characteristic.characteristic()) == Extent.SAMPLE;
        for (PartRecord part : parts) {
            List<Reading> readings = part.of(characteristic.number());
            if (readings.isEmpty() && !sampled) {
                name(missing, new Missing(part.serial(), Optional.empty()));
                missingCount++;
            }
            for (Missing absent : missingSettings(characteristic, part, readings)) {
                name(missing, absent);
                missingCount++;
            }
            for (Reading reading : readings) {
                judgements.add(judge(characteristic, part, reading));
            }
        }
        if (judgements.isEmpty() && missing.isEmpty()) {
            parts.forEach(part -> name(missing, new Missing(part.serial(), Optional.empty())));
            missingCount = parts.size();
        }
        boolean incomplete = judgements.isEmpty() || !missing.isEmpty();
        Verdict verdict = incomplete ? Verdict.NOT_MEASURED : Verdict.CONFORMING;
        for (Judgement judgement : judgements) {
            verdict = verdict.worse(judgement.verdict());
        }
        return new CharacteristicResult(
                characteristic, ruleOf(characteristic.decision()), judgements, missing, missingCount, verdict);
    }

    /** The first are named, so that a file of many part numbers does not fill the memory. */
    private static void name(List<Missing> missing, Missing which) {
        if (missing.size() < CharacteristicResult.MOST_NAMED) {
            missing.add(which);
        }
    }

    /** A piece that was checked at some settings only lacks the others, even where only a sample of pieces is inspected. */
    private static List<Missing> missingSettings(
            ResolvedCharacteristic characteristic, PartRecord part, List<Reading> readings) {
        List<String> settings = characteristic.characteristic().options().settings();
        if (settings.isEmpty() || readings.isEmpty()) {
            return List.of();
        }
        Set<String> found = new HashSet<>();
        readings.forEach(reading -> reading.context().setting().ifPresent(found::add));
        return settings.stream()
                .filter(setting -> !found.contains(setting))
                .map(setting -> new Missing(part.serial(), Optional.of(setting)))
                .toList();
    }

    /**
     * The verdict on one reading.
     *
     * @throws IllegalArgumentException if the reading is a pass or fail where a value is required, or the other way round:
     *     intake refuses those, so one that arrives here is a programmer's mistake
     */
    public Judgement judge(ResolvedCharacteristic characteristic, PartRecord part, Reading reading) {
        Allowed allowed = characteristic.zone().allowedFor(sizesOf(part));
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
        Optional<ThermalCorrection> correction = correctionOf(measured);
        BigDecimal value = correction.map(ThermalCorrection::corrected).orElse(measured.value());
        Found found = found(characteristic, measured, value);
        Optional<BigDecimal> uncertainty = gaugeUsed(characteristic, measured)
                .flatMap(Gauge::uncertainty)
                .flatMap(stated -> uncertaintyAt(stated, measured, correction, limits.unit()));
        Verdict verdict = ruleOf(characteristic.decision()).decide(limits, found, uncertainty);
        BigDecimal inUnit = ExactLengths.in(limits.unit(), value, measured.unit());
        return new Judgement(
                part.serial(),
                measured,
                allowed,
                verdict,
                departure(limits, found, inUnit),
                inside(limits, found, inUnit),
                uncertainty,
                correction,
                gaugeId);
    }

    private static Found found(ResolvedCharacteristic characteristic, Reading.Measured measured, BigDecimal value) {
        if (measured.offsets().isPresent()) {
            return Found.of(measured.offsets().get().position(), measured.unit());
        }
        return characteristic.decision().comparison() == Comparison.ROUNDING
                ? Found.rounded(value, measured.unit())
                : Found.of(value, measured.unit());
    }

    /** Only lengths that were read at a stated temperature are corrected, and only if the plan says how. */
    private Optional<ThermalCorrection> correctionOf(Reading.Measured measured) {
        Optional<Thermal> thermal = plan.plan().thermal();
        Optional<BigDecimal> temperature = measured.context().temperature();
        boolean length = measured.unit() == Unit.MILLIMETRE || measured.unit() == Unit.INCH;
        if (thermal.isEmpty()
                || temperature.isEmpty()
                || !length
                || measured.offsets().isPresent()) {
            return Optional.empty();
        }
        return Optional.of(ThermalCorrection.of(measured.value(), temperature.get(), thermal.get()));
    }

    /** The sizes that may give a bonus, at 20 °C as they are judged themselves. */
    private PartSizes sizesOf(PartRecord part) {
        if (plan.plan().thermal().isEmpty()) {
            return part;
        }
        return number -> {
            for (Reading reading : part.of(number)) {
                if (reading instanceof Reading.Measured measured) {
                    BigDecimal value = correctionOf(measured)
                            .map(ThermalCorrection::corrected)
                            .orElse(measured.value());
                    return Optional.of(new PartSizes.Size(value, measured.unit()));
                }
            }
            return Optional.empty();
        };
    }

    /** The gauge that the reading names, else the plan's; an unlisted gauge has no particulars and borrows none. */
    private Optional<Gauge> gaugeUsed(ResolvedCharacteristic characteristic, Reading reading) {
        Optional<String> named = reading.context().gauge();
        return named.isPresent() ? plan.gauge(named.get()) : characteristic.gauge();
    }

    /** The uncertainty in the unit of the limits, a correction's included; empty if the gauge's unit measures something else. */
    private static Optional<BigDecimal> uncertaintyAt(
            Uncertainty stated, Reading.Measured measured, Optional<ThermalCorrection> correction, Unit unit) {
        if (!stated.unit().isComparableWith(unit)) {
            return Optional.empty();
        }
        BigDecimal length = ExactLengths.in(stated.unit(), measured.value(), measured.unit());
        BigDecimal own = ExactLengths.in(measured.unit(), stated.at(length), stated.unit());
        BigDecimal all = correction
                .map(found -> found.together(own, stated.coverageFactor()))
                .orElse(own);
        return Optional.of(ExactLengths.in(unit, all, measured.unit()));
    }

    private static Optional<BigDecimal> departure(Limits limits, Found found, BigDecimal value) {
        if (limits.isAbove(found)) {
            return limits.upper().map(value::subtract);
        }
        if (limits.isBelow(found)) {
            return limits.lower().map(value::subtract);
        }
        return Optional.empty();
    }

    private static Optional<BigDecimal> inside(Limits limits, Found found, BigDecimal value) {
        if (!limits.contains(found)) {
            return Optional.empty();
        }
        Optional<BigDecimal> fromLower =
                limits.naturalLower() ? Optional.empty() : limits.lower().map(value::subtract);
        Optional<BigDecimal> fromUpper = limits.upper().map(limit -> limit.subtract(value));
        if (fromLower.isPresent() && fromUpper.isPresent()) {
            return Optional.of(fromLower.get().min(fromUpper.get()));
        }
        return fromLower.or(() -> fromUpper);
    }
}
