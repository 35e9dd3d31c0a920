package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.util.Optional;

/**
 * What the drawing requires of one characteristic, as the drawing writes it.
 *
 * <p>An immutable value; it knows its text and how it is set on a drawing, but not yet its limits: those need the rest of the
 * drawing (unit, general tolerance, the size of another feature) and come from {@link #resolve}.
 */
public interface Requirement {

    /** What a verdict can rest on. */
    enum Nature {
        /** A measured value against limits. */
        MEASURED,
        /** Pass or fail, without a value. */
        ATTRIBUTE,
        /** A reference dimension: reported when measured, never judged. */
        REFERENCE,
        /** A theoretically exact dimension: never judged by itself. */
        EXACT
    }

    /** What a verdict on this requirement can rest on. */
    Nature nature();

    /** The requirement as a drawing sets it, for sheets. */
    Notation notation();

    /** One line of text that the notation's parser reads back to an equal requirement. */
    String text();

    /**
     * The unit in which this requirement is judged on a drawing of the given unit: the drawing's own for lengths, the degree
     * for angles, micrometre or microinch for roughness, none for attributes; the millimetre where the limits come from an ISO
     * table, whatever the drawing. {@link Limits#unit()} is what holds for a pair of limits: those of an angle are in minutes or
     * seconds of arc where they are no finite decimals of a degree.
     */
    Unit unit(Unit drawingUnit);

    /** Whether the requirement itself says that it is a hole or a shaft, as an ISO 286 letter does. */
    default Optional<Drawing.Form> form() {
        return Optional.empty();
    }

    /**
     * The unit in which a reading is understood that states none, on a drawing of the given unit. Differs from {@link #unit}
     * only where an inch drawing takes its limits from an ISO table in millimetres: readings there are still in inches.
     */
    default Unit readingUnit(Unit drawingUnit) {
        return unit(drawingUnit);
    }

    /**
     * The same requirement for a coordinate of opposite sign, as the counterpart of a handed part has it: {@code -12.5 +0.1/0} for
     * {@code 12.5 0/-0.1}. Empty where a sign would mean nothing: a diameter, a radius, a fit, a form, an attribute, a size that takes its
     * tolerance from the title block.
     */
    default Optional<Requirement> mirrored() {
        return Optional.empty();
    }

    /**
     * The zone that this requirement comes to on that drawing.
     *
     * @throws RequirementFault if the drawing lacks what is needed, or a table has no value there
     */
    ToleranceZone resolve(Drawing drawing);
}
