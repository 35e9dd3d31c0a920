package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** A size limited in one direction: {@code 12 min}, {@code 12 max} (ISO 129-1:2018, clause 10). */
record OneLimitSize(Dimension dimension, Bound bound) implements Requirement {

    enum Bound {
        MIN("min"),
        MAX("max");

        private final String word;

        Bound(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(dimension.set() + " " + bound.word()));
    }

    @Override
    public String text() {
        return dimension.text() + " " + bound.word();
    }

    @Override
    public Optional<Requirement> mirrored() {
        return dimension.mirrored().map(other -> new OneLimitSize(other, bound == Bound.MIN ? Bound.MAX : Bound.MIN));
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return dimension.unitOn(drawingUnit);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Lengths.requireIfShown(
                dimension.prefix().symbol(), dimension.chamferAngle().isPresent(), this, drawing);
        Exact limit = dimension.exact(drawing.unit());
        Unit unit = Exact.commonUnit(limit.preferred(), limit);
        BigDecimal value = limit.in(unit).orElseThrow();
        return ToleranceZone.fixed(
                bound == Bound.MAX ? Limits.atMost(value, unit) : Limits.atLeast(value, unit), Optional.empty());
    }
}
