package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The units of a QIF document (ISO 23952, FileUnits): the primary unit of lengths and of angles, and those that a value may name.
 *
 * <p>The units of product and manufacturing information, where declared, go before the others in everything that is read here. A
 * declared conversion is {@code SI = (value + offset) · factor}, with the metre and the radian as SI units. A document that declares
 * no unit of lengths would by the letter of the standard speak in metres; in practice it speaks in millimetres, and that is taken and
 * said. The same holds for angles and the degree.
 */
final class QifUnits {
    /** Thousandths of a metre are millimetres. */
    private static final BigDecimal MILLIMETRES_PER_METRE = new BigDecimal(1000);

    /** A declared factor may be rounded; beyond this part of itself it is another unit. */
    private static final BigDecimal ROUNDED_FACTOR = new BigDecimal("0.000001");

    /** π/180, to more digits than anybody states (from memory; the digits of π are common knowledge). */
    private static final BigDecimal RADIANS_PER_DEGREE = new BigDecimal("0.01745329251994329577");

    private static final Map<String, Measure> OTHER_LENGTHS = Map.ofEntries(
            Map.entry("m", new Measure(Unit.MILLIMETRE, MILLIMETRES_PER_METRE)),
            Map.entry("metre", new Measure(Unit.MILLIMETRE, MILLIMETRES_PER_METRE)),
            Map.entry("meter", new Measure(Unit.MILLIMETRE, MILLIMETRES_PER_METRE)),
            Map.entry("meters", new Measure(Unit.MILLIMETRE, MILLIMETRES_PER_METRE)),
            Map.entry("cm", new Measure(Unit.MILLIMETRE, BigDecimal.TEN)),
            Map.entry("centimetre", new Measure(Unit.MILLIMETRE, BigDecimal.TEN)),
            Map.entry("centimeter", new Measure(Unit.MILLIMETRE, BigDecimal.TEN)),
            Map.entry("ft", new Measure(Unit.INCH, new BigDecimal(12))),
            Map.entry("foot", new Measure(Unit.INCH, new BigDecimal(12))));

    /**
     * How values of a declared unit become values that are understood here.
     *
     * @param unit the unit that they become
     * @param factor by what they are multiplied, exactly
     */
    record Measure(Unit unit, BigDecimal factor) {
        static Measure of(Unit unit) {
            return new Measure(unit, BigDecimal.ONE);
        }

        /** Whether values can be taken as they are written. */
        boolean isPlain() {
            return factor.compareTo(BigDecimal.ONE) == 0;
        }

        BigDecimal apply(BigDecimal value) {
            return isPlain() ? value : value.multiply(factor);
        }
    }

    /** What a declaration comes to: a measure, or why it has none. */
    private record Declared(Optional<Measure> measure, Optional<Fault> fault) {}

    private final Map<Unit.Kind, Declared> primary;
    private final Map<String, Declared> named;

    private QifUnits(Map<Unit.Kind, Declared> primary, Map<String, Declared> named) {
        this.primary = primary;
        this.named = named;
    }

    /** A document that declares nothing. */
    static final QifUnits NOT_DECLARED = new QifUnits(Map.of(), Map.of());

    /** The declarations of a FileUnits element. */
    static QifUnits of(QifNode units) {
        Map<Unit.Kind, Declared> primary = new HashMap<>();
        Map<String, Declared> named = new HashMap<>();
        units.child("PrimaryUnits").ifPresent(list -> {
            for (String element : List.of("LinearUnit", "PMILinearUnit", "AngularUnit", "PMIAngularUnit")) {
                list.child(element).ifPresent(unit -> {
                    Declared declared = declared(unit);
                    primary.put(kindOf(element), declared);
                    named.putIfAbsent(unit.textAt("UnitName").orElse(""), declared);
                });
            }
        });
        units.child("OtherUnits").ifPresent(list -> {
            for (QifNode unit : list.children()) {
                if (unit.name().equals("LinearUnit") || unit.name().equals("AngularUnit")) {
                    named.putIfAbsent(unit.textAt("UnitName").orElse(""), declared(unit));
                }
            }
        });
        return new QifUnits(primary, named);
    }

    private static Unit.Kind kindOf(String element) {
        return element.endsWith("LinearUnit") ? Unit.Kind.LENGTH : Unit.Kind.ANGLE;
    }

    /** Whether the document says in what it states lengths, or angles. */
    boolean declares(Unit.Kind kind) {
        return primary.containsKey(kind);
    }

