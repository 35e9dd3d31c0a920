package io.github.firstoff.intake;

import io.github.firstoff.intake.QifLibrary.Entry;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a characteristic of a QIF document requires: as limits, to hold against those of a plan, and as a drawing prints it.
 *
 * <p>Tolerances of sizes and angles are limits where DefinedAsLimit is true and deviations from the target value where it is false
 * (ISO 23952, LinearToleranceType). Nothing is rounded: what does not convert into the plan's unit exactly is refused.
 */
final class QifRequirement {
    private static final Map<String, String> SYMBOLS =
            Map.of("Diameter", "Ø", "SphericalDiameter", "SØ", "Radius", "R", "SphericalRadius", "SR", "Square", "□");

    private static final List<String> LENGTHS = List.of(
            "CurveLength",
            "Diameter",
            "SphericalDiameter",
            "Length",
            "Width",
            "Height",
            "Depth",
            "Thickness",
            "Square",
            "DistanceFrom",
            "DistanceBetween",
            "Radius",
            "SphericalRadius",
            "Chord",
            "LinearCoordinate",
            "UserDefinedLinear");

    private static final List<String> ANGLES =
            List.of("Angle", "AngleFrom", "AngleBetween", "AngularCoordinate", "UserDefinedAngular");

    private static final Map<String, String> FRAMES = Map.ofEntries(
            Map.entry("Straightness", "straightness"),
            Map.entry("Flatness", "flatness"),
            Map.entry("Circularity", "roundness"),
            Map.entry("Cylindricity", "cylindricity"),
            Map.entry("LineProfile", "line profile"),
            Map.entry("SurfaceProfile", "surface profile"),
            Map.entry("Parallelism", "parallelism"),
            Map.entry("Perpendicularity", "perpendicularity"),
            Map.entry("Angularity", "angularity"),
            Map.entry("Position", "position"),
            Map.entry("Coaxiality", "coaxiality"),
            Map.entry("Concentricity", "coaxiality"),
            Map.entry("Symmetry", "symmetry"),
            Map.entry("CircularRunout", "run-out"),
            Map.entry("TotalRunout", "total run-out"));

    /** Forms without a symbol in ISO 1101; a greatest value is all that can be printed of them. */
    private static final List<String> FORMS_WITHOUT_SYMBOL =
            List.of("Sphericity", "Conicity", "Ellipticity", "Toroidicity", "OtherForm");

    /** What changes a requirement beyond its value and cannot be said in a plan. */
    private static final List<String> BEYOND = List.of(
            "ToleranceZonePerUnitLength",
            "ToleranceZonePerUnitArea",
            "ToleranceZonePerUnitAngle",
            "ToleranceZonePerUnitArcLength",
            "ToleranceZonePerUnitPolarArea",
            "MaximumToleranceValue",
            "ProjectedToleranceZoneValue",
            "OuterDisposition",
            "UnequallyDisposedZone",
            "SecondCompositeSegmentPositionDefinition",
            "SecondCompositeSegmentProfileDefinition",
            "SecondCompositeSegmentSymmetryDefinition",
            "ToPointToleranceValue");

    /** The words that say yes to something that a plan cannot say. */
    private static final List<String> BEYOND_IF_TRUE = List.of(
            "FreeState",
            "CommonZone",
            "TangentPlane",
            "OffsetZone",
            "VariableAngle",
            "OrientationOnly",
            "NotConvex",
            "EachElement",
            "EachRadialElement");

    /**
     * An amount as a document states it, in a unit that is understood.
     *
     * @param value the amount, exactly
     * @param unit its unit
     * @param node where it stands
     */
    record Amount(BigDecimal value, Unit unit, QifNode node) {}

    /**
     * The limits that a requirement comes to.
     *
     * @param lower the least value; empty if there is none
     * @param upper the greatest value; empty if there is none
     */
    record Bounds(Optional<Amount> lower, Optional<Amount> upper) {}

    private final QifLibrary library;
    private final QifSubject subject;
    private final Entry definition;
    private final String kind;

    private QifRequirement(QifLibrary library, QifSubject subject, Entry definition) {
        this.library = library;
        this.subject = subject;
        this.definition = definition;
        this.kind = subject.kind();
    }

    /**
     * The requirement of a subject.
     *
     * @throws QifFault if its definition cannot be reached
     */
    static QifRequirement of(QifLibrary library, QifSubject subject) throws QifFault {
        if (subject.broken().isPresent()) {
            throw new QifFault(subject.broken().get());
        }
        return new QifRequirement(library, subject, subject.definition().orElseThrow());
    }

