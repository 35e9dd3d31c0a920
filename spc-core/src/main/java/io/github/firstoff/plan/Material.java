package io.github.firstoff.plan;

import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;

/**
 * The linear expansion of a material.
 *
 * @param name its name in the table
 * @param expansion per kelvin; mean from 20 to 100 °C, which is what data sheets state
 * @param halfWidth the half-width of the interval in which the expansion of a piece lies, per kelvin
 * @param origin where the value comes from
 */
public record Material(String name, BigDecimal expansion, BigDecimal halfWidth, Remark origin) {

    /** Where the value comes from, in English. */
    public String source() {
        return origin.english();
    }

    /**
     * What brings readings on this material to 20 °C.
     *
     * @param gaugeExpansion of what the length is read against, per kelvin; 0 where that is kept at or corrected to 20 °C
     * @param temperatureHalfWidth the half-width of the interval in which the temperature of the part lies, in kelvin
     * @throws IllegalArgumentException if the half-width is negative
     */
    public Thermal thermal(BigDecimal gaugeExpansion, BigDecimal temperatureHalfWidth) {
        return new Thermal(expansion, halfWidth, gaugeExpansion, temperatureHalfWidth, origin);
    }
}
