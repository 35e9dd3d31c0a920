package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.util.Optional;

/**
 * A size that is never judged by itself: theoretically exact, {@code [40]} (ISO 1101:2017, 3.8), or auxiliary, {@code (40)}
 * (ISO 129-1:2018, 3.1.2).
 */
record UnjudgedSize(Dimension dimension, Nature nature) implements Requirement {

    @Override
    public Notation notation() {
        if (nature == Nature.REFERENCE) {
            return Notation.of(new Notation.Text("(" + dimension.set() + ")"));
        }
        Dimension one = new Dimension(
                new Dimension.Prefix(Optional.empty(), dimension.prefix().symbol()),
                dimension.nominal(),
                dimension.chamferAngle(),
                dimension.unit());
        Notation.Element box = new Notation.Boxed(one.set());
        return dimension
                .prefix()
                .count()
                .map(times -> Notation.of(new Notation.Text(times + "× "), box))
                .orElseGet(() -> Notation.of(box));
    }

    @Override
    public String text() {
        return nature == Nature.EXACT ? "[" + dimension.text() + "]" : "(" + dimension.text() + ")";
    }

    @Override
    public Optional<Requirement> mirrored() {
        return dimension.mirrored().map(other -> new UnjudgedSize(other, nature));
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return dimension.unitOn(drawingUnit);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Lengths.requireIfShown(
                dimension.prefix().symbol(), dimension.chamferAngle().isPresent(), this, drawing);
        Exact nominal = dimension.exact(drawing.unit());
        Unit unit = Exact.commonUnit(nominal.preferred(), nominal);
        return ToleranceZone.fixed(Limits.none(unit), nominal.in(unit));
    }
}
