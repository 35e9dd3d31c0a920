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

    /**
     * A plain 0 has no sign (ISO 129-1); a zero with decimals takes the sign of its side, as inch drawings print it (ASME
     * Y14.5-2018, 5.3.2). Zero minutes get a plus too: directly behind degrees they would be part of the nominal.
     */
    private String upperText() {
        boolean minutes = upper.unit().filter(unit -> unit != Unit.DEGREE).isPresent();
        boolean signed = upper.isZero() && (minutes || upper.value().scale() > 0);
        return signed ? "+" + upper.digits() : upper.signedText();
    }

    private String lowerText() {
        return lower.isZero() && lower.value().scale() > 0 ? "-" + lower.digits() : lower.signedText();
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
        Notation.Element deviations = new Notation.Stacked(upperText(), lowerText());
        return dimension.setTail().isEmpty()
                ? Notation.of(head, deviations)
                : Notation.of(head, deviations, new Notation.Text(dimension.setTail()));
    }

    @Override
    public String text() {
        String tolerance = isSymmetric() ? "±" + upper.digits() : upperText() + "/" + lowerText();
        String chamfer = dimension.chamferAngle().isPresent() ? " " : "";
        return dimension.head() + " " + tolerance + chamfer + dimension.tail();
    }

    @Override
    public Optional<Requirement> mirrored() {
        return dimension.mirrored().map(other -> new DeviatedSize(other, lower.negate(), upper.negate()));
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
