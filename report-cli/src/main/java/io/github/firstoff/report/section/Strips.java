package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Strip;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Strips: where readings lie between their limits. A reading under a bonus is placed within the limits of its own piece, so that
 * a mark inside is a reading inside.
 */
final class Strips {
    /** How far the scale of a one-sided requirement reaches past its furthest reading. */
    private static final double REACH = 1.15;

    private Strips() {}

    /** A strip with a mark for every reading; an empty cell where nothing has a place. */
    static Cell everyReading(CharacteristicResult result) {
        return cell(result, measured(result), List.of());
    }

    /**
     * A strip with marks for the least, the mean and the greatest reading, and for every reading outside; an empty cell where
     * nothing has a place.
     */
    static Cell summarised(CharacteristicResult result, OptionalDouble mean) {
        List<Judgement> all = measured(result);
        Set<Judgement> chosen = new LinkedHashSet<>();
        all.stream().min(Strips::compare).ifPresent(chosen::add);
        all.stream().max(Strips::compare).ifPresent(chosen::add);
        for (Judgement judgement : all) {
            if (judgement.departure().isPresent()) {
                chosen.add(judgement);
            }
        }
        boolean meanHasPlace =
                mean.isPresent() && result.characteristic().zone().isFixed();
        return cell(result, List.copyOf(chosen), meanHasPlace ? List.of(mean.getAsDouble()) : List.of());
    }

    private static int compare(Judgement a, Judgement b) {
        Reading.Measured first = (Reading.Measured) a.reading();
        Reading.Measured second = (Reading.Measured) b.reading();
        return Unit.compare(first.value(), first.unit(), second.value(), second.unit());
    }

    private static List<Judgement> measured(CharacteristicResult result) {
        return result.judgements().stream()
                .filter(each -> each.reading() instanceof Reading.Measured)
                .toList();
    }

    private static Cell cell(CharacteristicResult result, List<Judgement> judgements, List<Double> means) {
        Limits stated = result.characteristic().limits();
        if (stated.isOpen() || judgements.isEmpty() || !result.characteristic().isJudged()) {
            return Cell.EMPTY;
        }
        Axis axis = Axis.of(stated, judgements);
        List<Strip.Mark> marks = new ArrayList<>();
        for (Judgement judgement : judgements) {
            double at = axis.place(judgement);
            // A reading that conforms once rounded lies on the limit, not outside.
            marks.add(new Strip.Mark(
                    judgement.departure().isPresent() ? at : Math.max(0, Math.min(1, at)), excess(judgement)));
        }
        for (double mean : means) {
            double at = axis.place(mean);
            if (at >= 0 && at <= 1) {
                marks.add(new Strip.Mark(at, ""));
            }
        }
        double guard = guard(result, judgements, axis);
        boolean natural = stated.naturalLower();
        return new Cell.Line(new Strip(
                stated.lower().isPresent(),
                stated.upper().isPresent(),
                target(result, axis),
                stated.lower().isPresent() && !natural ? guard : 0,
                stated.upper().isPresent() ? guard : 0,
                marks));
    }

    /** By how much a reading lies outside; with its unit only where the table's unit is another one. */
    private static String excess(Judgement judgement) {
        Unit unit = judgement.allowed().limits().unit();
        return judgement
                .departure()
                .filter(amount -> judgement.verdict() != Verdict.CONFORMING)
                .map(amount -> Phrases.plain(amount.abs()))
                .map(figure -> unit == TableParts.readingUnit(unit) ? figure : Figures.with(figure, unit))
                .orElse("");
    }

    private static double guard(CharacteristicResult result, List<Judgement> judgements, Axis axis) {
        BigDecimal widest = BigDecimal.ZERO;
        for (Judgement judgement : judgements) {
            widest = widest.max(result.rule().guardBand(judgement.uncertainty()));
        }
        return widest.signum() == 0 ? 0 : axis.length() == 0 ? 1 : Math.min(1, Places.of(widest) / axis.length());
    }

    private static OptionalDouble target(CharacteristicResult result, Axis axis) {
        Limits limits = result.characteristic().limits();
        Optional<BigDecimal> stated = result.characteristic().target();
        if (stated.isPresent()) {
            return OptionalDouble.of(Math.max(0, Math.min(1, axis.place(Places.of(stated.get())))));
        }
        boolean middle = limits.width().isPresent() && !limits.naturalLower();
        return middle ? OptionalDouble.of(0.5) : OptionalDouble.empty();
    }

    /** From a value to its fraction of the tolerance. */
    private record Axis(Limits stated, double length) {
        static Axis of(Limits stated, List<Judgement> judgements) {
            if (stated.width().isPresent()) {
                return new Axis(stated, Places.of(stated.width().get()));
            }
            BigDecimal limit = stated.lower().or(stated::upper).orElseThrow();
            double furthest = 0;
            for (Judgement judgement : judgements) {
                furthest = Math.max(furthest, Math.abs(Places.between(limit, value(judgement, stated.unit()))));
            }
            return new Axis(stated, furthest > 0 ? furthest * REACH : 1);
        }

        double place(Judgement judgement) {
            Limits own = judgement.allowed().limits();
            BigDecimal value = value(judgement, own.unit());
            if (own.lower().isPresent() && own.upper().isPresent()) {
                double width = Places.between(own.lower().get(), own.upper().get());
                return width > 0 ? Places.between(own.lower().get(), value) / width : placeOnPoint(judgement);
            }
            return own.lower().isPresent()
                    ? Places.between(own.lower().get(), value) / length
                    : 1 - Places.between(value, own.upper().orElseThrow()) / length;
        }

        /** Both limits are the same value: on it, or outside. */
        private static double placeOnPoint(Judgement judgement) {
            return judgement
                    .departure()
                    .map(amount -> amount.signum() > 0 ? 2.0 : -1.0)
                    .orElse(0.5);
        }

        double place(double value) {
            if (stated.lower().isPresent()) {
                return length > 0 ? (value - Places.of(stated.lower().get())) / length : 0.5;
            }
            return 1 - (Places.of(stated.upper().orElseThrow()) - value) / length;
        }

        private static BigDecimal value(Judgement judgement, Unit unit) {
            Reading.Measured measured = (Reading.Measured) judgement.reading();
            return Places.in(unit, Readings.judged(judgement), measured.unit());
        }
    }
}
