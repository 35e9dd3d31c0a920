package io.github.firstoff.study.capability;

import static io.github.firstoff.reference.ReferenceFile.doubles;
import static io.github.firstoff.reference.ReferenceFile.gear;
import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Indices and intervals against published examples and two independent recomputations. */
class CapabilityReferenceTest {
    private static final String FILE = "capability/indices.json";
    private static final double RELATIVE = 1e-9;

    static Stream<JsonNode> summaries() {
        return Stream.of("capability-normal-1", "capability-normal-3", "capability-normal-4", "capability-normal-6")
                .map(id -> reference(FILE, id));
    }

    /** Given mean and s, the within family is fed with s and its n − 1; the mean is that of one reading on the mean. */
    @ParameterizedTest
    @MethodSource("summaries")
    void indicesAndIntervalsFromSummaries(JsonNode c) {
        JsonNode in = c.path("input");
        JsonNode e = c.path("expected");
        int n = in.path("n").asInt();
        double s = in.path("s").asDouble();
        BigDecimal mean = in.path("mean").decimalValue();
        Sample sample = Sample.of(java.util.Collections.nCopies(n, mean), Unit.MILLIMETRE);
        Bounds bounds =
                Bounds.between(in.path("lsl").decimalValue(), in.path("usl").decimalValue());
        Capability result = CapabilityStudy.withDefaults()
                .analyse(
                        sample,
                        bounds,
                        Optional.of(SigmaEstimators.sample(s, n)),
                        OptionalInt.empty(),
                        ControlState.IN_CONTROL);
        assertValue(result.cp(), e.path("Cp").asDouble());
        assertValue(result.cpl(), e.path("Cpl").asDouble());
        assertValue(result.cpu(), e.path("Cpu").asDouble());
        assertValue(result.cpk(), e.path("Cpk").asDouble());
        assertInterval(result.cp(), doubles(e.path("Cp_ci")));
        assertInterval(result.cpk(), doubles(e.path("Cpk_ci_bissell")));
        // every reading is the mean, so the overall spread is zero and its family must say so
        assertThat(result.pp().value()).isEmpty();
        assertThat(result.pp().reason()).contains("do not spread");
    }

    static Stream<JsonNode> intervals() {
        return Stream.of("1.33-n50", "1-n30", "1.67-n100", "2-n25")
                .flatMap(key -> Stream.of("CAP-CI-Cp-" + key, "CAP-CI-Cpk-" + key))
                .map(id -> reference(FILE, id));
    }

    @ParameterizedTest
    @MethodSource("intervals")
    void intervalFormulas(JsonNode c) {
        JsonNode in = c.path("inputs");
        int n = in.path("n").asInt();
        double level = in.path("confidence").asDouble();
        Interval interval = in.has("Cp")
                ? IndexIntervals.chiSquared(in.path("Cp").asDouble(), n - 1, level)
                : IndexIntervals.bissell(in.path("Cpk").asDouble(), n, n - 1, level);
        double[] expected = doubles(c.path("expected").path("interval"));
        assertThat(interval.lower()).isCloseTo(expected[0], within(1e-8));
        assertThat(interval.upper()).isCloseTo(expected[1], within(1e-8));
    }

    @Test
    void intervalOfCpmByBoyles() {
        JsonNode c = reference(FILE, "CAP-CI-Cpm");
        JsonNode in = c.path("inputs");
        Interval interval = IndexIntervals.boyles(
                in.path("Cpm").asDouble(),
                in.path("xi").asDouble(),
                in.path("n").asLong(),
                0.95);
        double[] expected = doubles(c.path("expected").path("interval"));
        assertThat(interval.lower()).isCloseTo(expected[0], within(1e-7));
        assertThat(interval.upper()).isCloseTo(expected[1], within(1e-7));
    }

    @Test
    void printedIntervalOfCp() {
        // textbook: U 62, L 38, n 20, s 1.75 gives 1.57 to 3.01, printed from Cp rounded to 2.29
        Interval interval = IndexIntervals.chiSquared(24 / (6 * 1.75), 19, 0.95);
        assertThat(interval.lower()).isCloseTo(1.57, within(6e-3));
        assertThat(interval.upper()).isCloseTo(3.01, within(6e-3));
    }

