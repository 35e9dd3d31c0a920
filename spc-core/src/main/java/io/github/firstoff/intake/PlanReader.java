package io.github.firstoff.intake;

import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.Characteristic.Extent;
import io.github.firstoff.plan.Characteristic.Options;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.DecisionChoice.RuleChoice;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.InspectionPlan;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.Study;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.GeneralTolerance;
import io.github.firstoff.tolerance.Requirement;
import io.github.firstoff.tolerance.Requirement.Nature;
import io.github.firstoff.tolerance.RequirementFault;
import io.github.firstoff.tolerance.RequirementNotation;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Makes a plan of a plan file's JSON. */
final class PlanReader {
    private static final BigDecimal USUAL_COVERAGE_FACTOR = new BigDecimal("2");
    private static final int MOST_POINTS = 1_000_000;
    private static final int LARGEST_SUBGROUP = 1000;
    private static final List<String> CHARTS_OF_VALUES =
            List.of("individuals", "xbar-r", "xbar-s", "median-r", "ewma", "cusum", "deviation");
    private static final List<String> CHARTS_OF_COUNTS = List.of("p", "np", "c", "u");
    private static final List<String> CHARTS_OF_SUBGROUPS = List.of("xbar-r", "xbar-s", "median-r");

    private final SourceText source;
    private final FaultCollector faults;
    private final Set<String> refusedNumbers = new HashSet<>();

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

    Outcome read() {
        Optional<JsonValue> root = JsonTree.parse(source, faults);
        if (root.isPresent() && root.get() instanceof JsonValue.Obj object) {
            return read(new Fields(source.name(), faults, object, ""));
        }
        root.ifPresent(other -> faults.refuse(Fault.of(
                FaultKind.WRONG_TYPE,
                new Fault.Where(source.name(), other.at().line(), other.at().column(), ""),
                "",
                other.described(),
                "a plan, which is an object { … }")));
        JsonValue.Obj nothing = new JsonValue.Obj(new JsonValue.Place(1, 1), Map.of());
        return new Outcome(Optional.empty(), new PlanPlaces(source, new Fields(source.name(), faults, nothing, "")));
    }

    private Outcome read(Fields document) {
        PlanPlaces places = new PlanPlaces(source, document);
        SchemaName.check(document, PlanFile.SCHEMA);
        Optional<PartIdentity> part = document.required(
                        "part", document.object("part"), "an object with number and revision")
                .flatMap(this::part);
        Optional<Unit> unit = document.required(
                "unit",
                document.word("unit", PlanReader::drawingUnit, List.of("mm", "inch", "degree")),
                "mm, inch or degree");
        Optional<GeneralTolerance> general = generalTolerance(document);
        Optional<RuleChoice> rule = rule(document);
        List<Gauge> gauges = gauges(document, unit.orElse(Unit.MILLIMETRE));
        // What a characteristic comes to rests on all of the above: with a fault in it, only nonsense would follow.
        boolean foundationsAreSound = faults.isEmpty();
        List<Characteristic> characteristics = characteristics(document, places, unit.orElse(Unit.MILLIMETRE), gauges);
        document.finish();
        if (part.isEmpty() || unit.isEmpty() || !foundationsAreSound) {
            return new Outcome(Optional.empty(), places);
        }
        List<Characteristic> sound = characteristics.stream()
                .filter(each -> each.options()
                        .sizeFeature()
                        .filter(refusedNumbers::contains)
                        .isEmpty())
                .toList();
        return new Outcome(
                Optional.of(new InspectionPlan(
                        part.get(),
                        unit.get(),
                        general,
                        DecisionChoice.SIMPLE.with(new DecisionChoice.Change(rule, Optional.empty(), Optional.empty())),
                        Optional.empty(),
                        Map.of(),
                        gauges,
                        sound)),
                places);
    }

