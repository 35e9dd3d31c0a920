package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;

/** A fit, {@code 52 H7/p6}: the plan's form says which of the two this part has. */
record FitPair(Dimension dimension, ToleranceClass hole, ToleranceClass shaft) implements Requirement {

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(dimension.set() + " " + hole.text() + "/" + shaft.text()));
    }

    @Override
    public String text() {
        return dimension.text() + " " + hole.text() + "/" + shaft.text();
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
        ToleranceClass own = drawing.form()
                .map(form -> form == Drawing.Form.HOLE ? hole : shaft)
                .orElseThrow(() -> new RequirementFault(
                        text(),
                        text().indexOf(hole.text()),
                        "a fit names a hole and a shaft, and the plan does not say which this part has",
                        "\"form\": \"hole\" or \"form\": \"shaft\""));
        return new ClassedSize(dimension, own).resolve(drawing);
    }
}
