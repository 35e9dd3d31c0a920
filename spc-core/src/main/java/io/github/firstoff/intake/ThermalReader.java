package io.github.firstoff.intake;

import io.github.firstoff.plan.Material;
import io.github.firstoff.plan.Materials;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.util.Optional;

/** Reads what brings lengths to 20 °C: the plan's {@code "temperature"}. */
final class ThermalReader {
    /** Common practice: what a shop thermometer on the part is good for. */
    static final BigDecimal USUAL_TEMPERATURE_HALF_WIDTH = new BigDecimal("0.5");

    private static final BigDecimal GREATEST_EXPANSION = new BigDecimal("0.001");
    private static final BigDecimal GREATEST_TEMPERATURE_HALF_WIDTH = new BigDecimal("20");
    private static final String EXPANSION = "expansion";
    private static final String EXPANSION_HALF_WIDTH = "expansionHalfWidth";

    private ThermalReader() {}

    static Optional<Thermal> read(Fields fields, Optional<String> material) {
        Optional<BigDecimal> expansion = expansion(fields, EXPANSION);
        Optional<BigDecimal> halfWidth = fields.decimal(EXPANSION_HALF_WIDTH, true);
        Optional<BigDecimal> gauge = fields.required(
                "gaugeExpansion",
                expansion(fields, "gaugeExpansion"),
                "the expansion of what lengths are read against, such as 0.0000115 for steel at the temperature of the part, or 0 where"
                        + " that is kept at or corrected to 20 °C");
        BigDecimal temperatureHalfWidth = temperatureHalfWidth(fields);
        Optional<Material> known = material.flatMap(Materials::find);
        String unknown = material.map(grade -> "nothing is known of the expansion of " + Echo.quoted(grade))
                .orElse("the part states no material");
        Optional<BigDecimal> alpha = expansion.or(() -> known.map(Material::expansion));
        Optional<BigDecimal> width = halfWidth.or(() -> known.map(Material::halfWidth));
        fields.required(
                EXPANSION, alpha, "the expansion of the part per kelvin, such as 0.0000236, because " + unknown);
        fields.required(
                EXPANSION_HALF_WIDTH,
                width,
                "how far the expansion may be from that, per kelvin, such as 0.000002, because " + unknown);
        fields.finish();
        Remark source = expansion.isPresent()
                ? Remark.of("expansion.stated", "stated in the plan")
                : known.map(Material::origin).orElseGet(Remark::none);
        return alpha.flatMap(part -> width.flatMap(
                half -> gauge.map(against -> new Thermal(part, half, against, temperatureHalfWidth, source))));
    }

    private static BigDecimal temperatureHalfWidth(Fields fields) {
        String key = "temperatureHalfWidth";
        Optional<BigDecimal> stated = fields.decimal(key, true);
        if (stated.isPresent() && stated.get().compareTo(GREATEST_TEMPERATURE_HALF_WIDTH) > 0) {
            fields.refuse(
                    key,
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "it says how far the stated temperature may be wrong",
                    stated.get().toPlainString(),
                    "kelvins from 0 to 20, such as 0.5");
        }
        return stated.orElse(USUAL_TEMPERATURE_HALF_WIDTH);
    }

    /** An expansion per kelvin; one that lacks its power of ten would move every reading. */
    private static Optional<BigDecimal> expansion(Fields fields, String key) {
        Optional<BigDecimal> stated = fields.decimal(key);
        if (stated.isPresent() && stated.get().abs().compareTo(GREATEST_EXPANSION) > 0) {
            fields.refuse(
                    key,
                    FaultKind.NUMBER_OUT_OF_RANGE,
                    "no material expands that much; a power of ten is perhaps missing",
                    stated.get().toPlainString(),
                    "an expansion per kelvin, such as 0.0000236 for aluminium");
            return Optional.empty();
        }
        return stated;
    }
}
