package io.github.firstoff.study.stack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.firstoff.assembly.DimensionLoop;
import io.github.firstoff.assembly.DimensionLoop.Distribution;
import io.github.firstoff.assembly.DimensionLoop.Member;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.reference.ReferenceFile;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Dimension loops against the reference collection, and laws of their sums. */
class StackStudyTest {
    private static final Distribution NORMAL = new DimensionLoop.WithinLimits(new BigDecimal("3"));
    private static final double STANDARD_ERRORS = 4.5;

    private static DimensionLoop loop(Limits gap, Member... members) {
        return new DimensionLoop(
                "gap", Optional.empty(), Optional.empty(), Unit.MILLIMETRE, gap, Optional.empty(), List.of(members));
    }

    private static Member member(String name, String coefficient, String low, String high, Distribution distribution) {
        return new Member(
                name,
                new BigDecimal(coefficient),
                low + ".." + high,
                Optional.empty(),
                Optional.of(Limits.between(new BigDecimal(low), new BigDecimal(high), Unit.MILLIMETRE)),
                distribution);
    }

    private static DimensionLoop reference(JsonNode in, Distribution distribution) {
        List<Member> members = new ArrayList<>();
        for (JsonNode each : in.path("contributors")) {
            BigDecimal nominal = each.path("nominal").decimalValue();
            members.add(new Member(
                    "member " + members.size(),
                    each.path("sensitivity").decimalValue(),
                    "",
                    Optional.of(nominal),
                    Optional.of(Limits.between(
                            nominal.subtract(each.path("minus").decimalValue()),
                            nominal.add(each.path("plus").decimalValue()),
                            Unit.MILLIMETRE)),
                    distribution));
        }
        return loop(Limits.none(Unit.MILLIMETRE), members.toArray(Member[]::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"STACK-three-blocks", "STACK-housing-bearing", "STACK-ten-equal", "STACK-lever"})
    void referenceLoops_comeToTheirValues(String id) {
        JsonNode reference = ReferenceFile.reference("pressfit/stack.json", id);
        JsonNode out = reference.path("expected");
        double near = reference.path("tolerance").asDouble();

        StackResult result = StackStudy.of(reference(reference.path("inputs"), NORMAL));
        StackResult even = StackStudy.of(reference(reference.path("inputs"), new DimensionLoop.Uniform()));

        assertThat(result.nominal().orElseThrow().doubleValue())
                .isCloseTo(out.path("nominal_gap").asDouble(), within(near));
        StackResult.Exact worst = result.worst().orElseThrow();
        assertThat(worst.minimum().doubleValue())
                .isCloseTo(out.path("worst_case_min").asDouble(), within(near));
        assertThat(worst.maximum().doubleValue())
                .isCloseTo(out.path("worst_case_max").asDouble(), within(near));
        StackResult.Around around = result.rootSumSquare().orElseThrow();
        assertThat(around.half()).isCloseTo(out.path("rss_half_tolerance").asDouble(), within(near));
        assertThat(around.middle() + around.half())
                .isCloseTo(out.path("rss_max").asDouble(), within(near));
        assertThat(around.middle() - around.half())
                .isCloseTo(out.path("rss_min").asDouble(), within(near));
        assertThat(result.mean()).isCloseTo(out.path("mean_gap").asDouble(), within(near));
        assertThat(result.deviation()).isCloseTo(out.path("sigma_if_each_Cp1").asDouble(), within(near));
        assertThat(even.deviation()).isCloseTo(out.path("uniform_sigma").asDouble(), within(near));
        for (StackResult each : List.of(result, even)) {
            StackResult.Drawn drawn = each.drawn();
            assertThat(drawn.mean())
                    .isCloseTo(each.mean(), within(STANDARD_ERRORS * each.deviation() / Math.sqrt(drawn.draws())));
            assertThat(drawn.deviation())
                    .isCloseTo(
                            each.deviation(),
                            within(STANDARD_ERRORS * each.deviation() / Math.sqrt(2.0 * drawn.draws())));
            assertThat(each.members().stream()
                            .mapToDouble(StackResult.Contribution::ofVariance)
                            .sum())
                    .isCloseTo(1, within(1e-12));
            assertThat(each.members().stream()
                            .mapToDouble(share -> share.ofWidth().orElseThrow())
                            .sum())
                    .isCloseTo(1, within(1e-12));
            assertThat(drawn.bins().stream().mapToLong(Long::longValue).sum()).isEqualTo(drawn.draws());
        }
        // a normal gap leaves 0.135 % beyond three standard deviations
        assertThat(result.drawn().high())
                .isCloseTo(result.mean() + 3 * result.deviation(), within(0.06 * result.deviation()));
        assertThat(result.drawn().low())
                .isCloseTo(result.mean() - 3 * result.deviation(), within(0.06 * result.deviation()));
    }

    /** 0.1 + 0.2 is no 0.3 in binary; a worst case exactly on the limit fits. */
    @Test
    void worstCases_areExact() {
        Limits gap = Limits.between(new BigDecimal("0.1"), new BigDecimal("0.3"), Unit.MILLIMETRE);
        StackResult result = StackStudy.of(
                loop(gap, member("a", "1", "0.1", "0.2", NORMAL), member("b", "1", "0.0", "0.1", NORMAL)));

        assertThat(result.worst().orElseThrow().minimum()).isEqualByComparingTo("0.1");
        assertThat(result.worst().orElseThrow().maximum()).isEqualByComparingTo("0.3");
        assertThat(result.worstFits()).contains(true);
        assertThat(result.drawn().outside().orElseThrow().total()).isLessThan(0.001);
    }

    /** Of two uniform members of one width, the share beyond a quarter of the range on one side is 1/32. */
    @Test
    void shareOutside_ofATriangle() {
        Limits gap = Limits.between(new BigDecimal("0.25"), new BigDecimal("5"), Unit.MILLIMETRE);
        Distribution even = new DimensionLoop.Uniform();
        StackResult result =
                StackStudy.of(loop(gap, member("a", "1", "0", "1", even), member("b", "-1", "-1", "0", even)));

        double error = STANDARD_ERRORS * Math.sqrt(1 / 32.0 / result.drawn().draws());
        assertThat(result.drawn().outside().orElseThrow().below()).isCloseTo(1 / 32.0, within(error));
        assertThat(result.drawn().outside().orElseThrow().above()).isZero();
        assertThat(result.drawn().upperBound().orElseThrow()).isGreaterThan(1 / 32.0 - error);
        assertThat(result.worstFits()).contains(false);
    }

    @Test
    void measuredAndStatedMembers_takePartByTheirOwnSpread() {
        Distribution readings = new DimensionLoop.Measured(
                List.of(new BigDecimal("9.9"), new BigDecimal("10.1"), new BigDecimal("10.0")));
        Distribution stated = new DimensionLoop.Stated(new BigDecimal("4"), new BigDecimal("0.3"));
        StackResult result = StackStudy.of(loop(
                Limits.none(Unit.MILLIMETRE),
                new Member("m", new BigDecimal("2"), "", Optional.empty(), Optional.empty(), readings),
                new Member("s", new BigDecimal("-1"), "", Optional.empty(), Optional.empty(), stated)));

        assertThat(result.worst()).isEmpty();
        assertThat(result.rootSumSquare()).isEmpty();
        assertThat(result.mean()).isCloseTo(16, within(1e-12));
        assertThat(result.deviation()).isCloseTo(Math.sqrt(4 * 0.01 + 0.09), within(1e-12));
        assertThat(result.members().get(0).ofVariance()).isCloseTo(0.04 / 0.13, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> new DimensionLoop.Measured(List.of(BigDecimal.ONE)));
    }

    /** Turning a member's direction turns the gap about; scaling every coefficient scales everything. */
    @Test
    void signsAndScales() {
        Member a = member("a", "1", "10", "10.2", NORMAL);
        Member b = member("b", "-1", "4", "4.1", NORMAL);
        StackResult one = StackStudy.of(loop(Limits.none(Unit.MILLIMETRE), a, b));
        StackResult turned = StackStudy.of(loop(
                Limits.none(Unit.MILLIMETRE),
                member("a", "-3", "10", "10.2", NORMAL),
                member("b", "3", "4", "4.1", NORMAL)));

        assertThat(turned.worst().orElseThrow().minimum())
                .isEqualByComparingTo(one.worst().orElseThrow().maximum().multiply(new BigDecimal("-3")));
        assertThat(turned.mean()).isCloseTo(-3 * one.mean(), within(1e-12));
        assertThat(turned.deviation()).isCloseTo(3 * one.deviation(), within(1e-12));
        assertThat(turned.members().get(0).ofVariance())
                .isCloseTo(one.members().get(0).ofVariance(), within(1e-12));
    }
}
