package io.github.firstoff.intake;

import io.github.firstoff.assembly.Criterion;
import io.github.firstoff.assembly.ElasticMaterial;
import io.github.firstoff.assembly.ElasticMaterials;
import io.github.firstoff.assembly.Joint;
import io.github.firstoff.assembly.Smoothing;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.tolerance.BearingTable;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Makes a joint of an assembly file's JSON. */
final class AssemblyReader {
    private static final BigDecimal ABSOLUTE_ZERO = new BigDecimal("-273.15");
    private static final BigDecimal HOTTEST = new BigDecimal("1000");
    private static final BigDecimal ROOM = new BigDecimal("20");
    private static final BigDecimal GREATEST_EXPANSION = new BigDecimal("0.001");
    private static final BigDecimal SOFTEST = new BigDecimal("500");
    private static final BigDecimal STIFFEST = new BigDecimal("1300000");
    private static final BigDecimal STRONGEST = new BigDecimal("10000");
    private static final BigDecimal MOST_FRICTION = new BigDecimal("1.5");
    private static final BigDecimal MOST_SMOOTHING = new BigDecimal("2");
    private static final BigDecimal ROUGHEST = new BigDecimal("200");
    private static final BigDecimal FARTHEST_SHARE = new BigDecimal("0.02");
    private static final BigDecimal USUAL_GAP_SHARE = new BigDecimal("0.001");
    private static final BigDecimal HALF = new BigDecimal("0.5");
    private static final String LENGTH = "a length in mm greater than 0";

    private final SourceText source;
    private final FaultCollector faults;

    AssemblyReader(SourceText source, FaultCollector faults) {
        this.source = source;
        this.faults = faults;
    }

    /** Where things stand in the file, for faults that only readings bring to light. */
    record Places(Where outer, Where inner, Where pairs) {
        Where member(String name) {
            return name.equals("outer") ? outer : inner;
        }
    }

    /**
     * What could be read.
     *
     * @param joint the joint; empty if anything is at fault
     * @param places where things stand
     */
    record Outcome(Optional<Joint> joint, Places places) {}

    /** Whether a size cannot belong to a joint of that nominal: no metal stands a strain of a fiftieth. */
    static boolean isFarFrom(BigDecimal nominal, BigDecimal size) {
        return size.subtract(nominal).abs().compareTo(nominal.multiply(FARTHEST_SHARE)) > 0;
    }

    Outcome read(Fields document) {
        SchemaName.check(document, AssemblyFile.SCHEMA);
        Optional<String> name = document.text("name");
        Optional<String> part = document.text("part");
        Optional<Hand> hand = StatedHand.of(document);
        Optional<Fields> joint =
                document.required("joint", document.object("joint"), "an object with nominal, length and friction");
        Optional<Dimensions> dimensions = joint.flatMap(this::dimensions);
        Optional<BigDecimal> nominal = dimensions.map(Dimensions::nominal);
        Optional<Fields> outerFields =
                document.required("outer", document.object("outer"), "the part with the hole, an object { … }");
        Optional<Fields> innerFields =
                document.required("inner", document.object("inner"), "the part that goes in, an object { … }");
        Optional<Joint.Member> outer = outerFields.flatMap(fields -> member(fields, true, nominal, hand));
        Optional<Joint.Member> inner = innerFields.flatMap(fields -> member(fields, false, nominal, hand));
        Optional<Joint.Temperatures> temperature = document.value("temperature").isEmpty()
                ? Optional.of(new Joint.Temperatures(ROOM, ROOM, ROOM))
                : document.object("temperature").flatMap(this::temperatures);
        if (document.value("temperature").isEmpty()) {
            faults.notice(
                    document.where("temperature"),
                    Remark.of(
                            "notice.no-temperature", "no temperature is stated, so the joint is looked at 20 °C only"));
        }
        Joint.Pairing pairs = pairs(document);
        document.finish();
        Places places = new Places(document.where("outer"), document.where("inner"), document.where("pairs"));
        if (outer.isPresent() && inner.isPresent() && innerFields.isPresent()) {
            checkHands(innerFields.get(), outer.get(), inner.get());
            checkThickness(innerFields.get(), outer.get(), inner.get(), nominal);
            if (outer.get().bearing().isPresent() && inner.get().bearing().isPresent()) {
                innerFields
                        .get()
                        .refuse(
                                "bearing",
                                FaultKind.CONTRADICTION,
                                "both parts are rings of a bearing",
                                "",
                                "\"bearing\" at one of them");
            }
        }
        if (dimensions.isEmpty() || outer.isEmpty() || inner.isEmpty() || temperature.isEmpty() || !faults.isEmpty()) {
            return new Outcome(Optional.empty(), places);
        }
        Dimensions known = dimensions.get();
        return new Outcome(
                Optional.of(new Joint(
                        name,
                        part,
                        known.nominal(),
                        known.length(),
                        known.friction(),
                        known.smoothing(),
                        known.criterion(),
                        known.demand(),
                        outer.get(),
                        inner.get(),
                        temperature.get(),
                        known.gap(),
                        pairs)),
                places);
    }

