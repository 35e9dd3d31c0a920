package io.github.firstoff.study.conformity;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Coverage;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.UncertaintyBudget;
import io.github.firstoff.quantity.UncertaintySource;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.study.conformity.GaugeAssessment.Grade;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Holds gauges against the tolerances they are used on.
 *
 * <p>The ratio T/(2U) of the tolerance T to the expanded uncertainty U is, with k = 2, the measurement capability index
 * C_m = T/(4u) of JCGM 106:2012, 7.6.3. From 4 on a gauge is called adequate, below 2 too coarse; both bounds are common practice (the
 * four-to-one of calibration; below 2 the guard bands take more than half of the tolerance) and can be set. U is taken at the nominal
 * size, or else at the upper limit. A requirement with a natural bound of zero has its upper limit as T (common practice); one with a
 * single limit has no T and no ratio.
 *
 * <p>The display: its step should go ten times into T (common practice, settable); readings that are no whole number of steps are given
 * finer than the gauge shows; and a stated U below k·step/√12 claims more than the display alone allows (JCGM 100:2008, F.2.2.1).
 *
 * <p>All in decimals; nothing here changes a verdict.
 *
 * @param adequate from this ratio on a gauge is adequate
 * @param least below this ratio it is too coarse; above 0 and not above {@code adequate}
 * @param steps how many steps of the display should go into the tolerance; above 0
 */
public record GaugeCheck(BigDecimal adequate, BigDecimal least, BigDecimal steps) {
    private static final BigDecimal TWO = new BigDecimal("2");
    private static final BigDecimal FOUR = new BigDecimal("4");
    private static final BigDecimal PERCENT = new BigDecimal("100");
    private static final MathContext DIGITS = MathContext.DECIMAL128;

    /** Towards zero, so that a ratio just short of what is wanted is not printed as if it reached it. */
    private static final MathContext SHOWN = new MathContext(2, RoundingMode.DOWN);

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException if they are not above 0 and in order
     */
    public GaugeCheck {
        if (least.signum() <= 0 || adequate.compareTo(least) < 0 || steps.signum() <= 0) {
            throw new IllegalArgumentException("bounds of a gauge check are above 0 and in order, not "
                    + least.toPlainString() + ", " + adequate.toPlainString() + " and " + steps.toPlainString()
                    + " steps");
        }
    }

    /** Adequate from 4, too coarse below 2, ten steps. */
    public static GaugeCheck withDefaults() {
        return new GaugeCheck(FOUR, TWO, BigDecimal.TEN);
    }

    /**
     * Every gauge that the readings were taken with, or that the plan foresees where there are none; in the plan's order, then in the
     * order of the readings. Gauges that the plan does not list, attributes and what is never judged are left out.
     */
    public List<GaugeAssessment> assess(InspectionRecord record) {
        List<GaugeAssessment> found = new ArrayList<>();
        for (ResolvedCharacteristic each : record.plan().characteristics()) {
            if (each.isAttribute() || !each.isJudged()) {
                continue;
            }
            usedOn(record, each)
                    .forEach((id, readings) ->
                            record.plan().gauge(id).ifPresent(gauge -> found.add(assess(each, gauge, readings))));
        }
        return found;
    }

    /** The gauges that a plan foresees, before anything is read. */
    public List<GaugeAssessment> assess(ResolvedPlan plan) {
        return assess(new InspectionRecord(plan, List.of()));
    }

    private static Map<String, List<Taken>> usedOn(InspectionRecord record, ResolvedCharacteristic each) {
        Map<String, List<Taken>> used = new LinkedHashMap<>();
        for (PartRecord part : record.parts()) {
            for (Reading reading : part.of(each.number())) {
                Optional<String> gauge =
                        reading.context().gauge().or(() -> each.characteristic().gauge());
                if (gauge.isPresent() && reading instanceof Reading.Measured measured) {
                    used.computeIfAbsent(gauge.get(), id -> new ArrayList<>()).add(new Taken(part.serial(), measured));
                }
            }
        }
        if (used.isEmpty()) {
            each.characteristic().gauge().ifPresent(id -> used.put(id, List.of()));
        }
        return used;
    }