    @Test
    void gearDiametersWithinAndOverall() {
        JsonNode e = reference(FILE, "CAP-GEAR-WITHIN-OVERALL").path("expected");
        Sample gear = gear();
        // ten ranges of ten, their mean 0.0181
        SigmaEstimate within = SigmaEstimators.meanRange(0.0181, 10, 10);
        Capability result = CapabilityStudy.withDefaults()
                .analyse(
                        gear,
                        Bounds.between(new BigDecimal("0.975"), new BigDecimal("1.025")),
                        Optional.of(within),
                        OptionalInt.of(10),
                        ControlState.NOT_ASSESSED);
        assertThat(result.within().orElseThrow().sigma())
                .isCloseTo(e.path("sigma_within_R").asDouble(), within(1e-14));
        assertThat(result.overall().orElseThrow().sigma())
                .isCloseTo(e.path("sigma_overall").asDouble(), within(1e-14));
        assertValue(result.cp(), e.path("Cp").asDouble());
        assertValue(result.cpk(), e.path("Cpk").asDouble());
        assertValue(result.pp(), e.path("Pp").asDouble());
        assertValue(result.ppk(), e.path("Ppk").asDouble());
    }

    @Test
    void nistExample() {
        // NIST/SEMATECH e-Handbook 6.1.6: U 20, L 8, mean 16, s 2: Cp 1.0, Cpk 0.6667; readings made to have exactly
        // these
        JsonNode e = reference(FILE, "CAP-NIST-6.1.6").path("expected");
        Sample sample = Sample.of(
                Stream.of("14", "14", "16", "18", "18").map(BigDecimal::new).toList(), Unit.NONE);
        Capability result = CapabilityStudy.withDefaults()
                .analyse(
                        sample,
                        Bounds.between(BigDecimal.valueOf(8), BigDecimal.valueOf(20)),
                        Optional.empty(),
                        OptionalInt.empty(),
                        ControlState.NOT_ASSESSED);
        assertThat(result.overall().orElseThrow().sigma()).isEqualTo(2);
        assertValue(result.pp(), e.path("Cp").asDouble());
        assertValue(result.ppk(), e.path("Cpk").asDouble());
        assertValue(result.ppl(), e.path("Cpl").asDouble());
        assertValue(result.cpm(), e.path("Cpm").asDouble());
        assertThat(result.cp().reason()).contains("within subgroups");
    }

    @Test
    void ringDiametersFromTheMeanRange() {
        JsonNode c = reference(FILE, "capability-ring-within");
        Sample sample = ReferenceFile.sample(reference("chart/subgroups.json", "xbar-ring-printed")
                .path("input")
                .path("data"));
        Capability result = CapabilityStudy.withDefaults()
                .analyse(
                        sample,
                        Bounds.between(new BigDecimal("73.95"), new BigDecimal("74.05")),
                        Optional.of(SigmaEstimators.meanRange(0.02324, 5, 25)),
                        OptionalInt.of(5),
                        ControlState.IN_CONTROL);
        assertValue(result.cp(), c.path("expected").path("Cp").asDouble());
        assertValue(result.cpk(), c.path("expected").path("Cpk").asDouble());
        assertThat(result.predicts()).isTrue();
        assertThat(result.notes()).isEmpty();
        assertThat(List.of(result.minimum().orElseThrow(), result.maximum().orElseThrow()))
                .containsExactly(new BigDecimal("73.967"), new BigDecimal("74.030"));
    }

    private static void assertValue(Index index, double expected) {
        assertThat(index.value()).as(index.name() + ": " + index.reason()).isPresent();
        assertThat(index.value().getAsDouble())
                .as(index.name())
                .isCloseTo(expected, within(RELATIVE * Math.abs(expected)));
    }

    private static void assertInterval(Index index, double[] expected) {
        Interval interval = index.interval().orElseThrow();
        assertThat(interval.lower()).as(index.name()).isCloseTo(expected[0], within(RELATIVE * expected[0]));
        assertThat(interval.upper()).as(index.name()).isCloseTo(expected[1], within(RELATIVE * expected[1]));
        assertThat(interval.level()).isEqualTo(0.95);
    }
}
