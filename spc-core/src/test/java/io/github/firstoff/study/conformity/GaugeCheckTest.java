package io.github.firstoff.study.conformity;

import static io.github.firstoff.Shop.measured;
import static io.github.firstoff.Shop.mm;
import static io.github.firstoff.Shop.piece;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import io.github.firstoff.Shop;
import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.study.conformity.GaugeAssessment.Grade;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expected ratios by hand: T/(2U), and C_m = T/(4u) of JCGM 106:2012, 7.6.3; 52 P7 has T = 0.030 (ISO 286-2:2010). */
class GaugeCheckTest {

    @Test
    void assess_calliperOnAP7Bore_isTooCoarse() {
        GaugeAssessment found = only(Shop.plan().gauge("CAL-2", "0.01", "0.03").with("1", "52 P7", "CAL-2"));
        assertThat(found.grade()).isEqualTo(Grade.TOO_COARSE);
        assertThat(found.ratio().orElseThrow()).isEqualByComparingTo("0.5");
        assertThat(found.capabilityIndex().orElseThrow()).isEqualByComparingTo("0.5");
        assertThat(found.cautions())
                .containsExactly(
                        "gauge CAL-2 is too coarse for this tolerance: T = 0.030 mm, U = 0.03 mm (k = 2), T/(2U) = 0.5"
                                + " where at least 2 is wanted; with a guard band of U no reading could prove that a part conforms",
                        "gauge CAL-2 shows steps of 0.01 mm: 3 go into the tolerance of 0.030 mm where at least 10 should");
    }

    @Test
    void assess_boreGaugeOnAP7Bore_isAdequateAndSilent() {
        GaugeAssessment found =
                only(Shop.plan().gauge("BG-3", "0.0005", "0.0016").with("1", "52 P7", "BG-3"));
        assertThat(found.grade()).isEqualTo(Grade.ADEQUATE);
        assertThat(found.cautions()).isEmpty();
        assertThat(found.statement())
                .contains("gauge BG-3: T = 0.030 mm, U = 0.0016 mm (k = 2), T/(2U) = 9.3, adequate");
    }

    @Test
    void assess_ratioJustShort_isPrintedShort() {
        // 0.030/(2·0.0038) = 3.947…, not to be printed as 4.0 where 4 is wanted.
        GaugeAssessment found =
                only(Shop.plan().gauge("MIC-1", "0.001", "0.0038").with("1", "52 P7", "MIC-1"));
        assertThat(found.grade()).isEqualTo(Grade.COARSE);
        assertThat(found.cautions().get(0))
                .isEqualTo("gauge MIC-1 is coarse for this tolerance: T = 0.030 mm, U = 0.0038 mm (k = 2), T/(2U) = 3.9"
                        + " where at least 4 is wanted; guard bands of U would take 26 % of the tolerance");
    }

    @Test
    void assess_exactlyOnABound_isOnTheGoodSide() {
        assertThat(grade("0.00375")).isEqualTo(Grade.ADEQUATE);
        assertThat(grade("0.0037500001")).isEqualTo(Grade.COARSE);
        assertThat(grade("0.0075")).isEqualTo(Grade.COARSE);
        assertThat(grade("0.0075000001")).isEqualTo(Grade.TOO_COARSE);
    }

    private static Grade grade(String expanded) {
        return only(Shop.plan().gauge("G", "0.001", expanded).with("1", "52 P7", "G"))
                .grade();
    }

