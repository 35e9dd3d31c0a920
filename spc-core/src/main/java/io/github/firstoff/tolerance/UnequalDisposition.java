package io.github.firstoff.tolerance;

import java.math.BigDecimal;

/**
 * How a profile zone lies about the theoretically exact profile when it is not centred on it.
 *
 * <p>Two notations say the same thing. ASME Y14.5-2018, 11.3.1.2, writes {@code 0.2 Ⓤ 0.05}: of the width 0.2, the amount 0.05
 * lies outside the material. ISO 1101:2017, 8.2.2.2.2, writes {@code 0.2 UZ-0.05}: the zone is offset by 0.05, into the material
 * when negative. The reading that is judged is in both the width of the zone, disposed in this way, that just holds the surface;
 * its limits are 0 and the tolerance.
 *
 * @param style which notation
 * @param value the number after the modifier, in the unit of the tolerance
 */
public record UnequalDisposition(Style style, BigDecimal value) {

    /** Which standard's notation was written. */
    public enum Style {
        /** ASME Y14.5: the part of the width that lies outside the material. */
        ASME_U,
        /** ISO 1101: the signed offset of the zone's middle. */
        ISO_UZ
    }

    /** How far the zone reaches out of the material from the exact profile. */
    public BigDecimal outward(BigDecimal tolerance) {
        return style == Style.ASME_U ? value : half(tolerance).add(value);
    }

    /** How far the zone reaches into the material from the exact profile. */
    public BigDecimal inward(BigDecimal tolerance) {
        return tolerance.subtract(outward(tolerance));
    }

    private static BigDecimal half(BigDecimal tolerance) {
        return tolerance.multiply(new BigDecimal("0.5"));
    }

    String text() {
        String digits = value.abs().toPlainString();
        if (style == Style.ASME_U) {
            return "(U) " + digits;
        }
        return "UZ" + (value.signum() < 0 ? "-" : "+") + digits;
    }

    String set() {
        return style == Style.ASME_U ? text().replace("(U)", "Ⓤ") : text();
    }
}
