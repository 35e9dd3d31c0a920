package io.github.firstoff.plan;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.GeneralTolerance;
import io.github.firstoff.tolerance.GeometricTolerance;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.tolerance.Requirement;
import io.github.firstoff.tolerance.Requirement.Nature;
import io.github.firstoff.tolerance.RequirementFault;
import io.github.firstoff.tolerance.ToleranceZone;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the drawing requires of one part number at one revision, as the plan file says it.
 *
 * @param part which part
 * @param unit the unit of lengths on the drawing
 * @param generalTolerance the general tolerance of the title block
 * @param decision how readings are decided where a characteristic says nothing else
 * @param thermal what brings readings to 20 °C; empty if readings are not corrected
 * @param demands what each class of characteristics demands
 * @param gauges the gauges the plan lists
 * @param characteristics in balloon order
 */
public record InspectionPlan(
        PartIdentity part,
        Unit unit,
        Optional<GeneralTolerance> generalTolerance,
        DecisionChoice decision,
        Optional<Thermal> thermal,
        Map<Importance, Demand> demands,
        List<Gauge> gauges,
        List<Characteristic> characteristics) {

    /** Copies the lists. */
    public InspectionPlan {
        demands = Map.copyOf(demands);
        gauges = List.copyOf(gauges);
        characteristics = List.copyOf(characteristics);
    }

    /** The gauge of that number; empty if the plan lists none. */
    public Optional<Gauge> gauge(String id) {
        return gauges.stream().filter(gauge -> gauge.id().equals(id)).findFirst();
    }

    /** Along how many axes coordinates or deviations make a reading of the requirement: two, three, or 0 for none. */
    public static int axesOf(Requirement requirement) {
        return requirement instanceof GeometricTolerance geometric ? geometric.axesOfPosition() : 0;
    }

    /**
     * The plan of the counterpart that is this part's mirror image: the same in everything but the part, the sign of what is a
     * coordinate along the axis, and the places of features.
     *
     * @param counterpart the other part
     * @param axis the axis square to the plane of the mirror
     */
    public InspectionPlan mirrored(PartIdentity counterpart, Axis axis) {
        return new InspectionPlan(
                counterpart,
                unit,
                generalTolerance,
                decision,
                thermal,
                demands,
                gauges,
                characteristics.stream().map(each -> each.mirrored(axis)).toList());
    }

    /** How many pieces must be inspected for a characteristic: the demand of its class goes before what it says itself. */
    public Characteristic.Extent extentOf(Characteristic characteristic) {
        Demand demand = demands.get(characteristic.importance());
        return demand != null && demand.everyPiece()
                ? Characteristic.Extent.EVERY_PIECE
                : characteristic.options().extent();
    }

    /**
     * The plan with the limits of every requirement.
     *
     * @throws PlanContradiction with every fault found, if there is any
     */
    public ResolvedPlan resolve() {
        return new Resolution().resolve();
    }

    /** One pass over the plan that collects faults instead of stopping at the first. */
    private final class Resolution {
        private final List<PlanFault> faults = new ArrayList<>();
        private final Map<String, Characteristic> byNumber = new LinkedHashMap<>();
        private final Map<String, ToleranceZone> zones = new HashMap<>();

        ResolvedPlan resolve() {
            findTwins();
            List<ResolvedCharacteristic> resolved = new ArrayList<>();
            for (Characteristic each : characteristics) {
                Optional<Gauge> gauge = gaugeOf(each);
                DecisionChoice chosen = decision.with(each.options().decision());
                checkRule(each, chosen, gauge);
                checkSettings(each);
                checkCoordinates(each);
                checkAxis(each);
                checkLeg(each);
                checkDemands(each);
                Optional<ToleranceZone> zone = zoneOf(each);
                zone.ifPresent(found -> {
                    checkTarget(each, found.stated());
                    resolved.add(new ResolvedCharacteristic(
                            each, found, found.stated().unit(), targetOf(each, found.stated()), gauge, chosen));
                });
            }
            if (!faults.isEmpty()) {
                throw new PlanContradiction(faults);
            }
            return new ResolvedPlan(InspectionPlan.this, resolved);
        }

        private void findTwins() {
            for (Characteristic each : characteristics) {
                if (byNumber.putIfAbsent(each.number(), each) != null) {
                    faults.add(PlanFault.of(
                            each.number(),
                            "number",
                            "two characteristics have the number " + each.number(),
                            "a number of its own for each characteristic"));
                }
            }
            Map<String, Gauge> seen = new HashMap<>();
            for (Gauge gauge : gauges) {
                if (seen.putIfAbsent(gauge.id(), gauge) != null) {
                    faults.add(new PlanFault(
                            Optional.empty(),
                            "gauges",
                            "two gauges have the id " + gauge.id(),
                            "an id of its own for each gauge",
                            Optional.empty()));
                }
            }
        }

        private Optional<Gauge> gaugeOf(Characteristic each) {
            if (each.gauge().isEmpty()) {
                return Optional.empty();
            }
            Optional<Gauge> found = gauge(each.gauge().get());
            if (found.isEmpty() && !gauges.isEmpty()) {
                faults.add(PlanFault.of(
                        each.number(),
                        "gauge",
                        "gauge " + each.gauge().get() + " is not listed under \"gauges\"",
                        "one of "
                                + String.join(
                                        ", ", gauges.stream().map(Gauge::id).toList())));
            }
            return found;
        }

        private void checkRule(Characteristic each, DecisionChoice decided, Optional<Gauge> gauge) {
            DecisionChoice.RuleChoice rule = decided.rule();
            if (rule == DecisionChoice.RuleChoice.GUARDED
                    && decided.comparison() == DecisionChoice.Comparison.ROUNDING
                    && each.requirement().nature() == Nature.MEASURED) {
                faults.add(PlanFault.of(
                        each.number(),
                        "comparison",
                        "a reading that is rounded to the limit cannot be held against a guard band, which is finer",
                        "\"absolute\" with the guarded rule, or the rule \"simple\" with \"rounding\""));
            }
            boolean needsUncertainty = rule == DecisionChoice.RuleChoice.GUARDED
                    && each.requirement().nature() == Nature.MEASURED;
            if (needsUncertainty && gauge.flatMap(Gauge::uncertainty).isEmpty()) {
                faults.add(
                        PlanFault.of(
                                each.number(),
                                "decisionRule",
                                "the guarded rule needs the expanded uncertainty of a gauge, and "
                                        + each.gauge()
                                                .map(id -> "gauge " + id + " states none")
                                                .orElse("no gauge is named"),
                                "a \"gauge\" whose entry under \"gauges\" has an \"expandedUncertainty\", or the rule \"simple\""));
            }
        }

        private void checkSettings(Characteristic each) {
            List<String> settings = each.options().settings();
            if (settings.isEmpty()) {
                return;
            }
            if (each.requirement().nature() != Nature.ATTRIBUTE) {
                faults.add(PlanFault.of(
                        each.number(),
                        "settings",
                        "only an attribute has a result per setting; \"" + each.printed() + "\" is measured",
                        "no settings, or a characteristic of its own for each setting"));
            }
            if (settings.stream().distinct().count() != settings.size()) {
                faults.add(PlanFault.of(
                        each.number(), "settings", "a setting is named twice", "a name of its own for each setting"));
            }
        }

        private void checkCoordinates(Characteristic each) {
            if (each.options().coordinates().isEmpty()) {
                return;
            }
            int axes = axesOf(each.requirement());
            boolean third = each.options().coordinates().get().z().isPresent();
            if (axes == 0) {
                faults.add(PlanFault.of(
                        each.number(),
                        "at",
                        "only a position in a zone of diameter is found from coordinates",
                        "a requirement such as \"position Ø0.1 A B\", or no \"at\""));
            } else if (third != (axes == 3)) {
                faults.add(PlanFault.of(
                        each.number(),
                        "at",
                        third
                                ? "in a Ø zone only the two axes square to the feature count, and z is stated too"
                                : "in a SØ zone all three axes count, and z is missing",
                        third ? "x and y alone" : "x, y and z"));
            }
        }

        private void checkAxis(Characteristic each) {
            if (each.options().axis().isPresent()
                    && each.requirement().mirrored().isEmpty()) {
                faults.add(PlanFault.of(
                        each.number(),
                        "axis",
                        "\"" + each.printed() + "\" is no coordinate whose sign could change on the other hand",
                        "a size with its own tolerance and without a symbol, such as \"12.5 ±0.1\", or no \"axis\""));
            }
        }

        private void checkLeg(Characteristic each) {
            if (each.options().shorterLeg().isPresent()
                    && each.requirement().text().contains("(leg ")) {
                faults.add(PlanFault.of(
                        each.number(),
                        "leg",
                        "the requirement \"" + each.printed() + "\" states the shorter leg too",
                        "the leg in one place"));
                return;
            }
            boolean angle = each.requirement().unit(unit).kind() == Unit.Kind.ANGLE;
            if (each.options().shorterLeg().isPresent() && !angle) {
                faults.add(PlanFault.of(
                        each.number(),
                        "leg",
                        "\"" + each.printed() + "\" is no angle",
                        "an angle such as \"45°\", or no \"leg\""));
            }
        }

        private void checkDemands(Characteristic each) {
            Demand demand = demands.get(each.importance());
            if (demand == null || each.requirement().nature() != Nature.MEASURED) {
                return;
            }
            boolean needsStudy = demand.study() || !demand.minimumIndices().isEmpty();
            if (needsStudy && each.study().isEmpty()) {
                faults.add(PlanFault.of(
                        each.number(),
                        "class",
                        "the class " + each.importance().word() + " demands a study, and this characteristic has none",
                        "a \"study\", or another class"));
            }
        }

        private Optional<ToleranceZone> zoneOf(Characteristic each) {
            ToleranceZone known = zones.get(each.number());
            if (known != null) {
                return Optional.of(known);
            }
            Optional<Drawing.SizeFeature> sizeFeature = Optional.empty();
            if (each.options().sizeFeature().isPresent()) {
                sizeFeature = sizeFeatureOf(each, each.options().sizeFeature().get());
                if (sizeFeature.isEmpty()) {
                    return Optional.empty();
                }
            }
            try {
                ToleranceZone zone = each.requirement().resolve(new Sheet(each.options(), sizeFeature));
                zones.put(each.number(), zone);
                return Optional.of(zone);
            } catch (RequirementFault fault) {
                faults.add(new PlanFault(
                        Optional.of(each.number()),
                        "requirement",
                        "\"" + each.printed() + "\": " + fault.getMessage(),
                        fault.expected(),
                        fault.position()));
                return Optional.empty();
            }
        }

        private Optional<Drawing.SizeFeature> sizeFeatureOf(Characteristic each, String number) {
            Characteristic feature = byNumber.get(number);
            String expected = "the number of a hole or shaft with two limits of size";
            if (feature == null) {
                return refuseSizeFeature(each, "there is no characteristic " + number, expected);
            }
            if (feature.requirement().nature() != Nature.MEASURED) {
                return refuseSizeFeature(
                        each, "characteristic " + number + " (" + feature.printed() + ") has no size", expected);
            }
            if (feature.equals(each) || feature.options().sizeFeature().isPresent()) {
                return refuseSizeFeature(each, "characteristic " + number + " is no feature of size", expected);
            }
            Optional<ToleranceZone> zone = zoneQuietly(feature);
            if (zone.isEmpty()) {
                // The feature's own fault is reported at its own place; a second message here would only repeat it.
                return Optional.empty();
            }
            Limits limits = zone.get().stated();
            if (limits.width().isEmpty() || limits.naturalLower()) {
                return refuseSizeFeature(
                        each,
                        "characteristic " + number + " (" + feature.printed() + ") has no two limits of size",
                        expected);
            }
            Optional<Drawing.Form> form =
                    feature.requirement().form().or(() -> feature.options().form());
            if (form.isEmpty()) {
                return refuseSizeFeature(
                        each,
                        "characteristic " + number + " (" + feature.printed()
                                + ") does not say whether it is a hole or a shaft",
                        "\"form\": \"hole\" or \"form\": \"shaft\" at characteristic " + number);
            }
            return Optional.of(new Drawing.SizeFeature(number, limits, form.get()));
        }

        private Optional<ToleranceZone> zoneQuietly(Characteristic feature) {
            ToleranceZone known = zones.get(feature.number());
            if (known != null) {
                return Optional.of(known);
            }
            try {
                return Optional.of(feature.requirement().resolve(new Sheet(feature.options(), Optional.empty())));
            } catch (RequirementFault fault) {
                return Optional.empty();
            }
        }

        private Optional<Drawing.SizeFeature> refuseSizeFeature(Characteristic each, String message, String expected) {
            faults.add(PlanFault.of(each.number(), "sizeFeature", message, expected));
            return Optional.empty();
        }

        private void checkTarget(Characteristic each, Limits limits) {
            Optional<BigDecimal> target = targetOf(each, limits);
            if (target.isPresent() && !limits.contains(target.get(), limits.unit())) {
                faults.add(PlanFault.of(
                        each.number(),
                        "target",
                        "the target " + each.options().target().orElseThrow().toPlainString() + " "
                                + each.requirement().readingUnit(unit).word() + " lies outside the limits "
                                + limits.lower().map(BigDecimal::toPlainString).orElse("…") + " to "
                                + limits.upper().map(BigDecimal::toPlainString).orElse("…") + " "
                                + limits.unit().word(),
                        "a target within the limits"));
            }
        }

        /** The target in the unit of the limits; a plan states it as a reading would be written. */
        private Optional<BigDecimal> targetOf(Characteristic each, Limits limits) {
            return each.options().target().map(stated -> {
                Unit written = each.requirement().readingUnit(unit);
                return written.isComparableWith(limits.unit()) ? written.convert(stated, limits.unit()) : stated;
            });
        }
    }

    /** The rest of the drawing, as one requirement sees it. */
    private final class Sheet implements Drawing {
        private final Characteristic.Options options;
        private final Optional<SizeFeature> sizeFeature;

        Sheet(Characteristic.Options options, Optional<SizeFeature> sizeFeature) {
            this.options = options;
            this.sizeFeature = sizeFeature;
        }

        @Override
        public Unit unit() {
            return unit;
        }

        @Override
        public Optional<GeneralTolerance> generalTolerance() {
            return generalTolerance;
        }

        @Override
        public Optional<Form> form() {
            return options.form();
        }

        @Override
        public Optional<BigDecimal> shorterLeg() {
            return options.shorterLeg();
        }

        @Override
        public Optional<SizeFeature> sizeFeature() {
            return sizeFeature;
        }
    }
}
