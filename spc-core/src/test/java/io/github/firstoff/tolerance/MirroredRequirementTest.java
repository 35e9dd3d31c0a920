package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A coordinate of the other hand: its limits are those of this one with opposite sign, in opposite order. */
class MirroredRequirementTest {
    private static Limits limits(Requirement requirement) {
        return requirement.resolve(PlainDrawing.in(Unit.MILLIMETRE)).stated();
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            value = {
                "12.5 ±0.1, -12.5 ±0.1",
                "-12.5 ±0.1, 12.5 ±0.1",
                "12.5 +0.1/0, -12.5 0/-0.1",
                "12.5 +0.1/-0.05, -12.5 +0.05/-0.1",
                "12.5 -0.05/-0.1, -12.5 +0.1/+0.05",
                "18.2..18.4, -18.4..-18.2",
                "-1..2, -2..1",
                "0..5, -5..0",
                "40 max, -40 min",
                "-40 min, 40 max",
                "[40], [-40]",
                "(-40), (40)",
                "0.5 in ±0.01, -0.5 in ±0.01",
                "30° ±30', -30° ±30'"
            })
    void limitsChangeSignAndPlace(String written, String expected) {
        Requirement requirement = RequirementNotation.parse(written);
        Requirement mirrored = requirement.mirrored().orElseThrow();
        Limits before = limits(requirement);
        Limits after = limits(mirrored);

        assertThat(mirrored).isEqualTo(RequirementNotation.parse(expected));
        assertThat(RequirementNotation.parse(mirrored.text())).isEqualTo(mirrored);
        assertThat(mirrored.mirrored()).contains(requirement);
        assertThat(after.lower().map(BigDecimal::negate)).isEqualTo(before.upper());
        assertThat(after.upper().map(BigDecimal::negate)).isEqualTo(before.lower());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Ø12 ±0.1",
                "Ø12 H7",
                "12 H7",
                "R3 ±0.5",
                "2 ±0.2 x45°",
                "40",
                "Ra 0.8 max",
                "flatness 0.02",
                "position Ø0.1 A",
                "visual: no burrs",
                "M5x0.8-6H go/no-go"
            })
    void whatHasNoSign_hasNoMirroredForm(String written) {
        assertThat(RequirementNotation.parse(written).mirrored()).isEmpty();
    }

    /** 2·√(0.003² + 0.004²) = 0.01 inch is 0.254 mm exactly (3-4-5; the inch of 25.4 mm). */
    @Test
    void aPositionInInches_isHeldExactlyAgainstALimitInMillimetres() {
        Found found = Found.of(PositionDeviation.of(new BigDecimal("0.003"), new BigDecimal("0.004")), Unit.INCH);

        assertThat(found.compareTo(new BigDecimal("0.254"), Unit.MILLIMETRE)).isZero();
        assertThat(found.compareTo(new BigDecimal("0.2539999999"), Unit.MILLIMETRE))
                .isPositive();
        assertThat(found.compareTo(new BigDecimal("0.2540000001"), Unit.MILLIMETRE))
                .isNegative();
        assertThat(found.compareTo(new BigDecimal("0.01"), Unit.INCH)).isZero();
        assertThat(Optional.of(found.compareTo(new BigDecimal("-1"), Unit.MILLIMETRE)))
                .contains(1);
    }
}
