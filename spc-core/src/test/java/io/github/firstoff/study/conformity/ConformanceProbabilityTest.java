package io.github.firstoff.study.conformity;

import static io.github.firstoff.Shop.mm;
import static io.github.firstoff.Shop.piece;
import static io.github.firstoff.Shop.warm;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.offset;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.Shop;
import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Thermal;
import io.github.firstoff.quantity.Uncertainty;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConformanceProbabilityTest {
    private static final String FILE = "conformity/probabilities.json";

    /** The reference file's computed figures have ten digits. */
    private static final double AS_COMPUTED = 6e-11;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "PC-zener",
                "PC-burst",
                "PC-own-1",
                "PC-own-2",
                "PC-own-4",
                "PC-own-5",
                "JCGM106-ZENER",
                "JCGM106-OIL"
            })
    void of_publishedAndComputedCases(String id) {
        JsonNode reference = ReferenceFile.reference(FILE, id);
        JsonNode in = reference.has("input") ? reference.path("input") : reference.path("inputs");
        Optional<BigDecimal> lower = decimal(in, "lower").or(() -> decimal(in, "TL"));
        Optional<BigDecimal> upper = decimal(in, "upper").or(() -> decimal(in, "TU"));
        ConformanceProbability found = ConformanceProbability.of(
                new Limits(lower, upper, false, Unit.NONE),
                decimal(in, "y").orElseThrow(),
                decimal(in, "u").orElseThrow());
        JsonNode expected = reference.path("expected");
        double wanted = expected.path(expected.has("p_conform") ? "p_conform" : "conformance_probability")
                .asDouble();
        assertThat(found.conforming()).isCloseTo(wanted, offset(AS_COMPUTED));
        assertThat(found.specificConsumersRisk()).isCloseTo(1 - wanted, offset(AS_COMPUTED));
    }

    @Test
    void of_farInside_keepsTheDigitsOfTheSmallTail() {
        // P(Z > 10) = 7.61985302416e-24 (R, pnorm(10, lower.tail = FALSE)).
        ConformanceProbability found =
                ConformanceProbability.of(Limits.atMost(BigDecimal.TEN, Unit.NONE), BigDecimal.ZERO, BigDecimal.ONE);
        assertThat(found.nonconforming()).isCloseTo(7.61985302416e-24, offset(1e-34));
        assertThat(found.sentence()).isEqualTo("conforms with a probability above 99.9 %");
    }

    @Test
    void of_naturalBound_isNoLimit() {
        BigDecimal value = new BigDecimal("0.001");
        BigDecimal u = new BigDecimal("0.002");
        ConformanceProbability flatness =
                ConformanceProbability.of(Limits.fromZeroTo(new BigDecimal("0.005"), Unit.MILLIMETRE), value, u);
        assertThat(flatness)
                .isEqualTo(
                        ConformanceProbability.of(Limits.atMost(new BigDecimal("0.005"), Unit.MILLIMETRE), value, u));
        // Φ(2), the handbook's 0.9772
        assertThat(flatness.conforming()).isCloseTo(0.97724986805, offset(1e-11));
    }

    @Test
    void of_laws() {
        SplittableRandom random = new SplittableRandom(106);
        for (int i = 0; i < 2000; i++) {
            BigDecimal lower = BigDecimal.valueOf(random.nextInt(-1000, 1000), 3);
            Limits limits =
                    Limits.between(lower, lower.add(BigDecimal.valueOf(random.nextInt(1, 200), 3)), Unit.MILLIMETRE);
            BigDecimal value = BigDecimal.valueOf(random.nextInt(-1300, 1300), 3);
            BigDecimal u = BigDecimal.valueOf(random.nextInt(1, 100), 4);
            ConformanceProbability found = ConformanceProbability.of(limits, value, u);
            assertThat(found.conforming() + found.nonconforming()).isCloseTo(1, offset(1e-15));
            // nothing but the place relative to the limits counts
            BigDecimal shift = new BigDecimal("1000");
            Limits moved = Limits.between(
                    limits.lower().orElseThrow().add(shift),
                    limits.upper().orElseThrow().add(shift),
                    Unit.MILLIMETRE);
            assertThat(ConformanceProbability.of(moved, value.add(shift), u)).isEqualTo(found);
            if (!limits.contains(value, Unit.MILLIMETRE)) {
                assertThat(found.conforming()).isLessThanOrEqualTo(0.5);
            }
        }
    }

    @Test
    void of_certainReading_isOneOrZero() {
        Limits limits = Limits.atMost(BigDecimal.TEN, Unit.NONE);
        assertThat(ConformanceProbability.of(limits, BigDecimal.TEN, BigDecimal.ZERO)
                        .conforming())
                .isEqualTo(1);
        assertThat(ConformanceProbability.of(limits, new BigDecimal("10.0001"), BigDecimal.ZERO)
                        .conforming())
                .isEqualTo(0);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConformanceProbability.of(Limits.none(Unit.NONE), BigDecimal.ONE, BigDecimal.ONE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ConformanceProbability.of(limits, BigDecimal.ONE, new BigDecimal("-1")));
    }

    @Test
    void of_judgement_usesItsLimitsValueAndUncertainty() {
        // The numbers of PC-own-1 with U = 0.0075 at k = 2.5.
        ResolvedPlan plan = Shop.plan()
                .gauge(
                        "MIC-1",
                        "0.001",
                        new Uncertainty(
                                new BigDecimal("0.0075"), BigDecimal.ZERO, new BigDecimal("2.5"), Unit.MILLIMETRE))
                .with("1", "10 ±0.015", "MIC-1")
                .with("2", "10 ±0.015")
                .resolved();
        ConformanceProbability found =
                ConformanceProbability.of(plan, judged(plan, mm("1", "10.012"))).orElseThrow();
        assertThat(found.conforming()).isCloseTo(0.8413447461, offset(AS_COMPUTED));
        assertThat(found.sentence()).isEqualTo("conforms with a probability of 84.1 %");
        assertThat(ConformanceProbability.of(plan, judged(plan, mm("2", "10.012"))))
                .isEmpty();
    }

    @Test
    void of_judgementAtAnotherTemperature_usesTheCorrectedValue() {
        ResolvedPlan plan = Shop.plan()
                .at20(new Thermal(
                        new BigDecimal("0.00002"), BigDecimal.ZERO, BigDecimal.ZERO, BigDecimal.ZERO, "stated"))
                .gauge("MIC-1", "0.001", "0.006")
                .with("1", "100 ±0.015", "MIC-1")
                .resolved();
        // 100.012 at 26 °C is 100.012·(1 − 0.00012) = 99.99999856; both limits are five u away.
        ConformanceProbability found = ConformanceProbability.of(plan, judged(plan, warm("1", "100.012", "26")))
                .orElseThrow();
        assertThat(found.nonconforming()).isCloseTo(5.733e-7, offset(1e-9));
    }

    private static Judgement judged(ResolvedPlan plan, Reading reading) {
        PartRecord part = piece("7", reading);
        return Judge.of(plan).judge(plan.find(reading.characteristic()).orElseThrow(), part, reading);
    }

    private static Optional<BigDecimal> decimal(JsonNode node, String name) {
        return node.has(name) ? Optional.of(new BigDecimal(node.path(name).asText())) : Optional.empty();
    }
}
