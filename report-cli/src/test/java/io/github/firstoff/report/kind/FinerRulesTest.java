package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.Study;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.sheet.SheetMaker;
import io.github.firstoff.tolerance.RequirementNotation;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What sheets say of the finer decisions: parts of U, rounding, 20 °C, positions from coordinates, settings, demanded indices. */
class FinerRulesTest {
    private static final Reading.Origin ORIGIN = new Reading.Origin("readings.csv", 2);
    private static final Gauge GAUGE = new Gauge(
            "MIC-1",
            Optional.of("micrometer"),
            Unit.MILLIMETRE,
            Optional.of(new BigDecimal("0.001")),
            Optional.of(Uncertainty.expanded(new BigDecimal("0.004"), Unit.MILLIMETRE)),
            Optional.empty(),
            Optional.empty());

    private static Characteristic characteristic(
            String number, String requirement, Optional<Study> study, List<String> settings) {
        Characteristic.Options none = Characteristic.Options.NONE;
        return new Characteristic(
                number,
                "feature " + number,
                RequirementNotation.parse(requirement),
                requirement,
                Importance.CRITICAL,
                Optional.of("MIC-1"),
                study,
                new Characteristic.Options(
                        none.form(),
                        none.target(),
                        none.sizeFeature(),
                        none.decision(),
                        none.extent(),
                        none.repeated(),
                        settings,
                        none.coordinates(),
                        none.axis(),
                        none.shorterLeg()));
    }

