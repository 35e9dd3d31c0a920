package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.quantity.SourcedTable.Marked;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** ISO 2768-1 and ISO 2768-2 against their published tables, by value and by way of a requirement on a drawing. */
class GeneralToleranceTest {

    static List<ReferenceRows.Row> published() {
        return ReferenceRows.of("iso-2768/general-tolerances.csv");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("published")
    void table_publishedValue_isExact(ReferenceRows.Row row) {
        Optional<BigDecimal> found = lookUp(row);

        if (row.get("value").equals("none")) {
            assertThat(found).isEmpty();
        } else {
            assertThat(found.orElseThrow()).isEqualByComparingTo(row.get("value"));
        }
    }

    private static Optional<BigDecimal> lookUp(ReferenceRows.Row row) {
        String letter = row.get("class");
        BigDecimal size = row.get("size").isEmpty() ? BigDecimal.ONE : row.decimal("size");
        if (Character.isLowerCase(letter.charAt(0))) {
            GeneralTolerance general = GeneralTolerance.parse("ISO 2768-" + letter);
            return switch (row.get("table")) {
                case "linear" -> general.linearDeviation(size);
                case "radius_or_chamfer" -> general.brokenEdgeDeviation(size);
                case "angular" -> general.angularDeviation(size);
                default -> throw new IllegalStateException(row.get("table"));
            };
        }
        GeneralGeometry geometry =
                GeneralTolerance.parse("ISO 2768-m" + letter).geometry().orElseThrow();
        return switch (row.get("table")) {
            case "straightness_flatness" -> geometry.straightnessOrFlatness(size);
            case "perpendicularity" -> geometry.perpendicularity(size);
            case "symmetry" -> geometry.symmetry(size);
            case "circular_run_out" -> Optional.of(geometry.runOut());
            default -> throw new IllegalStateException(row.get("table"));
        };
    }

    /** ISO 2768-2:1989, 5.1.2 and 5.2.2, worked: roundness is the size tolerance up to the run-out, parallelism the greater of two. */
    @Test
    void geometry_derivedTolerances_followTheClauses() {
        GeneralGeometry k = new GeneralGeometry(GeneralTolerance.GeometricClass.K);
        GeneralGeometry h = new GeneralGeometry(GeneralTolerance.GeometricClass.H);

        assertThat(k.roundness(new BigDecimal("0.1"))).isEqualByComparingTo("0.1");
        assertThat(k.roundness(new BigDecimal("0.4"))).isEqualByComparingTo("0.2");
        assertThat(h.parallelism(new BigDecimal("0.3"), new BigDecimal("80")).orElseThrow())
                .isEqualByComparingTo("0.3");
        assertThat(h.parallelism(new BigDecimal("0.05"), new BigDecimal("80")).orElseThrow())
                .isEqualByComparingTo("0.1");
    }

    @ParameterizedTest(name = "{0} by {1}")
    @CsvSource(
            nullValues = "none",
            value = {
                "40,             ISO 2768-m,  39.7,   40.3,   MILLIMETRE",
                "Ø40,            ISO 2768-f,  39.85,  40.15,  MILLIMETRE",
                "40.00,          ISO 2768-m,  39.7,   40.3,   MILLIMETRE",
                "30,             ISO 2768-m,  29.8,   30.2,   MILLIMETRE",
                "0.5,            ISO 2768-f,  0.45,   0.55,   MILLIMETRE",
                "4x Ø5,          ISO 2768-c,  4.7,    5.3,    MILLIMETRE",
                "3000,           ISO 2768-v,  2992,   3008,   MILLIMETRE",
                "R3,             ISO 2768-m,  2.8,    3.2,    MILLIMETRE",
                "R10,            ISO 2768-m,  9,      11,     MILLIMETRE",
                "C1,             ISO 2768-m,  0.8,    1.2,    MILLIMETRE",
                "2x45°,          ISO 2768-c,  1.6,    2.4,    MILLIMETRE",
                "4x 1x45°,       ISO 2768-f,  0.8,    1.2,    MILLIMETRE",
                "45° (leg 8),    ISO 2768-m,  44,     46,     DEGREE",
                "45° (leg 30),   ISO 2768-m,  44.5,   45.5,   DEGREE",
                "45° (leg 100),  ISO 2768-m,  2680,   2720,   ARC_MINUTE",
                "45° (leg 500),  ISO 2768-c,  2690,   2710,   ARC_MINUTE",
                "45°30' (leg 8), ISO 2768-v,  42.5,   48.5,   DEGREE",
            })
    void bareSize_onAMetricDrawing_hasItsGeneralTolerance(
            String written, String general, BigDecimal lower, BigDecimal upper, Unit unit) {
        Limits limits = RequirementNotation.parse(written)
                .resolve(PlainDrawing.in(Unit.MILLIMETRE).with(GeneralTolerance.parse(general)))
                .stated();

        assertThat(limits.unit()).isEqualTo(unit);
        assertThat(limits.lower().orElseThrow()).isEqualByComparingTo(lower);
        assertThat(limits.upper().orElseThrow()).isEqualByComparingTo(upper);
    }

    @Test
    void bareSize_onAnInchDrawing_isJudgedInMillimetres() {
        PlainDrawing inch = PlainDrawing.in(Unit.INCH).with(GeneralTolerance.parse("ISO 2768-m"));

        Limits limits = RequirementNotation.parse("2").resolve(inch).stated();

        assertThat(limits).isEqualTo(Limits.between(new BigDecimal("50.5"), new BigDecimal("51.1"), Unit.MILLIMETRE));
        assertThat(RequirementNotation.parse("45° (leg 1)")
                        .resolve(inch)
                        .stated()
                        .upper())
                .contains(new BigDecimal("45.5"));
    }

    @Test
    void bareAngle_withTheLegOfThePlan_usesIt() {
        PlainDrawing drawing = PlainDrawing.in(Unit.MILLIMETRE).with(GeneralTolerance.parse("ISO 2768-m"));
        Requirement angle = RequirementNotation.parse("45°");

        assertThat(angle.resolve(drawing.withShorterLeg("30")).stated().upper()).contains(new BigDecimal("45.5"));
        RequirementFault fault = catchThrowableOfType(RequirementFault.class, () -> angle.resolve(drawing));
        assertThat(fault).hasMessageContaining("shorter leg");
        assertThat(fault.expected()).contains("45° (leg 30)");
    }

    @Test
    void bareRadius_internal_isALinearSize() {
        PlainDrawing drawing = PlainDrawing.in(Unit.MILLIMETRE).with(GeneralTolerance.parse("ISO 2768-m"));
        Requirement radius = RequirementNotation.parse("R10");

        assertThat(radius.resolve(drawing).stated().upper()).contains(new BigDecimal("11"));
        assertThat(radius.resolve(drawing.with(Drawing.Form.HOLE)).stated().upper())
                .contains(new BigDecimal("10.2"));
    }

    @ParameterizedTest(name = "{0} by {1}")
    @CsvSource({
        "0.4,  ISO 2768-m, from 0.5 up to 4000 mm",
        "2,    ISO 2768-v, over 3 up to 4000 mm",
        "2500, ISO 2768-f, from 0.5 up to 2000 mm",
        "4001, ISO 2768-c, from 0.5 up to 4000 mm",
        "R0.4, ISO 2768-m, radius or chamfer",
    })
    void bareSize_outsideTheTable_saysWhereItHolds(String written, String general, String part) {
        Requirement requirement = RequirementNotation.parse(written);

        assertThat(catchThrowableOfType(
                        RequirementFault.class,
                        () -> requirement.resolve(
                                PlainDrawing.in(Unit.MILLIMETRE).with(GeneralTolerance.parse(general)))))
                .hasMessageContaining(part);
    }

    @Test
    void bareSize_withoutGeneralTolerance_saysHowToStateOne() {
        RequirementFault fault = catchThrowableOfType(
                RequirementFault.class,
                () -> RequirementNotation.parse("40").resolve(PlainDrawing.in(Unit.MILLIMETRE)));

        assertThat(fault).hasMessageContaining("no general tolerance");
        assertThat(fault.expected()).contains("generalTolerance");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "flatness general (length 120),        0.4",
        "straightness general (length 10),     0.05",
        "perpendicularity general (length 40), 0.4",
        "symmetry general (length 400),        0.8",
        "run-out general,                      0.2",
    })
    void generalGeometry_asARequirement_isFromZeroToTheTable(String written, BigDecimal tolerance) {
        Requirement requirement = RequirementNotation.parse(written);
        PlainDrawing drawing = PlainDrawing.in(Unit.MILLIMETRE).with(GeneralTolerance.parse("ISO 2768-mK"));

        Limits limits = requirement.resolve(drawing).stated();

        assertThat(requirement.text()).isEqualTo(written);
        assertThat(limits.upper().orElseThrow()).isEqualByComparingTo(tolerance);
        assertThat(limits.naturalLower()).isTrue();
        assertThat(catchThrowableOfType(
                        RequirementFault.class,
                        () -> requirement.resolve(
                                PlainDrawing.in(Unit.MILLIMETRE).with(GeneralTolerance.parse("ISO 2768-m")))))
                .hasMessageContaining("no class of geometry");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "ISO 2768-m,          ISO 2768-m",
        "ISO 2768-mK,         ISO 2768-mK",
        "ISO 2768 - mK,       ISO 2768-mK",
        "iso 2768-fH,         ISO 2768-fH",
        "DIN ISO 2768-mK,     ISO 2768-mK",
        "ISO2768-c,           ISO 2768-c",
        "ISO 2768-1 m,        ISO 2768-m",
        "ISO 2768-mK-E,       ISO 2768-mK",
        "EN ISO 2768-vL,      ISO 2768-vL",
        "ISO 2768 m,          ISO 2768-m",
    })
    void parse_titleBlock_isUnderstood(String written, String text) {
        assertThat(GeneralTolerance.parse(written).text()).isEqualTo(text);
        assertThat(GeneralTolerance.parse(GeneralTolerance.parse(written).text()))
                .isEqualTo(GeneralTolerance.parse(written));
    }

    @ParameterizedTest(name = "“{0}”")
    @CsvSource({
        "ISO 2768-MK,  9,  small letter,   ISO 2768-mK",
        "ISO 2768-mk,  10, capital letter, ISO 2768-mK",
        "ISO 2768-x,   9,  no class of ISO 2768-1, 'ISO 2768-m or ISO 2768-mK (f, m, c or v, then H, K or L)'",
        "ISO 2768-mA,  10, no class of ISO 2768-2, 'ISO 2768-m or ISO 2768-mK (f, m, c or v, then H, K or L)'",
        "ISO 2768-K,   9,  no class of ISO 2768-1, 'ISO 2768-m or ISO 2768-mK (f, m, c or v, then H, K or L)'",
        "ISO 2769-m,   0,  not understood, 'ISO 2768-m or ISO 2768-mK (f, m, c or v, then H, K or L)'",
        "ISO 22081,    4,  no tables, 'a tolerance at each size, or ISO 2768-m or ISO 2768-mK (f, m, c or v, then H, K or L)'",
        "'',           0,  not understood, 'ISO 2768-m or ISO 2768-mK (f, m, c or v, then H, K or L)'",
    })
    void parse_unknownTitleBlock_saysWhatWouldBeUnderstood(String written, int position, String part, String expected) {
        RequirementFault fault = catchThrowableOfType(RequirementFault.class, () -> GeneralTolerance.parse(written));

        assertThat(fault).hasMessageContaining(part);
        assertThat(fault.position()).contains(position);
        assertThat(fault.expected()).isEqualTo(expected);
    }

    /** Law: a wider class never has a narrower tolerance, and a larger size never a narrower one. */
    @Test
    void tables_widenWithClassAndSize() {
        List<String> classes = List.of("f", "m", "c", "v");
        for (String name : List.of("linear", "broken-edges", "angles")) {
            SizeTable table = SizeTable.read("iso-2768-1/1989/" + name + ".csv");
            assertThat(table.columns()).isEqualTo(classes);
            for (SizeTable.Row row : table.rows()) {
                BigDecimal finer = BigDecimal.ZERO;
                for (String each : classes) {
                    Marked cell = row.cells().get(each);
                    if (cell != null) {
                        assertThat(cell.value())
                                .as("%s %s", name.toUpperCase(Locale.ROOT), row.range())
                                .isGreaterThanOrEqualTo(finer);
                        finer = cell.value();
                    }
                }
            }
        }
    }
}
