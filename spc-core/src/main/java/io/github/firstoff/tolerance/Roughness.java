package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * A surface texture requirement: {@code Ra 0.8 max}, {@code Ra 0.4..0.8}, {@code Rz 2 min}.
 *
 * <p>A parameter with one value and no further word is its upper limit (ISO 21920-1:2021 and before it ISO 1302:2002, 6.2:
 * unilateral upper limit by default). Values are in micrometres on a metric drawing and microinches on an inch drawing unless
 * the requirement names its unit. Zero is the bound of nature.
 *
 * @param parameter for example {@code Ra}
 * @param lower the least value, where one is required
 * @param upper the greatest value, where one is required
 * @param unit a unit written on the requirement itself
 */
record Roughness(String parameter, Optional<BigDecimal> lower, Optional<BigDecimal> upper, Optional<Unit> unit)
        implements Requirement {

    @Override
    public Nature nature() {
        return Nature.MEASURED;
    }

    @Override
    public Notation notation() {
        return Notation.of(new Notation.Text(text().replace("..", " … ")));
    }

    @Override
    public String text() {
        String written = unit.map(own -> " " + own.symbol()).orElse("");
        if (lower.isPresent() && upper.isPresent()) {
            return parameter + " " + lower.get().toPlainString() + ".."
                    + upper.get().toPlainString() + written;
        }
        return upper.map(high -> parameter + " " + high.toPlainString() + written + " max")
                .orElseGet(() -> parameter + " " + lower.orElseThrow().toPlainString() + written + " min");
    }

    @Override
    public Unit unit(Unit drawingUnit) {
        return unit.orElse(
                drawingUnit == Unit.INCH || drawingUnit == Unit.MICROINCH ? Unit.MICROINCH : Unit.MICROMETRE);
    }

    @Override
    public ToleranceZone resolve(Drawing drawing) {
        Unit own = unit(drawing.unit());
        Limits limits;
        if (lower.isPresent() && upper.isPresent()) {
            limits = Limits.between(lower.get(), upper.get(), own);
        } else if (upper.isPresent()) {
            limits = Limits.fromZeroTo(upper.get(), own);
        } else {
            limits = Limits.atLeast(lower.orElseThrow(), own);
        }
        return ToleranceZone.fixed(limits, Optional.empty());
    }
}
