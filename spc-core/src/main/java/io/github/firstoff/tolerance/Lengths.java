package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;

/** Refuses lengths on drawings whose unit is the degree: a Ø40 is no angle. */
final class Lengths {
    private Lengths() {}

    /**
     * Checks the unit that a requirement which can only be a length takes on this drawing.
     *
     * @throws RequirementFault if that unit is no length
     */
    static void require(Requirement requirement, Drawing drawing) {
        if (requirement.readingUnit(drawing.unit()).kind() != Unit.Kind.LENGTH) {
            throw new RequirementFault(
                    requirement.text(),
                    -1,
                    "the plan's unit is the degree, and " + requirement.text() + " is a length",
                    "\"unit\": \"mm\" in the plan, or the unit on the requirement, such as 40 ±0.1 mm");
        }
    }

    /** The same where a symbol such as Ø or R shows that the size is a length. */
    static void requireIfShown(DimensionSymbol symbol, boolean chamfer, Requirement requirement, Drawing drawing) {
        if (symbol != DimensionSymbol.NONE || chamfer) {
            require(requirement, drawing);
        }
    }
}
