package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** A drawing for tests that says only what it is told to say. */
record PlainDrawing(
        Unit unit,
        Optional<GeneralTolerance> generalTolerance,
        Optional<Drawing.Form> form,
        Optional<Drawing.SizeFeature> sizeFeature,
        Optional<BigDecimal> shorterLeg)
        implements Drawing {

    static PlainDrawing in(Unit unit) {
        return new PlainDrawing(unit, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    PlainDrawing with(GeneralTolerance general) {
        return new PlainDrawing(unit, Optional.of(general), form, sizeFeature, shorterLeg);
    }

    PlainDrawing with(Drawing.Form of) {
        return new PlainDrawing(unit, generalTolerance, Optional.of(of), sizeFeature, shorterLeg);
    }

    PlainDrawing with(Drawing.SizeFeature feature) {
        return new PlainDrawing(unit, generalTolerance, form, Optional.of(feature), shorterLeg);
    }

    PlainDrawing withShorterLeg(String leg) {
        return new PlainDrawing(unit, generalTolerance, form, sizeFeature, Optional.of(new BigDecimal(leg)));
    }
}
