package io.github.firstoff.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.reference.ReferenceFile;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SigmaEstimatorsTest {
    @Test
    void oneSubgroupGivesTheTextbookDegreesOfFreedom() {
        // s of n values has n − 1, and the range of two is s times √2
        for (int n = 2; n < 30; n++) {
            assertThat(SigmaEstimators.meanStandardDeviation(1, n, 1).degreesOfFreedom())
                    .isCloseTo(n - 1, within(1e-8 * n));
        }
        assertThat(SigmaEstimators.meanRange(1, 2, 1).degreesOfFreedom()).isCloseTo(1, within(1e-9));
    }

    /** Duncan, Quality Control and Industrial Statistics, table D3, printed to one decimal (values from memory). */
    @Test
    void effectiveDegreesOfFreedomOfTheMeanRange() {
        // the table's own approximation differs by up to a tenth
        double printed = 0.1;
        assertThat(SigmaEstimators.meanRange(1, 3, 1).degreesOfFreedom()).isCloseTo(2.0, within(printed));
        assertThat(SigmaEstimators.meanRange(1, 4, 1).degreesOfFreedom()).isCloseTo(2.9, within(printed));
        assertThat(SigmaEstimators.meanRange(1, 5, 1).degreesOfFreedom()).isCloseTo(3.8, within(printed));
        assertThat(SigmaEstimators.meanRange(1, 10, 1).degreesOfFreedom()).isCloseTo(7.7, within(printed));
        assertThat(SigmaEstimators.meanRange(1, 5, 10).degreesOfFreedom()).isCloseTo(36.5, within(printed));
        assertThat(SigmaEstimators.meanRange(1, 2, 10).degreesOfFreedom()).isCloseTo(9.0, within(printed));
    }

    /** d2*² = d2² + d3²/g; the collection gives d2* for one subgroup. */
    @Test
    void secondMomentOfTheRangeGivesDuncansDivisor() {
        for (JsonNode c : ReferenceFile.file("constants/factors.json").path("cases")) {
            if (c.path("id").asText().startsWith("CONST-d2star")) {
                ChartConstants k = ChartConstants.of(c.path("inputs").path("m").asInt());
                assertThat(Math.hypot(k.d2(), k.d3()))
                        .isCloseTo(c.path("expected").path("d2star_g1").asDouble(), within(1e-7));
            }
        }
    }

    @Test
    void varianceOfTheMeanMovingRange() {
        // Cryer and Ryan 1990: (0.826 N − 1.082)/(N − 1)², printed with three decimals (from memory)
        for (int values : new int[] {2, 3, 10, 50, 1000}) {
            double printed = (0.826 * values - 1.082) / ((values - 1.0) * (values - 1.0));
            assertThat(SigmaEstimators.movingRangeVariance(values))
                    .isCloseTo(printed, within(1e-3 * values / ((values - 1.0) * (values - 1.0))));
        }
    }

    /** The formula against simulation: 20,000 series of 25; the standard error of the ratio is about one per cent. */
    @Test
    void varianceOfTheMeanMovingRangeInSimulation() {
        Random random = new Random(1990);
        Moments moments = Moments.EMPTY;
        for (int series = 0; series < 20_000; series++) {
            double last = random.nextGaussian();
            double sum = 0;
            for (int i = 1; i < 25; i++) {
                double next = random.nextGaussian();
                sum += Math.abs(next - last);
                last = next;
            }
            moments = moments.plus(sum / 24 / ChartConstants.of(2).d2());
        }
        assertThat(moments.mean()).isCloseTo(1, within(0.005));
        assertThat(moments.variance() / SigmaEstimators.movingRangeVariance(25)).isCloseTo(1, within(0.04));
    }

    @Test
    void degreesOfFreedomInvertTheirVariation() {
        // whole ν exactly, from Γ(1/2) = √π: ν = 1 has v² = π/2 − 1, ν = 2 has 4/π − 1
        assertThat(SigmaEstimators.effectiveDegreesOfFreedom(Math.PI / 2 - 1)).isCloseTo(1, within(1e-10));
        assertThat(SigmaEstimators.effectiveDegreesOfFreedom(4 / Math.PI - 1)).isCloseTo(2, within(1e-10));
        for (double nu : new double[] {7.3, 100, 5000, 99_000}) {
            // v² = 1/(2ν) + 1/(8ν²) − 1/(16ν³) …: what two terms leave moves ν by about 1/(8ν)
            double v2 = 1 / (2 * nu) + 1 / (8 * nu * nu);
            assertThat(SigmaEstimators.effectiveDegreesOfFreedom(v2)).isCloseTo(nu, within(0.15 / nu));
        }
        // where the solver hands over to the series there is no jump
        double below = SigmaEstimators.effectiveDegreesOfFreedom(1 / 1999.999998);
        double above = SigmaEstimators.effectiveDegreesOfFreedom(1 / 2000.000002);
        assertThat(above - below).isCloseTo(2e-6, within(1e-5));
    }
}