    private static QifFault fault(FaultKind kind, QifNode at, String message, String found, String expected) {
        return new QifFault(Fault.of(kind, at.where(), message, found, expected));
    }

    /** The amount that a node states. */
    static Amount amount(QifDocument document, QifNode node, Unit.Kind kind) throws QifFault {
        QifUnits.Measure measure = document.units()
                .of(kind, node.attribute(kind == Unit.Kind.ANGLE ? "angularUnit" : "linearUnit"), node.where());
        try {
            return new Amount(measure.apply(ExactNumber.written(node.text())), measure.unit(), node);
        } catch (NumberRefused refused) {
            throw fault(refused.kind(), node, refused.message(), Echo.quoted(node.text()), refused.expected());
        }
    }

    /** Whether values of this kind of characteristic are angles. */
    static boolean isAngle(String kind) {
        return ANGLES.contains(kind);
    }

    private Unit.Kind quantity() {
        return isAngle(kind) ? Unit.Kind.ANGLE : Unit.Kind.LENGTH;
    }

    private boolean isSize() {
        return LENGTHS.contains(kind) || ANGLES.contains(kind);
    }

    /**
     * The limits; empty where the requirement has none by itself: a fit, an attribute, a dimension without tolerance.
     *
     * @throws QifFault if they cannot be read
     */
    Optional<Bounds> bounds() throws QifFault {
        if (isSize()) {
            Optional<Tolerance> tolerance = tolerance();
            return tolerance.isEmpty() ? Optional.empty() : Optional.of(bounds(tolerance.get()));
        }
        Optional<QifNode> most = greatest();
        if (most.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new Bounds(Optional.empty(), Optional.of(amount(definition.document(), most.get(), Unit.Kind.LENGTH))));
    }

    private Optional<QifNode> greatest() {
        return definition.node().child(kind.equals("SurfaceTexture") ? "RoughnessAverage" : "ToleranceValue");
    }

    /** A tolerance of a size as it is stated. */
    private record Tolerance(QifNode node, Optional<Amount> most, Optional<Amount> least, boolean limits) {}

    private Optional<Tolerance> tolerance() throws QifFault {
        Optional<QifNode> own = definition.node().child("Tolerance");
        if (own.isEmpty()) {
            return Optional.empty();
        }
        QifNode node = own.get();
        Entry holder = definition;
        Optional<QifNode> shared = node.child("DefinitionId");
        if (shared.isPresent()) {
            holder = library.follow(definition.document(), shared.get(), QifDocument.Kind.TOLERANCE);
        } else {
            holder = new Entry(definition.document(), node);
        }
        Optional<QifNode> most = holder.node().child("MaxValue");
        Optional<QifNode> least = holder.node().child("MinValue");
        if (most.isEmpty() && least.isEmpty()) {
            throw fault(
                    FaultKind.MISSING,
                    node,
                    "",
                    "a tolerance with neither MaxValue nor MinValue",
                    "at least one of them");
        }
        Optional<QifNode> defined = node.child("DefinedAsLimit");
        String word = defined.map(QifNode::text).orElse("");
        boolean limits = word.equals("true") || word.equals("1");
        if (!limits && !word.equals("false") && !word.equals("0")) {
            throw fault(
                    FaultKind.MISSING,
                    defined.orElse(node),
                    "whether the tolerance is stated as limits or as deviations is not known",
                    word.isEmpty() ? "no DefinedAsLimit" : Echo.quoted(word),
                    "true or false");
        }
        return Optional.of(new Tolerance(node, optional(holder, most), optional(holder, least), limits));
    }

    private Optional<Amount> optional(Entry holder, Optional<QifNode> node) throws QifFault {
        return node.isEmpty() ? Optional.empty() : Optional.of(amount(holder.document(), node.get(), quantity()));
    }

    private Optional<Amount> target() throws QifFault {
        Optional<Entry> nominal = subject.nominal();
        Optional<QifNode> node = nominal.flatMap(found -> found.node().child("TargetValue"));
        return node.isEmpty()
                ? Optional.empty()
                : Optional.of(amount(nominal.orElseThrow().document(), node.get(), quantity()));
    }

    private Bounds bounds(Tolerance tolerance) throws QifFault {
        if (tolerance.limits()) {
            return new Bounds(tolerance.least(), tolerance.most());
        }
        Amount nominal = requiredTarget(tolerance);
        return new Bounds(shifted(nominal, tolerance.least()), shifted(nominal, tolerance.most()));
    }

