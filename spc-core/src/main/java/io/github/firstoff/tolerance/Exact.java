package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A value with its unit; sums across units of one kind stay exact. */
record Exact(BigDecimal value, Unit unit) {

    /** The sum, in the common unit or, where there is none, in the base unit of the kind. */
    Exact plus(Exact other) {
        if (unit == other.unit) {
            return new Exact(value.add(other.value), unit);
        }
        Unit base = base();
        return new Exact(unit.convert(value, base).add(other.unit.convert(other.value, base)), base);
    }

    private Unit base() {
        return unit.kind() == Unit.Kind.ANGLE ? Unit.ARC_SECOND : Unit.MILLIMETRE;
    }

    /** The same value in another unit; empty if it is no finite decimal there. */
    Optional<BigDecimal> in(Unit other) {
        try {
            return Optional.of(unit.convert(value, other));
        } catch (ArithmeticException notFinite) {
            return Optional.empty();
        }
    }

    /** The first of the wanted units in which all values are finite decimals; the base unit of the kind if there is none. */
    static Unit commonUnit(List<Unit> wanted, Exact... values) {
        return wanted.stream()
                .filter(unit ->
                        Arrays.stream(values).allMatch(value -> value.in(unit).isPresent()))
                .findFirst()
                .orElseGet(() -> values[0].base());
    }

    /** The units in which a value of this unit is stated by preference. */
    List<Unit> preferred() {
        return unit.kind() == Unit.Kind.ANGLE ? List.of(Unit.DEGREE, Unit.ARC_MINUTE) : List.of(unit);
    }

    /** A fixed zone between two limits, with its nominal, all in the first unit in which they are finite decimals. */
    static ToleranceZone zone(Exact lower, Exact upper, Optional<Exact> nominal) {
        Unit unit = nominal.isPresent()
                ? commonUnit(lower.preferred(), lower, upper, nominal.get())
                : commonUnit(lower.preferred(), lower, upper);
        return ToleranceZone.fixed(
                Limits.between(lower.in(unit).orElseThrow(), upper.in(unit).orElseThrow(), unit),
                nominal.flatMap(value -> value.in(unit)));
    }
}
