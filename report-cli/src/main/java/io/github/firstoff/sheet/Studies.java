package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.stats.DeviationTally;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns the verdicts on a characteristic into what a sheet knows of it: summary, charts, indices, and why one is not there. */
final class Studies {
    /** Decimal places that a value keeps when it has no finite decimal in the unit of the limits: far below any gauge. */
    private static final int CONVERTED_PLACES = 12;

    private Studies() {}

    /** What is known of a characteristic, without a study where {@code studies} is empty. */
    static Finding finding(CharacteristicResult result, Optional<StudyMaker> studies) {
        Map<String, String> notes = new LinkedHashMap<>();
        ResolvedCharacteristic characteristic = result.characteristic();
        if (!characteristic.isJudged()) {
            notes.put("verdict", "This dimension is for information and is not judged.");
        }
        List<Reading.Measured> values = measured(result);
        Optional<Summary> summary = Optional.empty();
        if (!values.isEmpty()) {
            summary = Optional.of(summarise(characteristic, values, notes));
            if (result.judgements().stream().anyMatch(each -> each.correction().isPresent())) {
                notes.put("temperature", "Values read at another temperature are summed up as judged, at 20 °C.");
            }
        } else if (!characteristic.isAttribute()) {
            notes.put("mean", "No value was measured.");
        }
        Optional<ProcessStudy> study = Optional.empty();
        if (studies.isPresent() && !result.judgements().isEmpty()) {
            study = studies.get().study(result, summary, notes);
        }
        return new Finding(result, summary, study, List.of(), List.of(), notes);
    }

    /** The values in production order, as they were judged. */
    static List<Reading.Measured> measured(CharacteristicResult result) {
        List<Reading.Measured> values = new ArrayList<>();
        for (Judgement judgement : result.judgements()) {
            if (judgement.reading() instanceof Reading.Measured measured) {
                values.add(asJudged(judgement, measured));
            }
        }
        return values;
    }

    /** The reading as it was judged: at 20 °C, where it was brought there, with two places more than it was read to. */
    private static Reading.Measured asJudged(Judgement judgement, Reading.Measured measured) {
        if (judgement.correction().isEmpty()) {
            return measured;
        }
        int places = Math.max(measured.value().scale(), 0) + 2;
        BigDecimal corrected = judgement.correction().get().corrected();
        return new Reading.Measured(
                measured.characteristic(),
                corrected.setScale(places, RoundingMode.HALF_EVEN),
                measured.unit(),
                measured.context());
    }

    private static Summary summarise(
            ResolvedCharacteristic characteristic, List<Reading.Measured> readings, Map<String, String> notes) {
        Unit unit = characteristic.unit();
        List<BigDecimal> values = new ArrayList<>(readings.size());
        BigDecimal least = null;
        BigDecimal greatest = null;
        for (Reading.Measured reading : readings) {
            BigDecimal value = inUnit(reading, unit);
            values.add(value);
            least = least == null || value.compareTo(least) < 0 ? value : least;
            greatest = greatest == null || value.compareTo(greatest) > 0 ? value : greatest;
        }
        BigDecimal reference = characteristic.zone().nominal().orElse(values.get(0));
        Sample sample = Sample.of(values, reference, unit);
        DeviationTally tally = DeviationTally.of(sample.deviations());
        OptionalDouble spread = OptionalDouble.empty();
        if (sample.size() > 1) {
            spread = OptionalDouble.of(sample.scale().length(tally.standardDeviation()));
        } else {
            notes.put("standardDeviation", "One value has no spread.");
        }
        double mean = sample.scale().mean(tally.sum(), tally.count());
        return new Summary(
                sample,
                java.util.Objects.requireNonNull(least),
                java.util.Objects.requireNonNull(greatest),
                mean,
                spread);
    }

    /** The value in the unit of the limits; exact wherever that is a finite decimal. */
    static BigDecimal inUnit(Reading.Measured reading, Unit unit) {
        if (reading.unit() == unit) {
            return reading.value();
        }
        BigDecimal converted = reading.unit().convert(reading.value(), unit, java.math.MathContext.DECIMAL128);
        return converted.scale() > CONVERTED_PLACES
                ? converted.setScale(CONVERTED_PLACES, RoundingMode.HALF_EVEN)
                : converted;
    }
}
