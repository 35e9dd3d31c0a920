package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.util.Optional;

/** A check that passes or fails without a value: by eye, by trying it, or with a gauge. */
record AttributeCheck(Means means, String what) implements Requirement {

    /** How it is checked. */
    enum Means {
        VISUAL("visual"),
        FUNCTION("function"),
        GAUGE("go/no-go");

        private final String word;

        Means(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    @Override
    public Nature nature() {
        return Nature.ATTRIBUTE;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(text()));
    }

    @Override
    public String text() {
        return means == Means.GAUGE ? what + " " + means.word() : means.word() + ": " + what;
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return Unit.NONE;
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        return ToleranceZone.fixed(Limits.none(Unit.NONE), Optional.empty());
    }
}