    /**
     * The measure of a value.
     *
     * @param kind length or angle
     * @param stated the unit that the value itself names, if it does
     * @param where where the value stands
     * @throws QifFault if the unit is none that is understood, or cannot be converted exactly
     */
    Measure of(Unit.Kind kind, Optional<String> stated, Where where) throws QifFault {
        if (stated.isPresent()) {
            Declared declared = named.get(stated.get());
            if (declared != null) {
                return measureOf(declared);
            }
            Optional<Measure> known = known(stated.get(), kind);
            if (known.isEmpty()) {
                throw new QifFault(Fault.of(
                        FaultKind.WRONG_UNIT,
                        where,
                        "the value names a unit that the file does not declare",
                        Echo.quoted(stated.get()),
                        "one of the units under FileUnits"));
            }
            return known.get();
        }
        Declared declared = primary.get(kind);
        if (declared == null) {
            return Measure.of(kind == Unit.Kind.ANGLE ? Unit.DEGREE : Unit.MILLIMETRE);
        }
        return measureOf(declared);
    }

    private static Measure measureOf(Declared declared) throws QifFault {
        if (declared.fault().isPresent()) {
            throw new QifFault(declared.fault().get());
        }
        return declared.measure().orElseThrow();
    }

    private static Optional<Measure> known(String name, Unit.Kind kind) {
        Optional<Unit> unit = Unit.parse(name).filter(found -> found.kind() == kind);
        if (unit.isPresent()) {
            return unit.map(Measure::of);
        }
        return kind == Unit.Kind.LENGTH
                ? Optional.ofNullable(OTHER_LENGTHS.get(name.toLowerCase(Locale.ROOT)))
                : Optional.empty();
    }

    private static Declared declared(QifNode unit) {
        try {
            return new Declared(Optional.of(read(unit)), Optional.empty());
        } catch (QifFault fault) {
            return new Declared(Optional.empty(), Optional.of(fault.fault()));
        }
    }

    private static Measure read(QifNode unit) throws QifFault {
        Unit.Kind kind = kindOf(unit.name());
        String name = unit.textAt("UnitName").orElse("");
        Where where = unit.child("UnitName").map(QifNode::where).orElse(unit.where());
        Optional<BigDecimal> factor = number(unit, "Factor");
        Optional<BigDecimal> offset = number(unit, "Offset");
        if (offset.filter(value -> value.signum() != 0).isPresent()) {
            throw new QifFault(Fault.of(
                    FaultKind.WRONG_UNIT,
                    where,
                    "a unit of " + words(kind) + " has no offset",
                    Echo.quoted(name),
                    "a unit such as mm, inch or degree"));
        }
        Optional<Measure> known = known(name, kind);
        if (known.isPresent()) {
            if (factor.isPresent() && !agrees(factor.get(), known.get())) {
                throw new QifFault(Fault.of(
                        FaultKind.CONTRADICTION,
                        where,
                        "the name of the unit and its factor to SI do not agree",
                        Echo.quoted(name) + " with the factor " + factor.get().toPlainString(),
                        "the factor of that unit"));
            }
            return known.get();
        }
        boolean radian = kind == Unit.Kind.ANGLE && (name.equals("radian") || name.equals("rad"));
        if (factor.isEmpty() || kind == Unit.Kind.ANGLE) {
            throw new QifFault(Fault.of(
                    FaultKind.WRONG_UNIT,
                    where,
                    radian
                            ? "angles in radians cannot be brought to degrees without rounding, and a verdict does not rest on rounding"
                            : "",
                    name.isEmpty() ? "a unit without a name" : Echo.quoted(name),
                    kind == Unit.Kind.ANGLE ? "degree, arc-minute or arc-second" : "a unit such as mm or inch"));
        }
        return new Measure(Unit.MILLIMETRE, factor.get().multiply(MILLIMETRES_PER_METRE));
    }

    private static String words(Unit.Kind kind) {
        return kind == Unit.Kind.ANGLE ? "angles" : "lengths";
    }

    private static Optional<BigDecimal> number(QifNode unit, String name) throws QifFault {
        Optional<QifNode> node = unit.at("UnitConversion", name);
        if (node.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(ExactNumber.literal(node.get().text()));
        } catch (NumberRefused refused) {
            throw new QifFault(Fault.of(
                    refused.kind(),
                    node.get().where(),
                    refused.message(),
                    Echo.quoted(node.get().text()),
                    refused.expected()));
        }
    }

    private static boolean agrees(BigDecimal factor, Measure known) {
        BigDecimal exact = known.unit().kind() == Unit.Kind.ANGLE
                ? known.unit().convert(BigDecimal.ONE, Unit.ARC_SECOND).multiply(RADIANS_PER_DEGREE)
                : known.unit().convert(known.factor(), Unit.MILLIMETRE);
        BigDecimal scaled = known.unit().kind() == Unit.Kind.ANGLE
                ? factor.multiply(new BigDecimal(3600))
                : factor.multiply(MILLIMETRES_PER_METRE);
        return scaled.subtract(exact).abs().compareTo(exact.multiply(ROUNDED_FACTOR)) <= 0;
    }
}
