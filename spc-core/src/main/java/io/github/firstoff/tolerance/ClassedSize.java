package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;

/** A size with a tolerance class of ISO 286: {@code Ø52 P7}. Its limits are in millimetres on every drawing. */
record ClassedSize(Dimension dimension, ToleranceClass toleranceClass) implements Requirement {

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(dimension.set() + " " + toleranceClass.text()));
    }

    @Override
    public String text() {
        return dimension.text() + " " + toleranceClass.text();
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return Unit.MILLIMETRE;
    }

    @Override
    public Unit readingUnit(Unit drawingUnit) {
        return dimension.unitOn(drawingUnit);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        throw new RequirementFault(
                text(), text().indexOf(toleranceClass.text()), "the tables of ISO 286 are not read yet", "");
    }
}