    // ------------------------------------------------------------------ joint

    private record Dimensions(
            BigDecimal nominal,
            BigDecimal length,
            Joint.Friction friction,
            Smoothing smoothing,
            Criterion criterion,
            Joint.Demand demand,
            BigDecimal gap) {}

    private Optional<Dimensions> dimensions(Fields fields) {
        Optional<BigDecimal> nominal =
                fields.required("nominal", fields.decimal("nominal", false), "the joint diameter in mm");
        Optional<BigDecimal> length = fields.required("length", fields.decimal("length", false), LENGTH);
        Optional<Joint.Friction> friction = friction(fields);
        Smoothing smoothing = smoothing(fields);
        Criterion criterion = fields.word(
                        "criterion",
                        Criterion::parse,
                        Arrays.stream(Criterion.values()).map(Criterion::word).toList())
                .orElse(Criterion.VON_MISES);
        Optional<BigDecimal> share = fields.decimal("requiredShare", false);
        if (share.isPresent() && (share.get().compareTo(HALF) < 0 || share.get().compareTo(BigDecimal.ONE) > 0)) {
            fields.refuse(
                    "requiredShare",
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "",
                    share.get().toPlainString(),
                    "a share of pairs from 0.5 to 1, such as 0.999");
        }
        Joint.Demand demand = new Joint.Demand(
                fields.decimal("requiredForce", false),
                fields.decimal("requiredTorque", false),
                fields.decimal("wantedInterference"),
                fields.decimal("leastClearance").orElse(BigDecimal.ZERO),
                share);
        Optional<BigDecimal> gap = fields.decimal("gap", true);
        fields.finish();
        return nominal.flatMap(d -> length.flatMap(l -> friction.map(f -> new Dimensions(
                d, l, f, smoothing, criterion, demand, gap.orElseGet(() -> d.multiply(USUAL_GAP_SHARE))))));
    }

    private Optional<Joint.Friction> friction(Fields fields) {
        String expected = "a coefficient such as 0.12, or { \"minimum\": 0.08, \"maximum\": 0.16 }";
        Optional<JsonValue> value = fields.required("friction", fields.value("friction"), expected);
        if (value.isPresent() && value.get() instanceof JsonValue.Obj) {
            return fields.object("friction").flatMap(bounds -> {
                Optional<BigDecimal> least = coefficient(bounds, "minimum");
                Optional<BigDecimal> greatest = coefficient(bounds, "maximum");
                bounds.finish();
                if (least.isPresent() && greatest.isPresent() && least.get().compareTo(greatest.get()) > 0) {
                    bounds.refuse(
                            "minimum",
                            FaultKind.CONTRADICTION,
                            "the lower bound of friction is above the upper one",
                            least.get().toPlainString(),
                            "at most " + greatest.get().toPlainString());
                    return Optional.empty();
                }
                return least.flatMap(low -> greatest.map(high -> new Joint.Friction(low, high)));
            });
        }
        return value.isEmpty()
                ? Optional.empty()
                : coefficient(fields, "friction").map(one -> new Joint.Friction(one, one));
    }

    private static Optional<BigDecimal> coefficient(Fields fields, String key) {
        return within(
                fields,
                key,
                fields.required(key, fields.decimal(key, false), "a coefficient of friction such as 0.12"),
                BigDecimal.ZERO,
                MOST_FRICTION,
                "no metals rub like that",
                "a coefficient above 0 and up to 1.5, such as 0.12");
    }

