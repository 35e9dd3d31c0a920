package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
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
            return without("no bonus: the size of " + feature.number() + " was not measured on this part");
        }
        PartSizes.Size size = measured.get();
        Limits sizeLimits = feature.limits();
        if (!sizeLimits.unit().isComparableWith(size.unit())) {
            return without("no bonus: the size of " + feature.number() + " was read in "
                    + size.unit().word() + ", which is no size");
        }
        if (!sizeLimits.contains(size.value(), size.unit())) {
            return without("no bonus: the size of " + feature.number() + ", " + show(size.value(), size.unit())
                    + ", is outside its own limits");
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
        String reason = (bonus.signum() == 0 ? "no bonus: " : "bonus " + show(bonus, unit) + ": ")
                + (feature.form() == Drawing.Form.HOLE ? "hole " : "shaft ") + feature.number() + " measures "
                + show(actual.value(), actual.unit())
                + (bonus.signum() == 0 ? ", its " : ", " + show(bonus, unit) + " from its ") + modifier.words()
                + " size " + show(from.value(), from.unit());
        return new Allowed(Limits.fromZeroTo(allowed, unit), Optional.of(new Bonus(bonus, reason)));
    }

    private Allowed without(String reason) {
        return new Allowed(stated, Optional.of(new Bonus(BigDecimal.ZERO, reason)));
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
