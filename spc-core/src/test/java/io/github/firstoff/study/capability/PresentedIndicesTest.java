package io.github.firstoff.study.capability;

import static io.github.firstoff.reference.ReferenceFile.reference;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.stats.Distributions;
import io.github.firstoff.stats.NormalFamily;
import io.github.firstoff.stats.SigmaEstimators;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What may be shown, one-sided bounds and shares outside. */
class PresentedIndicesTest {
    private static final Bounds BOUNDS = Bounds.between(new BigDecimal("51.95"), new BigDecimal("52.05"));

    private static Capability analyse(int n, ControlState control) {
        Sample sample = DistributionChoiceTest.drawn(NormalFamily.INSTANCE.of(0.01, 0.008), n, "52", 4, 2);
        return CapabilityStudy.withDefaults()
                .analyse(sample, BOUNDS, Optional.of(SigmaEstimators.pooled(0.008, 100)), OptionalInt.of(5), control);
    }

    @Test
    void inControlEverythingIsShown() {
        Capability c = analyse(125, ControlState.IN_CONTROL);
        assertThat(c.presented()).isEqualTo(c.indices());
        assertThat(c.presented()).allMatch(index -> index.value().isPresent());
    }

    @Test
    void notInControlOnlyPerformanceIsShown() {
        Capability c = analyse(125, ControlState.OUT_OF_CONTROL);
        assertThat(c.cpk().value()).isPresent();
        assertThat(c.presented()).hasSize(9);
        assertThat(c.presented().subList(0, 4))
                .allMatch(index -> index.value().isEmpty()
                        && index.reason().equals("The process is not in control: only its performance is stated."));
        assertThat(c.presented().subList(4, 9)).isEqualTo(c.indices().subList(4, 9));
        assertThat(analyse(125, ControlState.NOT_ASSESSED).presented().get(0).reason())
                .startsWith("Control is not assessed");
    }

