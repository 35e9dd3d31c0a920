package io.github.firstoff.plan;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Where a feature should be, in the part's coordinate system and the unit of the plan; theoretically exact.
 *
 * @param x along the first axis
 * @param y along the second
 * @param z along the third, for a spherical zone
 */
public record Coordinates(BigDecimal x, BigDecimal y, Optional<BigDecimal> z) {

    /** The place on the counterpart that is this one's mirror image across the plane square to the axis. */
    public Coordinates mirrored(Axis axis) {
        return switch (axis) {
            case X -> new Coordinates(x.negate(), y, z);
            case Y -> new Coordinates(x, y.negate(), z);
            case Z -> new Coordinates(x, y, z.map(BigDecimal::negate));
        };
    }
}
