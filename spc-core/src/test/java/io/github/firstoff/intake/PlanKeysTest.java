package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.plan.Axis;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.Coordinates;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.DecisionChoice.Comparison;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.Material;
import io.github.firstoff.plan.Materials;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.UncertaintyBudget;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What the keys of a plan come to that decide how readings are judged. */
class PlanKeysTest {
    private static final Path FULL = Path.of("src/test/resources/intake/plan-full.json");

    private static String plan(String keys, String characteristics) {
        return """
                {"schema": "firstoff-plan-1", "part": {"number": "HQ-900-P", "revision": "A", "material": "EN AW-6061 T6"},
                 "unit": "mm", %s "characteristics": [%s]}
                """.formatted(keys, characteristics);
    }

    private static PlanFile read(String keys, String characteristics) {
        return PlanFile.read(Input.text("p.json", plan(keys, characteristics)));
    }

    private static Characteristic full(String number) {
        return PlanFile.read(FULL).plan().characteristics().stream()
                .filter(each -> each.number().equals(number))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theRuleOfThePlan_holdsWhereACharacteristicSaysNothingElse() {
        String keys =
                "\"decisionRule\": {\"rule\": \"guarded\", \"fraction\": \"0.825\"}, \"comparison\": \"absolute\","
                        + " \"gauges\": [{\"id\": \"G\", \"expandedUncertainty\": \"0.002\"}],";
        String one = "{\"number\": \"%s\", \"feature\": \"face\", \"requirement\": \"12 ±0.1\", \"gauge\": \"G\"%s}";
        ResolvedPlan plan = read(
                        keys,
                        String.join(
                                ",",
                                one.formatted("1", ""),
                                one.formatted("2", ", \"decisionRule\": \"simple\", \"comparison\": \"rounding\""),
                                one.formatted("3", ", \"decisionRule\": {\"rule\": \"guarded\", \"fraction\": 1}"),
                                one.formatted("4", ", \"decisionRule\": \"simple\""),
                                one.formatted("5", ", \"decisionRule\": \"guarded\"")))
                .resolve();

        BigDecimal fraction = new BigDecimal("0.825");
        assertThat(plan.find("1").orElseThrow().decision())
                .isEqualTo(new DecisionChoice(RuleChoice.GUARDED, fraction, Comparison.ABSOLUTE));
        assertThat(plan.find("2").orElseThrow().decision())
                .isEqualTo(new DecisionChoice(RuleChoice.SIMPLE, fraction, Comparison.ROUNDING));
        assertThat(plan.find("3").orElseThrow().decision())
                .isEqualTo(new DecisionChoice(RuleChoice.GUARDED, BigDecimal.ONE, Comparison.ABSOLUTE));
        assertThat(plan.find("4").orElseThrow().decision())
                .isEqualTo(new DecisionChoice(RuleChoice.SIMPLE, fraction, Comparison.ABSOLUTE));
        assertThat(plan.find("5").orElseThrow().decision().guardFraction()).isEqualTo(fraction);
    }

    @Test
    void roundingUnderTheGuardedRule_isAContradiction() {
        String keys = "\"decisionRule\": \"guarded\", \"comparison\": \"rounding\","
                + " \"gauges\": [{\"id\": \"G\", \"expandedUncertainty\": \"0.002\"}],";
        assertThatThrownBy(() -> read(
                                keys,
                                "{\"number\": \"1\", \"feature\": \"face\", \"requirement\": \"12 ±0.1\", \"gauge\": \"G\"}")
                        .resolve())
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("guard band");
    }

    @Test
    void withoutAWord_readingsAreDecidedSimplyAndAsTheyAre() {
        assertThat(read("", "{\"number\": 1, \"feature\": \"face\", \"requirement\": \"12 ±0.1\"}")
                        .plan()
                        .decision())
                .isEqualTo(DecisionChoice.SIMPLE);
    }

    @Test
    void settingsCoordinatesAxisAndLeg_areRead() {
        assertThat(full("8").options().settings()).containsExactly("low", "middle", "3");
        assertThat(full("5").options().coordinates())
                .contains(new Coordinates(new BigDecimal("12.5"), new BigDecimal("-30"), Optional.empty()));
        assertThat(full("6").options().coordinates().orElseThrow().z()).contains(new BigDecimal("3"));
        assertThat(full("7").options().axis()).contains(Axis.X);
        assertThat(full("10").options().shorterLeg()).contains(new BigDecimal("42"));
    }

    /** ISO 2768-1, table 3, class m: ±0°30' for a shorter leg over 10 up to 50 mm, ±0°20' over 50 up to 120. */
    @Test
    void theLegOfAnAngle_choosesItsGeneralTolerance() {
        for (String[] row : new String[][] {{"50", "29.5"}, {"50.01", "1780"}}) {
            ResolvedPlan plan = read(
                            "\"generalTolerance\": \"ISO 2768-m\",",
                            "{\"number\": 1, \"feature\": \"ramp\", \"requirement\": \"30°\", \"leg\": \"" + row[0]
                                    + "\"}")
                    .resolve();
            assertThat(plan.find("1").orElseThrow().limits().lower()).contains(new BigDecimal(row[1]));
        }
    }

    @Test
    void classes_areDemands() {
        InspectionPlan plan = PlanFile.read(FULL).plan();

        assertThat(plan.demands().get(Importance.CRITICAL))
                .isEqualTo(new Demand(
                        true,
                        true,
                        Map.of(
                                "cp", new BigDecimal("1.5"),
                                "cpk", new BigDecimal("1.33"),
                                "pp", new BigDecimal("1.5"),
                                "ppk", new BigDecimal("1.33"),
                                "cpm", new BigDecimal("1.2"))));
        assertThat(plan.demands().get(Importance.MAJOR)).isEqualTo(new Demand(false, false, Map.of()));
        assertThat(plan.demands().get(Importance.MINOR)).isEqualTo(new Demand(false, false, Map.of()));
    }

    @Test
    void aClassThatDemandsEveryPiece_goesBeforeASampleAndSaysSo() {
        PlanFile file = read(
                "\"classes\": {\"critical\": {\"inspect\": \"every\"}},",
                "{\"number\": 1, \"feature\": \"face\", \"requirement\": \"12 ±0.1\", \"class\": \"critical\", \"inspect\":"
                        + " \"sample\"}");

        assertThat(file.plan().extentOf(file.plan().characteristics().get(0)))
                .isEqualTo(Characteristic.Extent.EVERY_PIECE);
        assertThat(file.notices())
                .extracting(Notice::message)
                .containsExactly("the class critical demands every piece, which goes before \"sample\"");
    }

    @Test
    void temperature_isReadAndItsHalfWidthSupposed() {
        assertThat(PlanFile.read(FULL).plan().thermal())
                .contains(new Thermal(
                        new BigDecimal("0.0000236"),
                        new BigDecimal("0.000001"),
                        new BigDecimal("0.0000115"),
                        new BigDecimal("0.3"),
                        Remark.of("expansion.stated", "stated in the plan")));
        Thermal supposed = read(
                        "\"temperature\": {\"expansion\": \"0.0000236\", \"expansionHalfWidth\": 0, \"gaugeExpansion\": 0},",
                        "{\"number\": 1, \"feature\": \"face\", \"requirement\": \"12 ±0.1\"}")
                .plan()
                .thermal()
                .orElseThrow();
        assertThat(supposed.temperatureHalfWidth()).isEqualTo(new BigDecimal("0.5"));
    }

    @Test
    void theExpansionOfAKnownMaterial_isTakenFromTheTableUnlessThePlanStatesOne() {
        Material aluminium = Materials.find("EN AW-6061 T6").orElseThrow();
        String face = "{\"number\": 1, \"feature\": \"face\", \"requirement\": \"12 ±0.1\"}";

        assertThat(read("\"temperature\": {\"gaugeExpansion\": \"0.0000115\"},", face)
                        .plan()
                        .thermal())
                .contains(aluminium.thermal(new BigDecimal("0.0000115"), new BigDecimal("0.5")));
        assertThat(read("\"temperature\": {\"expansion\": \"0.000023\", \"gaugeExpansion\": 0},", face)
                        .plan()
                        .thermal())
                .contains(new Thermal(
                        new BigDecimal("0.000023"),
                        aluminium.halfWidth(),
                        BigDecimal.ZERO,
                        new BigDecimal("0.5"),
                        Remark.of("expansion.stated", "stated in the plan")));
    }

    /**
     * JCGM 100:2008, example H.1 (calibration of an end gauge of 50 mm) with the sources of its table H.1 and H.1.6: u_c = 32 nm,
     * ν_eff = 16, k = 2.92, U_99 = 93 nm. In micrometres here; 50 000 µm · 0.1 °C = 5000 µm·K for the difference of expansions,
     * 50 000 µm · 11.5·10⁻⁶/°C = 0.575 µm/°C for the difference of temperatures.
     */
    @Test
    void aBudget_reproducesTheExampleOfTheGuide() {
        String budget = """
                "gauges": [ { "id": "EG", "unit": "µm", "budget": { "probability": "0.99", "components": [
                  { "name": "standard", "value": "0.075", "distribution": "normal", "divisor": "3", "degreesOfFreedom": 18 },
                  { "name": "comparison", "value": "0.0097", "distribution": "normal", "degreesOfFreedom": "25.6" },
                  { "name": "difference of expansions", "value": "0.000001", "distribution": "rectangular",
                    "sensitivity": "5000", "degreesOfFreedom": 50 },
                  { "name": "difference of temperatures", "value": "0.05", "distribution": "rectangular",
                    "sensitivity": "-0.575", "degreesOfFreedom": 2 } ] } } ],
                """;
        Gauge gauge = read(budget, "{\"number\": 1, \"feature\": \"face\", \"requirement\": \"12 ±0.1\"}")
                .plan()
                .gauge("EG")
                .orElseThrow();
        UncertaintyBudget.Result result = gauge.budget().orElseThrow().evaluate();

        assertThat(gauge.uncertainty().orElseThrow().constant()).isEqualByComparingTo("0.093");
        assertThat(gauge.uncertainty().orElseThrow().coverageFactor().setScale(2, RoundingMode.HALF_UP))
                .isEqualByComparingTo("2.92");
        assertThat(gauge.uncertainty().orElseThrow().unit()).isEqualTo(Unit.MICROMETRE);
        assertThat(result.degreesOfFreedom().orElseThrow()).isEqualTo(16);
        assertThat(result.standardUncertainty().setScale(3, RoundingMode.HALF_UP))
                .isEqualByComparingTo("0.032");
    }

    @Test
    void everyShapeOfASource_isRead() {
        Gauge machine = PlanFile.read(FULL).plan().gauge("CMM-1").orElseThrow();

        assertThat(machine.budget().orElseThrow().sources())
                .extracting(source -> source.spread().word())
                .containsExactly("normal", "rectangular", "trapezoidal", "u-shaped");
        assertThat(machine.budget().orElseThrow().sources().get(0).standardUncertainty())
                .isEqualByComparingTo("0.001");
        assertThat(PlanFile.read(FULL)
                        .plan()
                        .gauge("CMM-2")
                        .orElseThrow()
                        .uncertainty()
                        .orElseThrow()
                        .coverageFactor())
                .isEqualByComparingTo("3");
        assertThat(PlanFile.read(FULL).plan().gauge("BG-3").orElseThrow().budget())
                .isEmpty();
    }
}
