package io.github.firstoff.study.conformity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.firstoff.stats.Distributions;
import io.github.firstoff.study.conformity.GlobalRisk.Range;
import io.github.firstoff.study.conformity.GlobalRisk.TrueValues;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

/** Risks at their edges, where they have closed forms or must vanish. */
class RiskEdgeTest {
    private static final TrueValues STANDARD = new TrueValues(0, 1);

    /** Without a tolerance nobody runs a risk; with the tiniest uncertainty the risks vanish and acceptance is conformance. */
    @Test
    void risksThatVanish() {
        Range all = new Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        GlobalRisk open = GlobalRisk.of(all, all, STANDARD, 0.1);
        assertThat(open.consumersRisk()).isZero();
        assertThat(open.producersRisk()).isCloseTo(0, within(1e-12));
        assertThat(open.accepted()).isCloseTo(1, within(1e-12));
        assertThat(open.conforming()).isCloseTo(1, within(1e-12));
        Range two = new Range(-2, 2);
        GlobalRisk exact = GlobalRisk.of(two, two, STANDARD, 1e-6);
        assertThat(exact.consumersRisk()).isCloseTo(0, within(1e-6));
        assertThat(exact.producersRisk()).isCloseTo(0, within(1e-6));
        assertThat(exact.accepted()).isCloseTo(1 - 2 * Distributions.normalAbove(2), within(1e-9));
    }

    /** One limit at the mean and u = σ: the bivariate normal orthant, P(η > 0, y < 0) = arctan(1)/(2π) = 1/8. */
    @Test
    void orthantOfTwoCorrelatedNormalValues() {
        Range below = new Range(Double.NEGATIVE_INFINITY, 0);
        GlobalRisk found = GlobalRisk.of(below, below, STANDARD, 1);
        assertThat(found.consumersRisk()).isCloseTo(0.125, within(1e-10));
        assertThat(found.producersRisk()).isCloseTo(0.125, within(1e-10));
        assertThat(found.accepted()).isCloseTo(0.5, within(1e-12));
        assertThat(found.nonconformingAmongAccepted()).isCloseTo(0.25, within(1e-10));
        GlobalRisk above = GlobalRisk.of(
                new Range(0, Double.POSITIVE_INFINITY), new Range(0, Double.POSITIVE_INFINITY), STANDARD, 1);
        assertThat(above.consumersRisk()).isCloseTo(0.125, within(1e-10));
        // any u: P(η > 0, y < 0) = arctan(u/σ)/(2π)
        GlobalRisk finer = GlobalRisk.of(below, below, STANDARD, 0.25);
        assertThat(finer.consumersRisk()).isCloseTo(Math.atan(0.25) / (2 * Math.PI), withinPercentage(1e-7));
    }

    /** All that is made and all that is accepted lies far out: small numbers keep their digits. */
    @Test
    void tailsKeepTheirDigits() {
        Range far = new Range(7, 9);
        GlobalRisk found = GlobalRisk.of(far, far, STANDARD, 1e-3);
        assertThat(found.conforming())
                .isCloseTo(Distributions.normalAbove(7) - Distributions.normalAbove(9), withinPercentage(1e-9));
        Range mirrored = new Range(-9, -7);
        assertThat(GlobalRisk.of(mirrored, mirrored, STANDARD, 1e-3).conforming())
                .isCloseTo(found.conforming(), withinPercentage(1e-9));
    }

    @Test
    void guardBandsNarrowAndWiden() {
        assertThat(new Range(1, 5).narrowedBy(0.5)).isEqualTo(new Range(1.5, 4.5));
        assertThat(new Range(1, 5).narrowedBy(-0.5)).isEqualTo(new Range(0.5, 5.5));
        assertThat(new Range(2, 2).lower()).isEqualTo(2);
        assertThatIllegalArgumentException().isThrownBy(() -> new Range(2, 1.9));
        assertThatIllegalArgumentException().isThrownBy(() -> new Range(Double.NaN, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new TrueValues(0, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new TrueValues(Double.NaN, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> GlobalRisk.of(new Range(1, 2), new Range(1, 2), STANDARD, 0));
    }

    @Test
    void boundsOfAGaugeCheckMayBeEqualAndAreAboveZero() {
        BigDecimal two = new BigDecimal("2");
        assertThat(new GaugeCheck(two, two, BigDecimal.ONE).adequate()).isEqualTo(two);
        assertThatIllegalArgumentException().isThrownBy(() -> new GaugeCheck(two, BigDecimal.ZERO, BigDecimal.ONE));
        assertThatIllegalArgumentException().isThrownBy(() -> new GaugeCheck(two, two, BigDecimal.ZERO));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new GaugeCheck(new BigDecimal("1.9"), two, BigDecimal.ONE));
    }
}
