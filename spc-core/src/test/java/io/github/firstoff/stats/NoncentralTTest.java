package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.reference.ReferenceFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NoncentralTTest {
    @Test
    void centralCaseIsStudent() {
        for (double df : new double[] {1, 2.5, 10, 124, 5000}) {
            for (double t : new double[] {-4, -0.3, 0, 1.7, 5}) {
                assertThat(NoncentralT.probability(t, df, 0)).isCloseTo(Distributions.studentT(t, df), within(1e-12));
            }
        }
    }

    /** One-sided tolerance factors, k√n; computed with base R, the 95/95 factor of ten printed 2.911 in ISO 16269-6. */
    @ParameterizedTest
    @CsvSource({
        "43, 0.9, 0.99, 1.873953606",
        "10, 0.9, 0.95, 2.354640132",
        "10, 0.95, 0.95, 2.910963413",
        "5, 0.9, 0.9, 2.742348203",
        "100, 0.99, 0.99, 2.849648118"
    })
    void oneSidedToleranceFactors(int n, double coverage, double confidence, double factor) {
        double delta = Distributions.normalQuantile(coverage) * Math.sqrt(n);
        assertThat(NoncentralT.quantile(confidence, n - 1, delta) / Math.sqrt(n))
                .isCloseTo(factor, within(1e-9));
    }

    /** Exact lower bound of a one-sided index (Chou, Owen and Borrego 1990), computed with base R. */
    @ParameterizedTest
    @ValueSource(strings = {"CAP-CI-Cpu-exact-1.2-n20", "CAP-CI-Cpu-exact-1.33-n100"})
    void exactBoundsOfIndices(String id) {
        JsonNode c = ReferenceFile.reference("capability/indices.json", id);
        int n = c.path("inputs").path("n").asInt();
        double scale = 3 * Math.sqrt(n);
        double bound = NoncentralT.noncentralityFor(
                        scale * c.path("inputs").path("Cpu").asDouble(), n - 1, 0.95)
                / scale;
        assertThat(bound).isCloseTo(c.path("expected").path("lower").asDouble(), within(1e-6));
    }

    /**
     * Far limits: Φ is a narrow step there. P by quadrature over the density of chi in 4000 panels of 60 nodes each, SciPy 1.17 on NumPy
     * 2.4 (mpmath agrees to the digits given at the first).
     */
    @ParameterizedTest
    @CsvSource({
        "177, 29, 220, 0.0308602291637",
        "177, 29, 140, 0.9411151395771",
        "500, 24, 600, 0.0752148999704",
        "1000, 124, 1100, 0.0557314286800",
        "300, 299, 290, 0.7851536218376",
        "50, 9, 70, 0.0400369311402",
        "-300, 29, -280, 0.3354744009562"
    })
    void narrowStepsKeepTheirAccuracy(double t, double df, double delta, double p) {
        assertThat(NoncentralT.probability(t, df, delta)).isCloseTo(p, within(1e-11));
    }

    @Test
    void boundsFromTheOtherCollection() {
        for (String id :
                new String[] {"capability-normal-1", "capability-normal-3", "capability-normal-4", "capability-normal-6"
                }) {
            JsonNode c = ReferenceFile.reference("capability/indices.json", id);
            int n = c.path("input").path("n").asInt();
            double scale = 3 * Math.sqrt(n);
            double cpu = c.path("expected").path("Cpu").asDouble();
            assertThat(NoncentralT.noncentralityFor(scale * cpu, n - 1, 0.95) / scale)
                    .isCloseTo(c.path("expected").path("Cpu_lower_exact").asDouble(), within(1e-8));
        }
    }

    @Test
    void valuesOutsideTheirRangesAreRefused() {
        assertThatThrownBy(() -> NoncentralT.probability(1, 0.5, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> NoncentralT.probability(Double.NaN, 5, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> NoncentralT.quantile(1, 5, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
