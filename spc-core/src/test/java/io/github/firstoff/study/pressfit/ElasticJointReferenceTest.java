package io.github.firstoff.study.pressfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.assembly.Criterion;
import io.github.firstoff.assembly.Smoothing;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.tolerance.BearingTable;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Textbook formulas and worked examples of press fits, DIN 7190 smoothing, ISO 492 and ISO 5753-1, from the reference collection. */
class ElasticJointReferenceTest {
    private static final String FILE = "pressfit/press.json";
    private static final Percentage COMPUTED = Percentage.withPercentage(1e-7);

    private static ElasticJoint joint(JsonNode in, Criterion criterion) {
        double young = in.path("E_MPa").asDouble();
        return new ElasticJoint(
                in.path("d_mm").asDouble(),
                in.path("length_mm").asDouble(),
                body(in, in.path("outer_diameter_mm").asDouble(), "outer", young),
                body(in, in.path("inner_bore_mm").asDouble(), "inner", young),
                criterion);
    }

    private static ElasticJoint.Body body(JsonNode in, double far, String name, double young) {
        return new ElasticJoint.Body(
                far,
                in.path("E_" + name + "_MPa").asDouble(young),
                in.path("nu_" + name).asDouble(0.3),
                12e-6,
                300);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "PRESS-steel-solid",
                "PRESS-hollow-shaft",
                "PRESS-cast-iron-hub",
                "PRESS-thin-sleeve-steel-in-aluminium"
            })
    void textbookJoints_comeToTheReferenceValues(String id) {
        JsonNode reference = ReferenceFile.reference(FILE, id);
        JsonNode in = reference.path("inputs");
        JsonNode out = reference.path("expected");
        ElasticJoint joint = joint(in, Criterion.VON_MISES);
        double p = joint.pressure(in.path("diametral_interference_mm").asDouble());
        double d = joint.diameter();
        double insideRadius = Math.max(joint.inner().farDiameter(), 1e-9) / 2;

        Map<String, Double> found = Map.ofEntries(
                Map.entry("pressure_MPa", p),
                Map.entry("outer_hoop_at_interface_MPa", joint.outerHoop(d / 2, p)),
                Map.entry(
                        "outer_hoop_at_outside_MPa",
                        joint.outerHoop(joint.outer().farDiameter() / 2, p)),
                Map.entry("outer_radial_at_interface_MPa", joint.outerRadial(d / 2, p)),
                Map.entry("inner_hoop_at_interface_MPa", joint.innerHoop(d / 2, p)),
                Map.entry("inner_hoop_at_bore_MPa", joint.innerHoop(insideRadius, p)),
                Map.entry("outer_growth_of_outside_diameter_mm", joint.outsideGrowth(p)),
                Map.entry("inner_change_of_bore_mm", -joint.insideShrinkage(p)),
                Map.entry("interface_growth_outer_mm", joint.boreGrowth(p)),
                Map.entry("interface_shrink_inner_mm", joint.seatShrinkage(p)),
                Map.entry("tresca_outer_MPa", joint(in, Criterion.TRESCA).outerEquivalent(p)),
                Map.entry("mises_outer_plane_stress_MPa", joint.outerEquivalent(p)),
                Map.entry(
                        "press_in_force_N",
                        joint.axialForce(p, in.path("friction").asDouble())),
                Map.entry("torque_Nm", joint.torque(p, in.path("friction").asDouble())));
        assertThat(found.keySet()).hasSize(out.size());
        found.forEach((key, value) -> {
            double expected = out.path(key).asDouble(Double.NaN);
            assertThat(value).as(key).isCloseTo(expected, within(1e-9 * Math.max(1e-3, Math.abs(expected))));
        });
    }

    /** Printed with three figures: 58.3 MPa, 151.7 MPa, 6.87 kN·m. */
    @Test
    void theStoredExample_comesToItsPrintedDigits() {
        JsonNode in = ReferenceFile.reference(FILE, "PRESS-STORED-100-150").path("inputs");
        ElasticJoint joint = joint(in, Criterion.TRESCA);
        double p = joint.pressure(in.path("diametral_interference_mm").asDouble());

        assertThat(p).isCloseTo(58.3, Offset.offset(0.05));
        assertThat(joint.outerHoop(50, p)).isCloseTo(151.7, Offset.offset(0.05));
        assertThat(joint.innerEquivalent(p)).isCloseTo(58.3, Offset.offset(0.05));
        assertThat(joint.torque(p, in.path("friction").asDouble()) / 1000).isCloseTo(6.87, Offset.offset(0.005));
    }

    /** The book's interference is on the radius: 254 MPa and 784 MPa are those of twice as much on the diameter. */
    @Test
    void theBooksPinInItsCollar_comesToItsPrintedDigits() {
        JsonNode in = ReferenceFile.reference(FILE, "PRESS-GROOVER-PIN").path("inputs");
        double young = in.path("E_MPa").asDouble();
        ElasticJoint.Body collar = new ElasticJoint.Body(in.path("collar_mm").asDouble(), young, 0.3, 12e-6, 300);
        ElasticJoint.Body pin = new ElasticJoint.Body(0, young, 0.3, 12e-6, 300);
        ElasticJoint joint = new ElasticJoint(in.path("pin_mm").asDouble(), 20, collar, pin, Criterion.TRESCA);
        double onDiameter = 2 * in.path("interference_mm").asDouble();
        double p = joint.pressure(onDiameter);

        assertThat(p).isCloseTo(254, Offset.offset(0.5));
        assertThat(joint.outerEquivalent(p)).isCloseTo(784, Offset.offset(0.5));
        assertThat(joint.pressure(onDiameter / 2)).isCloseTo(127.13091563786008, COMPUTED);
    }

    @ParameterizedTest
    @ValueSource(strings = {"PRESS-SMOOTHING-6.3-6.3", "PRESS-SMOOTHING-4-10"})
    void smoothing_followsBothEditions(String id) {
        JsonNode reference = ReferenceFile.reference(FILE, id);
        BigDecimal outer = reference.path("inputs").path("Rz_outer_um").decimalValue();
        BigDecimal inner = reference.path("inputs").path("Rz_inner_um").decimalValue();
        JsonNode out = reference.path("expected");

        assertThat(Smoothing.DIN_7190_2001.loss(outer, inner).movePointRight(3).doubleValue())
                .isCloseTo(out.path("loss_2001_um").asDouble(), COMPUTED);
        assertThat(Smoothing.DIN_7190_1_2017
                        .loss(outer, inner)
                        .movePointRight(3)
                        .doubleValue())
                .isCloseTo(out.path("loss_2017_um").asDouble(), COMPUTED);
    }

    @Test
    void heating_comesToTheReferenceTemperature() {
        JsonNode reference = ReferenceFile.reference(FILE, "PRESS-THERMAL");
        JsonNode in = reference.path("inputs");
        double d = in.path("d_mm").asDouble();
        ElasticJoint.Body hub =
                new ElasticJoint.Body(2 * d, 210000, 0.3, in.path("alpha_per_K").asDouble(), 300);
        ElasticJoint joint =
                new ElasticJoint(d, 30, hub, new ElasticJoint.Body(0, 210000, 0.3, 12e-6, 300), Criterion.TRESCA);

        assertThat(joint.heatingTo(
                        in.path("interference_mm").asDouble(),
                        in.path("clearance_mm").asDouble(),
                        in.path("room_C").asDouble()))
                .isCloseTo(reference.path("expected").path("hub_temperature_C").asDouble(), Offset.offset(1e-6));
    }

    /** From DIN 7190-1: the elastic limit is p = Rₑ(1 − Q²)/√3 of a hub and of a hollow shaft, and 2Rₑ/√3 of a solid one. */
    @Test
    void din7190_elasticLimits() {
        ElasticJoint.Body hub = new ElasticJoint.Body(100, 210000, 0.3, 12e-6, 355);
        ElasticJoint.Body solid = new ElasticJoint.Body(0, 210000, 0.3, 12e-6, 280);
        ElasticJoint.Body hollow = new ElasticJoint.Body(20, 210000, 0.3, 12e-6, 100);
        ElasticJoint with = new ElasticJoint(50, 60, hub, hollow, Criterion.DIN_7190);
        ElasticJoint without = new ElasticJoint(50, 60, hub, solid, Criterion.DIN_7190);

        assertThat(hub.yield() / without.outerEquivalent(1)).isCloseTo(355 * (1 - 0.25) / Math.sqrt(3), COMPUTED);
        assertThat(solid.yield() / without.innerEquivalent(1)).isCloseTo(2 * 280 / Math.sqrt(3), COMPUTED);
        assertThat(hollow.yield() / with.innerEquivalent(1)).isCloseTo(100 * (1 - 0.16) / Math.sqrt(3), COMPUTED);
        assertThat(with.yieldPressure()).isCloseTo(100 * (1 - 0.16) / Math.sqrt(3), COMPUTED);
    }

    static List<String> bearings() {
        List<String> ids = new ArrayList<>();
        for (JsonNode each : ReferenceFile.file(FILE).path("cases")) {
            if (each.path("id").asText().startsWith("BRG")) {
                ids.add(each.path("id").asText());
            }
        }
        return ids;
    }

    @ParameterizedTest
    @MethodSource("bearings")
    void bearingTables_holdTheReferenceValues(String id) {
        JsonNode reference = ReferenceFile.reference(FILE, id);
        JsonNode in = reference.path("inputs");
        JsonNode out = reference.path("expected");
        boolean memory = reference.path("provenance").asText().contains("memory");
        if (id.contains("INNER")) {
            BigDecimal bore = in.path("bore_up_to_mm").decimalValue();
            hasDeviation(BearingTable.innerRing(bore, "normal"), bore, out.path("delta_dmp_lower_um"), memory);
        } else if (id.contains("OUTER")) {
            BigDecimal outside = in.path("outside_up_to_mm").decimalValue();
            hasDeviation(BearingTable.outerRing(outside, "normal"), outside, out.path("delta_Dmp_lower_um"), memory);
        } else {
            BigDecimal bore = in.path("bore_up_to_mm").decimalValue();
            out.properties().forEach(group -> {
                Limits limits = BearingTable.clearance(bore, group.getKey())
                        .orElseThrow()
                        .limits();
                assertThat(limits.lower())
                        .hasValueSatisfying(low -> assertThat(low)
                                .isEqualByComparingTo(group.getValue().get(0).decimalValue()));
                assertThat(limits.upper())
                        .hasValueSatisfying(high -> assertThat(high)
                                .isEqualByComparingTo(group.getValue().get(1).decimalValue()));
            });
        }
    }

    private static void hasDeviation(
            Optional<BearingTable.Found> found, BigDecimal size, JsonNode lower, boolean memory) {
        Limits limits = found.orElseThrow().limits();
        assertThat(limits.upper().orElseThrow()).isEqualByComparingTo(size);
        assertThat(limits.lower().orElseThrow())
                .isEqualByComparingTo(size.add(lower.decimalValue().movePointLeft(3)));
        assertThat(found.orElseThrow().fromMemory()).isEqualTo(memory);
    }

    /** No table falls as sizes or groups grow; a slip of memory in one cell would show as a step back. */
    @Test
    void bearingTables_growWithSizeAndGroup() {
        for (String toleranceClass : BearingTable.CLASSES) {
            growing(size -> BearingTable.innerRing(size, toleranceClass), 2, 400);
            growing(size -> BearingTable.outerRing(size, toleranceClass), 3, 800);
        }
        for (int bore = 3; bore <= 180; bore++) {
            BigDecimal before = BigDecimal.ONE.negate();
            for (String group : BearingTable.GROUPS) {
                Optional<BearingTable.Found> found = BearingTable.clearance(new BigDecimal(bore), group);
                if (found.isPresent()) {
                    Limits limits = found.get().limits();
                    assertThat(limits.lower().orElseThrow()).isGreaterThan(before);
                    assertThat(limits.upper().orElseThrow())
                            .isGreaterThan(limits.lower().orElseThrow());
                    before = limits.lower().orElseThrow();
                }
            }
        }
    }

    private interface Table {
        Optional<BearingTable.Found> of(BigDecimal size);
    }

    private static void growing(Table table, int from, int to) {
        BigDecimal width = BigDecimal.ZERO;
        for (int size = from; size <= to; size++) {
            Optional<BearingTable.Found> found = table.of(new BigDecimal(size));
            assertThat(found).as("size %s", size).isPresent();
            BigDecimal here = found.get().limits().width().orElseThrow();
            assertThat(here).as("size %s", size).isGreaterThanOrEqualTo(width);
            width = here;
        }
    }
}
