package io.github.firstoff.plan;

import java.util.Optional;

/**
 * Which part, at which revision of which drawing.
 *
 * @param number the part number
 * @param name what the part is called
 * @param drawing the drawing's number
 * @param revision the drawing's revision
 * @param hand the hand, for a part of a mirrored pair
 * @param counterpart the part number of the other hand
 * @param material the material the drawing asks for
 */
public record PartIdentity(
        String number,
        Optional<String> name,
        Optional<String> drawing,
        String revision,
        Optional<Hand> hand,
        Optional<String> counterpart,
        Optional<String> material) {}