    private Smoothing smoothing(Fields fields) {
        Optional<JsonValue> value = fields.value("smoothing");
        if (value.isPresent() && value.get() instanceof JsonValue.Numeral) {
            return within(
                            fields,
                            "smoothing",
                            fields.decimal("smoothing", true),
                            BigDecimal.ZERO,
                            MOST_SMOOTHING,
                            "",
                            "a factor from 0 to 2 of Rz")
                    .map(Smoothing::stated)
                    .orElse(Smoothing.DIN_7190_1_2017);
        }
        return fields.word("smoothing", Smoothing::parse, Smoothing.words()).orElse(Smoothing.DIN_7190_1_2017);
    }

    // ------------------------------------------------------------------ members

    private Optional<Joint.Member> member(
            Fields fields, boolean isOuter, Optional<BigDecimal> nominal, Optional<Hand> hand) {
        Optional<String> part = fields.text("part");
        Optional<Hand> own = StatedHand.ofMember(fields, "the assembly", hand);
        Optional<ElasticMaterial> material = material(fields);
        Optional<BigDecimal> far = isOuter ? outside(fields, nominal) : inside(fields, nominal);
        Optional<LimitsReader.Limited> limited = new LimitsReader(source, faults, Unit.MILLIMETRE)
                .read(fields, "requirement", Optional.of(isOuter ? Drawing.Form.HOLE : Drawing.Form.SHAFT), true);
        limited.ifPresent(found -> checkNear(fields, isOuter, found, nominal));
        Optional<Ring> ring = fields.object("bearing").flatMap(inner -> ring(inner, isOuter, nominal));
        if (limited.isPresent()
                && ring.flatMap(Ring::size).isPresent()
                && fields.value("bearing").isPresent()) {
            faults.notice(
                    fields.where("requirement"),
                    Remark.of(
                            "notice.requirement-first", "the requirement goes before the ring tolerances of ISO 492"));
        }
        BigDecimal roughness = within(
                        fields,
                        "roughnessRz",
                        fields.decimal("roughnessRz", true),
                        BigDecimal.ZERO,
                        ROUGHEST,
                        "no joint is that rough",
                        "Rz in micrometres from 0 to 200")
                .orElse(BigDecimal.ZERO);
        if (fields.value("roughnessRz").isEmpty()) {
            faults.notice(
                    fields.where("roughnessRz"),
                    Remark.of(
                            "notice.no-roughness",
                            "no roughness is stated, so nothing is taken off the interference for smoothing this surface"));
        }
        Optional<String> characteristic = fields.name("characteristic");
        fields.finish();
        Optional<Limits> limits = limited.map(LimitsReader.Limited::limits).or(() -> ring.flatMap(Ring::size));
        Remark stated = limited.map(LimitsReader.Limited::printed)
                .map(Remark::verbatim)
                .orElseGet(() -> ring.filter(each -> each.size().isPresent())
                        .map(each -> Remark.of(
                                "bearing-ring.stated",
                                "ISO 492 {0|inner|outer} ring, class {1}",
                                isOuter,
                                Remark.word("ring-class", each.bearing().toleranceClass())))
                        .orElseGet(Remark::none));
        return material.flatMap(known -> far.map(diameter -> new Joint.Member(
                part,
                own.or(() -> hand),
                known,
                diameter,
                limits,
                stated,
                ring.map(Ring::bearing),
                roughness,
                characteristic)));
    }

    private Optional<ElasticMaterial> material(Fields fields) {
        String expected =
                "a name from the table, or { \"name\", \"youngsModulus\", \"poissonsRatio\", \"expansion\", \"yield\" }";
        Optional<JsonValue> value = fields.required("material", fields.value("material"), expected);
        if (value.isPresent() && value.get() instanceof JsonValue.Obj) {
            return fields.object("material").flatMap(this::ownMaterial);
        }
        Optional<String> name = value.isEmpty() ? Optional.empty() : fields.requiredText("material", expected);
        Optional<ElasticMaterial> found = name.flatMap(ElasticMaterials::find);
        if (name.isPresent() && found.isEmpty()) {
            List<String> known =
                    ElasticMaterials.all().stream().map(ElasticMaterial::name).toList();
            fields.refuse(
                    "material",
                    FaultKind.UNKNOWN_WORD,
                    Nearest.to(name.get(), known)
                            .map(near -> "the table has no such material; perhaps " + near + " is meant")
                            .orElse("the table has no such material"),
                    Echo.quoted(name.get()),
                    "one of " + String.join(", ", known) + ", or an object with its values");
        }
        return found;
    }