    private record Taken(String part, Reading.Measured reading) {}

    private GaugeAssessment assess(ResolvedCharacteristic each, Gauge gauge, List<Taken> readings) {
        Limits limits = each.limits();
        Optional<BigDecimal> tolerance = limits.width().filter(width -> width.signum() > 0);
        boolean comparable = gauge.unit().isComparableWith(limits.unit());
        Optional<Stated> stated = comparable ? gauge.uncertainty().map(own -> stated(each, own)) : Optional.empty();
        List<Remark> cautions = new ArrayList<>();
        Optional<BigDecimal> ratio = Optional.empty();
        Optional<BigDecimal> index = Optional.empty();
        Optional<String> statement = Optional.empty();
        Grade grade = Grade.NOT_COMPARED;
        if (tolerance.isPresent()
                && stated.isPresent()
                && stated.get().expanded().signum() > 0) {
            Comparison comparison = new Comparison(gauge, limits, tolerance.get(), stated.get());
            ratio = Optional.of(comparison.ratio());
            index = Optional.of(comparison.index());
            grade = grade(comparison.ratio());
            statement = Optional.of(comparison.statement(grade));
            if (grade != Grade.ADEQUATE) {
                cautions.add(caution(comparison, grade));
            }
        }
        if (comparable && gauge.resolution().isPresent()) {
            BigDecimal step = gauge.resolution().get();
            tolerance.flatMap(width -> stepsCaution(gauge, step, limits, width)).ifPresent(cautions::add);
            gauge.uncertainty()
                    .flatMap(own -> resolutionCaution(each, gauge, step, own))
                    .ifPresent(cautions::add);
            finerCaution(gauge, step, readings).ifPresent(cautions::add);
        }
        return new GaugeAssessment(each.number(), gauge.id(), grade, ratio, index, statement, cautions);
    }

    /** U in the unit of the limits. */
    private record Stated(BigDecimal expanded, BigDecimal coverageFactor) {}

    private static Stated stated(ResolvedCharacteristic each, Uncertainty own) {
        BigDecimal expanded = own.unit().convert(at(each, own), each.limits().unit(), DIGITS);
        return new Stated(expanded, own.coverageFactor());
    }

    /** U in its own unit, at the nominal size, or else at the upper or the lower limit. */
    private static BigDecimal at(ResolvedCharacteristic each, Uncertainty own) {
        Limits limits = each.limits();
        BigDecimal length =
                each.zone().nominal().or(limits::upper).or(limits::lower).orElse(BigDecimal.ZERO);
        return own.at(limits.unit().convert(length, own.unit(), DIGITS));
    }

    private record Comparison(Gauge gauge, Limits limits, BigDecimal tolerance, Stated stated) {
        BigDecimal ratio() {
            return tolerance.divide(stated.expanded().multiply(TWO), DIGITS);
        }

        BigDecimal index() {
            return tolerance
                    .multiply(stated.coverageFactor())
                    .divide(stated.expanded().multiply(FOUR), DIGITS);
        }

        /** What guard bands of U take from the tolerance, in whole percent, rounded up. */
        BigDecimal taken() {
            BigDecimal bands = limits.naturalLower() ? BigDecimal.ONE : TWO;
            return stated.expanded()
                    .multiply(bands)
                    .multiply(PERCENT)
                    .divide(tolerance, DIGITS)
                    .setScale(0, RoundingMode.UP);
        }

        String facts() {
            return "T = " + show(tolerance, limits.unit()) + ", U = " + show(shown(stated.expanded()), limits.unit())
                    + " (k = " + stated.coverageFactor().stripTrailingZeros().toPlainString() + "), T/(2U) = "
                    + shownRatio();
        }

        String shownRatio() {
            return ratio().round(SHOWN).stripTrailingZeros().toPlainString();
        }

        String statement(Grade grade) {
            return "gauge " + gauge.id() + ": " + facts() + ", " + grade.word();
        }
    }

