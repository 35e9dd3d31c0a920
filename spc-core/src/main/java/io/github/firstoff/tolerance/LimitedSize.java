package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.util.Optional;

/** A size given by its two limits, without a nominal: {@code 51.95..52.05}. */
record LimitedSize(Dimension.Prefix prefix, Amount lower, Amount upper, Optional<Unit> unit) implements Requirement {

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        Notation.Element limits = new Notation.Stacked(upper.text(), lower.text() + unitText());
        String before = prefix.set();
        return before.isEmpty() ? Notation.of(limits) : Notation.of(new Notation.Text(before), limits);
    }

    @Override
    public String text() {
        return prefix.text() + lower.text() + ".." + upper.text() + unitText();
    }

    private String unitText() {
        return unit.map(written -> " " + written.symbol()).orElse("");
    }

    @Override
    public Optional<Requirement> mirrored() {
        return prefix.symbol() == DimensionSymbol.NONE
                ? Optional.of(new LimitedSize(prefix, upper.negate(), lower.negate(), unit))
                : Optional.empty();
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return lower.isAngle() ? Unit.DEGREE : unit.orElse(drawingUnit);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Lengths.requireIfShown(prefix.symbol(), false, this, drawing);
        Unit lengths = unit.orElse(drawing.unit());
        return Exact.zone(lower.exact(lengths), upper.exact(lengths), Optional.empty());
    }
}