    private Optional<ElasticMaterial> ownMaterial(Fields fields) {
        Optional<String> name = fields.requiredText("name", "what sheets call the material");
        Optional<BigDecimal> young = within(
                fields,
                "youngsModulus",
                fields.required("youngsModulus", fields.decimal("youngsModulus", false), "MPa, such as 70000"),
                SOFTEST,
                STIFFEST,
                "it is stated in MPa",
                "MPa from 500 to 1300000, such as 210000 for steel");
        Optional<BigDecimal> poisson = within(
                fields,
                "poissonsRatio",
                fields.required("poissonsRatio", fields.decimal("poissonsRatio", true), "such as 0.3"),
                BigDecimal.ZERO,
                new BigDecimal("0.4999"),
                "",
                "a ratio from 0 to below 0.5");
        Optional<BigDecimal> expansion = within(
                fields,
                "expansion",
                fields.required("expansion", fields.decimal("expansion"), "per kelvin, such as 0.0000236"),
                GREATEST_EXPANSION.negate(),
                GREATEST_EXPANSION,
                "no material expands that much; a power of ten is perhaps missing",
                "an expansion per kelvin, such as 0.0000236 for aluminium");
        Optional<BigDecimal> yield = within(
                fields,
                "yield",
                fields.required("yield", fields.decimal("yield", false), "MPa, such as 240"),
                BigDecimal.ZERO,
                STRONGEST,
                "it is stated in MPa",
                "MPa up to 10000, such as 240");
        fields.finish();
        return name.flatMap(n -> young.flatMap(e -> poisson.flatMap(nu -> expansion.flatMap(
                alpha -> yield.map(y -> new ElasticMaterial(n, e, nu, alpha, y, "stated in the assembly"))))));
    }

    private static Optional<BigDecimal> outside(Fields fields, Optional<BigDecimal> nominal) {
        String key = "outsideDiameter";
        Optional<BigDecimal> found = fields.required(key, fields.decimal(key, false), LENGTH);
        if (found.isPresent() && nominal.isPresent() && found.get().compareTo(nominal.get()) <= 0) {
            fields.refuse(
                    key,
                    FaultKind.CONTRADICTION,
                    "the diameters are the wrong way round: the outside of the outer part lies outside the joint",
                    found.get().toPlainString(),
                    "more than the joint diameter, " + nominal.get().toPlainString());
            return Optional.empty();
        }
        return found;
    }

    private static Optional<BigDecimal> inside(Fields fields, Optional<BigDecimal> nominal) {
        String key = "insideDiameter";
        Optional<BigDecimal> found = fields.decimal(key, true);
        if (found.isEmpty()) {
            return fields.has(key) && fields.value(key).isPresent() ? found : Optional.of(BigDecimal.ZERO);
        }
        if (nominal.isPresent() && found.get().compareTo(nominal.get()) >= 0) {
            fields.refuse(
                    key,
                    FaultKind.CONTRADICTION,
                    "the diameters are the wrong way round: the inside of the inner part lies within the joint",
                    found.get().toPlainString(),
                    "less than the joint diameter, " + nominal.get().toPlainString() + ", or 0 for a solid part");
            return Optional.empty();
        }
        return found;
    }

    private static void checkNear(
            Fields fields, boolean isOuter, LimitsReader.Limited found, Optional<BigDecimal> nominal) {
        if (nominal.isEmpty()) {
            return;
        }
        boolean far = isFarFrom(nominal.get(), found.limits().lower().orElseThrow())
                || isFarFrom(nominal.get(), found.limits().upper().orElseThrow());
        if (far) {
            boolean thicker = !isOuter && found.limits().upper().orElseThrow().compareTo(nominal.get()) > 0;
            fields.refuse(
                    "requirement",
                    FaultKind.CONTRADICTION,
                    thicker
                            ? "the inner part is thicker than any bore of that joint can take"
                            : "this is no size at a joint of " + nominal.get().toPlainString() + " mm",
                    Echo.quoted(found.printed()),
                    "limits within 2 % of the joint diameter");
        }
    }

