package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** A size printed without tolerance, {@code 40}, {@code R3}, {@code 45° (leg 30)}: the general tolerance of the drawing holds. */
record BareSize(Dimension dimension, Optional<BigDecimal> leg) implements Requirement {

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(dimension.set()));
    }

    @Override
    public String text() {
        return dimension.text()
                + leg.map(length -> " (leg " + length.toPlainString() + ")").orElse("");
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return readingUnit(drawingUnit).kind() == Unit.Kind.ANGLE ? Unit.DEGREE : Unit.MILLIMETRE;
    }

    @Override
    public Unit readingUnit(Unit drawingUnit) {
        return dimension.unitOn(drawingUnit);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        if (drawing.generalTolerance().isEmpty()) {
            throw new RequirementFault(
                    text(),
                    -1,
                    "the size " + text() + " is printed without a tolerance, and the plan states no general tolerance",
                    "\"generalTolerance\": \"ISO 2768-m\" in the plan, or " + dimension.text() + " ±…");
        }
        throw new RequirementFault(text(), -1, "the tables of ISO 2768 are not read yet", "");
    }
}
