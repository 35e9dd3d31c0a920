package io.github.firstoff.intake;

import io.github.firstoff.plan.Hand;
import io.github.firstoff.plan.PartIdentity;
import java.util.Optional;

/**
 * What a plan says of its part, before it is known whether that is enough.
 *
 * @param number the part number
 * @param name what the part is called
 * @param drawing the drawing's number
 * @param revision the drawing's revision
 * @param hand the hand
 * @param counterpart the part number of the other hand
 * @param material the material
 */
record PartReader(
        Optional<String> number,
        Optional<String> name,
        Optional<String> drawing,
        Optional<String> revision,
        Optional<Hand> hand,
        Optional<String> counterpart,
        Optional<String> material) {

    static PartReader read(Fields fields) {
        PartReader part = new PartReader(
                fields.requiredText("number", "the part number"),
                fields.text("name"),
                fields.text("drawing"),
                fields.name("revision"),
                StatedHand.of(fields),
                fields.text("counterpart"),
                fields.text("material"));
        if (part.counterpart.isPresent() && part.counterpart.equals(part.number)) {
            fields.refuse(
                    "counterpart",
                    FaultKind.CONTRADICTION,
                    "the part is its own counterpart",
                    Echo.quoted(part.counterpart.get()),
                    "the part number of the other hand");
        }
        return part;
    }

    /** The part of a plan that stands by itself, which needs number and revision. */
    static Optional<PartIdentity> whole(Fields fields) {
        PartReader part = read(fields);
        fields.required("revision", part.revision, "the drawing's revision");
        fields.finish();
        if (part.number.isEmpty() || part.revision.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new PartIdentity(
                part.number.get(),
                part.name,
                part.drawing,
                part.revision.get(),
                part.hand,
                part.counterpart,
                part.material));
    }
}