    /** No metal stands an interference of a fiftieth of its diameter. */
    private static void checkThickness(
            Fields inner, Joint.Member outer, Joint.Member ring, Optional<BigDecimal> nominal) {
        if (nominal.isEmpty() || outer.limits().isEmpty() || ring.limits().isEmpty()) {
            return;
        }
        BigDecimal thickest = ring.limits().get().upper().orElseThrow();
        BigDecimal narrowest = outer.limits().get().lower().orElseThrow();
        if (thickest.subtract(narrowest).compareTo(nominal.get().multiply(FARTHEST_SHARE)) > 0) {
            inner.refuse(
                    "requirement",
                    FaultKind.CONTRADICTION,
                    "the inner part is thicker than its bore can take",
                    "up to " + thickest.toPlainString() + " mm in a bore from " + narrowest.toPlainString() + " mm",
                    "an interference of at most 2 % of the joint diameter");
        }
    }

    private static void checkHands(Fields inner, Joint.Member outer, Joint.Member ring) {
        if (outer.hand().isPresent()
                && ring.hand().isPresent()
                && outer.hand().get().isLeft() != ring.hand().get().isLeft()
                && inner.value("hand").isPresent()) {
            inner.refuse(
                    "hand",
                    FaultKind.OTHER_PART,
                    "the hands are mixed: the outer part is "
                            + outer.hand().get().word(),
                    Echo.quoted(ring.hand().get().word()),
                    outer.hand().get().word() + ", or no hand for a part that serves both");
        }
    }

    // ------------------------------------------------------------------ bearing, temperature, pairs

    private record Ring(Joint.Bearing bearing, Optional<Limits> size) {}

    private Optional<Ring> ring(Fields fields, boolean isOuter, Optional<BigDecimal> nominal) {
        String toleranceClass = fields.word("class", BearingTable::toleranceClass, BearingTable.CLASSES)
                .orElse("normal");
        Optional<String> group = fields.word("clearanceGroup", BearingTable::clearanceGroup, BearingTable.GROUPS);
        // The inner ring of a bearing is an outer part: its bore is the joint.
        Optional<BigDecimal> bore = isOuter ? nominal : fields.decimal("bore", false);
        if (isOuter) {
            fields.value("bore");
        }
        BigDecimal warmer = within(
                        fields,
                        "ringDifference",
                        fields.decimal("ringDifference"),
                        new BigDecimal("-200"),
                        new BigDecimal("200"),
                        "",
                        "kelvins from -200 to 200 by which the inner ring is warmer than the outer one")
                .orElse(BigDecimal.ZERO);
        fields.finish();
        if (!isOuter && bore.isPresent() && nominal.isPresent() && bore.get().compareTo(nominal.get()) >= 0) {
            fields.refuse(
                    "bore",
                    FaultKind.CONTRADICTION,
                    "the bore of a bearing is less than its outside diameter",
                    bore.get().toPlainString(),
                    "less than " + nominal.get().toPlainString());
        }
        Optional<BearingTable.Found> size = nominal.flatMap(diameter -> isOuter
                ? BearingTable.innerRing(diameter, toleranceClass)
                : BearingTable.outerRing(diameter, toleranceClass));
        if (nominal.isPresent() && size.isEmpty()) {
            faults.notice(
                    fields.where("class"),
                    Remark.of(
                            "notice.no-ring",
                            "no ring tolerance of that size is held here ({0} is, {1}); state a {2} from the maker's catalogue",
                            toleranceClass,
                            isOuter
                                    ? BearingTable.rangesOfInnerRings(toleranceClass)
                                    : BearingTable.rangesOfOuterRings(toleranceClass),
                            "\"requirement\""));
        }
        Optional<BearingTable.Found> clearance =
                group.flatMap(known -> bore.flatMap(diameter -> BearingTable.clearance(diameter, known)));
        if (group.isPresent() && clearance.isEmpty()) {
            faults.notice(
                    fields.where("clearanceGroup"),
                    bore.isEmpty()
                            ? Remark.of(
                                    "notice.no-bore",
                                    "the clearance of the group depends on the bore of the bearing; state {0} to know what is left",
                                    "\"bore\"")
                            : Remark.of(
                                    "notice.no-clearance",
                                    "no clearance of that group and bore is held here, so what is left is not known"));
        }
        boolean fromMemory = size.map(BearingTable.Found::fromMemory).orElse(false)
                || clearance.map(BearingTable.Found::fromMemory).orElse(false);
        return Optional.of(new Ring(
                new Joint.Bearing(
                        toleranceClass, bore, group, clearance.map(BearingTable.Found::limits), warmer, fromMemory),
                size.map(BearingTable.Found::limits)));
    }

