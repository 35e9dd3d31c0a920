package io.github.firstoff;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.Characteristic.Extent;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.RequirementNotation;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Plans and readings of the invented shop, written in few words for tests. */
public final class Shop {
    private final List<Characteristic> characteristics = new ArrayList<>();
    private final List<Gauge> gauges = new ArrayList<>();
    private final Map<Importance, Demand> demands = new HashMap<>();
    private Unit unit = Unit.MILLIMETRE;
    private DecisionChoice decision = DecisionChoice.SIMPLE;
    private Optional<Thermal> thermal = Optional.empty();

    /** A plan for a winch part, in millimetres, by simple acceptance. */
    public static Shop plan() {
        return new Shop();
    }

    public Shop in(Unit drawing) {
        unit = drawing;
        return this;
    }

    public Shop deciding(DecisionChoice choice) {
        decision = choice;
        return this;
    }

    public Shop at20(Thermal correction) {
        thermal = Optional.of(correction);
        return this;
    }

    public Shop demanding(Importance importance, Demand demand) {
        demands.put(importance, demand);
        return this;
    }

    /** A gauge with its step and its U at k = 2, in the unit of the plan. */
    public Shop gauge(String id, String resolution, String expanded) {
        return gauge(id, resolution, Uncertainty.expanded(new BigDecimal(expanded), unit));
    }

    public Shop gauge(String id, String resolution, Uncertainty uncertainty) {
        gauges.add(new Gauge(
                id,
                Optional.empty(),
                uncertainty.unit(),
                Optional.of(new BigDecimal(resolution)),
                Optional.of(uncertainty),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    public Shop with(String number, String requirement) {
        return with(number, requirement, Optional.empty(), Characteristic.Options.NONE);
    }

    public Shop with(String number, String requirement, String gauge) {
        return with(number, requirement, Optional.of(gauge), Characteristic.Options.NONE);
    }

    public Shop with(String number, String requirement, Optional<String> gauge, Characteristic.Options options) {
        characteristics.add(new Characteristic(
                number,
                "feature " + number,
                RequirementNotation.parse(requirement),
                requirement,
                Importance.MAJOR,
                gauge,
                Optional.empty(),
                options));
        return this;
    }

    public ResolvedPlan resolved() {
        PartIdentity part = new PartIdentity(
                "HQ-310-P",
                Optional.empty(),
                Optional.empty(),
                "C",
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        return new InspectionPlan(part, unit, Optional.empty(), decision, thermal, demands, gauges, characteristics)
                .resolve();
    }

    /** Options of a characteristic at settings. */
    public static Characteristic.Options at(String... settings) {
        return options(Optional.empty(), DecisionChoice.Change.NONE, Extent.EVERY_PIECE, List.of(settings));
    }

    /** Options of a characteristic whose bonus comes from another. */
    public static Characteristic.Options sizeFrom(String number) {
        return options(Optional.of(number), DecisionChoice.Change.NONE, Extent.EVERY_PIECE, List.of());
    }

    /** Options of a characteristic of which a sample of pieces is inspected. */
    public static Characteristic.Options sampled(String... settings) {
        return options(Optional.empty(), DecisionChoice.Change.NONE, Extent.SAMPLE, List.of(settings));
    }

    private static Characteristic.Options options(
            Optional<String> sizeFeature, DecisionChoice.Change decision, Extent extent, List<String> settings) {
        return new Characteristic.Options(
                Optional.<Drawing.Form>empty(),
                Optional.empty(),
                sizeFeature,
                decision,
                extent,
                false,
                settings,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** A reading in millimetres. */
    public static Reading mm(String number, String value) {
        return measured(number, value, Unit.MILLIMETRE);
    }

    public static Reading measured(String number, String value, Unit unit) {
        return new Reading.Measured(number, new BigDecimal(value), unit, context(Optional.empty(), Optional.empty()));
    }

    /** A reading in millimetres at a temperature in degrees Celsius. */
    public static Reading warm(String number, String value, String temperature) {
        return new Reading.Measured(
                number,
                new BigDecimal(value),
                Unit.MILLIMETRE,
                context(Optional.of(new BigDecimal(temperature)), Optional.empty()));
    }

    /** A position in millimetres from deviations along two axes. */
    public static Reading offsets(String number, String x, String y) {
        Reading.Offsets offsets = new Reading.Offsets(new BigDecimal(x), new BigDecimal(y), Optional.empty());
        return new Reading.Measured(
                number,
                offsets.position().rounded(6),
                Unit.MILLIMETRE,
                Optional.of(offsets),
                context(Optional.empty(), Optional.empty()));
    }

    /** A pass or fail at a setting. */
    public static Reading observed(String number, boolean pass, String setting) {
        return new Reading.Observed(number, pass, context(Optional.empty(), Optional.of(setting)));
    }

    private static Reading.Context context(Optional<BigDecimal> temperature, Optional<String> setting) {
        return new Reading.Context(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                temperature,
                setting,
                Optional.empty(),
                Reading.Production.NOT_STATED,
                new Reading.Origin("readings.csv", 2));
    }

    public static PartRecord piece(String serial, Reading... readings) {
        return new PartRecord(serial, List.of(readings));
    }
}