    private Optional<PartIdentity> part(Fields fields) {
        Optional<String> number = fields.requiredText("number", "the part number");
        Optional<String> name = fields.text("name");
        Optional<String> drawing = fields.text("drawing");
        Optional<String> revision = fields.requiredName("revision", "the drawing's revision");
        Optional<Hand> hand = fields.word(
                "hand",
                Hand::parse,
                Arrays.stream(Hand.values()).map(Hand::word).toList());
        Optional<String> counterpart = fields.text("counterpart");
        if (counterpart.isPresent() && counterpart.equals(number)) {
            fields.refuse(
                    "counterpart",
                    FaultKind.CONTRADICTION,
                    "the part is its own counterpart",
                    Echo.quoted(counterpart.get()),
                    "the part number of the other hand");
        }
        Optional<String> material = fields.text("material");
        fields.finish();
        if (number.isEmpty() || revision.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new PartIdentity(number.get(), name, drawing, revision.get(), hand, counterpart, material));
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

    private static Optional<RuleChoice> rule(Fields fields) {
        List<String> words =
                Arrays.stream(RuleChoice.values()).map(RuleChoice::word).toList();
        return fields.word(
                "decisionRule",
                word -> Arrays.stream(RuleChoice.values())
                        .filter(choice -> choice.word().equalsIgnoreCase(word))
                        .findFirst(),
                words);
    }

    private List<Gauge> gauges(Fields document, Unit planUnit) {
        List<Gauge> gauges = new ArrayList<>();
        Map<String, Fields> seen = new HashMap<>();
        for (Fields entry : document.objects("gauges", "a gauge, which is an object { … }")) {
            Optional<String> id = entry.requiredName("id", "the gauge's number in the shop");
            Fields fields =
                    id.map(known -> entry.called("gauge " + Echo.plain(known))).orElse(entry);
            if (id.isPresent()) {
                fields.name("id");
                Fields first = seen.putIfAbsent(id.get(), fields);
                if (first != null) {
                    fields.refuse(
                            "id",
                            FaultKind.CONTRADICTION,
                            "two gauges have the id " + Echo.plain(id.get()) + " (the first in line "
                                    + first.where("id").line() + ")",
                            "",
                            "an id of its own for each gauge");
                    id = Optional.empty();
                }
            }
            Optional<Gauge> gauge = gauge(fields, id, planUnit);
            gauge.ifPresent(gauges::add);
        }
        return gauges;
    }

    private Optional<Gauge> gauge(Fields fields, Optional<String> id, Unit planUnit) {
        Optional<String> kind = fields.text("kind");
        Unit unit = fields.word(
                        "unit",
                        word -> Unit.parse(word).filter(parsed -> parsed != Unit.NONE),
                        List.of("mm", "inch", "µm", "degree"))
                .orElse(planUnit);
        Optional<BigDecimal> resolution = fields.decimal("resolution", false);
        Optional<BigDecimal> expanded = fields.decimal("expandedUncertainty", true);
        Optional<BigDecimal> factor = fields.decimal("coverageFactor", false);
        Optional<BigDecimal> perLength = fields.decimal("uncertaintyPerLength", true);
        Optional<LocalDate> due = fields.date("calibrationDue");
        Optional<String> certificate = fields.text("certificate");
        if (!fields.has("expandedUncertainty")) {
            for (String key : List.of("coverageFactor", "uncertaintyPerLength")) {
                if (fields.has(key)) {
                    fields.refuse(
                            key,
                            FaultKind.CONTRADICTION,
                            "it belongs to an expanded uncertainty, and none is stated",
                            "",
                            "\"expandedUncertainty\" beside it");
                }
            }
        }
        fields.finish();
        Optional<Uncertainty> uncertainty = expanded.map(constant -> new Uncertainty(
                constant, perLength.orElse(BigDecimal.ZERO), factor.orElse(USUAL_COVERAGE_FACTOR), unit));
        return id.map(known -> new Gauge(known, kind, unit, resolution, uncertainty, due, certificate));
    }

    private List<Characteristic> characteristics(
            Fields document, PlanPlaces places, Unit planUnit, List<Gauge> gauges) {
        List<Characteristic> characteristics = new ArrayList<>();
        document.required(
                "characteristics", document.value("characteristics"), "a list of at least one characteristic");
        List<Fields> entries = document.objects("characteristics", "a characteristic, which is an object { … }");
        boolean isEmptyList = document.value("characteristics").orElse(null) instanceof JsonValue.Array array
                && array.items().isEmpty();
        if (isEmptyList) {
            document.refuse("characteristics", FaultKind.EMPTY, "", "an empty list", "at least one characteristic");
        }
        for (Fields entry : entries) {
            long before = faults.count();
            Optional<String> number = entry.requiredName("number", "the balloon number");
            Fields fields = number.map(known -> entry.called("characteristic " + Echo.plain(known)))
                    .orElse(entry);
            if (number.isPresent()) {
                fields.name("number");
                checkNumber(fields, number.get(), places);
            }
            Optional<Characteristic> read = characteristic(fields, number, places, planUnit, gauges);
            if (faults.count() == before && read.isPresent()) {
                characteristics.add(read.get());
            } else {
                number.ifPresent(refusedNumbers::add);
            }
        }
        return characteristics;
    }

    private static void checkNumber(Fields fields, String number, PlanPlaces places) {
        Optional<Fields> twin = places.find(number);
        if (twin.isPresent()) {
            fields.refuse(
                    "number",
                    FaultKind.CONTRADICTION,
                    "two characteristics have the number " + Echo.plain(number) + " (the first in line "
                            + twin.get().where("number").line() + ")",
                    "",
                    "a number of its own for each characteristic");
        }
        places.put(number, fields);
        if (ReadingColumn.named(number).isPresent()) {
            fields.refuse(
                    "number",
                    FaultKind.CONTRADICTION,
                    "readings have a column of that name",
                    Echo.quoted(number),
                    "a number that is no name of a column");
        }
    }

    private Optional<Characteristic> characteristic(
            Fields fields, Optional<String> number, PlanPlaces places, Unit planUnit, List<Gauge> gauges) {
        Optional<String> feature = fields.requiredText("feature", "what it is about, such as \"bearing bore\"");
        Optional<String> printed =
                fields.requiredText("requirement", "the requirement as the drawing prints it, such as \"12.5 ±0.05\"");
        Optional<Requirement> requirement = printed.flatMap(text -> requirement(fields, text, places));
        Importance importance = fields.word(
                        "class",
                        Importance::parse,
                        Arrays.stream(Importance.values()).map(Importance::word).toList())
                .orElse(Importance.MINOR);
        Optional<String> gauge = fields.name("gauge");
        Optional<Study> study = fields.object("study").flatMap(inner -> study(inner, requirement));
        Options options = options(fields);
        fields.finish();
        requirement.ifPresent(known -> {
            checkTarget(fields, known, options);
            gauge.flatMap(id -> find(gauges, id)).ifPresent(found -> checkGauge(fields, known, found, planUnit));
        });
        if (number.isEmpty() || feature.isEmpty() || requirement.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Characteristic(
                number.get(),
                feature.get(),
                requirement.get(),
                printed.orElseThrow(),
                importance,
                gauge,
                study,
                options));
    }

    private Optional<Requirement> requirement(Fields fields, String text, PlanPlaces places) {
        try {
            return Optional.of(RequirementNotation.parse(text));
        } catch (RequirementFault fault) {
            faults.refuse(places.locate(fields, fault));
            return Optional.empty();
        }
    }

    private Options options(Fields fields) {
        Optional<Drawing.Form> form = fields.word(
                "form",
                word -> Arrays.stream(Drawing.Form.values())
                        .filter(each -> each.name().equalsIgnoreCase(word))
                        .findFirst(),
                List.of("hole", "shaft"));
        Optional<BigDecimal> target = fields.decimal("target");
        Optional<String> sizeFeature = fields.name("sizeFeature");
        Optional<RuleChoice> rule = rule(fields);
        Extent extent = fields.word(
                        "inspect",
                        word -> Arrays.stream(Extent.values())
                                .filter(each -> each.word().equalsIgnoreCase(word))
                                .findFirst(),
                        Arrays.stream(Extent.values()).map(Extent::word).toList())
                .orElse(Extent.EVERY_PIECE);
        boolean repeated = fields.flag("repeated").orElse(false);
        return new Options(
                form,
                target,
                sizeFeature,
                new DecisionChoice.Change(rule, Optional.empty(), Optional.empty()),
                extent,
                repeated,
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    private static Optional<Study> study(Fields fields, Optional<Requirement> requirement) {
        List<String> charts = new ArrayList<>(CHARTS_OF_VALUES);
        charts.addAll(CHARTS_OF_COUNTS);
        Optional<String> chart = fields.required(
                "chart",
                fields.word(
                        "chart",
                        word -> Optional.of(word.toLowerCase(Locale.ROOT)).filter(charts::contains),
                        charts),
                Words.oneOf(charts));
        OptionalInt subgroup = fields.count("subgroup", 1, LARGEST_SUBGROUP);
        OptionalInt baseline = fields.count("baseline", 2, MOST_POINTS);
        fields.finish();
        if (chart.isEmpty()) {
            return Optional.empty();
        }
        String name = chart.get();
        if (CHARTS_OF_SUBGROUPS.contains(name) && subgroup.isPresent() && subgroup.getAsInt() < 2) {
            fields.refuse(
                    "subgroup",
                    FaultKind.CONTRADICTION,
                    "a subgroup of one has no spread for the chart " + name,
                    "1",
                    "a subgroup of 2 or more, or the chart individuals");
        }
        if (name.equals("individuals") && subgroup.isPresent() && subgroup.getAsInt() > 1) {
            fields.refuse(
                    "subgroup",
                    FaultKind.CONTRADICTION,
                    "the chart individuals has no subgroups",
                    Integer.toString(subgroup.getAsInt()),
                    "no subgroup, or a chart of subgroups such as xbar-r");
        }
        boolean attribute =
                requirement.filter(known -> known.nature() == Nature.ATTRIBUTE).isPresent();
        if (attribute && CHARTS_OF_VALUES.contains(name)) {
            fields.refuse(
                    "chart",
                    FaultKind.CONTRADICTION,
                    "the requirement is judged by pass or fail, and the chart needs values",
                    Echo.quoted(name),
                    Words.oneOf(CHARTS_OF_COUNTS));
        }
        return Optional.of(new Study(name, subgroup, baseline));
    }

    private static Optional<Gauge> find(List<Gauge> gauges, String id) {
        return gauges.stream().filter(gauge -> gauge.id().equals(id)).findFirst();
    }

    private static void checkTarget(Fields fields, Requirement requirement, Options options) {
        if (options.target().isPresent() && requirement.nature() != Nature.MEASURED) {
            fields.refuse(
                    "target",
                    FaultKind.CONTRADICTION,
                    "the requirement has no limits between which to aim",
                    options.target().get().toPlainString(),
                    "no target");
        }
    }

    private static void checkGauge(Fields fields, Requirement requirement, Gauge gauge, Unit planUnit) {
        boolean statesAmounts =
                gauge.resolution().isPresent() || gauge.uncertainty().isPresent();
        Unit needed = requirement.readingUnit(planUnit);
        if (requirement.nature() == Nature.MEASURED
                && statesAmounts
                && !gauge.unit().isComparableWith(needed)) {
            fields.refuse(
                    "gauge",
                    FaultKind.CONTRADICTION,
                    "gauge " + Echo.plain(gauge.id()) + " is stated in "
                            + gauge.unit().word() + ", and the characteristic is measured in " + needed.word(),
                    "",
                    "\"unit\": \"" + needed.word() + "\" at the gauge, or another gauge");
        }
    }
}
