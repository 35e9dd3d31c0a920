package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A size with the envelope requirement, {@code Ø52 H7 (E)} (ISO 14405-1:2016, 3.8): the limits are those of the size; the reading at
 * maximum material is the size of the mating envelope, at least material a two-point size. How it was measured cannot be told from a
 * number, so the mark is carried to the sheet and changes no limits.
 */
record EnvelopedSize(Requirement size) implements Requirement {

    @Override
    public Nature nature() {
        return size.nature();
    }

    @Override
    public Notation notation() {
        List<Notation.Element> elements = new ArrayList<>(size.notation().elements());
        elements.add(new Notation.Text(" Ⓔ"));
        return new Notation(elements);
    }

    @Override
    public String text() {
        return size.text() + " (E)";
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return size.unit(drawingUnit);
    }

    @Override
    public Optional<Drawing.Form> form() {
        return size.form();
    }

    @Override
    public Unit readingUnit(Unit drawingUnit) {
        return size.readingUnit(drawingUnit);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        return size.resolve(drawing);
    }
}
