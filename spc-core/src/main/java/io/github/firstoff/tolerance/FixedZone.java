package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.Optional;

/** The zone of a requirement whose limits do not depend on the part. */
record FixedZone(Limits stated, Optional<BigDecimal> nominal) implements ToleranceZone {

    @Override
    public boolean isFixed() {
        return true;
    }

    @Override
    public Allowed allowedFor(PartSizes part) {
        return Allowed.of(stated);
    }
}
