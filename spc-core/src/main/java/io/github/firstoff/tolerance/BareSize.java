package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/** A size printed without tolerance, {@code 40}, {@code R3}, {@code 45° (leg 30)}: the general tolerance of the drawing holds. */
record BareSize(Dimension dimension, Optional<BigDecimal> leg) implements Requirement {

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(leg.isPresent() ? dimension.setHead() : dimension.set()));
    }

    @Override
    public String text() {
        return leg.map(length -> dimension.head() + " (leg " + length.toPlainString() + dimension.unitText() + ")")
                .orElseGet(dimension::text);
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return readingUnit(drawingUnit).kind() == Unit.Kind.ANGLE ? Unit.DEGREE : Unit.MILLIMETRE;
    }

    @Override
    public Unit readingUnit(Unit drawingUnit) {
        return dimension.unitOn(drawingUnit);
    }

    /**
     * The nominal with the general tolerance of the title block: Table 1 of ISO 2768-1 for sizes, Table 2 for radii and chamfers, Table 3
     * for angles. A radius that the plan calls internal (form: hole) is no broken edge and goes by Table 1.
     */
    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Lengths.requireIfShown(
                dimension.prefix().symbol(), dimension.chamferAngle().isPresent(), this, drawing);
        GeneralTolerance general = drawing.generalTolerance()
                .orElseThrow(() -> new RequirementFault(
                        text(),
                        -1,
                        text() + " is printed without a tolerance, and the plan states no general tolerance",
                        "\"generalTolerance\": \"ISO 2768-m\" in the plan, or " + dimension.text() + " ±…"));
        return readingUnit(drawing.unit()).kind() == Unit.Kind.ANGLE
                ? angle(drawing, general)
                : length(drawing, general);
    }

    private ToleranceZone length(Drawing drawing, GeneralTolerance general) {
        BigDecimal nominal = dimension.exact(drawing.unit()).in(Unit.MILLIMETRE).orElseThrow();
        boolean internal =
                drawing.form().filter(form -> form == Drawing.Form.HOLE).isPresent()
                        && dimension.prefix().symbol() != DimensionSymbol.CHAMFER
                        && dimension.chamferAngle().isEmpty();
        boolean brokenEdge = dimension.isRadiusOrChamfer() && !internal;
        Optional<BigDecimal> deviation =
                brokenEdge ? general.brokenEdgeDeviation(nominal) : general.linearDeviation(nominal);
        BigDecimal amount = deviation.orElseThrow(() -> new RequirementFault(
                text(),
                0,
                general.text() + " has no tolerance for " + (brokenEdge ? "a radius or chamfer of " : "")
                        + nominal.toPlainString() + " mm; it has one " + general.rangesOf(brokenEdge),
                dimension.text() + " with its tolerance written out"));
        return ToleranceZone.fixed(
                Limits.between(nominal.subtract(amount), nominal.add(amount), Unit.MILLIMETRE), Optional.of(nominal));
    }

    private ToleranceZone angle(Drawing drawing, GeneralTolerance general) {
        Exact nominal = dimension.exact(drawing.unit());
        BigDecimal minutes = general.angularDeviation(shorterLeg(drawing)).orElseThrow();
        return Exact.zone(
                nominal.plus(new Exact(minutes.negate(), Unit.ARC_MINUTE)),
                nominal.plus(new Exact(minutes, Unit.ARC_MINUTE)),
                Optional.of(nominal));
    }

    /** In millimetres; written on the requirement or stated by the plan, never supposed. */
    private BigDecimal shorterLeg(Drawing drawing) {
        Unit lengths =
                dimension.unit().orElse(drawing.unit().kind() == Unit.Kind.LENGTH ? drawing.unit() : Unit.MILLIMETRE);
        BigDecimal written = leg.or(drawing::shorterLeg)
                .orElseThrow(() -> new RequirementFault(
                        text(),
                        text().length(),
                        "the general tolerance of an angle depends on the length of its shorter leg, which is not stated",
                        text() + " (leg 30), or " + text() + " ±…"));
        if (written.signum() <= 0) {
            throw new RequirementFault(
                    text(), -1, "the shorter leg " + written.toPlainString() + " is no length", text() + " (leg 30)");
        }
        return new Exact(written, lengths).in(Unit.MILLIMETRE).orElseThrow();
    }
}
