package io.github.firstoff.intake;

import io.github.firstoff.plan.Axis;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.Characteristic.Extent;
import io.github.firstoff.plan.Characteristic.Options;
import io.github.firstoff.plan.Coordinates;
import io.github.firstoff.plan.DecisionChoice;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.Study;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.Requirement;
import io.github.firstoff.tolerance.Requirement.Nature;
import io.github.firstoff.tolerance.RequirementFault;
import io.github.firstoff.tolerance.RequirementNotation;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the characteristics of a plan. */
final class CharacteristicReader {
    private final FaultCollector faults;
    private final PlanPlaces places;
    private final Unit planUnit;
    private final List<Gauge> gauges;
    private final Map<Importance, Demand> demands;
    private final Set<String> refusedNumbers = new HashSet<>();

    CharacteristicReader(
            FaultCollector faults,
            PlanPlaces places,
            Unit planUnit,
            List<Gauge> gauges,
            Map<Importance, Demand> demands) {
        this.faults = faults;
        this.places = places;
        this.planUnit = planUnit;
        this.gauges = List.copyOf(gauges);
        this.demands = Map.copyOf(demands);
    }

    /** The numbers of those in which something is wrong. */
    Set<String> refusedNumbers() {
        return Set.copyOf(refusedNumbers);
    }

    /** The characteristics in which nothing is wrong. */
    List<Characteristic> read(Fields document) {
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
                checkNumber(fields, number.get());
            }
            Optional<Characteristic> read = characteristic(fields, number);
            if (faults.count() == before && read.isPresent()) {
                characteristics.add(read.get());
            } else {
                number.ifPresent(refusedNumbers::add);
            }
        }
        return characteristics;
    }

    private void checkNumber(Fields fields, String number) {
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

    private Optional<Characteristic> characteristic(Fields fields, Optional<String> number) {
        Optional<String> feature = fields.requiredText("feature", "what it is about, such as \"bearing bore\"");
        Optional<String> printed =
                fields.requiredText("requirement", "the requirement as the drawing prints it, such as \"12.5 ±0.05\"");
        Optional<Requirement> requirement = printed.flatMap(text -> requirement(fields, text));
        Importance importance = fields.word(
                        "class",
                        Importance::parse,
                        Arrays.stream(Importance.values()).map(Importance::word).toList())
                .orElse(Importance.MINOR);
        Optional<String> gauge = fields.name("gauge");
        Optional<Study> study = fields.object("study").flatMap(inner -> new StudyReader(inner, requirement).read());
        Options options = options(fields, importance);
        fields.finish();
        requirement.ifPresent(known -> {
            checkTarget(fields, known, options);
            gauge.flatMap(id -> find(gauges, id)).ifPresent(found -> checkGauge(fields, known, found));
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

    private Optional<Requirement> requirement(Fields fields, String text) {
        try {
            return Optional.of(RequirementNotation.parse(text));
        } catch (RequirementFault fault) {
            faults.refuse(places.locate(fields, fault));
            return Optional.empty();
        }
    }

    private Options options(Fields fields, Importance importance) {
        Optional<Drawing.Form> form = fields.word(
                "form",
                word -> Arrays.stream(Drawing.Form.values())
                        .filter(each -> each.name().equalsIgnoreCase(word))
                        .findFirst(),
                List.of("hole", "shaft"));
        Optional<BigDecimal> target = fields.decimal("target");
        Optional<String> sizeFeature = fields.name("sizeFeature");
        DecisionChoice.Change decision = DecisionReader.read(fields);
        return new Options(
                form,
                target,
                sizeFeature,
                decision,
                extent(fields, importance),
                fields.flag("repeated").orElse(false),
                fields.names("settings", "a list of the names of settings, such as [\"low\", \"middle\", \"high\"]"),
                fields.object("at").flatMap(CharacteristicReader::coordinates),
                fields.word(
                        "axis",
                        Axis::parse,
                        Arrays.stream(Axis.values()).map(Axis::word).toList()),
                fields.decimal("leg", false));
    }

    private Extent extent(Fields fields, Importance importance) {
        Optional<Extent> extent = ClassReader.extent(fields);
        Demand demand = demands.get(importance);
        if (demand != null
                && demand.everyPiece()
                && extent.filter(Extent.SAMPLE::equals).isPresent()) {
            faults.notice(
                    fields.where("inspect"),
                    Remark.of(
                            "notice.every-piece",
                            "the class {0} demands every piece, which goes before {1}",
                            Remark.word("class", importance.word()),
                            "\"sample\""));
        }
        return extent.orElse(Extent.EVERY_PIECE);
    }

    private static Optional<Coordinates> coordinates(Fields fields) {
        Optional<BigDecimal> x = fields.required("x", fields.decimal("x"), ExactNumber.EXAMPLE);
        Optional<BigDecimal> y = fields.required("y", fields.decimal("y"), ExactNumber.EXAMPLE);
        Optional<BigDecimal> z = fields.decimal("z");
        fields.finish();
        return x.flatMap(first -> y.map(second -> new Coordinates(first, second, z)));
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

    private void checkGauge(Fields fields, Requirement requirement, Gauge gauge) {
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
