package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The notation by itself: what is read, how it is printed again, and what is refused. Expected limits follow by addition. */
class RequirementNotationTest {

    private static final Drawing METRIC = PlainDrawing.in(Unit.MILLIMETRE);

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            nullValues = "none",
            value = {
                "12.5 ±0.05            | 12.5 ±0.05        | 12.45  | 12.55 | MILLIMETRE",
                "12.5 +/-0.05          | 12.5 ±0.05        | 12.45  | 12.55 | MILLIMETRE",
                "12.5+-0.05            | 12.5 ±0.05        | 12.45  | 12.55 | MILLIMETRE",
                "40 ±0.05              | 40 ±0.05          | 39.95  | 40.05 | MILLIMETRE",
                "40.00 ±0.05           | 40.00 ±0.05       | 39.95  | 40.05 | MILLIMETRE",
                "12.5 +0.02/-0.01      | 12.5 +0.02/-0.01  | 12.49  | 12.52 | MILLIMETRE",
                "12.5 -0.01/+0.02      | 12.5 +0.02/-0.01  | 12.49  | 12.52 | MILLIMETRE",
                "12.5 +0.02 -0.01      | 12.5 +0.02/-0.01  | 12.49  | 12.52 | MILLIMETRE",
                "12.5 -0.01/-0.03      | 12.5 -0.01/-0.03  | 12.47  | 12.49 | MILLIMETRE",
                "12.5 −0.03 / −0.01    | 12.5 -0.01/-0.03  | 12.47  | 12.49 | MILLIMETRE",
                "12.5 +0.02/0          | 12.5 +0.02/0      | 12.5   | 12.52 | MILLIMETRE",
                "12.5 0/-0.02          | 12.5 0/-0.02      | 12.48  | 12.5  | MILLIMETRE",
                "Ø.312 +.000/-.002     | Ø0.312 +0.000/-0.002 | 0.310 | 0.312 | MILLIMETRE",
                "12.5 +.02/-.00        | 12.5 +0.02/-0.00  | 12.50  | 12.52 | MILLIMETRE",
                "12.5 -0.02/0          | 12.5 0/-0.02      | 12.48  | 12.5  | MILLIMETRE",
                "12.5 +0.05/-0.05      | 12.5 ±0.05        | 12.45  | 12.55 | MILLIMETRE",
                "12.500 +0.05/-0.050   | 12.500 ±0.05      | 12.450 | 12.550 | MILLIMETRE",
                "51.95..52.05          | 51.95..52.05      | 51.95  | 52.05 | MILLIMETRE",
                "51.95 to 52.05        | 51.95..52.05      | 51.95  | 52.05 | MILLIMETRE",
                "Ø51.95 … 52.05        | Ø51.95..52.05     | 51.95  | 52.05 | MILLIMETRE",
                "-0.05..0.02           | -0.05..0.02       | -0.05  | 0.02  | MILLIMETRE",
                "12 min                | 12 min            | 12     | none  | MILLIMETRE",
                "12 max                | 12 max            | none   | 12    | MILLIMETRE",
                "12 MAX.               | 12 max            | none   | 12    | MILLIMETRE",
                "≤ 12                  | 12 max            | none   | 12    | MILLIMETRE",
                "max R0.2              | R0.2 max          | none   | 0.2   | MILLIMETRE",
                "dia 40 ±0.1           | Ø40 ±0.1          | 39.9   | 40.1  | MILLIMETRE",
                "⌀ 40 ±0.1             | Ø40 ±0.1          | 39.9   | 40.1  | MILLIMETRE",
                "4x Ø5.5 ±0.1          | 4x Ø5.5 ±0.1      | 5.4    | 5.6   | MILLIMETRE",
                "4×Ø5.5 ±0.1           | 4x Ø5.5 ±0.1      | 5.4    | 5.6   | MILLIMETRE",
                "2X 12 ±0.1            | 2x 12 ±0.1        | 11.9   | 12.1  | MILLIMETRE",
                "SR10 ±0.1             | SR10 ±0.1         | 9.9    | 10.1  | MILLIMETRE",
                "SØ10 ±0.1             | SØ10 ±0.1         | 9.9    | 10.1  | MILLIMETRE",
                "sq 20 ±0.2            | □20 ±0.2          | 19.8   | 20.2  | MILLIMETRE",
                "C1 ±0.2               | C1 ±0.2           | 0.8    | 1.2   | MILLIMETRE",
                "2 ±0.2 x 45°          | 2 ±0.2 x45°       | 1.8    | 2.2   | MILLIMETRE",
                "12.5 ±0.05 mm         | 12.5 ±0.05 mm     | 12.45  | 12.55 | MILLIMETRE",
                "12.5mm ±0.05mm        | 12.5 ±0.05 mm     | 12.45  | 12.55 | MILLIMETRE",
                "0.5 ±0.005 in         | 0.5 ±0.005 in     | 0.495  | 0.505 | INCH",
                ".500\" ±.005\"        | 0.500 ±0.005 in   | 0.495  | 0.505 | INCH",
                "45° ±0.5°             | 45° ±0.5°         | 44.5   | 45.5  | DEGREE",
                "45° ±30'              | 45° ±30'          | 44.5   | 45.5  | DEGREE",
                "45 deg ±0.5 deg       | 45° ±0.5°         | 44.5   | 45.5  | DEGREE",
                "45°30' ±15'           | 45°30' ±15'       | 45.25  | 45.75 | DEGREE",
                "45° ±20'              | 45° ±20'          | 2680   | 2720  | ARC_MINUTE",
                "45° ±0°20'            | 45° ±0°20'        | 2680   | 2720  | ARC_MINUTE",
                "10°0'10\" ±5\"        | 10°0'10\" ±5\"    | 36005  | 36015 | ARC_SECOND",
                "45° +1°/0             | 45° +1°/0°        | 45     | 46    | DEGREE",
                "44°..46°              | 44°..46°          | 44     | 46    | DEGREE",
                "Ra 0.8 max            | Ra 0.8 max        | 0      | 0.8   | MICROMETRE",
                "ra0.8                 | Ra 0.8 max        | 0      | 0.8   | MICROMETRE",
                "Rz 2 min              | Rz 2 min          | 2      | none  | MICROMETRE",
                "Ra 0.4..0.8           | Ra 0.4..0.8       | 0.4    | 0.8   | MICROMETRE",
                "Rmax 6.3              | Rmax 6.3 max      | 0      | 6.3   | MICROMETRE",
                "Ra 32 µin max         | Ra 32 µin max     | 0      | 32    | MICROINCH",
                "flatness 0.02         | flatness 0.02     | 0      | 0.02  | MILLIMETRE",
                "⏥ 0.02                | flatness 0.02     | 0      | 0.02  | MILLIMETRE",
                "circularity 0.01      | roundness 0.01    | 0      | 0.01  | MILLIMETRE",
                "runout 0.05 A-B       | run-out 0.05 A-B  | 0      | 0.05  | MILLIMETRE",
                "total run out 0.05 A  | total run-out 0.05 A | 0   | 0.05  | MILLIMETRE",
                "concentricity Ø0.05 A | coaxiality Ø0.05 A | 0     | 0.05  | MILLIMETRE",
                "surface profile 0.2 (U) 0.05 A B | surface profile 0.2 (U) 0.05 A B | 0 | 0.2 | MILLIMETRE",
                "line profile 0.2 UZ-0.05 | line profile 0.2 UZ-0.05 | 0 | 0.2 | MILLIMETRE",
                "position Ø0.1 A B(M) C | position Ø0.1 A B (M) C | 0 | 0.1 | MILLIMETRE",
                "straightness 0.02 / 100 | straightness 0.02/100 | 0 | 0.02 | MILLIMETRE",
                "flatness 0.1/100×50 (F) | flatness 0.1/100x50 (F) | 0 | 0.1 | MILLIMETRE",
                "Ø20 ±0.01 Ⓔ           | Ø20 ±0.01 (E)     | 19.99  | 20.01 | MILLIMETRE",
                "20 h6 (E)             | 20 h6 (E)         | 19.987 | 20    | MILLIMETRE",
                "45° +0'/-30'          | 45° +0'/-30'      | 44.5   | 45    | DEGREE",
                "Ø 52P7                | Ø52 P7            | 51.949 | 51.979 | MILLIMETRE",
                "[40]                  | [40]              | none   | none  | MILLIMETRE",
                "4× [Ø40]              | [4x Ø40]          | none   | none  | MILLIMETRE",
                "(4x Ø40)              | (4x Ø40)          | none   | none  | MILLIMETRE",
                "40 REF                | (40)              | none   | none  | MILLIMETRE",
                "40 basic              | [40]              | none   | none  | MILLIMETRE",
                "M5x0.8-6H go/no-go    | M5x0.8-6H go/no-go | none  | none  | NONE",
                "Ø8 H7 GO / NO GO      | Ø8 H7 go/no-go    | none   | none  | NONE",
                "visual: no burrs, edges broken 0.2 max | visual: no burrs, edges broken 0.2 max | none | none | NONE",
                "Function : turns freely by hand | function: turns freely by hand | none | none | NONE",
            })
    void parse_written_comesToLimits(String written, String canonical, String lower, String upper, Unit unit) {
        Requirement requirement = RequirementNotation.parse(written);

        assertThat(requirement.text()).isEqualTo(canonical);
        Limits limits = requirement.resolve(METRIC).stated();
        assertThat(limits.lower().map(BigDecimal::toPlainString)).isEqualTo(Optional.ofNullable(lower));
        assertThat(limits.upper().map(BigDecimal::toPlainString)).isEqualTo(Optional.ofNullable(upper));
        assertThat(limits.unit()).isEqualTo(unit);
        assertThat(RequirementNotation.parse(requirement.text())).isEqualTo(requirement);
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Ø52 P7",
                "52 H7",
                "20 g6",
                "52 H7/p6",
                "40",
                "Ø40",
                "R3",
                "C1",
                "45°",
                "2x45°",
                "4x 1x45°",
                "45° (leg 30)",
                "position Ø0.1 (M) A B C",
                "position SØ0.2 A B C",
                "position 0 (M) A B C",
                "straightness Ø0.02 (L)",
                "surface profile 0.1 CZ",
                "perpendicularity Ø0.05 (P) 12 (M) A",
                "flatness 0.1 (F)",
            })
    void parse_canonicalText_isPrintedAgain(String text) {
        Requirement requirement = RequirementNotation.parse(text);

        assertThat(requirement.text()).isEqualTo(text);
        assertThat(RequirementNotation.parse(requirement.text())).isEqualTo(requirement);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "12,5 ±0,05        | 2  | comma                    | 12.5 ±0.05",
                "Ø52,0 P7          | 3  | comma                    | Ø52.0 P7",
                "12.5 +0.02        | 10 | second deviation         | 12.5 +0.02/0",
                "12.5 0.02/-0.01   | 5  | has a sign               | 12.5 ±0.02 or 12.5 +0.02/0",
                "52 7              | 3  | grade                    | 52 H7",
                "52 Q7             | 3  | I, L, O, Q and W         | 52 P7",
                "52 o6             | 3  | I, L, O, Q and W         | 52 p6",
                "52 Js7            | 3  | mixes                    | 52 JS7 or 52 js7",
                "52 H              | 4  | grade is missing         | 52 H7",
                "52 H19            | 4  | no grade 19              | 52 H7",
                "52 IT7            | 3  | width of a zone          | 52 H7 or 52 js7",
                "52 p6/H7          | 3  | hole first               | 52 H7/p6",
                "52 H7/G6          | 3  | both holes               | 52 H7/p6",
                "52.05..51.95      | 7  | not below                | 51.95..52.05",
                "12..12            | 4  | not below                | 12..12",
                "12.5 ±0           | 6  | lets nothing pass        | [12.5]",
                "12.5 ±-0.05       | 6  | amount alone             | 12.5 ±0.05",
                "±0.05             | 0  | nominal size is missing  | 12.5 ±0.05",
                "+0.02/-0.01       | 0  | nominal size is missing  | 12.5 +0.02/-0.01",
                "Ø-40 ±0.1         | 1  | never negative           | Ø40",
                "Ø1 ±5             | 3  | negative                 | ``",
                "45° ±0.5          | 8  | degrees or minutes       | 0.5° or 0.5'",
                "45 ±0.5°          | 4  | is an angle              | 45° ±0.5°",
                "45.5°30' ±15'     | 0  | smaller part             | 45.5° or 45°30'",
                "45°75'            | 3  | 60 make                  | 45°30'",
                "4x45° ±1°         | 7  | count                    | 45° ±1°",
                "2x45° ±0.1        | 6  | leg or on the angle      | 2 ±0.1 x45° for the leg",
                "flatnes 0.02      | 0  | no geometric             | flatness 0.02",
                "flatness 0.02 A   | 14 | has no datum             | flatness 0.02",
                "flatness -0.02    | 9  | no sign                  | flatness 0.02",
                "flatness 0        | 9  | lets nothing pass        | 0 (M)",
                "run-out 0.02      | 12 | towards a datum          | run-out 0.02 A",
                "run-out 0.02 (M) A | 13 | does not depend         | without (M)",
                "position Ø0.1 a b | 14 | capital letter           | A",
                "position Ø0.1 A A | 16 | named twice              | ``",
                "position Ø0.1M A  | 13 | datum, or a modifier     | 0.1 (M) A for maximum material, 0.1 M A for a datum M",
                "position Ø0.1 (X) | 14 | no modifier              | (M), (L), (F), (T), (P), (U)",
                "surface profile Ø0.1 | 16 | never a diameter      | without Ø",
                "position Ø0.1 (U) 0.05 A | 14 | unequally         | surface profile 0.2 (U) 0.05 A",
                "Ra -0.8           | 3  | never negative           | Ra 0.8 max",
                "Ra 0.8..0.4       | 8  | not below                | Ra 0.4..0.8",
                "M5x0.8-6H         | 0  | gauge                    | M5x0.8-6H go/no-go",
                "visual:           | 7  | what is to be checked    | visual: no burrs, edges broken 0.2 max",
                "-0.03/-0.01       | 0  | nominal size is missing  | 12.5 -0.03/-0.01",
                "-0.03 +0.01       | 0  | nominal size is missing  | 12.5 -0.03 +0.01",
                "[40 ±0.1]         | 4  | has no tolerance         | [40]",
                "[40               | 3  | closing                  | [40]",
                "(40               | 3  | closing                  | (40)",
                "[40] A            | 5  | not understood           | [40]",
                "r3                | 0  | capital letter           | R3",
                "12.5 ±0.05 mm in  | 14 | not understood           | 12.5 ±0.05 mm",
                "12.5 mm ±0.05 in  | 14 | one unit                 | ``",
                "<12               | 0  | value on the limit       | 12 max",
                "52.05/51.95       | 5  | slash                    | 51.95..52.05",
                "R5 ±0.1 (E)       | 8  | envelope                 | R5 ±0.1",
                "Ø52 P7 (51.949)   | 7  | not understood           | Ø52 P7",
                "hello             | 0  | neither a size           | 12.5 ±0.05, Ø52 P7, flatness 0.02, Ra 0.8 max, visual: no burrs",
                "45° H7            | 4  | tolerance class          | 45° ±0.5°",
                "R5 H7             | 3  | features of size         | R5 ±0.1",
                "40 (45)           | 3  | brackets                 | 40",
                "12. ±0.1          | 2  | ends in a point          | 12 or 12.0",
                "1e3 ±0.1          | 1  | powers of ten            | ``",
            })
    void parse_malformed_isRefusedWithPlaceAndExpectation(String written, int position, String part, String expected) {
        RequirementFault fault = catchThrowableOfType(RequirementFault.class, () -> RequirementNotation.parse(written));

        assertThat(fault).as("refusal of %s", written).isNotNull();
        assertThat(fault).hasMessageContaining(part);
        assertThat(fault.position()).contains(position);
        assertThat(fault.expected()).isEqualTo(expected);
        assertThat(fault.text()).isEqualTo(written);
    }

    @Test
    void parse_framedWithBars_isTheSameRequirement() {
        assertThat(RequirementNotation.parse("|⌖|Ø0.1 Ⓜ|A|B Ⓜ|C|"))
                .isEqualTo(RequirementNotation.parse("position Ø0.1 (M) A B (M) C"));
    }

    /** How a drawing sets each kind: ISO 129-1 stacks unequal deviations and limits, ISO 1101 frames, boxes the exact. */
    @Test
    void notation_eachKind_isSetAsADrawingSetsIt() {
        assertThat(set("12.5 ±0.05")).containsExactly(new Notation.Text("12.5 ±0.05"));
        assertThat(set("4x Ø12.5 +0.02/0"))
                .containsExactly(new Notation.Text("4× Ø12.5"), new Notation.Stacked("+0.02", "0"));
        assertThat(set("Ø51.95..52.05"))
                .containsExactly(new Notation.Text("Ø"), new Notation.Stacked("52.05", "51.95"));
        assertThat(set("position Ø0.1 (M) A B (M)"))
                .containsExactly(new Notation.Framed(GeometricCharacteristic.POSITION, List.of("Ø0.1 Ⓜ", "A", "B Ⓜ")));
        assertThat(set("[40]")).containsExactly(new Notation.Boxed("40"));
        assertThat(set("[4x Ø40]")).containsExactly(new Notation.Text("4× "), new Notation.Boxed("Ø40"));
        assertThat(set("(40)")).containsExactly(new Notation.Text("(40)"));
        assertThat(set("Ø52 P7 (E)")).containsExactly(new Notation.Text("Ø52 P7"), new Notation.Text(" Ⓔ"));
        assertThat(set("2x45°")).containsExactly(new Notation.Text("2 × 45°"));
        assertThat(set("surface profile 0.2 (U) 0.05 A"))
                .containsExactly(
                        new Notation.Framed(GeometricCharacteristic.SURFACE_PROFILE, List.of("0.2 Ⓤ 0.05", "A")));
    }

    private static List<Notation.Element> set(String written) {
        return RequirementNotation.parse(written).notation().elements();
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Ø40 ±0.1",
                "R3",
                "C1",
                "2x45°",
                "Ø39..41",
                "R0.2 max",
                "(Ø40)",
                "52 H7",
                "flatness 0.02",
                "run-out general"
            })
    void resolve_lengthOnADrawingInDegrees_isRefused(String written) {
        Drawing degrees = PlainDrawing.in(Unit.DEGREE).with(GeneralTolerance.parse("ISO 2768-mK"));

        assertThat(catchThrowableOfType(
                        RequirementFault.class,
                        () -> RequirementNotation.parse(written).resolve(degrees)))
                .hasMessageContaining("the plan's unit is the degree");
    }

    @Test
    void resolve_bareNumbersOnADrawingInDegrees_areAngles() {
        Drawing degrees = PlainDrawing.in(Unit.DEGREE)
                .with(GeneralTolerance.parse("ISO 2768-m"))
                .withShorterLeg("30");

        assertThat(RequirementNotation.parse("45 ±0.5").resolve(degrees).stated())
                .isEqualTo(Limits.between(new BigDecimal("44.5"), new BigDecimal("45.5"), Unit.DEGREE));
        assertThat(RequirementNotation.parse("45").resolve(degrees).stated())
                .isEqualTo(Limits.between(new BigDecimal("44.5"), new BigDecimal("45.5"), Unit.DEGREE));
        assertThat(RequirementNotation.parse("Ø40 ±0.1 mm")
                        .resolve(degrees)
                        .stated()
                        .unit())
                .isEqualTo(Unit.MILLIMETRE);
    }
}
