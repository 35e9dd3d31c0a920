package io.github.firstoff.study.conformity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.offset;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.study.conformity.GlobalRisk.Range;
import io.github.firstoff.study.conformity.GlobalRisk.TrueValues;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GlobalRiskTest {
    private static final String FILE = "conformity/probabilities.json";

    /** The reference file's figures come from quadrature, stated good to 1e-9. */
    private static final double AS_COMPUTED = 1e-9;

    @ParameterizedTest
    @ValueSource(strings = {"GR-resistor", "GR-1", "GR-2", "GR-3"})
    void of_acceptanceAndProcess(String id) {
        JsonNode in = ReferenceFile.reference(FILE, id).path("input");
        JsonNode expected = ReferenceFile.reference(FILE, id).path("expected");
        GlobalRisk found = GlobalRisk.of(
                new Range(number(in, "lower"), number(in, "upper")),
                new Range(
                        in.path("acceptance").get(0).asDouble(),
                        in.path("acceptance").get(1).asDouble()),
                new TrueValues(number(in, "process_mean"), number(in, "process_sd")),
                number(in, "u_measurement"));
        assertThat(found.consumersRisk()).isCloseTo(number(expected, "global_consumer_risk"), offset(AS_COMPUTED));
        assertThat(found.producersRisk()).isCloseTo(number(expected, "global_producer_risk"), offset(AS_COMPUTED));
        assertThat(found.accepted()).isCloseTo(number(expected, "probability_accepted"), offset(AS_COMPUTED));
        assertThat(found.conforming()).isCloseTo(number(expected, "probability_in_tolerance"), offset(AS_COMPUTED));
        assertThat(found.nonconformingAmongAccepted())
                .isCloseTo(number(expected, "probability_nonconforming_given_accepted"), offset(AS_COMPUTED));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "JCGM106-GLOBAL-plain",
                "JCGM106-GLOBAL-guarded",
                "JCGM106-GLOBAL-relaxed",
                "JCGM106-GLOBAL-off-centre"
            })
    void of_secondCollection(String id) {
        JsonNode in = ReferenceFile.reference(FILE, id).path("inputs");
        JsonNode expected = ReferenceFile.reference(FILE, id).path("expected");
        GlobalRisk found = GlobalRisk.of(
                new Range(number(in, "TL"), number(in, "TU")),
                new Range(number(in, "AL"), number(in, "AU")),
                new TrueValues(number(in, "y0"), number(in, "u0")),
                number(in, "um"));
        assertThat(found.consumersRisk()).isCloseTo(number(expected, "consumer_risk"), offset(AS_COMPUTED));
        assertThat(found.producersRisk()).isCloseTo(number(expected, "producer_risk"), offset(AS_COMPUTED));
        assertThat(1 - found.conforming()).isCloseTo(number(expected, "fraction_nonconforming"), offset(AS_COMPUTED));
        assertThat(found.accepted()).isCloseTo(number(expected, "fraction_accepted"), offset(AS_COMPUTED));
    }

    @Test
    void of_everyPartIsOneOfFour() {
        // accepted = conforming − producer's + consumer's, whatever the numbers; also with one limit and a very good
        // gauge
        Range[] ranges = {
            Range.of(Limits.between(new BigDecimal("9.98"), new BigDecimal("10.02"), Unit.MILLIMETRE)),
            Range.of(Limits.atMost(new BigDecimal("10.01"), Unit.MILLIMETRE)),
            Range.of(Limits.atLeast(new BigDecimal("9.995"), Unit.MILLIMETRE))
        };
        for (Range tolerance : ranges) {
            for (double u : new double[] {0.00001, 0.001, 0.004, 0.1}) {
                for (double guard : new double[] {-0.004, 0, 0.004}) {
                    GlobalRisk found =
                            GlobalRisk.of(tolerance, tolerance.narrowedBy(guard), new TrueValues(10.003, 0.008), u);
                    assertThat(found.accepted())
                            .isCloseTo(
                                    found.conforming() - found.producersRisk() + found.consumersRisk(), offset(1e-11));
                }
            }
        }
    }

    @Test
    void of_naturalBound_isNone() {
        assertThat(Range.of(Limits.fromZeroTo(BigDecimal.ONE, Unit.MILLIMETRE)))
                .isEqualTo(new Range(Double.NEGATIVE_INFINITY, 1));
    }

    @Test
    void badInput_isRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Range(1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Range(Double.NaN, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new TrueValues(0, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> GlobalRisk.of(new Range(0, 1), new Range(0, 1), new TrueValues(0, 1), 0));
    }

    private static double number(JsonNode node, String name) {
        return node.path(name).asDouble();
    }
}
