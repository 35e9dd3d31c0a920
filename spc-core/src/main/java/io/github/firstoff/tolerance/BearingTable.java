package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.SourcedTable.Marked;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Sizes of the rings of radial rolling bearings (ISO 492:2014, all but tapered roller bearings) and the radial internal clearance of deep
 * groove ball bearings with cylindrical bore (ISO 5753-1:2009), before they are mounted.
 *
 * <p>The tables lie beside this class; each value carries its provenance, and some come from memory: {@link Found#fromMemory} says so, and
 * whoever decides by such a value checks it against the standard or the bearing maker's catalogue. What the tables do not hold is empty.
 * Diameters are in millimetres.
 */
public final class BearingTable {
    private static final SizeTable INNER = SizeTable.read("iso-492/2014/inner-rings.csv");
    private static final SizeTable OUTER = SizeTable.read("iso-492/2014/outer-rings.csv");
    private static final SizeTable CLEARANCE = SizeTable.read("iso-5753-1/2009/radial-clearance.csv");
    private static final int TO_MILLIMETRES = 3;

    /** The tolerance classes, as files write them. */
    public static final List<String> CLASSES = List.of("normal", "6", "5");

    /** The clearance groups, as files write them. */
    public static final List<String> GROUPS = List.of("C2", "CN", "C3", "C4", "C5");

    private BearingTable() {}

    /**
     * Limits from a table.
     *
     * @param limits both limits
     * @param fromMemory whether either was written down from memory rather than compared with a copy
     */
    public record Found(Limits limits, boolean fromMemory) {}

    /** The class that a word means: {@code normal}, {@code PN}, {@code P0}, {@code 0}; {@code P6}, {@code 6}; {@code P5}, {@code 5}. */
    public static Optional<String> toleranceClass(String word) {
        return switch (word.strip().toUpperCase(Locale.ROOT)) {
            case "NORMAL", "PN", "P0", "0", "N" -> Optional.of("normal");
            case "P6", "6" -> Optional.of("6");
            case "P5", "5" -> Optional.of("5");
            default -> Optional.empty();
        };
    }

    /** The clearance group that a word means: {@code CN} is also {@code C0} and {@code normal}. */
    public static Optional<String> clearanceGroup(String word) {
        String wanted = word.strip().toUpperCase(Locale.ROOT);
        return switch (wanted) {
            case "NORMAL", "C0", "CN", "N" -> Optional.of("CN");
            default -> GROUPS.contains(wanted) ? Optional.of(wanted) : Optional.empty();
        };
    }

    /** The limits of the bore of an inner ring, in millimetres; empty if the table has none for the size. */
    public static Optional<Found> innerRing(BigDecimal bore, String toleranceClass) {
        return ring(INNER, bore, toleranceClass);
    }

    /** The limits of the outside diameter of an outer ring, in millimetres; empty if the table has none for the size. */
    public static Optional<Found> outerRing(BigDecimal outside, String toleranceClass) {
        return ring(OUTER, outside, toleranceClass);
    }

    private static Optional<Found> ring(SizeTable table, BigDecimal size, String toleranceClass) {
        return table.rowFor(size)
                .flatMap(row -> Optional.ofNullable(row.cells().get(toleranceClass)))
                .map(cell -> new Found(
                        Limits.between(size.add(cell.value().movePointLeft(TO_MILLIMETRES)), size, Unit.MILLIMETRE),
                        cell.mark() != 'c'));
    }

    /** The radial internal clearance of a bearing of that bore before mounting, in micrometres; empty if the table has none. */
    public static Optional<Found> clearance(BigDecimal bore, String group) {
        return CLEARANCE.rowFor(bore).flatMap(row -> {
            Optional<Marked> least = Optional.ofNullable(row.cells().get(group + " least"));
            Optional<Marked> greatest = Optional.ofNullable(row.cells().get(group + " greatest"));
            return least.flatMap(low -> greatest.map(high -> new Found(
                    Limits.between(low.value(), high.value(), Unit.MICROMETRE),
                    low.mark() != 'c' || high.mark() != 'c')));
        });
    }

    /** The ranges of outside diameter for which the class is held, in words. */
    public static String rangesOfOuterRings(String toleranceClass) {
        return OUTER.rangesOf(toleranceClass);
    }

    /** The ranges of bore diameter for which the class is held, in words. */
    public static String rangesOfInnerRings(String toleranceClass) {
        return INNER.rangesOf(toleranceClass);
    }
}
