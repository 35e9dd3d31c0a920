package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.quantity.SourcedTable.Marked;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** ISO 286-1:2010 against published limit tables, against the formulas behind the tables, and against its own rules. */
class Iso286Test {

    /** The first size of each range of Table 1 that is tried, and the last. */
    private static final List<String> SIZES = List.of(
            "0.5", "1", "1.001", "3", "3.001", "6", "8", "10", "12", "14", "14.001", "18", "20", "24", "27", "30", "35",
            "45", "50", "52", "65", "75", "90", "110", "120", "130", "150", "170", "190", "210", "240", "260", "300",
            "315", "340", "380", "430", "480", "500", "500.001", "600", "700", "750", "850", "950", "1100", "1200",
            "1300", "1500", "1700", "1900", "2200", "2400", "2700", "3000", "3150");

    private static final List<String> LETTERS = List.of(
            "a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "j", "js", "k", "m", "n", "p", "r", "s", "t", "u",
            "v", "x", "y", "z", "za", "zb", "zc");

    static List<ReferenceRows.Row> limits() {
        return ReferenceRows.of("iso-286/limits.csv");
    }

    static List<ReferenceRows.Row> undefined() {
        return ReferenceRows.of("iso-286/undefined.csv");
    }

    static List<ReferenceRows.Row> grades() {
        return ReferenceRows.of("iso-286/grades.csv");
    }

    static List<ReferenceRows.Row> fits() {
        return ReferenceRows.of("iso-286/fits.csv");
    }

    private static ToleranceClass toleranceClass(String text) {
        return ToleranceClass.of(text).orElseThrow();
    }

