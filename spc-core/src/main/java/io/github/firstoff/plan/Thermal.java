package io.github.firstoff.plan;

import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;

/**
 * What is needed to bring a length read at another temperature to 20 °C (ISO 1:2022).
 *
 * @param expansion the linear expansion of the part's material, per kelvin
 * @param expansionHalfWidth the half-width of the interval in which the expansion lies, per kelvin (rectangular; JCGM 100, 4.3.7)
 * @param gaugeExpansion the linear expansion of what the length is read against, per kelvin; 0 where that is kept or corrected to 20 °C
 * @param temperatureHalfWidth the half-width of the interval in which the temperature of the part lies, in kelvin (rectangular)
 * @param origin where the expansion comes from
 */
public record Thermal(
        BigDecimal expansion,
        BigDecimal expansionHalfWidth,
        BigDecimal gaugeExpansion,
        BigDecimal temperatureHalfWidth,
        Remark origin) {
    /** The reference temperature, in degrees Celsius. */
    public static final BigDecimal REFERENCE = new BigDecimal("20");

    /** An expansion whose origin people wrote. */
    public Thermal(
            BigDecimal expansion,
            BigDecimal expansionHalfWidth,
            BigDecimal gaugeExpansion,
            BigDecimal temperatureHalfWidth,
            String source) {
        this(expansion, expansionHalfWidth, gaugeExpansion, temperatureHalfWidth, Remark.verbatim(source));
    }

    /** Where the expansion comes from, in English. */
    public String source() {
        return origin.english();
    }

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if a half-width is negative
     */
    public Thermal {
        if (expansionHalfWidth.signum() < 0 || temperatureHalfWidth.signum() < 0) {
            throw new IllegalArgumentException("a half-width is not negative");
        }
    }
}
