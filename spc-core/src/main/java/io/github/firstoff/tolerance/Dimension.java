package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * The nominal part of a dimension, without its tolerance.
 *
 * @param prefix how often, and of what kind
 * @param nominal the size
 * @param chamferAngle the angle of a chamfer written {@code 2x45°}; empty for all else
 * @param unit a unit written on the requirement itself; otherwise the drawing's
 */
record Dimension(Prefix prefix, Amount nominal, Optional<Amount> chamferAngle, Optional<Unit> unit) {

    /**
     * What stands before the number.
     *
     * @param count from {@code 4x }; empty if not written
     * @param symbol from {@code Ø}, {@code R} and so on
     */
    record Prefix(Optional<Integer> count, DimensionSymbol symbol) {
        String text() {
            return count.map(times -> times + "x ").orElse("") + symbol.sign();
        }

        /** As a drawing sets it, with a multiplication sign. */
        String set() {
            return count.map(times -> times + "× ").orElse("") + symbol.sign();
        }
    }

    boolean isAngle() {
        return nominal.isAngle();
    }

    /** Whether it is judged by the table for radii and chamfer heights rather than that for linear sizes. */
    boolean isRadiusOrChamfer() {
        return chamferAngle.isPresent()
                || switch (prefix.symbol()) {
                    case RADIUS, SPHERE_RADIUS, CHAMFER -> true;
                    case NONE, DIAMETER, SPHERE_DIAMETER, SQUARE -> false;
                };
    }

    /** The same with the opposite sign; empty for what never has one. */
    Optional<Dimension> mirrored() {
        return prefix.symbol() == DimensionSymbol.NONE && chamferAngle.isEmpty()
                ? Optional.of(new Dimension(prefix, nominal.negate(), chamferAngle, unit))
                : Optional.empty();
    }

    String text() {
        return head() + tail();
    }

    String head() {
        return prefix.text() + nominal.text();
    }

    String tail() {
        return chamferAngle.map(angle -> "x" + angle.text()).orElse("") + unitText();
    }

    String unitText() {
        return unit.map(written -> " " + written.symbol()).orElse("");
    }

    /** As a drawing sets it. */
    String set() {
        return setHead() + setTail();
    }

    String setHead() {
        return prefix.set() + nominal.text();
    }

    String setTail() {
        return chamferAngle.map(angle -> " × " + angle.text()).orElse("") + unitText();
    }

    /** The unit of its readings on a drawing of the given unit. */
    Unit unitOn(Unit drawingUnit) {
        return isAngle() ? Unit.DEGREE : unit.orElse(drawingUnit);
    }

    Exact exact(Unit drawingUnit) {
        return nominal.exact(unit.orElse(drawingUnit));
    }

    Optional<BigDecimal> nominalOn(Unit drawingUnit) {
        return exact(drawingUnit).in(unitOn(drawingUnit));
    }
}
