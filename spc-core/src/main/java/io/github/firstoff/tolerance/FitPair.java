package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.util.Objects;

/**
 * A fit as a requirement, {@code 52 H7/p6}: the plan's form says which of the two this part has, and so which limits judge it.
 * {@link #fitOn} gives what the pair comes to when joined.
 */
public final class FitPair implements Requirement {
    private final Dimension dimension;
    private final ToleranceClass hole;
    private final ToleranceClass shaft;

    FitPair(Dimension dimension, ToleranceClass hole, ToleranceClass shaft) {
        this.dimension = dimension;
        this.hole = hole;
        this.shaft = shaft;
    }

    /** The hole's tolerance class. */
    public ToleranceClass hole() {
        return hole;
    }

    /** The shaft's tolerance class. */
    public ToleranceClass shaft() {
        return shaft;
    }

    /**
     * Clearance and interference of the pair, in millimetres.
     *
     * @param drawingUnit the unit in which the nominal is understood unless the requirement names its own
     * @throws RequirementFault if ISO 286 does not define one of the classes for that size
     */
    public Fit fitOn(Unit drawingUnit) {
        return Fit.of(dimension.exact(drawingUnit).in(Unit.MILLIMETRE).orElseThrow(), hole, shaft);
    }

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

    @Override
    public boolean equals(Object other) {
        return other instanceof FitPair that
                && dimension.equals(that.dimension)
                && hole.equals(that.hole)
                && shaft.equals(that.shaft);
    }

    @Override
    public int hashCode() {
        return Objects.hash(dimension, hole, shaft);
    }

    @Override
    public String toString() {
        return text();
    }
}
