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
import org.junit.jupiter.params.provider.MethodSource;

/** Bonus at maximum and least material, and the position deviation, against worked examples. */
class GeometricZoneTest {

    static List<ReferenceRows.Row> worked() {
        return ReferenceRows.of("geometry/position-at-material-condition.csv");
    }

    private static PartSizes measured(String value, Unit unit) {
        return number ->
                number.equals("4") ? Optional.of(new PartSizes.Size(new BigDecimal(value), unit)) : Optional.empty();
    }

    private static Drawing.SizeFeature feature(String least, String greatest, Drawing.Form form) {
        return new Drawing.SizeFeature(
                "4", Limits.between(new BigDecimal(least), new BigDecimal(greatest), Unit.MILLIMETRE), form);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("worked")
    void allowedFor_workedExample_isExact(ReferenceRows.Row row) {
        String modifier = switch (row.get("modifier")) {
            case "MMC" -> " (M)";
            case "LMC" -> " (L)";
            default -> "";
        };
        Drawing.Form form = row.get("feature").equals("hole") ? Drawing.Form.HOLE : Drawing.Form.SHAFT;
        ToleranceZone zone = RequirementNotation.parse("position Ø" + row.get("tolerance") + modifier + " A B C")
                .resolve(PlainDrawing.in(Unit.MILLIMETRE)
                        .with(feature(row.get("least size"), row.get("greatest size"), form)));

        ToleranceZone.Allowed allowed = zone.allowedFor(measured(row.get("size"), Unit.MILLIMETRE));
        PositionDeviation deviation = PositionDeviation.of(row.decimal("x"), row.decimal("y"));

        assertThat(allowed.limits().upper().orElseThrow()).isEqualByComparingTo(row.get("allowed"));
        assertThat(allowed.bonus().map(ToleranceZone.Bonus::amount).orElse(BigDecimal.ZERO))
                .isEqualByComparingTo(row.get("bonus"));
        assertThat(allowed.bonus().isPresent()).isEqualTo(!modifier.isEmpty());
        assertThat(zone.isFixed()).isEqualTo(modifier.isEmpty());
        assertThat(deviation.exceeds(allowed.limits().upper().orElseThrow()))
                .isEqualTo(row.get("within").equals("no"));
        assertThat(deviation.rounded(row.decimal("deviation").scale())).isEqualByComparingTo(row.get("deviation"));
        if (!row.get("virtual size").equals("none")) {
            assertThat(((GeometricZone) zone).virtualSize().orElseThrow())
                    .isEqualByComparingTo(row.get("virtual size"));
        }
    }

    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource({
        // hole 10 to 10.2
        "HOLE,  (M), 10.00, 0,    no bonus: hole 4 measures 10.00 mm‚ its maximum material size 10.0 mm",
        "HOLE,  (M), 10.12, 0.12, bonus 0.12 mm: hole 4 measures 10.12 mm‚ 0.12 mm from its maximum material size 10.0 mm",
        "HOLE,  (L), 10.12, 0.08, bonus 0.08 mm: hole 4 measures 10.12 mm‚ 0.08 mm from its least material size 10.2 mm",
        "SHAFT, (M), 10.12, 0.08, bonus 0.08 mm: shaft 4 measures 10.12 mm‚ 0.08 mm from its maximum material size 10.2 mm",
        "SHAFT, (L), 10.12, 0.12, bonus 0.12 mm: shaft 4 measures 10.12 mm‚ 0.12 mm from its least material size 10.0 mm",
        "HOLE,  (M), 10.21, 0,    no bonus: the size of 4‚ 10.21 mm‚ is outside its own limits",
        "HOLE,  (L), 9.99,  0,    no bonus: the size of 4‚ 9.99 mm‚ is outside its own limits",
    })
    void allowedFor_formAndModifier_decideTheSign(
            Drawing.Form form, String modifier, String size, BigDecimal bonus, String reason) {
        ToleranceZone zone = RequirementNotation.parse("position Ø0.1 " + modifier + " A B C")
                .resolve(PlainDrawing.in(Unit.MILLIMETRE).with(feature("10.0", "10.2", form)));

        ToleranceZone.Allowed allowed = zone.allowedFor(measured(size, Unit.MILLIMETRE));

        assertThat(allowed.bonus().orElseThrow().amount()).isEqualByComparingTo(bonus);
        assertThat(allowed.bonus().orElseThrow().reason()).isEqualTo(reason.replace('‚', ','));
        assertThat(allowed.limits().upper().orElseThrow()).isEqualByComparingTo(bonus.add(new BigDecimal("0.1")));
        assertThat(allowed.limits().naturalLower()).isTrue();
    }

    @Test
    void allowedFor_sizeNotMeasured_earnsNothingAndSaysSo() {
        ToleranceZone zone = RequirementNotation.parse("position Ø0.1 (M) A B C")
                .resolve(PlainDrawing.in(Unit.MILLIMETRE).with(feature("10", "10.2", Drawing.Form.HOLE)));

        ToleranceZone.Allowed allowed = zone.allowedFor(PartSizes.NONE);

        assertThat(allowed.limits()).isEqualTo(zone.stated());
        assertThat(allowed.bonus().orElseThrow().reason()).contains("not measured");
        assertThat(zone.allowedFor(measured("45", Unit.DEGREE))
                        .bonus()
                        .orElseThrow()
                        .amount())
                .isZero();
    }

    @Test
    void allowedFor_datumModifierAlone_earnsNothing() {
        ToleranceZone zone = RequirementNotation.parse("position Ø0.1 A B (M)")
                .resolve(PlainDrawing.in(Unit.MILLIMETRE).with(feature("10", "10.2", Drawing.Form.HOLE)));

        assertThat(zone.isFixed()).isTrue();
        assertThat(zone.allowedFor(measured("10.2", Unit.MILLIMETRE)).limits().upper())
                .contains(new BigDecimal("0.1"));
    }

    @Test
    void allowedFor_inchDrawingWithMetricReading_staysExact() {
        Drawing.SizeFeature hole = new Drawing.SizeFeature(
                "4", Limits.between(new BigDecimal("0.4"), new BigDecimal("0.41"), Unit.INCH), Drawing.Form.HOLE);
        ToleranceZone zone = RequirementNotation.parse("position Ø.005 (M) A B C")
                .resolve(PlainDrawing.in(Unit.INCH).with(hole));

        // 0.4 in = 10.16 mm; 10.2 mm departs by 0.04 mm, which is no finite decimal of an inch
        Limits metric = zone.allowedFor(measured("10.2", Unit.MILLIMETRE)).limits();
        assertThat(metric.unit()).isEqualTo(Unit.MILLIMETRE);
        assertThat(metric.upper().orElseThrow()).isEqualByComparingTo("0.167");
        Limits inch = zone.allowedFor(measured("0.404", Unit.INCH)).limits();
        assertThat(inch.unit()).isEqualTo(Unit.INCH);
        assertThat(inch.upper().orElseThrow()).isEqualByComparingTo("0.009");
    }

    @Test
    void resolve_withoutSizeFeature_isRefused() {
        Requirement requirement = RequirementNotation.parse("position Ø0.1 (M) A B C");

        RequirementFault fault = catchThrowableOfType(
                RequirementFault.class, () -> requirement.resolve(PlainDrawing.in(Unit.MILLIMETRE)));

        assertThat(fault).hasMessageContaining("names none");
        assertThat(fault.position()).contains(14);
        assertThat(fault.expected()).contains("sizeFeature");
    }

    @Test
    void resolve_sizeFeatureWithoutTheMaterialLimit_isRefused() {
        Drawing.SizeFeature oneSided =
                new Drawing.SizeFeature("4", Limits.atMost(new BigDecimal("10.2"), Unit.MILLIMETRE), Drawing.Form.HOLE);
        Drawing drawing = PlainDrawing.in(Unit.MILLIMETRE).with(oneSided);

        assertThat(catchThrowableOfType(
                        RequirementFault.class,
                        () -> RequirementNotation.parse("position Ø0.1 (M) A").resolve(drawing)))
                .hasMessageContaining("no limit at maximum material");
        assertThat(RequirementNotation.parse("position Ø0.1 (L) A")
                        .resolve(drawing)
                        .isFixed())
                .isFalse();
    }

    @Test
    void positionDeviation_onTheTolerance_isWithin() {
        // 3-4-5: 2·√(0.06² + 0.08²) = 0.2 exactly
        PositionDeviation exact = PositionDeviation.of(new BigDecimal("0.06"), new BigDecimal("-0.08"));
        PositionDeviation beyond = PositionDeviation.of(new BigDecimal("0.06"), new BigDecimal("0.0800000000000001"));

        assertThat(exact.exceeds(new BigDecimal("0.2"))).isFalse();
        assertThat(beyond.exceeds(new BigDecimal("0.2"))).isTrue();
        assertThat(beyond.rounded(6)).isEqualByComparingTo("0.2");
        assertThat(PositionDeviation.across(new BigDecimal("-0.05")).exceeds(new BigDecimal("0.1")))
                .isFalse();
        // 2·√(1 + 4 + 4) = 6
        assertThat(PositionDeviation.of(BigDecimal.ONE, new BigDecimal(2), new BigDecimal(-2))
                        .rounded(3))
                .isEqualTo(new BigDecimal("6.000"));
    }

    @ParameterizedTest(name = "2·√({0}² + {1}²) to {2} places")
    @CsvSource({
        // √2 = 1.41421356237309504880168872420969807856967187537694… (OEIS A002193)
        "0.5, 0.5, 0,  1",
        "0.5, 0.5, 4,  1.4142",
        "0.5, 0.5, 10, 1.4142135624",
        "0.5, 0.5, 30, 1.414213562373095048801688724210",
        "0,   0,   3,  0.000",
        "0.25, 0,  0,  1",
        "0.125, 0, 1,  0.3",
    })
    void positionDeviation_rounded_isRoundedHalfUpFromTheExactRoot(
            BigDecimal x, BigDecimal y, int places, BigDecimal expected) {
        assertThat(PositionDeviation.of(x, y).rounded(places)).isEqualTo(expected);
    }

    /** ASME Y14.5 and ISO 1101 write the same zone differently. */
    @Test
    void unequalDisposition_bothNotations_describeTheSameZone() {
        GeometricTolerance asme = (GeometricTolerance) RequirementNotation.parse("surface profile 0.2 (U) 0.05 A");
        GeometricTolerance iso = (GeometricTolerance) RequirementNotation.parse("surface profile 0.2 UZ-0.05 A");

        for (GeometricTolerance each : List.of(asme, iso)) {
            UnequalDisposition zone = each.unequal().orElseThrow();
            assertThat(zone.outward(each.tolerance())).isEqualByComparingTo("0.05");
            assertThat(zone.inward(each.tolerance())).isEqualByComparingTo("0.15");
        }
    }
}