    private static InspectionPlan plan(
            DecisionChoice decision,
            Optional<Thermal> thermal,
            Map<Importance, Demand> demands,
            Characteristic... all) {
        return new InspectionPlan(
                new PartIdentity(
                        "HQ-9",
                        Optional.empty(),
                        Optional.empty(),
                        "A",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Unit.MILLIMETRE,
                Optional.empty(),
                decision,
                thermal,
                demands,
                List.of(GAUGE),
                List.of(all));
    }

    private static ReportModel model(SheetKind kind, InspectionPlan plan, PartRecord... parts) {
        Provenance provenance =
                new Provenance("firstoff 0.1.0", Instant.EPOCH, "0123456789abcdef", List.of("readings.csv"), 1);
        return ReportCatalogue.compose(new SheetMaker(kind, Job.NOT_STATED, List.of(), provenance)
                .make(new InspectionRecord(plan.resolve(), List.of(parts))));
    }

    private static Reading.Context context(Optional<String> temperature, Optional<String> setting) {
        return new Reading.Context(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                temperature.map(BigDecimal::new),
                setting,
                Optional.empty(),
                Reading.Production.NOT_STATED,
                ORIGIN);
    }

    private static Reading value(String number, String value) {
        return new Reading.Measured(
                number, new BigDecimal(value), Unit.MILLIMETRE, context(Optional.empty(), Optional.empty()));
    }

    @Test
    void partOfTheUncertainty_standsInFootAndProposal() {
        InspectionPlan plan = plan(
                new DecisionChoice(
                        DecisionChoice.RuleChoice.GUARDED, new BigDecimal("0.825"), DecisionChoice.Comparison.ABSOLUTE),
                Optional.empty(),
                Map.of(),
                characteristic("1", "12.5 ±0.05", Optional.empty(), List.of()));
        ReportModel model = model(SheetKind.FIRST_ARTICLE, plan, new PartRecord("A", List.of(value("1", "12.548"))));
        assertThat(model.foot().decisionRule()).contains("0.825 of the expanded uncertainty U");
        Printed sheet = new Printed(model);
        // 0.002 inside; a guard band of 0.825 U fits in while U is at most 0.002/0.825 = 0.00242…
        assertThat(Printed.text(
                        sheet.first(Block.Exceptions.class).items().get(0).mayBeDone()))
                .startsWith("Measure with a gauge whose U is at most 0.0024\u00A0mm");
        // the guard band is 0.825 × 0.004 of a tolerance of 0.1
        assertThat(sheet.strip("1").strip().upperGuard()).isCloseTo(0.033, within(1e-12));
    }

    @Test
    void roundedReading_thatConforms_liesOnTheLimitOfItsStrip() {
        InspectionPlan plan = plan(
                new DecisionChoice(
                        DecisionChoice.RuleChoice.SIMPLE, BigDecimal.ONE, DecisionChoice.Comparison.ROUNDING),
                Optional.empty(),
                Map.of(),
                characteristic("1", "12.5 ±0.05", Optional.empty(), List.of()));
        ReportModel model = model(SheetKind.FIRST_ARTICLE, plan, new PartRecord("A", List.of(value("1", "12.5548"))));
        assertThat(model.foot().decisionRule()).contains("rounded to the last place of the limit (ASTM E29)");
        Printed sheet = new Printed(model);
        assertThat(sheet.headline()).startsWith("Accepted");
        assertThat(sheet.cell("1", "Piece A")).isEqualTo("12.5548");
        assertThat(sheet.strip("1").strip().marks().get(0).at()).isEqualTo(1);
    }

    @Test
    void lengthReadWarm_isPrintedAsReadAndAsJudged() {
        InspectionPlan plan = plan(
                DecisionChoice.SIMPLE,
                Optional.of(new Thermal(
                        new BigDecimal("0.000023"),
                        BigDecimal.ZERO,
                        BigDecimal.ZERO,
                        BigDecimal.ZERO,
                        "EN AW-6061, 23 · 10⁻⁶/K")),
                Map.of(),
                characteristic("1", "100 ±0.01", Optional.empty(), List.of()));
        Reading warm = new Reading.Measured(
                "1", new BigDecimal("100.012"), Unit.MILLIMETRE, context(Optional.of("25"), Optional.empty()));
        Printed sheet = new Printed(model(SheetKind.FIRST_ARTICLE, plan, new PartRecord("A", List.of(warm))));
        // 100.012 · (0 − 23 · 10⁻⁶) · 5 = −0.01150138, so 100.00049862 at 20 °C
        assertThat(sheet.headline()).startsWith("Accepted");
        assertThat(sheet.cell("1", "Piece A")).isEqualTo("100.012\n100.0005*");
        assertThat(sheet.prose())
                .contains("* The length at 20 °C, which was judged")
                .contains("23 · 10⁻⁶/K");
        assertThat(sheet.strip("1").strip().marks().get(0).at()).isCloseTo(0.524931, within(1e-9));
    }

    @Test
    void settingLeftOut_isNamedAndLeavesTheSheetIncomplete() {
        InspectionPlan plan = plan(
                DecisionChoice.SIMPLE,
                Optional.empty(),
                Map.of(),
                characteristic("1", "function: turns freely", Optional.empty(), List.of("detent 1", "detent 2")));
        Reading first = new Reading.Observed("1", true, context(Optional.empty(), Optional.of("detent 1")));
        Printed sheet = new Printed(model(SheetKind.FIRST_ARTICLE, plan, new PartRecord("A", List.of(first))));
        assertThat(sheet.headline())
                .startsWith("Incomplete, so not accepted: the one characteristic is not measured completely");
        assertThat(Printed.text(
                        sheet.first(Block.Exceptions.class).items().get(0).actual()))
                .contains("A at detent 2");
        assertThat(sheet.cell("1", "Piece A")).isEqualTo("1 pass\n1 missing");
    }

    @Test
    void positionFromCoordinates_tellsThemWhereItIsOut() {
        InspectionPlan plan = plan(
                DecisionChoice.SIMPLE,
                Optional.empty(),
                Map.of(),
                characteristic("1", "position Ø0.1 A", Optional.empty(), List.of()));
        Reading out = new Reading.Measured(
                "1",
                new BigDecimal("0.1414"),
                Unit.MILLIMETRE,
                Optional.of(new Reading.Offsets(new BigDecimal("0.05"), new BigDecimal("-0.05"), Optional.empty())),
                context(Optional.empty(), Optional.empty()));
        Printed sheet = new Printed(model(SheetKind.FIRST_ARTICLE, plan, new PartRecord("A", List.of(out))));
        assertThat(Printed.text(
                        sheet.first(Block.Exceptions.class).items().get(0).actual()))
                .startsWith("0.1414\u00A0mm (x 0.05, y −0.05) on piece A");
    }

    @Test
    void demandedIndex_thatIsNotReached_needsADecision() {
        InspectionPlan plan = plan(
                DecisionChoice.SIMPLE,
                Optional.empty(),
                Map.of(Importance.CRITICAL, new Demand(true, true, Map.of("cpk", new BigDecimal("1.67")))),
                characteristic(
                        "1",
                        "12.5 ±0.05",
                        Optional.of(new Study("xbar-r", OptionalInt.of(5), OptionalInt.empty())),
                        List.of()));
        Random random = new Random(8);
        List<PartRecord> parts = new ArrayList<>();
        for (int i = 1; i <= 100; i++) {
            BigDecimal read = new BigDecimal(12.5 + random.nextGaussian() * 0.0125).setScale(3, RoundingMode.HALF_EVEN);
            parts.add(new PartRecord("P" + i, List.of(value("1", read.toPlainString()))));
        }
        Printed sheet = new Printed(model(SheetKind.BATCH, plan, parts.toArray(PartRecord[]::new)));
        assertThat(sheet.headline()).endsWith("Characteristic 1 did not show the index demanded.");
        Block.ExceptionItem item = sheet.first(Block.Exceptions.class).items().get(0);
        assertThat(Printed.text(item.actual())).startsWith("Cpk 1.");
        assertThat(item.byHowMuch()).isEqualTo("at least 1.67 demanded");
        assertThat(sheet.first(Block.IndexScale.class).required()).hasValue(1.67);
    }
}
