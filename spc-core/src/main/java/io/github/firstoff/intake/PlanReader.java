package io.github.firstoff.intake;

import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.GeneralTolerance;
import io.github.firstoff.tolerance.RequirementFault;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a plan of a plan file's JSON. */
final class PlanReader {
    /** The keys of a plan that stands by itself, apart from schema and part. */
    static final List<String> KEYS = List.of(
            "unit",
            "generalTolerance",
            "decisionRule",
            "comparison",
            "temperature",
            "classes",
            "gauges",
            "characteristics");

    private final SourceText source;
    private final FaultCollector faults;

    PlanReader(SourceText source, FaultCollector faults) {
        this.source = source;
        this.faults = faults;
    }

    /**
     * What could be read.
     *
     * @param readable the plan; where faults were found, the part of it that can still be resolved, if there is one
     * @param places where everything stands
     */
    record Outcome(Optional<InspectionPlan> readable, PlanPlaces places) {}

    /** The document; empty with a fault collected if the text is none. */
    Optional<Fields> document() {
        Optional<JsonValue> root = JsonTree.parse(source, faults);
        if (root.isPresent() && root.get() instanceof JsonValue.Obj object) {
            return Optional.of(new Fields(source.name(), faults, object, ""));
        }
        root.ifPresent(other -> faults.refuse(Fault.of(
                FaultKind.WRONG_TYPE,
                new Fault.Where(source.name(), other.at().line(), other.at().column(), ""),
                "",
                other.described(),
                "a plan, which is an object { … }")));
        return Optional.empty();
    }

    /** Where everything stands in a text that is no plan: nowhere. */
    PlanPlaces nowhere() {
        JsonValue.Obj nothing = new JsonValue.Obj(new JsonValue.Place(1, 1), Map.of());
        return new PlanPlaces(source, new Fields(source.name(), faults, nothing, ""));
    }

    /** Reads a plan that stands by itself. */
    Outcome read(Fields document) {
        PlanPlaces places = new PlanPlaces(source, document);
        SchemaName.check(document, PlanFile.SCHEMA);
        Optional<PartIdentity> part = document.required(
                        "part", document.object("part"), "an object with number and revision")
                .flatMap(PartReader::whole);
        Optional<Unit> unit = document.required(
                "unit",
                document.word("unit", PlanReader::drawingUnit, List.of("mm", "inch", "degree")),
                "mm, inch or degree");
        Optional<GeneralTolerance> general = generalTolerance(document);
        DecisionChoice.Change decision = DecisionReader.read(document);
        Optional<Thermal> thermal =
                document.object("temperature").flatMap(fields -> ThermalReader.read(fields, material(document)));
        Map<Importance, Demand> demands = ClassReader.read(document);
        Unit lengths = unit.orElse(Unit.MILLIMETRE);
        List<Gauge> gauges = new GaugeReader(faults, lengths).read(document);
        checkMirrorKeys(document);
        // What a characteristic comes to rests on all of the above: with a fault in it, only nonsense would follow.
        boolean foundationsAreSound = faults.isEmpty();
        CharacteristicReader reader = new CharacteristicReader(faults, places, lengths, gauges, demands);
        List<Characteristic> characteristics = reader.read(document);
        document.finish();
        if (part.isEmpty() || unit.isEmpty() || !foundationsAreSound) {
            return new Outcome(Optional.empty(), places);
        }
        List<Characteristic> sound = characteristics.stream()
                .filter(each -> each.options()
                        .sizeFeature()
                        .filter(reader.refusedNumbers()::contains)
                        .isEmpty())
                .toList();
        return new Outcome(
                Optional.of(new InspectionPlan(
                        part.get(),
                        unit.get(),
                        general,
                        DecisionChoice.SIMPLE.with(decision),
                        thermal,
                        demands,
                        gauges,
                        sound)),
                places);
    }

    /** The material of the part; empty if none is stated or the part itself is at fault, which is told elsewhere. */
    private Optional<String> material(Fields document) {
        FaultCollector unheard = new FaultCollector();
        if (document.value("part").orElse(null) instanceof JsonValue.Obj part) {
            return new Fields(source.name(), unheard, part, "").text("material");
        }
        return Optional.empty();
    }

    /** A plan that stands by itself names no other; reached with an axis alone, since a plan with {@code mirrorOf} is read elsewhere. */
    private static void checkMirrorKeys(Fields document) {
        document.value(MirrorReader.OF);
        if (document.value(MirrorReader.AXIS).isPresent()) {
            document.refuse(
                    MirrorReader.AXIS,
                    FaultKind.CONTRADICTION,
                    "it belongs to a plan that is the mirror image of another, and none is named",
                    "",
                    "\"mirrorOf\" beside it");
        }
    }

    private static Optional<Unit> drawingUnit(String word) {
        return Unit.parse(word).filter(unit -> unit == Unit.MILLIMETRE || unit == Unit.INCH || unit == Unit.DEGREE);
    }

    private static Optional<GeneralTolerance> generalTolerance(Fields document) {
        Optional<String> text = document.text("generalTolerance");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(GeneralTolerance.parse(text.get()));
        } catch (RequirementFault fault) {
            String message = fault.getMessage() == null ? "" : fault.getMessage();
            document.refuse(
                    "generalTolerance", FaultKind.UNKNOWN_WORD, message, Echo.quoted(text.get()), fault.expected());
            return Optional.empty();
        }
    }
}