    private Optional<Joint.Temperatures> temperatures(Fields fields) {
        BigDecimal assembly = temperature(fields, "assembly").orElse(ROOM);
        BigDecimal coldest = temperature(fields, "minimum").orElse(assembly);
        BigDecimal hottest = temperature(fields, "maximum").orElse(assembly);
        fields.finish();
        if (coldest.compareTo(hottest) > 0) {
            fields.refuse(
                    "minimum",
                    FaultKind.CONTRADICTION,
                    "the coldest temperature lies above the hottest",
                    coldest.toPlainString(),
                    "at most " + hottest.toPlainString());
            return Optional.empty();
        }
        return Optional.of(new Joint.Temperatures(assembly, coldest, hottest));
    }

    private static Optional<BigDecimal> temperature(Fields fields, String key) {
        Optional<BigDecimal> found = fields.decimal(key);
        boolean tooCold = found.isPresent() && found.get().compareTo(ABSOLUTE_ZERO) < 0;
        return within(
                fields,
                key,
                found,
                ABSOLUTE_ZERO,
                HOTTEST,
                tooCold ? "this lies below absolute zero" : "the materials here are not known so hot",
                "degrees Celsius from -273.15 to 1000");
    }

    private Joint.Pairing pairs(Fields document) {
        Optional<JsonValue> value = document.value("pairs");
        if (value.isEmpty()) {
            return Joint.Pairing.NONE;
        }
        if (value.get() instanceof JsonValue.Text) {
            Optional<String> word = document.word(
                    "pairs", text -> Optional.of(text).filter("by-part"::equalsIgnoreCase), List.of("by-part"));
            return new Joint.Pairing(word.isPresent(), List.of());
        }
        List<Joint.Couple> couples = new ArrayList<>();
        for (Fields entry : document.objects("pairs", "a pair { \"outer\", \"inner\" }")) {
            Optional<String> outer = entry.requiredName("outer", "the name of the piece with the bore");
            Optional<String> inner = entry.requiredName("inner", "the name of the piece that goes in");
            entry.finish();
            outer.ifPresent(one -> inner.ifPresent(other -> {
                boolean twice = couples.stream()
                        .anyMatch(couple ->
                                couple.outer().equals(one) || couple.inner().equals(other));
                if (twice) {
                    entry.refuse(
                            "outer",
                            FaultKind.CONTRADICTION,
                            "a piece is in two pairs",
                            Echo.quoted(one) + " with " + Echo.quoted(other),
                            "each piece in one pair");
                }
                couples.add(new Joint.Couple(one, other));
            }));
        }
        if (couples.size() == 1) {
            document.refuse(
                    "pairs",
                    FaultKind.EMPTY,
                    "one pair says nothing of how pairs are spread",
                    "a sample of 1",
                    "at least two pairs");
        }
        return new Joint.Pairing(false, couples);
    }

    private static Optional<BigDecimal> within(
            Fields fields,
            String key,
            Optional<BigDecimal> value,
            BigDecimal least,
            BigDecimal greatest,
            String message,
            String expected) {
        if (value.isPresent()
                && (value.get().compareTo(least) < 0 || value.get().compareTo(greatest) > 0)) {
            fields.refuse(
                    key, FaultKind.NUMBER_OUT_OF_RANGE, message, value.get().toPlainString(), expected);
            return Optional.empty();
        }
        return value;
    }
}