    private Amount requiredTarget(Tolerance tolerance) throws QifFault {
        return target().orElseThrow(() -> fault(
                FaultKind.MISSING,
                subject.nominal().map(Entry::node).orElse(tolerance.node()),
                "the tolerance is stated as deviations, and there is nothing that they are deviations from",
                "no TargetValue",
                "a TargetValue, or DefinedAsLimit true"));
    }

    private static Optional<Amount> shifted(Amount nominal, Optional<Amount> deviation) throws QifFault {
        if (deviation.isEmpty()) {
            return Optional.empty();
        }
        Amount by = deviation.get();
        if (by.unit() == nominal.unit()) {
            return Optional.of(new Amount(nominal.value().add(by.value()), nominal.unit(), by.node()));
        }
        Unit common = nominal.unit().kind() == Unit.Kind.ANGLE ? Unit.ARC_SECOND : Unit.MILLIMETRE;
        return Optional.of(new Amount(converted(nominal, common).add(converted(by, common)), common, by.node()));
    }

    private static BigDecimal converted(Amount amount, Unit unit) throws QifFault {
        try {
            return amount.unit().convert(amount.value(), unit);
        } catch (ArithmeticException endless) {
            throw fault(
                    FaultKind.WRONG_UNIT,
                    amount.node(),
                    amount.value().toPlainString() + " " + amount.unit().word() + " is no finite decimal in "
                            + unit.word() + ", and a limit is never rounded",
                    "",
                    "a plan in " + amount.unit().word());
        }
    }

    /**
     * The requirement as a drawing prints it.
     *
     * @param unit the unit of the plan's lengths
     * @throws QifFault if a plan cannot say it
     */
    String printed(Unit unit) throws QifFault {
        for (String name : BEYOND) {
            Optional<QifNode> there = definition.node().child(name);
            if (there.isPresent()) {
                throw fault(
                        FaultKind.REQUIREMENT,
                        there.get(),
                        "a plan from QIF cannot hold this part of the requirement",
                        "<" + name + ">",
                        "the characteristic entered by hand");
            }
        }
        for (String name : BEYOND_IF_TRUE) {
            if (definition.node().isTrue(name)) {
                throw fault(
                        FaultKind.REQUIREMENT,
                        definition.node().child(name).orElseThrow(),
                        "a plan from QIF cannot hold this part of the requirement",
                        "<" + name + ">",
                        "the characteristic entered by hand");
            }
        }
        if (isSize()) {
            return size(unit);
        }
        if (FRAMES.containsKey(kind)) {
            return frame(unit);
        }
        if (FORMS_WITHOUT_SYMBOL.contains(kind)) {
            return number(amount(definition.document(), requiredGreatest(), Unit.Kind.LENGTH), unit) + " max";
        }
        return switch (kind) {
            case "SurfaceTexture" -> {
                Unit fine = unit == Unit.INCH ? Unit.MICROINCH : Unit.MICROMETRE;
                yield "Ra " + number(amount(definition.document(), requiredGreatest(), Unit.Kind.LENGTH), fine)
                        + " max";
            }
            case "Thread" -> thread();
            case "UserDefinedAttribute" -> attribute();
            default ->
                throw fault(
                        FaultKind.REQUIREMENT,
                        definition.node(),
                        "this is neither a length, nor an angle, nor a geometric tolerance, nor an attribute",
                        "<" + Echo.plain(definition.node().name()) + ">",
                        "one of those");
        };
    }

    private QifNode requiredGreatest() throws QifFault {
        return greatest()
                .orElseThrow(() -> fault(
                        FaultKind.MISSING,
                        definition.node(),
                        "",
                        "no tolerance",
                        "a ToleranceValue or RoughnessAverage"));
    }

    private static String number(Amount amount, Unit unit) throws QifFault {
        return converted(amount, unit).toPlainString();
    }

