package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

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
    public Optional<Drawing.Form> form() {
        return Optional.of(toleranceClass.form());
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        int at = text().lastIndexOf(toleranceClass.text());
        drawing.form().filter(form -> form != toleranceClass.form()).ifPresent(form -> {
            throw new RequirementFault(
                    text(),
                    at,
                    toleranceClass + " is a " + word(toleranceClass.form()) + ", and the plan says that this is a "
                            + word(form),
                    "\"form\": \"" + word(toleranceClass.form()) + "\", or a "
                            + (form == Drawing.Form.HOLE ? "capital" : "small") + " letter");
        });
        Lengths.require(this, drawing);
        BigDecimal nominal = dimension.exact(drawing.unit()).in(Unit.MILLIMETRE).orElseThrow();
        try {
            Limits limits = toleranceClass.deviationsAt(nominal).about(nominal);
            return ToleranceZone.fixed(limits, Optional.of(nominal));
        } catch (RequirementFault undefined) {
            throw new RequirementFault(text(), at, undefined.getMessage(), undefined.expected());
        }
    }

    private static String word(Drawing.Form form) {
        return form == Drawing.Form.HOLE ? "hole" : "shaft";
    }
}
