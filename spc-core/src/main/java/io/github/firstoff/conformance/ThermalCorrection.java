package io.github.firstoff.conformance;

import io.github.firstoff.plan.Thermal;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A length brought from the temperature at which it was read to 20 °C (ISO 1:2022).
 *
 * <p>With the reading L, the expansions α of the part and α_G of what it was read against, both at the temperature t, the correction
 * is L·(α_G − α)·(t − 20 °C), first order: what is left out is (α·Δt)² of the length, 1.4·10⁻⁸ for aluminium at 5 K. It is a finite
 * decimal, so a corrected reading is judged as exactly as any other.
 *
 * <p>Its standard uncertainty is L·√((Δt·u(α))² + ((α_G − α)·u(t))²) with u = a/√3 for half-widths a (JCGM 100:2008, 4.3.7 and 5.1.2),
 * the two being independent.
 *
 * @param temperature the temperature of the piece in degrees Celsius
 * @param amount what is added to the reading, in its unit
 * @param corrected the reading at 20 °C
 * @param standardUncertainty of the correction, in the unit of the reading; rounded up in the sixteenth digit
 */
public record ThermalCorrection(
        BigDecimal temperature, BigDecimal amount, BigDecimal corrected, BigDecimal standardUncertainty) {
    private static final BigDecimal THREE = new BigDecimal("3");
    private static final MathContext UP = new MathContext(16, RoundingMode.UP);

    /** The correction of a length. */
    public static ThermalCorrection of(BigDecimal length, BigDecimal temperature, Thermal thermal) {
        BigDecimal difference = temperature.subtract(Thermal.REFERENCE);
        BigDecimal relative = thermal.gaugeExpansion().subtract(thermal.expansion());
        BigDecimal amount = length.multiply(relative).multiply(difference);
        BigDecimal fromExpansion = length.multiply(difference).multiply(thermal.expansionHalfWidth());
        BigDecimal fromTemperature = length.multiply(relative).multiply(thermal.temperatureHalfWidth());
        BigDecimal variance = square(fromExpansion).add(square(fromTemperature)).divide(THREE, MathContext.DECIMAL128);
        BigDecimal uncertainty = variance.signum() == 0 ? BigDecimal.ZERO : variance.sqrt(UP);
        return new ThermalCorrection(temperature, amount, length.add(amount), uncertainty);
    }

    /** An expanded uncertainty U with coverage factor k together with this correction's: k·√((U/k)² + u²), rounded up. */
    public BigDecimal together(BigDecimal expanded, BigDecimal coverageFactor) {
        BigDecimal own = coverageFactor.multiply(standardUncertainty);
        BigDecimal sum = square(expanded).add(square(own));
        return sum.signum() == 0 ? BigDecimal.ZERO : sum.sqrt(UP);
    }

    private static BigDecimal square(BigDecimal value) {
        return value.multiply(value);
    }
}