    @Test
    void assess_otherBounds_areKept() {
        GaugeCheck strict = new GaugeCheck(new BigDecimal("10"), new BigDecimal("4"), new BigDecimal("100"));
        GaugeAssessment found = strict.assess(Shop.plan()
                        .gauge("BG-3", "0.0005", "0.0016")
                        .with("1", "52 P7", "BG-3")
                        .resolved())
                .get(0);
        assertThat(found.grade()).isEqualTo(Grade.COARSE);
        assertThat(found.cautions()).hasSize(2);
        assertThat(found.cautions().get(1)).contains("60 go into the tolerance of 0.030 mm where at least 100 should");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new GaugeCheck(BigDecimal.ONE, BigDecimal.TEN, BigDecimal.TEN));
    }

    @Test
    void assess_coverageFactorThree_separatesRatioAndIndex() {
        // u = 0.002; T/(2U) = 0.04/0.012, T/(4u) = 0.04/0.008 = 5.
        Uncertainty stated =
                new Uncertainty(new BigDecimal("0.006"), BigDecimal.ZERO, new BigDecimal("3"), Unit.MILLIMETRE);
        GaugeAssessment found = only(Shop.plan().gauge("G", "0.001", stated).with("1", "10 ±0.02", "G"));
        assertThat(found.capabilityIndex().orElseThrow()).isEqualByComparingTo("5");
        assertThat(found.ratio().orElseThrow()).isBetween(new BigDecimal("3.333"), new BigDecimal("3.334"));
    }

    @Test
    void assess_lengthDependentUncertainty_isTakenAtTheNominal() {
        // U = 0.001 + 400·1e-5 = 0.005, T = 0.04: 4.
        Uncertainty stated = new Uncertainty(
                new BigDecimal("0.001"), new BigDecimal("0.00001"), new BigDecimal("2"), Unit.MILLIMETRE);
        GaugeAssessment found = only(Shop.plan().gauge("CMM", "0.0001", stated).with("1", "400 ±0.02", "CMM"));
        assertThat(found.ratio().orElseThrow()).isEqualByComparingTo("4");
        assertThat(found.grade()).isEqualTo(Grade.ADEQUATE);
    }

    @Test
    void assess_inchGaugeOnMillimetres_convertsExactly() {
        Uncertainty stated = Uncertainty.expanded(new BigDecimal("0.0001"), Unit.INCH);
        GaugeAssessment found = only(Shop.plan().gauge("G", "0.0001", stated).with("1", "10 ±0.0127", "G"));
        assertThat(found.ratio().orElseThrow()).isEqualByComparingTo("5");
    }

    @Test
    void assess_singleLimit_hasNoRatioAndSaysNothing() {
        GaugeAssessment found = only(Shop.plan().gauge("G", "0.01", "0.03").with("1", "5 min", "G"));
        assertThat(found.grade()).isEqualTo(Grade.NOT_COMPARED);
        assertThat(found.ratio()).isEmpty();
        assertThat(found.cautions()).isEmpty();
    }

    @Test
    void assess_naturalBound_losesOneGuardBandOnly() {
        GaugeAssessment found = only(Shop.plan().gauge("G", "0.001", "0.009").with("1", "flatness 0.02", "G"));
        assertThat(found.ratio().orElseThrow()).isBetween(new BigDecimal("1.11"), new BigDecimal("1.12"));
        assertThat(found.cautions().get(0)).endsWith("guard bands of U would take 45 % of the tolerance");
    }

    @Test
    void assess_uncertaintyBelowItsResolution_isDoubted() {
        // 2·0.01/√12 = 0.005773…, rounded up 0.0058 (JCGM 100:2008, F.2.2.1 and 7.2.6).
        GaugeAssessment found = only(Shop.plan().gauge("CAL-2", "0.01", "0.005").with("1", "52 ±0.3", "CAL-2"));
        assertThat(found.cautions())
                .containsExactly(
                        "gauge CAL-2 states U = 0.005 mm, less than the 0.0058 mm that steps of 0.01 mm alone come to");
        assertThat(only(Shop.plan().gauge("CAL-2", "0.01", "0.0058").with("1", "52 ±0.3", "CAL-2"))
                        .cautions())
                .isEmpty();
    }

    @Test
    void assess_readingsFinerThanTheSteps_arePointedAt() {
        Shop shop = Shop.plan().gauge("MIC-1", "0.005", "0.006").with("1", "20 ±0.1", "MIC-1");
        InspectionRecord record = new InspectionRecord(
                shop.resolved(),
                List.of(
                        piece("1", mm("1", "20.005")),
                        piece("2", mm("1", "20.0100")),
                        piece("3", mm("1", "20.012")),
                        piece("4", mm("1", "20.0151")),
                        // another unit: its conversion is no multiple of the step, which says nothing
                        piece("5", measured("1", "0.7877", Unit.INCH))));
        assertThat(GaugeCheck.withDefaults().assess(record).get(0).cautions())
                .containsExactly(
                        "2 of 5 readings are given finer than the steps of 0.005 mm that gauge MIC-1 shows, first 20.012 mm on piece 3");
    }

    @Test
    void assess_attributesAndUnlistedGauges_areLeftOut() {
        assertThat(GaugeCheck.withDefaults()
                        .assess(Shop.plan()
                                .with("1", "visual: no burrs", "EYE")
                                .with("2", "10 ±0.1", "NOT-LISTED")
                                .with("3", "10 ±0.1")
                                .resolved()))
                .isEmpty();
    }

    private static GaugeAssessment only(Shop shop) {
        List<GaugeAssessment> found = GaugeCheck.withDefaults().assess(shop.resolved());
        assertThat(found).hasSize(1);
        return found.get(0);
    }
}