    @Test
    void tooFewReadingsShowNoIndex() {
        Capability few = analyse(24, ControlState.IN_CONTROL);
        assertThat(few.presented())
                .allMatch(index -> index.value().isEmpty() && index.reason().startsWith("Fewer than 25 readings (24)"));
        assertThat(analyse(25, ControlState.IN_CONTROL).presented())
                .allMatch(index -> index.value().isPresent());
        assertThatThrownBy(() -> CapabilityStudy.withDefaults().withFewestReadings(1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void theIntervalOfCpOfTheFewestReadingsIsAsTheDocumentationSays() {
        double width = Math.sqrt(Distributions.chiSquaredQuantile(0.025, 24) / 24);
        assertThat(width).isCloseTo(0.72, within(0.005));
    }

    @ParameterizedTest
    @ValueSource(strings = {"capability-normal-1", "capability-normal-3", "capability-normal-4", "capability-normal-6"})
    void oneSidedBoundsAndShares(String id) {
        JsonNode c = reference("capability/indices.json", id);
        JsonNode in = c.path("input");
        JsonNode e = c.path("expected");
        int n = in.path("n").asInt();
        BigDecimal mean = in.path("mean").decimalValue();
        BigDecimal s = in.path("s").decimalValue();
        // n readings with exactly this mean and s: two apart by d on either side and the rest on the mean would need a
        // root, so
        // the formulas are asked directly
        double cpu = e.path("Cpu").asDouble();
        double cpl = e.path("Cpl").asDouble();
        assertThat(IndexIntervals.oneSidedBound(cpu, n, n - 1, 0.05))
                .isCloseTo(e.path("Cpu_lower_exact").asDouble(), within(1e-8));
        assertThat(IndexIntervals.oneSidedBound(cpl, n, n - 1, 0.05))
                .isCloseTo(e.path("Cpl_lower_exact").asDouble(), within(1e-8));
        assertThat(IndexIntervals.chiSquaredBound(e.path("Cp").asDouble(), n - 1, 0.05))
                .isCloseTo(e.path("Cp_lower_one_sided").asDouble(), within(1e-9));
        assertThat(IndexIntervals.bissellBound(e.path("Cpk").asDouble(), n, n - 1, 0.05))
                .isCloseTo(e.path("Cpk_lower_one_sided_bissell").asDouble(), within(1e-9));
        double total = Scores.ofShare(Distributions.normalAbove(3 * cpu) + Distributions.normalAbove(3 * cpl));
        assertThat(Scores.partsPerMillion(total))
                .isCloseTo(
                        e.path("ppm_total").asDouble(),
                        within(1e-9 * e.path("ppm_total").asDouble()));
        assertThat(total).isCloseTo(e.path("z_bench").asDouble(), within(1e-9));
        assertThat(mean.add(s)).isGreaterThan(mean);
    }

    @Test
    void expectedAndObservedSharesOfReadings() {
        // e-Handbook 6.1.6: U 20, L 8, mean 16, s 2 (readings made to have exactly these)
        JsonNode e = reference("capability/indices.json", "CAP-NIST-6.1.6").path("expected");
        Sample sample = Sample.of(
                Stream.of("14", "14", "16", "18", "18").map(BigDecimal::new).toList(), Unit.NONE);
        Capability c = CapabilityStudy.withDefaults()
                .analyse(
                        sample,
                        Bounds.between(BigDecimal.valueOf(8), BigDecimal.valueOf(20)),
                        Optional.empty(),
                        OptionalInt.empty(),
                        ControlState.NOT_ASSESSED);
        Nonconforming found = c.nonconforming();
        assertThat(found.expected().value().orElseThrow())
                .isCloseTo(e.path("ppm_total").asDouble(), within(1e-7));
        assertThat(found.expectedBelow().value().orElseThrow())
                .isCloseTo(1e6 * e.path("fraction_below").asDouble(), within(1e-7));
        assertThat(found.expectedAbove().value().orElseThrow())
                .isCloseTo(1e6 * e.path("fraction_above").asDouble(), within(1e-7));
        Interval interval = found.expected().interval().orElseThrow();
        assertThat(interval.lower()).isLessThan(found.expected().value().getAsDouble());
        assertThat(interval.upper()).isGreaterThan(found.expected().value().getAsDouble());
        assertThat(found.count()).hasValue(0);
        // nothing outside among 5, 95 %: upper end 1 − 0.025^(1/5)
        assertThat(found.observed().interval().orElseThrow().upper())
                .isCloseTo(1e6 * (1 - Math.pow(0.025, 0.2)), within(1e-4));
    }

    @Test
    void aReadingOnALimitIsInsideAndLimitsBetweenStepsAreExact() {
        List<BigDecimal> values =
                Stream.of("9.9", "10.0", "10.1", "10.2").map(BigDecimal::new).toList();
        Sample sample = Sample.of(values, Unit.MILLIMETRE);
        assertThat(Outside.observed(sample, Bounds.between(new BigDecimal("9.9"), new BigDecimal("10.2")), 0.95)
                        .count())
                .hasValue(0);
        assertThat(Outside.observed(sample, Bounds.between(new BigDecimal("9.9001"), new BigDecimal("10.1999")), 0.95)
                        .count())
                .hasValue(2);
        assertThat(Outside.observed(sample, Bounds.atMost(new BigDecimal("1E+30")), 0.95)
                        .count())
                .hasValue(0);
        assertThat(Outside.observed(sample, Bounds.atLeast(new BigDecimal("1E+30")), 0.95)
                        .count())
                .hasValue(4);
        assertThat(Outside.observed(sample, Bounds.NONE, 0.95).observed().reason())
                .contains("no limits");
        Sample equal = Sample.of(Collections.nCopies(30, BigDecimal.TEN), Unit.MILLIMETRE);
        assertThat(Outside.observed(equal, Bounds.atMost(BigDecimal.ONE), 0.95)
                        .observed()
                        .value())
                .hasValue(1e6);
    }
}