    private Grade grade(BigDecimal ratio) {
        if (ratio.compareTo(adequate) >= 0) {
            return Grade.ADEQUATE;
        }
        return ratio.compareTo(least) >= 0 ? Grade.COARSE : Grade.TOO_COARSE;
    }

    private Remark caution(Comparison comparison, Grade grade) {
        BigDecimal wanted = grade == Grade.COARSE ? adequate : least;
        BigDecimal taken = comparison.taken();
        return Remark.of(
                "gauge-remark.coarse",
                "gauge {0} is {1|coarse|too coarse} for this tolerance: {2} where at least {3} is wanted; {4|with a guard band of U no"
                        + " reading could prove that a part conforms|guard bands of U would take {5} % of the tolerance}",
                comparison.gauge().id(),
                grade == Grade.COARSE,
                comparison.facts(),
                wanted.toPlainString(),
                taken.compareTo(PERCENT) > 0,
                taken.toPlainString());
    }

    private Optional<Remark> stepsCaution(Gauge gauge, BigDecimal step, Limits limits, BigDecimal tolerance) {
        BigDecimal own = gauge.unit().convert(step, limits.unit(), DIGITS);
        if (own.signum() <= 0 || own.multiply(steps).compareTo(tolerance) <= 0) {
            return Optional.empty();
        }
        String count =
                tolerance.divide(own, DIGITS).round(SHOWN).stripTrailingZeros().toPlainString();
        return Optional.of(Remark.of(
                "gauge-remark.steps",
                "gauge {0} shows steps of {1}: {2} {3|goes|go} into the tolerance of {4} where at least {5} should",
                gauge.id(),
                show(step, gauge.unit()),
                count,
                count.equals("1"),
                show(tolerance, limits.unit()),
                steps.toPlainString()));
    }

    private static Optional<Remark> resolutionCaution(
            ResolvedCharacteristic each, Gauge gauge, BigDecimal step, Uncertainty own) {
        if (step.signum() <= 0) {
            return Optional.empty();
        }
        BigDecimal stepInUnit = gauge.unit().convert(step, own.unit(), DIGITS);
        UncertaintyBudget.Result alone = UncertaintyBudget.of(
                        own.unit(), List.of(UncertaintySource.resolution("resolution", stepInUnit)))
                .with(new Coverage.Factor(own.coverageFactor()))
                .evaluate();
        BigDecimal expanded = at(each, own);
        if (expanded.compareTo(alone.expanded()) >= 0) {
            return Optional.empty();
        }
        return Optional.of(Remark.of(
                "gauge-remark.resolution",
                "gauge {0} states U = {1}, less than the {2} that steps of {3} alone come to",
                gauge.id(),
                show(shown(expanded), own.unit()),
                show(alone.rounded(), own.unit()),
                show(step, gauge.unit())));
    }

    private static Optional<Remark> finerCaution(Gauge gauge, BigDecimal step, List<Taken> readings) {
        if (step.signum() <= 0) {
            return Optional.empty();
        }
        List<Taken> finer = readings.stream()
                .filter(taken -> taken.reading().offsets().isEmpty())
                .filter(taken -> taken.reading().unit() == gauge.unit())
                .filter(taken -> taken.reading().value().remainder(step).signum() != 0)
                .toList();
        if (finer.isEmpty()) {
            return Optional.empty();
        }
        Taken first = finer.get(0);
        return Optional.of(Remark.of(
                "gauge-remark.finer",
                "{0} of {1} {1|reading|readings} {0|is|are} given finer than the steps of {2} that gauge {3} shows, first {4} on piece"
                        + " {5}",
                finer.size(),
                readings.size(),
                show(step, gauge.unit()),
                gauge.id(),
                show(first.reading().value(), first.reading().unit()),
                first.part()));
    }

    private static BigDecimal shown(BigDecimal expanded) {
        return expanded.precision() > 3 ? expanded.round(new MathContext(2, RoundingMode.UP)) : expanded;
    }

    private static String show(BigDecimal value, Unit unit) {
        return unit == Unit.DEGREE
                ? value.toPlainString() + unit.symbol()
                : value.toPlainString() + " " + unit.symbol();
    }
}
