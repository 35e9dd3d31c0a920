package io.github.firstoff.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.reference.ReferenceFile;
import java.math.BigDecimal;
import java.math.MathContext;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ThermalCorrectionTest {
    private static final String FILE = "conformity/temperature.json";
    private static final BigDecimal MICROMETRES = new BigDecimal("1000");

    /** The exact lengths of the reference file have ten decimal places. */
    private static final BigDecimal HALF_OF_THE_LAST_PLACE = new BigDecimal("5e-11");

    /** The last digit of figures taken from a pocket calculator. */
    private static final Offset<BigDecimal> TEN_DIGITS = Offset.offset(new BigDecimal("1e-13"));

    @ParameterizedTest
    @ValueSource(strings = {"TH-1", "TH-2", "TH-4", "TH-5"})
    void of_reference_firstOrderExactly(String id) {
        JsonNode in = ReferenceFile.reference(FILE, id).path("input");
        JsonNode expected = ReferenceFile.reference(FILE, id).path("expected");
        BigDecimal length = decimal(in, "length_at_T_mm");
        BigDecimal alpha = decimal(in, "alpha_per_k");
        ThermalCorrection found = ThermalCorrection.of(length, decimal(in, "T_c"), expansion(alpha));
        assertThat(found.corrected()).isEqualByComparingTo(decimal(expected, "L20_first_order_mm"));
        assertThat(found.amount().negate().multiply(MICROMETRES))
                .isEqualByComparingTo(decimal(expected, "expansion_first_order_um"));
        // What the first order leaves out of L/(1 + αΔt) is less than L(αΔt)².
        BigDecimal relative = alpha.multiply(decimal(in, "T_c").subtract(Thermal.REFERENCE));
        BigDecimal left = decimal(expected, "L20_exact_mm").subtract(found.corrected());
        assertThat(left)
                .isBetween(
                        BigDecimal.ZERO,
                        length.multiply(relative).multiply(relative).add(HALF_OF_THE_LAST_PLACE));
    }

    @Test
    void of_pairAtDifferentTemperatures_isTheSumOfBoth() {
        JsonNode in = ReferenceFile.reference(FILE, "TH-pair").path("input");
        BigDecimal length = decimal(in, "L");
        BigDecimal standard = ThermalCorrection.of(
                        length, decimal(in, "T_standard"), against(BigDecimal.ZERO, decimal(in, "alpha_standard")))
                .amount();
        BigDecimal work = ThermalCorrection.of(length, decimal(in, "T_work"), expansion(decimal(in, "alpha_work")))
                .amount();
        assertThat(standard.add(work).multiply(MICROMETRES))
                .isEqualByComparingTo(
                        decimal(ReferenceFile.reference(FILE, "TH-pair").path("expected"), "correction_um"));
    }

    @Test
    void of_sameMaterialOrReferenceTemperature_correctsNothing() {
        BigDecimal length = new BigDecimal("250.004");
        BigDecimal alpha = new BigDecimal("0.0000115");
        assertThat(ThermalCorrection.of(length, new BigDecimal("31.5"), against(alpha, alpha))
                        .corrected())
                .isEqualByComparingTo(length);
        ThermalCorrection at20 = ThermalCorrection.of(length, new BigDecimal("20.0"), expansion(alpha));
        assertThat(at20.corrected()).isEqualByComparingTo(length);
        assertThat(at20.standardUncertainty()).isEqualByComparingTo("0");
    }

    @Test
    void standardUncertainty_ofBothHalfWidths() {
        // JCGM 100:2008, 4.3.7 and 5.1.2, by hand: 100 mm, Δt = 5 K, α − α_G = 12.1e-6 ± 1e-6 per K, t ± 0.5 K:
        // √(0.0005² + 0.000605²)/√3 = 0.00045313999…
        Thermal thermal = new Thermal(
                new BigDecimal("23.6e-6"),
                new BigDecimal("1e-6"),
                new BigDecimal("11.5e-6"),
                new BigDecimal("0.5"),
                "stated");
        ThermalCorrection found = ThermalCorrection.of(new BigDecimal("100"), new BigDecimal("25"), thermal);
        BigDecimal byHand = new BigDecimal("0.0005")
                .pow(2)
                .add(new BigDecimal("0.000605").pow(2))
                .divide(new BigDecimal("3"), MathContext.DECIMAL128)
                .sqrt(MathContext.DECIMAL128);
        assertThat(found.standardUncertainty()).isCloseTo(byHand, TEN_DIGITS);
        // U = 0.003 at k = 2 with it: 2√(0.0015² + u²)
        BigDecimal together = new BigDecimal("0.0015")
                .pow(2)
                .add(byHand.pow(2))
                .sqrt(MathContext.DECIMAL128)
                .multiply(new BigDecimal("2"));
        assertThat(found.together(new BigDecimal("0.003"), new BigDecimal("2"))).isCloseTo(together, TEN_DIGITS);
    }

    private static Thermal expansion(BigDecimal alpha) {
        return against(alpha, BigDecimal.ZERO);
    }

    private static Thermal against(BigDecimal alpha, BigDecimal gauge) {
        return new Thermal(alpha, BigDecimal.ZERO, gauge, BigDecimal.ZERO, "stated");
    }

    private static BigDecimal decimal(JsonNode node, String name) {
        return new BigDecimal(node.path(name).asText());
    }
}