    private String size(Unit planUnit) throws QifFault {
        boolean angle = isAngle(kind);
        Unit unit = angle ? Unit.DEGREE : planUnit;
        String mark = angle ? "°" : "";
        String symbol = SYMBOLS.getOrDefault(kind, "");
        String dimensionType = definition.node().textAt("DimensionType").orElse("");
        Optional<Amount> target = target();
        if (dimensionType.equals("BASIC_OR_TED")) {
            return "[" + symbol + number(requiredSize(target), unit) + mark + "]";
        }
        Optional<QifNode> fit = definition.node().child("LimitsAndFitsSpecification");
        if (fit.isPresent()) {
            return symbol + number(requiredSize(target), unit) + " "
                    + fit.get().textAt("FormVariance").orElse("")
                    + fit.get().textAt("Grade").orElse("");
        }
        Optional<Tolerance> stated = tolerance();
        if (stated.isEmpty() || dimensionType.equals("REFERENCE_OR_AUXILIARY") || dimensionType.equals("SET")) {
            return "(" + symbol + number(requiredSize(target), unit) + mark + ")";
        }
        Tolerance tolerance = stated.get();
        Bounds bounds = bounds(tolerance);
        if (bounds.lower().isEmpty() || bounds.upper().isEmpty()) {
            Amount only = bounds.lower().or(bounds::upper).orElseThrow();
            return symbol + number(only, unit) + mark + (bounds.upper().isPresent() ? " max" : " min");
        }
        BigDecimal lower = converted(bounds.lower().get(), unit);
        BigDecimal upper = converted(bounds.upper().get(), unit);
        if (lower.compareTo(upper) >= 0) {
            throw fault(
                    FaultKind.CONTRADICTION,
                    tolerance.node(),
                    "the limits " + lower.toPlainString() + " and " + upper.toPlainString() + " leave no tolerance"
                            + (tolerance.limits() ? "" : "; a minus sign is perhaps missing at MinValue"),
                    "",
                    "a lower limit below the upper");
        }
        requireSense(tolerance, target, unit, lower, upper);
        if (tolerance.limits()) {
            return symbol + lower.toPlainString() + mark + ".." + upper.toPlainString() + mark;
        }
        return symbol + number(target.orElseThrow(), unit) + mark + " "
                + deviations(
                        converted(tolerance.most().orElseThrow(), unit),
                        converted(tolerance.least().orElseThrow(), unit),
                        mark);
    }

    /** Limits and deviations are easily taken for each other; where the target tells that they were, nothing is guessed. */
    private static void requireSense(
            Tolerance tolerance, Optional<Amount> target, Unit unit, BigDecimal lower, BigDecimal upper)
            throws QifFault {
        if (target.isEmpty() || target.get().value().signum() == 0) {
            return;
        }
        BigDecimal nominal = converted(target.get(), unit);
        BigDecimal quarter = nominal.abs().divide(new BigDecimal(4));
        boolean farAway = nominal.compareTo(lower.subtract(quarter)) < 0 || nominal.compareTo(upper.add(quarter)) > 0;
        if (farAway) {
            throw fault(
                    FaultKind.CONTRADICTION,
                    tolerance.node(),
                    "with DefinedAsLimit " + tolerance.limits() + " the limits would be " + lower.toPlainString()
                            + " and " + upper.toPlainString() + ", far from the target value "
                            + nominal.toPlainString(),
                    "",
                    "DefinedAsLimit true over limits, and false over deviations");
        }
    }

    private Amount requiredSize(Optional<Amount> target) throws QifFault {
        return target.orElseThrow(() -> fault(
                FaultKind.MISSING,
                subject.nominal().map(Entry::node).orElse(definition.node()),
                "the size itself is missing",
                "no TargetValue",
                "a TargetValue"));
    }

    private static String deviations(BigDecimal upper, BigDecimal lower, String mark) {
        if (upper.compareTo(lower.negate()) == 0) {
            return "±" + upper.toPlainString() + mark;
        }
        return signed(upper, mark) + "/" + signed(lower, mark);
    }

    private static String signed(BigDecimal deviation, String mark) {
        if (deviation.signum() == 0) {
            return "0";
        }
        return (deviation.signum() > 0 ? "+" : "") + deviation.toPlainString() + mark;
    }

    private String frame(Unit unit) throws QifFault {
        StringBuilder text = new StringBuilder(FRAMES.get(kind)).append(' ');
        QifNode node = definition.node();
        Optional<QifNode> zone = node.child("ZoneShape");
        if (zone.flatMap(shape -> shape.child("SphericalZone")).isPresent()) {
            text.append("SØ");
        } else if (zone.flatMap(shape -> shape.child("DiametricalZone")).isPresent()) {
            text.append("Ø");
        }
        text.append(number(amount(definition.document(), requiredGreatest(), Unit.Kind.LENGTH), unit));
        text.append(modifier(node.child("MaterialCondition")));
        Optional<QifNode> frame = node.child("DatumReferenceFrameId");
        if (frame.isPresent()) {
            text.append(datums(library.follow(definition.document(), frame.get(), QifDocument.Kind.FRAME)));
        }
        return text.toString();
    }

