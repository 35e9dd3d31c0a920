package io.github.firstoff.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The units in which drawings and gauges speak, with the exact factors between those of one kind.
 *
 * <p>Lengths rest on the millimetre: one inch is 25.4 mm exactly (international yard and pound agreement of 1959, restated in
 * ISO 1:2022 context as the factor used with the 20 °C reference temperature), so every conversion is a finite decimal and
 * none rounds when it multiplies. Angles rest on the arc-second, because a minute of arc is no finite decimal of a degree.
 */
public enum Unit {
    /** Millimetre, the unit of lengths on metric drawings. */
    MILLIMETRE(Kind.LENGTH, "mm", "1", List.of("mm", "millimetre", "millimeter", "millimetres", "millimeters")),
    /** Inch, 25.4 mm exactly. */
    INCH(Kind.LENGTH, "in", "25.4", List.of("inch", "in", "inches", "\"")),
    /** Micrometre, 0.001 mm; roughness values are stated in it. */
    MICROMETRE(Kind.LENGTH, "µm", "0.001", List.of("µm", "um", "μm", "micrometre", "micrometer", "micron")),
    /** Microinch, a millionth of an inch, 0.0000254 mm exactly; roughness on inch drawings. */
    MICROINCH(Kind.LENGTH, "µin", "0.0000254", List.of("µin", "uin", "μin", "microinch")),
    /** Degree of arc, decimal. */
    DEGREE(Kind.ANGLE, "°", "3600", List.of("degree", "°", "deg", "degrees")),
    /** Minute of arc, a sixtieth of a degree. */
    ARC_MINUTE(Kind.ANGLE, "'", "60", List.of("arc-minute", "arcminute", "arcmin", "'", "′")),
    /** Second of arc, a sixtieth of a minute of arc. */
    ARC_SECOND(Kind.ANGLE, "″", "1", List.of("arc-second", "arcsecond", "arcsec", "″", "''")),
    /** No unit: an attribute or a count. */
    NONE(Kind.NONE, "", "1", List.of("none", ""));

    /** What a unit measures; only units of one kind convert into each other. */
    public enum Kind {
        /** A length. */
        LENGTH,
        /** A plane angle. */
        ANGLE,
        /** Nothing that has a size. */
        NONE
    }

    private final Kind kind;
    private final String symbol;
    private final BigDecimal factor;
    private final List<String> words;

    Unit(Kind kind, String symbol, String factor, List<String> words) {
        this.kind = kind;
        this.symbol = symbol;
        this.factor = new BigDecimal(factor);
        this.words = words;
    }

    /** What this unit measures. */
    public Kind kind() {
        return kind;
    }

    /** The symbol as a sheet prints it: {@code mm}, {@code in}, {@code µm}, {@code µin}, {@code °}, or nothing. */
    public String symbol() {
        return symbol;
    }

    /** The word that plans and readings use first, for example {@code mm} or {@code inch}. */
    public String word() {
        return words.get(0);
    }

    /**
     * Converts a value of this unit into another, exactly.
     *
     * @throws IllegalArgumentException if the units measure different things
     * @throws ArithmeticException if the result is no finite decimal (10 mm in inches); callers that judge convert
     *     towards the unit in which the product is finite instead
     */
    public BigDecimal convert(BigDecimal value, Unit to) {
        if (this == to) {
            return value;
        }
        if (kind != to.kind) {
            throw new IllegalArgumentException("a value in " + word() + " is no value in " + to.word());
        }
        return value.multiply(factor).divide(to.factor);
    }

    /**
     * Converts a value of this unit into another, rounded where the result is no finite decimal: for display, never for a
     * verdict.
     *
     * @throws IllegalArgumentException if the units measure different things
     */
    public BigDecimal convert(BigDecimal value, Unit to, MathContext rounding) {
        if (kind != to.kind) {
            throw new IllegalArgumentException("a value in " + word() + " is no value in " + to.word());
        }
        return this == to ? value : value.multiply(factor).divide(to.factor, rounding);
    }

    /** Whether a value of this unit can be compared with one of the other. */
    public boolean isComparableWith(Unit other) {
        return kind == other.kind;
    }

    /** Compares two values across units of one kind, exactly: both are taken to the base unit by multiplication. */
    public static int compare(BigDecimal a, Unit unitOfA, BigDecimal b, Unit unitOfB) {
        if (unitOfA.kind != unitOfB.kind) {
            throw new IllegalArgumentException(unitOfA.word() + " cannot be compared with " + unitOfB.word());
        }
        return a.multiply(unitOfA.factor).compareTo(b.multiply(unitOfB.factor));
    }

    /** The unit that a word in a file means, whatever its letter case; empty if none. */
    public static Optional<Unit> parse(String word) {
        String wanted = word.strip().toLowerCase(Locale.ROOT);
        for (Unit unit : values()) {
            if (unit.words.contains(wanted)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }
}
