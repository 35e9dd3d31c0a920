package io.github.firstoff.keyed;

import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.ThermalCorrection;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.tolerance.ToleranceZone.Bonus;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

/** Readings and verdicts as the dialogue says them. */
final class Found {
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);

    private Found() {}

    /** What was read, with its unit. */
    static String value(Reading reading) {
        if (reading instanceof Reading.Measured measured) {
            return switch (measured.unit()) {
                case ARC_MINUTE -> parted(measured.value(), "'");
                case ARC_SECOND -> parted(measured.value(), "\"");
                default -> withUnit(measured.value().toPlainString(), measured.unit());
            };
        }
        return reading instanceof Reading.Observed observed && observed.pass() ? "pass" : "fail";
    }

    /** An angle as it is keyed, {@code 45°12'} or {@code 45°12'30"}; the last part keeps its decimals. */
    private static String parted(BigDecimal smallParts, String mark) {
        BigDecimal[] apart = smallParts.abs().divideAndRemainder(SIXTY);
        String last = apart[1].toPlainString() + mark;
        BigInteger greater = apart[0].toBigInteger();
        if (mark.equals("\"")) {
            last = greater.mod(SIXTY.toBigInteger()) + "'" + last;
            greater = greater.divide(SIXTY.toBigInteger());
        }
        return (smallParts.signum() < 0 ? "-" : "") + greater + "°" + last;
    }

    /** An amount with its unit: {@code 12.5 mm}, {@code 45.5°}. */
    static String withUnit(String amount, Unit unit) {
        return switch (unit.kind()) {
            case LENGTH -> amount + ' ' + unit.symbol();
            case ANGLE -> amount + unit.symbol();
            case NONE -> amount;
        };
    }

    /** The verdict in words with its amount, its unit and its sign. */
    static String verdict(ResolvedCharacteristic characteristic, Judgement judgement) {
        if (!characteristic.isJudged()) {
            return "noted; not judged";
        }
        String words = Phrases.of(judgement);
        Unit unit = judgement.allowed().limits().unit();
        if (judgement.verdict() == Verdict.NONCONFORMING
                && judgement.departure().isPresent()) {
            boolean over = judgement.departure().get().signum() > 0;
            String amount = words.substring(words.lastIndexOf(' ') + 1);
            return withUnit(words, unit) + " (" + (over ? '+' : '-') + amount + ')';
        }
        if (judgement.verdict() == Verdict.CONFORMING && judgement.inside().isPresent()) {
            BigDecimal inside = judgement.inside().get();
            return inside.signum() == 0
                    ? words + ", on the limit"
                    : words + ", " + withUnit(shortened(judgement, inside), unit) + " inside";
        }
        return words;
    }

    /** What the verdict rests on beyond the drawing's limits, or would. */
    static String bonus(Judgement judgement) {
        return judgement
                .allowed()
                .bonus()
                .map(bonus -> bonus(bonus, judgement.allowed().limits()))
                .orElse("");
    }

    private static String bonus(Bonus bonus, Limits limits) {
        return "limits here " + withUnit(Phrases.limits(limits), limits.unit()) + ": " + bonus.reason();
    }

    private static String shortened(Judgement judgement, BigDecimal amount) {
        int places = judgement.reading() instanceof Reading.Measured measured
                ? Math.max(measured.value().scale(), 0) + 1
                : amount.scale();
        BigDecimal cut = amount.setScale(places, RoundingMode.HALF_EVEN);
        return Phrases.plain(amount.scale() <= places || cut.signum() == 0 ? amount : cut);
    }

    /** What a length comes to at 20 °C, shortened; empty if it was judged as read. */
    static Optional<String> corrected(Judgement judgement) {
        return judgement
                .correction()
                .map(correction -> "at 20 °C: "
                        + withUnit(
                                correction
                                        .corrected()
                                        .setScale(
                                                Math.max(
                                                                ((Reading.Measured) judgement.reading())
                                                                        .value()
                                                                        .scale(),
                                                                0)
                                                        + 1,
                                                RoundingMode.HALF_EVEN)
                                        .toPlainString(),
                                ((Reading.Measured) judgement.reading()).unit()));
    }

    /** What was judged, in the unit of the limits, to be drawn; not exact. Empty for pass and fail. */
    static Optional<BigDecimal> drawn(Judgement judgement) {
        if (!(judgement.reading() instanceof Reading.Measured measured)) {
            return Optional.empty();
        }
        BigDecimal judged =
                judgement.correction().map(ThermalCorrection::corrected).orElse(measured.value());
        return Optional.of(
                measured.unit().convert(judged, judgement.allowed().limits().unit(), MathContext.DECIMAL64));
    }
}
