package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The readings of one characteristic as they were read, for printing. */
final class Readings {
    private final CharacteristicResult result;
    private final List<Reading.Measured> values = new ArrayList<>();

    Readings(CharacteristicResult result) {
        this.result = result;
        for (Judgement judgement : result.judgements()) {
            if (judgement.reading() instanceof Reading.Measured measured) {
                values.add(measured);
            }
        }
    }

    /** The least value as read. */
    Optional<Reading.Measured> least() {
        return values.stream().min((a, b) -> Unit.compare(a.value(), a.unit(), b.value(), b.unit()));
    }

    /** The greatest value as read. */
    Optional<Reading.Measured> greatest() {
        return values.stream().max((a, b) -> Unit.compare(a.value(), a.unit(), b.value(), b.unit()));
    }

    /** The most decimals that a value was read with, in the unit of the limits; those of the limits where none was. */
    int places() {
        Unit unit = TableParts.readingUnit(result.characteristic().unit());
        return values.stream()
                .filter(value -> value.unit() == unit)
                .mapToInt(value -> value.value().scale())
                .max()
                .orElseGet(() -> Figures.places(result.characteristic().limits()));
    }

    /** How many different pieces were inspected for it. */
    int pieces() {
        return (int)
                result.judgements().stream().map(Judgement::part).distinct().count();
    }

    /** The gauges that were used, in the order of first use; the one that the plan foresees while nothing was read. */
    List<String> gauges() {
        Set<String> used = new LinkedHashSet<>();
        for (Judgement judgement : result.judgements()) {
            judgement.gaugeId().ifPresent(used::add);
        }
        if (result.judgements().isEmpty()) {
            result.characteristic().characteristic().gauge().ifPresent(used::add);
        }
        return List.copyOf(used);
    }

    /** A reading as read, with its unit where that is not the unit of the column. */
    static String shown(Reading reading, Unit column) {
        if (reading instanceof Reading.Measured measured) {
            if (measured.unit() != column
                    && (measured.unit() == Unit.ARC_MINUTE || measured.unit() == Unit.ARC_SECOND)) {
                return degreesAndMinutes(measured);
            }
            String figure = Figures.of(measured.value());
            return measured.unit() == column ? figure : Figures.with(figure, measured.unit());
        }
        return Labels.text(((Reading.Observed) reading).pass() ? "reading.pass" : "reading.fail");
    }

    /** A reading as read, with its unit; a pass or fail with its setting. */
    static String withUnit(Reading reading) {
        return shown(reading, Unit.NONE) + atSetting(reading);
    }

    /** {@code " at high"} for a check at a setting; empty text for any other reading. */
    static String atSetting(Reading reading) {
        return reading.context()
                .setting()
                .map(setting -> Labels.text("reading.at-setting", setting))
                .orElse("");
    }

    /** An angle that was read in parts of a degree, as it is read off a protractor: {@code 45°20'}. */
    private static String degreesAndMinutes(Reading.Measured measured) {
        BigDecimal sixty = new BigDecimal("60");
        boolean seconds = measured.unit() == Unit.ARC_SECOND;
        BigDecimal rest = measured.value().abs();
        BigDecimal perDegree = seconds ? sixty.multiply(sixty) : sixty;
        BigDecimal[] degrees = rest.divideAndRemainder(perDegree);
        String sign = measured.value().signum() < 0 ? "−" : "";
        String text = sign + degrees[0].setScale(0, RoundingMode.DOWN).toPlainString() + "°";
        if (!seconds) {
            return text + degrees[1].toPlainString() + "'";
        }
        BigDecimal[] minutes = degrees[1].divideAndRemainder(sixty);
        return text + minutes[0].setScale(0, RoundingMode.DOWN).toPlainString() + "'" + minutes[1].toPlainString()
                + "\"";
    }

    /** The deviations along the axes from which a position follows, in brackets after a space; empty text for a value as read. */
    static String offsets(Reading reading) {
        if (reading instanceof Reading.Measured measured && measured.offsets().isPresent()) {
            Reading.Offsets offsets = measured.offsets().get();
            return " (x " + Figures.of(offsets.x()) + ", y " + Figures.of(offsets.y())
                    + offsets.z().map(z -> ", z " + Figures.of(z)).orElse("") + ")";
        }
        return "";
    }

    /** The length at 20 °C that was judged, where it was read at another temperature. */
    static Optional<String> atReference(Judgement judgement) {
        return corrected(judgement)
                .map(figure -> Labels.text(
                        "reading.at-reference", Figures.with(figure, ((Reading.Measured) judgement.reading()).unit())));
    }

    /** The same as a figure: with one decimal more than the reading, since the correction is computed. */
    static Optional<String> corrected(Judgement judgement) {
        if (judgement.reading() instanceof Reading.Measured measured) {
            int places = measured.value().scale() + 1;
            return judgement
                    .correction()
                    .map(each -> Figures.of(each.corrected().setScale(places, RoundingMode.HALF_EVEN)));
        }
        return Optional.empty();
    }

    /** The value that was judged: as read, or brought to 20 °C. */
    static BigDecimal judged(Judgement judgement) {
        Reading.Measured measured = (Reading.Measured) judgement.reading();
        return judgement.correction().map(each -> each.corrected()).orElse(measured.value());
    }
}
