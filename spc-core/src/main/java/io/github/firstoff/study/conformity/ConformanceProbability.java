package io.github.firstoff.study.conformity;

import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.ThermalCorrection;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.sample.Ratio;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;

/**
 * How probable it is that the true value behind a reading lies within the limits.
 *
 * <p>p = Φ((U − y)/u) − Φ((L − y)/u) with the reading y, its standard uncertainty u and the limits L and U; a missing limit counts
 * nothing (JCGM 106:2012, 7.3 and 7.4). The true value is taken as normally distributed about the reading: nothing else is known of it.
 * A natural lower bound is no limit that the part could fail, so what the normal distribution puts below it counts as conforming.
 * For a position from coordinates that is an approximation, good where the deviation is several u.
 *
 * <p>Accuracy: absolute 1e-14; each tail is computed by itself, so a small {@code nonconforming} keeps its digits. Not a verdict.
 *
 * @param conforming the conformance probability, from 0 to 1
 * @param nonconforming 1 less that
 */
public record ConformanceProbability(double conforming, double nonconforming) {

    /**
     * The probability behind one value.
     *
     * @param limits at least one limit
     * @param value in the unit of the limits
     * @param standardUncertainty in the unit of the limits; with 0 the answer is 1 or 0
     * @throws IllegalArgumentException if there is no limit or the uncertainty is negative
     */
    public static ConformanceProbability of(Limits limits, BigDecimal value, BigDecimal standardUncertainty) {
        return of(limits, value, standardUncertainty, BigDecimal.ONE);
    }

    /**
     * The probability behind a judged reading, for the limits that judged it, the value as judged (at 20 °C) and the uncertainty with
     * all that was added to it; empty for pass or fail, without limits, and where no uncertainty is stated.
     */
    public static Optional<ConformanceProbability> of(ResolvedPlan plan, Judgement judgement) {
        Limits limits = judgement.allowed().limits();
        Optional<BigDecimal> factor = judgement
                .gaugeId()
                .flatMap(plan::gauge)
                .flatMap(Gauge::uncertainty)
                .map(stated -> stated.coverageFactor());
        if (!(judgement.reading() instanceof Reading.Measured measured)
                || limits.isOpen()
                || judgement.uncertainty().isEmpty()
                || factor.isEmpty()) {
            return Optional.empty();
        }
        BigDecimal judged =
                judgement.correction().map(ThermalCorrection::corrected).orElse(measured.value());
        BigDecimal value = measured.unit() == limits.unit()
                ? judged
                : measured.unit().convert(judged, limits.unit(), MathContext.DECIMAL128);
        return Optional.of(of(limits, value, judgement.uncertainty().get(), factor.get()));
    }

    /** The standard uncertainty as a quotient, so that it need not be a finite decimal. */
    private static ConformanceProbability of(
            Limits limits, BigDecimal value, BigDecimal expanded, BigDecimal coverageFactor) {
        if (limits.isOpen()) {
            throw new IllegalArgumentException("without limits there is nothing to conform to");
        }
        if (expanded.signum() < 0) {
            throw new IllegalArgumentException("an uncertainty is not negative, but " + expanded.toPlainString());
        }
        Optional<BigDecimal> lower = limits.naturalLower() ? Optional.empty() : limits.lower();
        if (expanded.signum() == 0) {
            boolean within = lower.map(limit -> value.compareTo(limit) >= 0).orElse(true)
                    && limits.upper().map(limit -> value.compareTo(limit) <= 0).orElse(true);
            return new ConformanceProbability(within ? 1 : 0, within ? 0 : 1);
        }
        double below = lower.map(limit ->
                        Distributions.normalAbove(Ratio.of(value.subtract(limit).multiply(coverageFactor), expanded)))
                .orElse(0.0);
        double above = limits.upper()
                .map(limit ->
                        Distributions.normalAbove(Ratio.of(limit.subtract(value).multiply(coverageFactor), expanded)))
                .orElse(0.0);
        double nonconforming = Math.min(1, below + above);
        return new ConformanceProbability(conforming(below, above), nonconforming);
    }

    private static double conforming(double below, double above) {
        return Math.max(0, 1 - below - above);
    }

    /** The risk of the one who receives the part if it is accepted on this reading (JCGM 106:2012, 9.3.2). */
    public double specificConsumersRisk() {
        return nonconforming;
    }

    /** The risk of the one who made the part if it is rejected on this reading (JCGM 106:2012, 9.3.2). */
    public double specificProducersRisk() {
        return conforming;
    }

    /** One phrase for a sheet, for example {@code conforms with a probability of 91.9 %}. */
    public String sentence() {
        return "conforms with a probability " + percent();
    }

    private String percent() {
        if (nonconforming < 0.0005) {
            return "above 99.9 %";
        }
        if (conforming < 0.0005) {
            return "below 0.1 %";
        }
        return String.format(Locale.ROOT, "of %.1f %%", 100 * conforming);
    }
}
