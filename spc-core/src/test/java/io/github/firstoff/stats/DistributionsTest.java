package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.reference.ReferenceFile;
import org.junit.jupiter.api.Test;

/** Printed quantiles (from memory: the usual tables of Student, chi-squared and F) and the intervals that rest on them. */
class DistributionsTest {
    @Test
    void printedQuantiles() {
        assertThat(Distributions.normalQuantile(0.975)).isCloseTo(1.959963984540054, within(1e-14));
        assertThat(Distributions.normal(-3)).isCloseTo(0.0013498980316300933, within(1e-17));
        assertThat(Distributions.normalAbove(6)).isCloseTo(9.86587645037698e-10, within(1e-22));
        assertThat(Distributions.chiSquaredQuantile(0.95, 10)).isCloseTo(18.307, within(5e-4));
        assertThat(Distributions.studentTQuantile(0.975, 10)).isCloseTo(2.228, within(5e-4));
        assertThat(Distributions.fisherFQuantile(0.95, 5, 10)).isCloseTo(3.326, within(5e-4));
    }

    @Test
    void intervalsOfMeanAndStandardDeviation() {
        var c = ReferenceFile.reference("capability/indices.json", "mean-sd-interval-n20")
                .path("expected");
        double half = Distributions.studentTQuantile(0.975, 19) / Math.sqrt(20);
        assertThat(10 - half).isCloseTo(c.path("mean_ci").get(0).asDouble(), within(1e-10));
        assertThat(Math.sqrt(19 / Distributions.chiSquaredQuantile(0.975, 19)))
                .isCloseTo(c.path("sd_ci").get(0).asDouble(), within(1e-11));
        assertThat(1 / ChartConstants.of(20).c4()).isCloseTo(c.path("s_over_c4").asDouble(), within(1e-11));
    }

    @Test
    void quantilesInvertProbabilities() {
        for (double p : new double[] {1e-6, 0.01, 0.3, 0.5, 0.9, 0.9999}) {
            assertThat(Distributions.normal(Distributions.normalQuantile(p))).isCloseTo(p, within(1e-12));
            assertThat(Distributions.chiSquared(Distributions.chiSquaredQuantile(p, 7.5), 7.5))
                    .isCloseTo(p, within(1e-9));
            assertThat(Distributions.studentT(Distributions.studentTQuantile(p, 7.5), 7.5))
                    .isCloseTo(p, within(1e-9));
            assertThat(Distributions.fisherF(Distributions.fisherFQuantile(p, 3, 7.5), 3, 7.5))
                    .isCloseTo(p, within(1e-9));
        }
    }
}
