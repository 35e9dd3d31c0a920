package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Limit deviations by ISO 286-1:2010 for nominal sizes above 0 up to 3150 mm: what does {@code P7} mean at 52 mm?
 *
 * <p>The standard tolerance IT comes from Table 1, the fundamental deviation from Tables 2 to 5; the other deviation lies IT beyond.
 * A size on the bound of a range belongs to the lower range. Values are the tables', in whole and half micrometres, never those of
 * the formulas behind them. The letters are those of the standard; their case says hole or shaft.
 *
 * <ul>
 *   <li>Holes A to H and shafts a to h: EI or es from the table.
 *   <li>JS and js: exactly half of IT each side. The 1988 edition allowed odd values of grades 7 to 11 to be rounded down; this is not
 *       done here, so JS7 at 25 mm is ±0.0105.
 *   <li>j with grades 5 to 8, J with grades 6 to 8: a value for each grade.
 *   <li>k: the tabled value with grades 4 to 7, zero with any other.
 *   <li>Special rule, up to 500 mm: K, M, N with grades up to 8 and P to ZC with grades up to 7 get ES = tabled value + Δ. Δ is tabled
 *       for grades 3 to 8; finer grades of these letters are refused. M6 over 250 to 315 mm has ES = -9 µm.
 *   <li>Not used up to 1 mm: a, b, A, B with any grade; N with grades above 8; grades 14 to 18.
 *   <li>cd, ef, fg (CD, EF, FG): up to 10 mm.
 * </ul>
 */
final class Iso286 {
    private static final SizeTable GRADES = SizeTable.read("iso-286/2010/standard-tolerances.csv");
    private static final SizeTable SHAFTS = SizeTable.read("iso-286/2010/shaft-deviations.csv");
    private static final SizeTable HOLES = SizeTable.read("iso-286/2010/hole-deviations.csv");

    private static final Set<String> UPPER_FIRST = Set.of("a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h");
    private static final Set<String> WITH_DELTA_TO_8 = Set.of("K", "M", "N");
    private static final BigDecimal ONE = BigDecimal.ONE;
    private static final BigDecimal GREATEST = new BigDecimal(3150);
    private static final BigDecimal GREATEST_WITH_DELTA = new BigDecimal(500);
    private static final BigDecimal HALF = new BigDecimal("0.5");

    private final BigDecimal nominal;
    private final ToleranceClass wanted;

    private Iso286(BigDecimal nominal, ToleranceClass wanted) {
        this.nominal = nominal;
        this.wanted = wanted;
    }

    /**
     * The deviations of the class at a nominal size in millimetres.
     *
     * @throws RequirementFault if the standard defines none there; the message names the letter, the grade and the sizes it holds for
     */
    static LimitDeviations deviations(BigDecimal nominal, ToleranceClass wanted) {
        return new Iso286(nominal, wanted).deviations();
    }

    /**
     * The width of a grade at a nominal size, both in millimetres.
     *
     * @throws RequirementFault if the standard has no value there
     */
    static BigDecimal standardTolerance(BigDecimal nominal, StandardGrade grade) {
        return millimetres(new Iso286(nominal, new ToleranceClass("H", grade)).tolerance());
    }

    private static BigDecimal millimetres(BigDecimal micrometres) {
        return micrometres.movePointLeft(3);
    }

    private LimitDeviations deviations() {
        BigDecimal tolerance = tolerance();
        String letters = wanted.letters();
        if (letters.equalsIgnoreCase("js")) {
            BigDecimal half = tolerance.multiply(HALF);
            return limits(half, half.negate());
        }
        boolean upperGiven = wanted.isHole() != UPPER_FIRST.contains(letters.toLowerCase(Locale.ROOT));
        BigDecimal fundamental = wanted.isHole() ? holeDeviation() : shaftDeviation();
        return upperGiven
                ? limits(fundamental, fundamental.subtract(tolerance))
                : limits(fundamental.add(tolerance), fundamental);
    }

    private static LimitDeviations limits(BigDecimal upper, BigDecimal lower) {
        return new LimitDeviations(tidy(millimetres(upper)), tidy(millimetres(lower)));
    }

