package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * The zone of a geometric tolerance with a material requirement: each part may use, beyond the stated tolerance, the amount by
 * which its feature of size departs from the material limit (ISO 2692:2021, clause 4; ASME Y14.5-2018, 6.3.2 and 6.3.3).
 *
 * <p>Maximum material is the least size of a hole and the greatest size of a shaft; least material the other way round. The
 * departure is counted from that limit into the material's opposite and is never negative. A part earns no bonus when its size was
 * not measured, or when the size itself fails its limits: such a part fails anyway, and a hole bored too wide must not buy itself
 * a looser position. The size that counts is the size of the mating envelope, not a local two-point size.
 *
 * <p>A material requirement on a datum adds nothing here: it lets the datum feature shift, which is a matter of the set-up.
 *
 * @param stated zero to the tolerance as drawn
 * @param modifier maximum or least material
 * @param feature the feature of size
 */
public record GeometricZone(Limits stated, MaterialModifier modifier, Drawing.SizeFeature feature)
        implements ToleranceZone {

    /** The limit of size from which the departure counts; empty if the feature has none there. */
    static Optional<BigDecimal> materialLimit(MaterialModifier modifier, Drawing.SizeFeature feature) {
        return countsFromLower(modifier, feature)
                ? feature.limits().lower()
                : feature.limits().upper();
    }

    private static boolean countsFromLower(MaterialModifier modifier, Drawing.SizeFeature feature) {
        return (feature.form() == Drawing.Form.HOLE) == (modifier == MaterialModifier.MAXIMUM);
    }

    @Override
    public Optional<BigDecimal> nominal() {
        return Optional.empty();
    }

    @Override
    public boolean isFixed() {
        return false;
    }

    @Override
    public Allowed allowedFor(PartSizes part) {
        Optional<PartSizes.Size> measured = part.sizeOf(feature.number());
        if (measured.isEmpty()) {
            return without(Remark.of(
                    "bonus.not-measured", "no bonus: the size of {0} was not measured on this part", feature.number()));
        }
        PartSizes.Size size = measured.get();
        Limits sizeLimits = feature.limits();
        if (!sizeLimits.unit().isComparableWith(size.unit())) {
            return without(Remark.of(
                    "bonus.no-size",
                    "no bonus: the size of {0} was read in {1}, which is no size",
                    feature.number(),
                    Remark.word("unit-word", size.unit().word())));
        }
        if (!sizeLimits.contains(size.value(), size.unit())) {
            return without(Remark.of(
                    "bonus.outside",
                    "no bonus: the size of {0}, {1}, is outside its own limits",
                    feature.number(),
                    show(size.value(), size.unit())));
        }
        BigDecimal limit = materialLimit(modifier, feature).orElseThrow();
        Exact from = new Exact(limit, sizeLimits.unit());
        Exact actual = new Exact(size.value(), size.unit());
        Exact departure = countsFromLower(modifier, feature)
                ? actual.plus(new Exact(limit.negate(), sizeLimits.unit()))
                : from.plus(new Exact(size.value().negate(), size.unit()));
        return with(departure, actual, from);
    }

    private Allowed with(Exact departure, Exact actual, Exact from) {
        Exact tolerance = new Exact(stated.upper().orElseThrow(), stated.unit());
        Unit unit = Exact.commonUnit(List.of(stated.unit()), tolerance, departure);
        BigDecimal bonus = departure.in(unit).orElseThrow();
        BigDecimal allowed = tolerance.in(unit).orElseThrow().add(bonus);
        Remark why = bonus.signum() == 0
                ? Remark.of(
                        "bonus.none",
                        "no bonus: {0|hole|shaft} {1} measures {2}, its {3|maximum|least} material size {4}",
                        feature.form() == Drawing.Form.HOLE,
                        feature.number(),
                        show(actual.value(), actual.unit()),
                        modifier == MaterialModifier.MAXIMUM,
                        show(from.value(), from.unit()))
                : Remark.of(
                        "bonus.earned",
                        "bonus {5}: {0|hole|shaft} {1} measures {2}, {5} from its {3|maximum|least} material size {4}",
                        feature.form() == Drawing.Form.HOLE,
                        feature.number(),
                        show(actual.value(), actual.unit()),
                        modifier == MaterialModifier.MAXIMUM,
                        show(from.value(), from.unit()),
                        show(bonus, unit));
        return new Allowed(Limits.fromZeroTo(allowed, unit), Optional.of(new Bonus(bonus, why)));
    }

    private Allowed without(Remark why) {
        return new Allowed(stated, Optional.of(new Bonus(BigDecimal.ZERO, why)));
    }

    private static String show(BigDecimal value, Unit unit) {
        return value.toPlainString() + " " + unit.symbol();
    }

    /**
     * The virtual size that the feature never transgresses when size and tolerance are both met (ISO 2692:2021, 3.10 and 3.13:
     * maximum or least material virtual size): hole minus, shaft plus the tolerance at maximum material, the other way round at
     * least material. In the unit of {@link Drawing.SizeFeature#limits()}; empty if the tolerance is no finite decimal there.
     */
    public Optional<BigDecimal> virtualSize() {
        Unit unit = feature.limits().unit();
        BigDecimal limit = materialLimit(modifier, feature).orElseThrow();
        return new Exact(stated.upper().orElseThrow(), stated.unit())
                .in(unit)
                .map(tolerance ->
                        countsFromLower(modifier, feature) ? limit.subtract(tolerance) : limit.add(tolerance));
    }
}
