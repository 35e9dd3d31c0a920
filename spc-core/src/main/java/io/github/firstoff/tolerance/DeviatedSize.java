package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.util.Optional;

/** A size with its two deviations written out: {@code 12.5 ±0.05}, {@code 12.5 +0.02/-0.01} (ISO 129-1:2018, clause 10). */
record DeviatedSize(Dimension dimension, Amount upper, Amount lower) implements Requirement {

    /** Two deviations of equal amount are the symmetric notation, whichever way they were written. */
    static DeviatedSize of(Dimension dimension, Amount upper, Amount lower) {
        boolean symmetric = upper.unit().equals(lower.unit())
                && upper.value().compareTo(lower.value().negate()) == 0;
        return new DeviatedSize(dimension, upper, symmetric ? upper.negate() : lower);
    }

    private boolean isSymmetric() {
        return upper.negate().equals(lower);
    }

    /** Zero minutes get a plus: directly behind degrees they would be part of the nominal. */
    private String upperText() {
        boolean minutes = upper.unit().filter(unit -> unit != Unit.DEGREE).isPresent();
        return upper.isZero() && minutes ? "+" + upper.digits() : upper.signedText();
    }

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        if (isSymmetric()) {
            return Notation.of(new Notation.Text(dimension.setHead() + " ±" + upper.digits() + dimension.setTail()));
        }
        Notation.Element head = new Notation.Text(dimension.setHead());
        Notation.Element deviations = new Notation.Stacked(upperText(), lower.signedText());
        return dimension.setTail().isEmpty()
                ? Notation.of(head, deviations)
                : Notation.of(head, deviations, new Notation.Text(dimension.setTail()));
    }

    @Override
    public String text() {
        String tolerance = isSymmetric() ? "±" + upper.digits() : upperText() + "/" + lower.signedText();
        String chamfer = dimension.chamferAngle().isPresent() ? " " : "";
        return dimension.head() + " " + tolerance + chamfer + dimension.tail();
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return dimension.unitOn(drawingUnit);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Lengths.requireIfShown(
                dimension.prefix().symbol(), dimension.chamferAngle().isPresent(), this, drawing);
        Unit lengths = dimension.unit().orElse(drawing.unit());
        Exact nominal = dimension.exact(drawing.unit());
        return Exact.zone(nominal.plus(lower.exact(lengths)), nominal.plus(upper.exact(lengths)), Optional.of(nominal));
    }
}