    /** Without zeros that no table wrote: 0.021, not 0.0210. */
    private static BigDecimal tidy(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    private BigDecimal tolerance() {
        if (nominal.signum() <= 0 || nominal.compareTo(GREATEST) > 0) {
            throw refused(
                    "ISO 286 holds for sizes above 0 up to 3150 mm, not for " + nominal.toPlainString() + " mm",
                    "a size with its deviations written out");
        }
        String column = "IT" + wanted.grade().number();
        boolean tooSmall = nominal.compareTo(ONE) <= 0 && !wanted.grade().isUpTo(StandardGrade.IT13);
        if (tooSmall) {
            throw refused("grades 14 to 18 are not used up to 1 mm", "grades up to 13");
        }
        return GRADES.value(nominal, column)
                .orElseThrow(() -> refused(
                        "ISO 286 has no grade " + wanted.grade().number() + " at " + nominal.toPlainString()
                                + " mm; it has it " + GRADES.rangesOf(column),
                        "a coarser grade"));
    }

    private BigDecimal shaftDeviation() {
        String letters = wanted.letters();
        return switch (letters) {
            case "a", "b" -> aboveOne(letters, SHAFTS);
            case "j" -> value(SHAFTS, "j" + wanted.grade().number(), "j with grades 5 to 8");
            case "k" -> value(SHAFTS, isBetween(StandardGrade.IT4, StandardGrade.IT7) ? "k4-7" : "k", "");
            default -> value(SHAFTS, letters, "");
        };
    }

    private BigDecimal holeDeviation() {
        String letters = wanted.letters();
        StandardGrade grade = wanted.grade();
        if (UPPER_FIRST.contains(letters.toLowerCase(Locale.ROOT))) {
            return letters.equals("A") || letters.equals("B") ? aboveOne(letters, HOLES) : value(HOLES, letters, "");
        }
        if (letters.equals("J")) {
            return value(HOLES, "J" + grade.number(), "J with grades 6 to 8");
        }
        if (WITH_DELTA_TO_8.contains(letters)) {
            if (!grade.isUpTo(StandardGrade.IT8)) {
                if (letters.equals("N") && nominal.compareTo(ONE) <= 0) {
                    throw refused("N with grades above 8 is not used up to 1 mm", "N with grades up to 8");
                }
                return value(HOLES, letters + ">8", letters + " with grades up to 8");
            }
            return exceptionalM6().orElseGet(() -> value(HOLES, letters, "").add(delta()));
        }
        BigDecimal base = value(HOLES, letters, "");
        return grade.isUpTo(StandardGrade.IT7) ? base.add(delta()) : base;
    }

    /** ISO 286-1:2010, footnote to Table 2: the general result would be -11. */
    private Optional<BigDecimal> exceptionalM6() {
        boolean here = wanted.text().equals("M6")
                && nominal.compareTo(new BigDecimal(250)) > 0
                && nominal.compareTo(new BigDecimal(315)) <= 0;
        return here ? Optional.of(new BigDecimal(-9)) : Optional.empty();
    }

    private BigDecimal delta() {
        if (nominal.compareTo(GREATEST_WITH_DELTA) > 0) {
            return BigDecimal.ZERO;
        }
        return HOLES.value(nominal, "d" + wanted.grade().number())
                .orElseThrow(() -> refused(
                        "for " + wanted.letters() + ", ISO 286 has Δ for grades 3 to 8 only, so none for grade "
                                + wanted.grade().number(),
                        wanted.letters() + "3 or coarser"));
    }

    private boolean isBetween(StandardGrade finest, StandardGrade coarsest) {
        return finest.isUpTo(wanted.grade()) && wanted.grade().isUpTo(coarsest);
    }

    private BigDecimal aboveOne(String letters, SizeTable table) {
        if (nominal.compareTo(ONE) <= 0) {
            throw refused(letters + " is not used up to 1 mm", "c or C for such sizes");
        }
        return value(table, letters, "");
    }

    private BigDecimal value(SizeTable table, String column, String otherwise) {
        return table.value(nominal, column).orElseThrow(() -> {
            String ranges = table.columns().contains(column) ? table.rangesOf(column) : "";
            String message = "ISO 286 does not define " + wanted.text() + " at " + nominal.toPlainString() + " mm"
                    + (ranges.isEmpty() ? "" : "; it defines " + wanted.letters() + " " + ranges);
            return refused(message, otherwise);
        });
    }

    private RequirementFault refused(String message, String expected) {
        String text = nominal.toPlainString() + " " + wanted.text();
        return new RequirementFault(text, nominal.toPlainString().length() + 1, message, expected);
    }
}
