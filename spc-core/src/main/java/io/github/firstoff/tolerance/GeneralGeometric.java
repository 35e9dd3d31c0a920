package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * A geometric characteristic held to the general tolerance of the title block: {@code flatness general (length 120)},
 * {@code run-out general}. Its limits are in millimetres on every drawing.
 */
record GeneralGeometric(GeometricCharacteristic characteristic, Optional<BigDecimal> length, Optional<Unit> lengthUnit)
        implements Requirement {

    /** Whether ISO 2768-2 has a table for it. */
    static boolean isTabled(GeometricCharacteristic characteristic) {
        return characteristic == GeometricCharacteristic.RUN_OUT || needsLength(characteristic);
    }

    /** Whether its table is entered with a length. */
    static boolean needsLength(GeometricCharacteristic characteristic) {
        return switch (characteristic) {
            case STRAIGHTNESS, FLATNESS, PERPENDICULARITY, SYMMETRY -> true;
            default -> false;
        };
    }

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(text()));
    }

    @Override
    public String text() {
        String unit = lengthUnit.map(written -> " " + written.symbol()).orElse("");
        return characteristic.word() + " general"
                + length.map(value -> " (length " + value.toPlainString() + unit + ")")
                        .orElse("");
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return Unit.MILLIMETRE;
    }

    @Override
    public Unit readingUnit(Unit drawingUnit) {
        return drawingUnit;
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Lengths.require(this, drawing);
        GeneralGeometry general = drawing.generalTolerance()
                .flatMap(GeneralTolerance::geometry)
                .orElseThrow(() -> new RequirementFault(
                        text(),
                        -1,
                        "the plan's general tolerance names no class of geometry",
                        "\"generalTolerance\": \"ISO 2768-mK\""));
        if (length.isEmpty()) {
            return zone(general.runOut());
        }
        BigDecimal millimetres = new Exact(length.get(), lengthUnit.orElse(drawing.unit()))
                .in(Unit.MILLIMETRE)
                .orElseThrow();
        Optional<BigDecimal> value = switch (characteristic) {
            case STRAIGHTNESS, FLATNESS -> general.straightnessOrFlatness(millimetres);
            case PERPENDICULARITY -> general.perpendicularity(millimetres);
            default -> general.symmetry(millimetres);
        };
        return zone(value.orElseThrow(() -> new RequirementFault(
                text(),
                text().indexOf('('),
                "ISO 2768-2 has no " + characteristic.word() + " for " + millimetres.toPlainString()
                        + " mm; its tables end at 3000 mm",
                characteristic.word() + " with its tolerance written out")));
    }

    private static ToleranceZone zone(BigDecimal tolerance) {
        return ToleranceZone.fixed(Limits.fromZeroTo(tolerance, Unit.MILLIMETRE), Optional.empty());
    }
}
