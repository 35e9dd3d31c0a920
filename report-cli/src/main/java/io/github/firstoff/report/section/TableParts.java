package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.Width;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.words.Labels;
import java.util.List;
import java.util.Optional;

/** What the tables of characteristics have in common: the unit, said once where it can be, and the first columns. */
final class TableParts {
    private final Optional<Unit> shared;

    /** For a table of these findings. */
    TableParts(List<Finding> findings) {
        List<Unit> units = findings.stream()
                .map(each -> each.result().characteristic())
                .filter(each -> !each.isAttribute())
                .map(each -> readingUnit(each.unit()))
                .distinct()
                .toList();
        shared = units.size() == 1 ? Optional.of(units.get(0)) : Optional.empty();
    }

    /** Limits in minutes or seconds of arc are printed as degrees, minutes and seconds; readings are in degrees. */
    static Unit readingUnit(Unit unit) {
        return unit == Unit.ARC_MINUTE || unit == Unit.ARC_SECOND ? Unit.DEGREE : unit;
    }

    /** A computed value of a unit of limits in the unit of its column. */
    static double inColumn(double value, Unit unit) {
        return switch (unit) {
            case ARC_MINUTE -> value / 60;
            case ARC_SECOND -> value / 3600;
            default -> value;
        };
    }

    /** Whether rows differ in their units, so that each row names its own. */
    boolean isMixed() {
        return shared.isEmpty();
    }

    /** A column of figures, with the unit in its head where all rows share it. */
    Column figure(String head) {
        return Column.figure(head, shared.map(Unit::symbol).orElse(""));
    }

    /** Number, then feature over requirement. */
    static Column requirement(double weight) {
        return new Column(Labels.text("column.requirement"), "", Column.Kind.NOTATION, Width.share(weight));
    }

    static Cell number(CharacteristicResult result) {
        return Cell.text(result.number());
    }

    static Cell requirement(CharacteristicResult result) {
        return new Cell.Requirement(
                Wording.feature(result.characteristic()),
                Notations.of(result.characteristic().characteristic()));
    }

    static Cell limits(CharacteristicResult result) {
        return Cell.figure(
                result.characteristic().isAttribute()
                                || result.characteristic().limits().isOpen()
                        ? Figures.DASH
                        : Figures.limits(result.characteristic().limits()));
    }

    static Cell unit(CharacteristicResult result) {
        return Cell.text(readingUnit(result.characteristic().unit()).symbol());
    }

    /** The verdict; its commonest phrase stays on one line. */
    static Cell verdict(String phrase, CharacteristicResult result) {
        return Cell.verdict(
                phrase.equals(Labels.text("phrase.all-conform")) ? phrase.replace(' ', '\u00A0') : phrase,
                Wording.tone(result));
    }

    static Cell gauge(CharacteristicResult result) {
        List<String> gauges = new Readings(result).gauges();
        if (gauges.isEmpty()) {
            boolean visual = result.characteristic()
                    .characteristic()
                    .requirement()
                    .text()
                    .startsWith("visual");
            return Cell.text(visual ? Labels.text("gauges.eye") : Figures.DASH);
        }
        return Cell.text(String.join("\n", gauges));
    }
}
