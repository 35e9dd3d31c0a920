package io.github.firstoff.sample;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * Readings of one characteristic of several part numbers that run through one process, as deviations from the nominal of their
 * own part: what charts of short runs are made of. Immutable.
 *
 * @param deviations the deviations from nominal, grouped; every subgroup is of one part number
 * @param parts the part number of each subgroup
 */
public record Family(Subgroups deviations, List<String> parts) {
    /** Checks that every subgroup has a part number. */
    public Family {
        parts = List.copyOf(parts);
        if (parts.size() != deviations.count()) {
            throw new IllegalArgumentException(
                    "one part number per subgroup: " + parts.size() + " for " + deviations.count());
        }
    }

    /**
     * One reading.
     *
     * @param part the part number
     * @param nominal the nominal (or target) of the characteristic on that part
     * @param value what was measured, in the unit of the nominal
     */
    public record Piece(String part, BigDecimal nominal, BigDecimal value) {}

    /** Subgroups of one part number, or of parts that share a nominal. */
    public static Family ofOnePart(Subgroups readings, String part) {
        List<String> parts = new ArrayList<>();
        for (int g = 0; g < readings.count(); g++) {
            parts.add(part);
        }
        return new Family(readings.asDeviations(), parts);
    }

    /**
     * Consecutive pieces in subgroups of {@code size}; a subgroup ends where the part number changes, and is then incomplete
     * and left over.
     *
     * @throws IllegalArgumentException if {@code size} is less than 1, or one part has two nominals
     */
    public static Family of(List<Piece> pieces, int size, Unit unit) {
        List<BigDecimal> differences = new ArrayList<>();
        List<String> phases = new ArrayList<>();
        Map<String, BigDecimal> nominals = new LinkedHashMap<>();
        for (Piece piece : pieces) {
            BigDecimal known = nominals.putIfAbsent(piece.part(), piece.nominal());
            if (known != null && known.compareTo(piece.nominal()) != 0) {
                throw new IllegalArgumentException("part " + piece.part() + " has two nominals, "
                        + known.toPlainString() + " and " + piece.nominal().toPlainString());
            }
            differences.add(piece.value().subtract(piece.nominal()));
            phases.add(piece.part());
        }
        Sample sample = Sample.of(differences, BigDecimal.ZERO, unit);
        Subgroups cut = Grouping.consecutive(size).inPhases(phases).of(sample);
        List<String> parts = new ArrayList<>();
        for (int g = 0; g < cut.count(); g++) {
            parts.add(phases.get(cut.reading(g, 0)));
        }
        // a change of part number is what the chart is for; it breaks no run
        return new Family(cut.withoutBreaks(), parts);
    }

    /** The same readings with other marks, for example exclusions. */
    public Family withData(UnaryOperator<Subgroups> marking) {
        return new Family(marking.apply(deviations), parts);
    }

    /** The subgroups {@code from} (inclusive) to {@code to} (exclusive), counted from 0. */
    public Family part(int from, int to) {
        return new Family(deviations.part(from, to), parts.subList(from, to));
    }
}