    private static String modifier(Optional<QifNode> condition) throws QifFault {
        if (condition.isEmpty()) {
            return "";
        }
        return switch (condition.get().text()) {
            case "MAXIMUM" -> " (M)";
            case "LEAST" -> " (L)";
            case "MAXIMUM_RPR" -> " (M) (R)";
            case "LEAST_RPR" -> " (L) (R)";
            case "NONE", "REGARDLESS", "" -> "";
            default ->
                throw fault(
                        FaultKind.UNKNOWN_WORD,
                        condition.get(),
                        "",
                        Echo.quoted(condition.get().text()),
                        "MAXIMUM, LEAST, MAXIMUM_RPR, LEAST_RPR, REGARDLESS or NONE");
        };
    }

    private String datums(Entry frame) throws QifFault {
        List<String> ranks = List.of("PRIMARY", "SECONDARY", "TERTIARY", "QUATERNARY", "QUINARY", "SENARY");
        List<QifNode> list = frame.node().child("Datums").map(QifNode::children).orElse(List.of()).stream()
                .sorted(Comparator.comparingInt(datum -> {
                    int rank = ranks.indexOf(
                            datum.textAt("Precedence", "PrecedenceEnum").orElse(""));
                    return rank < 0 ? ranks.size() : rank;
                }))
                .toList();
        StringBuilder text = new StringBuilder();
        for (QifNode datum : list) {
            text.append(' ').append(datum(frame.document(), datum));
        }
        return text.toString();
    }

    private String datum(QifDocument document, QifNode datum) throws QifFault {
        Optional<QifNode> simple = datum.child("SimpleDatum");
        if (simple.isPresent()) {
            return letter(document, simple.get());
        }
        Optional<QifNode> compound = datum.child("CompoundDatum");
        if (compound.isEmpty()) {
            throw fault(
                    FaultKind.REQUIREMENT,
                    datum,
                    "a plan names datums by their letters",
                    "a datum that is a feature without a letter",
                    "a DatumDefinition with a DatumLabel");
        }
        StringBuilder letters = new StringBuilder();
        for (QifNode part : compound.get().children()) {
            Optional<QifNode> inner = part.child("SimpleDatum");
            if (inner.isPresent()) {
                letters.append(letters.isEmpty() ? "" : "-").append(letter(document, inner.get()));
            }
        }
        return letters.toString();
    }

    private String letter(QifDocument document, QifNode simple) throws QifFault {
        QifNode reference = simple.child("DatumDefinitionId")
                .orElseThrow(
                        () -> fault(FaultKind.MISSING, simple, "", "no DatumDefinitionId", "the datum that is meant"));
        Entry entry = library.follow(document, reference, QifDocument.Kind.DATUM);
        return entry.node().textAt("DatumLabel").orElse("")
                + modifier(simple.child("MaterialModifier")).replace(" ", "");
    }

    private String thread() throws QifFault {
        QifNode reference = definition
                .node()
                .child("ThreadSpecificationId")
                .orElseThrow(() -> fault(
                        FaultKind.MISSING,
                        definition.node(),
                        "",
                        "no ThreadSpecificationId",
                        "the thread that is meant"));
        Entry entry = library.follow(definition.document(), reference, QifDocument.Kind.THREAD);
        String designation = entry.node()
                .textAt("TextThreadSpecification", "TextSpecification")
                .orElseThrow(() -> fault(
                        FaultKind.REQUIREMENT,
                        entry.node(),
                        "a plan names a thread by its designation",
                        "a thread described piece by piece",
                        "a TextThreadSpecification such as M5x0.8-6H"));
        return designation + " go/no-go";
    }

    private String attribute() throws QifFault {
        QifNode what = definition
                .node()
                .child("WhatToMeasure")
                .filter(node -> !node.text().isEmpty())
                .orElseThrow(() ->
                        fault(FaultKind.MISSING, definition.node(), "", "no WhatToMeasure", "what is to be checked"));
        String text = what.text().replaceAll("\\s+", " ");
        return text.matches("(?i)(visual|function|functional)\\s*:.*|.*\\bgo\\s*/\\s*no-?go")
                ? text
                : "visual: " + text;
    }

    /** What a plan calls the feature where the requirement alone does not say what is measured. */
    Optional<String> kindInWords() {
        if (kind.isEmpty()) {
            return Optional.empty();
        }
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < kind.length(); i++) {
            char c = kind.charAt(i);
            if (Character.isUpperCase(c) && !words.isEmpty()) {
                words.append(' ');
            }
            words.append(Character.toLowerCase(c));
        }
        return Optional.of(words.toString());
    }

    /** Whether the printed requirement leaves out what is measured. */
    boolean isWithoutSymbol() {
        return FORMS_WITHOUT_SYMBOL.contains(kind);
    }
}