    private static BigDecimal micrometres(BigDecimal millimetres) {
        return millimetres.movePointRight(3);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("limits")
    void deviations_publishedLimit_isExact(ReferenceRows.Row row) {
        LimitDeviations found = toleranceClass(row.get("class")).deviationsAt(row.decimal("nominal"));

        assertThat(micrometres(found.upper())).as("upper").isEqualByComparingTo(row.get("upper"));
        assertThat(micrometres(found.lower())).as("lower").isEqualByComparingTo(row.get("lower"));
    }

    @Test
    void limits_file_coversWhatItClaims() {
        assertThat(limits()).hasSizeGreaterThanOrEqualTo(1000);
        assertThat(limits().stream().map(row -> row.get("class")).distinct().count())
                .isGreaterThanOrEqualTo(50);
        assertThat(limits().stream()
                        .filter(row -> row.get("provenance").contains("stored"))
                        .count())
                .isGreaterThanOrEqualTo(500);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("undefined")
    void deviations_undefined_isRefusedByName(ReferenceRows.Row row) {
        ToleranceClass wanted = toleranceClass(row.get("class"));

        RequirementFault fault =
                catchThrowableOfType(RequirementFault.class, () -> wanted.deviationsAt(row.decimal("nominal")));

        assertThat(fault).isNotNull();
        assertThat(fault.getMessage()).matches(".*(ISO 286|not used).*");
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "14,    v6, v over 14 up to 500 mm",
        "18,    y6, y over 18 up to 500 mm",
        "24,    t6, t over 24 up to 3150 mm",
        "24,    T7, T over 24 up to 3150 mm",
        "12,    cd8, cd up to 10 mm",
        "12,    EF8, EF up to 10 mm",
        "12,    fg6, fg up to 10 mm",
        "600,   zc8, zc up to 500 mm",
        "600,   A11, A up to 500 mm",
        "20,    j9, does not define j9",
        "20,    j4, does not define j4",
        "20,    J9, does not define J9",
        "20,    J5, does not define J5",
        "20,    K9, K up to 3 mm",
        "20,    K2, Δ for grades 3 to 8",
        "20,    P1, Δ for grades 3 to 8",
        "1,     B11, not used up to 1 mm",
        "1,     b11, not used up to 1 mm",
        "1,     H14, not used up to 1 mm",
        "0.8,   js18, not used up to 1 mm",
        "0.8,   N9, not used up to 1 mm",
        "600,   H0, up to 500 mm",
        "600,   h01, up to 500 mm",
        "0,     H7, above 0 up to 3150 mm",
        "-5,    H7, above 0 up to 3150 mm",
        "3150.0001, H7, above 0 up to 3150 mm",
    })
    void deviations_outsideTheTables_sayWhereTheyHold(BigDecimal nominal, String wanted, String part) {
        RequirementFault fault = catchThrowableOfType(
                RequirementFault.class, () -> toleranceClass(wanted).deviationsAt(nominal));

        assertThat(fault).hasMessageContaining(part);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("grades")
    void standardTolerance_publishedValue_isExact(ReferenceRows.Row row) {
        StandardGrade grade = StandardGrade.of(row.get("grade").substring(2)).orElseThrow();

        if (row.get("tolerance").equals("none")) {
            assertThat(catchThrowableOfType(RequirementFault.class, () -> grade.toleranceAt(row.decimal("nominal"))))
                    .isNotNull();
        } else {
            assertThat(micrometres(grade.toleranceAt(row.decimal("nominal"))))
                    .isEqualByComparingTo(row.get("tolerance"));
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("fits")
    void fit_publishedPair_hasItsClearances(ReferenceRows.Row row) {
        Fit fit = Fit.of(row.decimal("nominal"), toleranceClass(row.get("hole")), toleranceClass(row.get("shaft")));

        assertThat(micrometres(fit.maximumClearance())).isEqualByComparingTo(row.get("greatest"));
        assertThat(micrometres(fit.minimumClearance())).isEqualByComparingTo(row.get("least"));
        assertThat(fit.kind().name().toLowerCase(Locale.ROOT)).isEqualTo(row.get("kind"));
        assertThat(fit.maximumInterference())
                .isEqualByComparingTo(fit.minimumClearance().negate());
        assertThat(fit.span()).isEqualByComparingTo(fit.maximumClearance().subtract(fit.minimumClearance()));
    }

    @Test
    void fit_parsedPair_isThatOfItsClassesAndJudgedByTheForm() {
        FitPair pair = (FitPair) RequirementNotation.parse("52 H7/p6");
        Drawing metric = PlainDrawing.in(Unit.MILLIMETRE);

        // ISO 286-2: 52 H7 +30/0, 52 p6 +51/+32
        Fit fit = pair.fitOn(Unit.MILLIMETRE);
        assertThat(fit.maximumInterference()).isEqualByComparingTo("0.051");
        assertThat(fit.minimumInterference()).isEqualByComparingTo("0.002");
        assertThat(fit.kind()).isEqualTo(Fit.Kind.INTERFERENCE);
        assertThat(catchThrowableOfType(RequirementFault.class, () -> pair.resolve(metric)))
                .hasMessageContaining("does not say which");
        Limits hole = pair.resolve(PlainDrawing.in(Unit.MILLIMETRE).with(Drawing.Form.HOLE))
                .stated();
        Limits shaft = pair.resolve(PlainDrawing.in(Unit.MILLIMETRE).with(Drawing.Form.SHAFT))
                .stated();
        assertThat(hole.upper().orElseThrow().toPlainString()).isEqualTo("52.03");
        assertThat(shaft.lower().orElseThrow().toPlainString()).isEqualTo("52.032");
        assertThat(Fit.of(hole, shaft)).isEqualTo(fit);
    }

    @Test
    void classedSize_bearingBore_hasTheLimitsOfTheContract() {
        Limits limits = RequirementNotation.parse("Ø52 P7")
                .resolve(PlainDrawing.in(Unit.MILLIMETRE))
                .stated();

        assertThat(limits.lower().map(BigDecimal::toPlainString)).contains("51.949");
        assertThat(limits.upper().map(BigDecimal::toPlainString)).contains("51.979");
    }

    @Test
    void classedSize_onAnInchDrawing_isJudgedInMillimetresExactly() {
        Requirement requirement = RequirementNotation.parse("Ø2 H7");
        Drawing inch = PlainDrawing.in(Unit.INCH);
        Limits limits = requirement.resolve(inch).stated();

        assertThat(requirement.unit(Unit.INCH)).isEqualTo(Unit.MILLIMETRE);
        assertThat(requirement.readingUnit(Unit.INCH)).isEqualTo(Unit.INCH);
        assertThat(limits.unit()).isEqualTo(Unit.MILLIMETRE);
        assertThat(limits.lower().orElseThrow()).isEqualByComparingTo("50.8");
        assertThat(limits.upper().orElseThrow()).isEqualByComparingTo("50.83");
        // 2.001181 in = 50.8299974 mm; 2.001182 in = 50.8300228 mm
        assertThat(limits.contains(new BigDecimal("2.001181"), Unit.INCH)).isTrue();
        assertThat(limits.contains(new BigDecimal("2.001182"), Unit.INCH)).isFalse();
    }

    @Test
    void classedSize_againstTheFormOfThePlan_isRefused() {
        Requirement requirement = RequirementNotation.parse("20 g6");

        RequirementFault fault = catchThrowableOfType(
                RequirementFault.class,
                () -> requirement.resolve(PlainDrawing.in(Unit.MILLIMETRE).with(Drawing.Form.HOLE)));

        assertThat(fault).hasMessageContaining("g6 is a shaft").hasMessageContaining("this is a hole");
        assertThat(fault.position()).contains(3);
    }

    @Test
    void classedSize_undefined_pointsAtTheClass() {
        RequirementFault fault = catchThrowableOfType(
                RequirementFault.class,
                () -> RequirementNotation.parse("Ø24 t6").resolve(PlainDrawing.in(Unit.MILLIMETRE)));

        assertThat(fault.text()).isEqualTo("Ø24 t6");
        assertThat(fault.position()).contains(4);
    }

    /** Law: a finer grade never gives a wider zone, and the zone of one letter stays on its side. */
    @Test
    void deviations_everyLetter_widenWithTheGrade() {
        int compared = 0;
        for (String letters : bothCases()) {
            for (String size : SIZES) {
                BigDecimal nominal = new BigDecimal(size);
                Optional<BigDecimal> finer = Optional.empty();
                for (StandardGrade grade : StandardGrade.values()) {
                    Optional<LimitDeviations> found = deviations(nominal, new ToleranceClass(letters, grade));
                    if (found.isPresent()) {
                        BigDecimal width =
                                found.get().upper().subtract(found.get().lower());
                        assertThat(width)
                                .as("%s %s%s", size, letters, grade.number())
                                .isEqualByComparingTo(grade.toleranceAt(nominal))
                                .isGreaterThan(finer.orElse(BigDecimal.ZERO));
                        finer = Optional.of(width);
                        compared++;
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(30_000);
    }

    /** Law: a hole A to H is the mirror image of its shaft (ISO 286-1, general rule EI = -es); JS of js. */
    @ParameterizedTest
    @ValueSource(strings = {"a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js"})
    void deviations_clearanceLetters_mirrorEachOther(String letters) {
        assertMirrored(letters, StandardGrade.values(), BigDecimal.ZERO);
    }

    /** Law: above grade 8 for K to N and above grade 7 for P to ZC, ES = -ei; over 500 mm always. N above grade 8 is its own rule. */
    @ParameterizedTest
    @ValueSource(strings = {"m", "p", "r", "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc"})
    void deviations_interferenceLetters_mirrorEachOtherInCoarseGrades(String letters) {
        assertMirrored(
                letters,
                new StandardGrade[] {StandardGrade.IT9, StandardGrade.IT10, StandardGrade.IT11},
                BigDecimal.ZERO);
        assertMirrored(letters, StandardGrade.values(), new BigDecimal(500));
    }

    private static void assertMirrored(String letters, StandardGrade[] grades, BigDecimal above) {
        int compared = 0;
        for (String size : SIZES) {
            BigDecimal nominal = new BigDecimal(size);
            if (nominal.compareTo(above) <= 0) {
                continue;
            }
            for (StandardGrade grade : grades) {
                Optional<LimitDeviations> shaft = deviations(nominal, new ToleranceClass(letters, grade));
                Optional<LimitDeviations> hole =
                        deviations(nominal, new ToleranceClass(letters.toUpperCase(Locale.ROOT), grade));
                assertThat(hole.isPresent())
                        .as("%s %s%s", size, letters, grade.number())
                        .isEqualTo(shaft.isPresent());
                if (shaft.isPresent()) {
                    assertThat(hole.get().upper())
                            .isEqualByComparingTo(shaft.get().lower().negate());
                    assertThat(hole.get().lower())
                            .isEqualByComparingTo(shaft.get().upper().negate());
                    compared++;
                }
            }
        }
        if (above.signum() == 0) {
            assertThat(compared).isPositive();
        }
    }

    /**
     * Law: the special rule is made so that a hole of grade n on a shaft h of grade n-1 fits exactly as the shaft of that letter and
     * grade n-1 fits in the hole H of grade n (ISO 286-1: H7/p6 corresponds to P7/h6). M6 over 250 to 315 mm is the known exception.
     */
    @Test
    void deviations_specialRule_makesHomologousFitsEqual() {
        List<String> broken = new ArrayList<>();
        int compared = 0;
        for (String letters : List.of("k", "m", "n", "p", "r", "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc")) {
            int coarsest = List.of("k", "m", "n").contains(letters) ? 8 : 7;
            for (int grade = letters.equals("k") ? 5 : 3; grade <= coarsest; grade++) {
                StandardGrade hole = StandardGrade.of(Integer.toString(grade)).orElseThrow();
                StandardGrade shaft =
                        StandardGrade.of(Integer.toString(grade - 1)).orElseThrow();
                for (String size : SIZES) {
                    BigDecimal nominal = new BigDecimal(size);
                    // up to 3 mm delta is zero, and over 500 mm the general rule holds
                    if (nominal.compareTo(new BigDecimal(3)) <= 0 || nominal.compareTo(new BigDecimal(500)) > 0) {
                        continue;
                    }
                    ToleranceClass shaftClass = new ToleranceClass(letters, shaft);
                    ToleranceClass holeClass = new ToleranceClass(letters.toUpperCase(Locale.ROOT), hole);
                    if (deviations(nominal, shaftClass).isEmpty()) {
                        continue;
                    }
                    Fit holeBasis = Fit.of(nominal, new ToleranceClass("H", hole), shaftClass);
                    Fit shaftBasis = Fit.of(nominal, holeClass, new ToleranceClass("h", shaft));
                    compared++;
                    if (holeBasis.maximumClearance().compareTo(shaftBasis.maximumClearance()) != 0
                            || holeBasis.minimumClearance().compareTo(shaftBasis.minimumClearance()) != 0) {
                        broken.add(size + " " + holeClass);
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(1_500);
        assertThat(broken).containsExactlyInAnyOrder("260 M6", "300 M6", "315 M6");
    }

    /** A size on a bound belongs to the range below it: every bound of every table. */
    @Test
    void deviations_onEveryBound_belongToTheLowerRange() {
        for (String table : List.of("standard-tolerances", "shaft-deviations", "hole-deviations")) {
            SizeTable rows = SizeTable.read("iso-286/2010/" + table + ".csv");
            BigDecimal from = BigDecimal.ZERO;
            for (SizeTable.Row row : rows.rows()) {
                assertThat(row.over()).as("ranges meet in %s", table).isEqualByComparingTo(from);
                from = row.upTo().orElseThrow();
                assertThat(rows.rowFor(from)).contains(row);
                assertThat(rows.rowFor(row.over().add(new BigDecimal("0.0001"))))
                        .contains(row);
            }
            assertThat(from).isEqualByComparingTo("3150");
        }
    }

    /** Δ is IT of the grade less IT of the grade before it, and zero up to 3 mm (ISO 286-1, Table 3). */
    @Test
    void holeTable_delta_isTheDifferenceOfTwoGrades() {
        SizeTable holes = SizeTable.read("iso-286/2010/hole-deviations.csv");
        for (SizeTable.Row row : holes.rows()) {
            BigDecimal size = row.upTo().orElseThrow();
            if (size.compareTo(new BigDecimal(500)) > 0) {
                continue;
            }
            for (int grade = 3; grade <= 8; grade++) {
                BigDecimal step = grade(grade)
                        .toleranceAt(size)
                        .subtract(grade(grade - 1).toleranceAt(size))
                        .movePointRight(3);
                BigDecimal expected = size.compareTo(new BigDecimal(3)) <= 0 ? BigDecimal.ZERO : step;
                assertThat(row.cells().get("d" + grade).value())
                        .as("Δ%s at %s", grade, size)
                        .isEqualByComparingTo(expected);
            }
        }
    }

    private static StandardGrade grade(int number) {
        return StandardGrade.of(Integer.toString(number)).orElseThrow();
    }

    /** Grades from 11 on are ten times the grade five steps finer (ISO 286-1, annex); 75 at IT11 over 3 to 6 mm is the exception. */
    @Test
    void gradeTable_coarseGrades_areTenTimesTheFiner() {
        List<String> exceptions = new ArrayList<>();
        SizeTable grades = SizeTable.read("iso-286/2010/standard-tolerances.csv");
        for (SizeTable.Row row : grades.rows()) {
            for (int number = 6; number <= 13; number++) {
                BigDecimal finer = row.cells().get("IT" + number).value();
                BigDecimal coarser = row.cells().get("IT" + (number + 5)).value();
                if (coarser.compareTo(finer.movePointRight(1)) != 0) {
                    exceptions.add("IT" + (number + 5) + " " + row.range());
                }
            }
        }
        assertThat(exceptions).containsExactly("IT11 over 3 to 6");
    }

    /**
     * Validation: the tables came from formulas and were rounded. Up to 500 mm i = 0.45·D^(1/3) + 0.001·D, above I = 0.004·D + 2.1 (µm, D
     * the geometric mean of the range in mm); IT6 = 10 units, IT7 = 16 and so on. The rounding is coarse below 6 mm (up to 16 %), within
     * 7 % elsewhere; a slip of a digit or a row would exceed that.
     */
    @Test
    void gradeTable_everyValue_isNearItsFormula() {
        double[] multiples = {7, 10, 16, 25, 40, 64, 100, 160, 250, 400, 640, 1000, 1600, 2500};
        for (SizeTable.Row row :
                SizeTable.read("iso-286/2010/standard-tolerances.csv").rows()) {
            double mean = mean(row);
            double unit = mean <= 500 ? 0.45 * Math.cbrt(mean) + 0.001 * mean : 0.004 * mean + 2.1;
            double roundingOfTable = mean < 5 ? 0.16 : 0.07;
            for (int number = 5; number <= 18; number++) {
                double formula = multiples[number - 5] * unit;
                assertThat(row.cells().get("IT" + number).value().doubleValue() / formula)
                        .as("IT%s %s", number, row.range())
                        .isCloseTo(1, within(roundingOfTable));
            }
        }
    }

    /** Validation: letters with a formula in D, and those built on IT, in the ranges where the standard rounds finely. */
    @Test
    void shaftTable_formulas_areNear() {
        SizeTable shafts = SizeTable.read("iso-286/2010/shaft-deviations.csv");
        for (SizeTable.Row row : shafts.rows()) {
            double own = mean(row);
            double size = row.upTo().orElseThrow().doubleValue();
            if (size <= 18) {
                continue;
            }
            BigDecimal nominal = row.upTo().orElseThrow();
            double it7 = grade(7).toleranceAt(nominal).movePointRight(3).doubleValue();
            double it8 = grade(8).toleranceAt(nominal).movePointRight(3).doubleValue();
            near(row, "a", size <= 120 ? 265 + 1.3 * own : 3.5 * own, 0.04);
            near(row, "b", size <= 160 ? 140 + 0.85 * own : 1.8 * own, 0.05);
            near(row, "t", it7 + 0.63 * own, 0.09);
            if (size > 50) {
                near(row, "s", it7 + 0.4 * own, 0.03);
            }
            near(row, "u", it7 + own, 0.05);
            near(row, "v", it7 + 1.25 * own, 0.04);
            near(row, "x", it7 + 1.6 * own, 0.04);
            near(row, "y", it7 + 2 * own, 0.02);
            near(row, "z", it7 + 2.5 * own, 0.03);
            near(row, "za", it8 + 3.15 * own, 0.03);
        }
    }

    private static void near(SizeTable.Row row, String letters, double formula, double relative) {
        Marked cell = row.cells().get(letters);
        if (cell != null) {
            assertThat(Math.abs(cell.value().doubleValue()) / formula)
                    .as("%s %s", letters, row.range())
                    .isCloseTo(1, within(relative));
        }
    }

    private static double mean(SizeTable.Row row) {
        double over = row.over().signum() == 0 ? 1 : row.over().doubleValue();
        return Math.sqrt(over * row.upTo().orElseThrow().doubleValue());
    }

    /** cd, ef and fg are from memory: each is the geometric mean of its neighbours (ISO 286-1, annex), rounded to the table's step. */
    @Test
    void shaftTable_betweenLetters_areGeometricMeans() {
        for (SizeTable.Row row :
                SizeTable.read("iso-286/2010/shaft-deviations.csv").rows()) {
            for (String letters : List.of("cd", "ef", "fg")) {
                Marked cell = row.cells().get(letters);
                if (cell == null) {
                    continue;
                }
                double first = row.cells().get(letters.substring(0, 1)).value().doubleValue();
                double second = row.cells().get(letters.substring(1)).value().doubleValue();
                double oneStepOfTheTable = 1;
                assertThat(-cell.value().doubleValue())
                        .as("%s %s", letters, row.range())
                        .isCloseTo(Math.sqrt(first * second), within(oneStepOfTheTable));
            }
        }
    }

    /** Every value says where it comes from. */
    @Test
    void tables_everyValue_hasAKnownMark() {
        for (String table : List.of(
                "iso-286/2010/standard-tolerances.csv",
                "iso-286/2010/shaft-deviations.csv",
                "iso-286/2010/hole-deviations.csv",
                "iso-2768-1/1989/linear.csv",
                "iso-2768-1/1989/broken-edges.csv",
                "iso-2768-1/1989/angles.csv",
                "iso-2768-2/1989/straightness-flatness.csv",
                "iso-2768-2/1989/perpendicularity.csv",
                "iso-2768-2/1989/symmetry.csv",
                "iso-2768-2/1989/run-out.csv")) {
            for (SizeTable.Row row : SizeTable.read(table).rows()) {
                row.cells()
                        .forEach((column, cell) -> assertThat("cfm")
                                .as("%s %s %s", table, column, row.range())
                                .contains(String.valueOf(cell.mark())));
            }
        }
    }

    /** Law: taken to inches and back, a size is the same; and a reading in inches is judged as its millimetres are. */
    @Test
    void inch_thereAndBack_isExact() {
        long seed = 286;
        Random random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            BigDecimal inches = new BigDecimal(random.nextInt(10_000_000)).movePointLeft(5);
            BigDecimal millimetres = Unit.INCH.convert(inches, Unit.MILLIMETRE);
            assertThat(Unit.MILLIMETRE.convert(millimetres, Unit.INCH))
                    .as("seed %s", seed)
                    .isEqualByComparingTo(inches);
            assertThat(Unit.compare(inches, Unit.INCH, millimetres, Unit.MILLIMETRE))
                    .isZero();
        }
    }

    private static Optional<LimitDeviations> deviations(BigDecimal nominal, ToleranceClass wanted) {
        try {
            return Optional.of(wanted.deviationsAt(nominal));
        } catch (RequirementFault undefined) {
            return Optional.empty();
        }
    }

    private static List<String> bothCases() {
        List<String> all = new ArrayList<>(LETTERS);
        LETTERS.forEach(letters -> all.add(letters.toUpperCase(Locale.ROOT)));
        return all;
    }
}
