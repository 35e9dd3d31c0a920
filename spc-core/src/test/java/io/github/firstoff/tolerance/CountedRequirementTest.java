package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Counts of nonconformities as plans write them; the form is this program's own. */
class CountedRequirementTest {
    @ParameterizedTest
    @CsvSource({
        "nonconformities 3 max, 3, ''",
        "Nonconformities 3, 3, ''",
        "nonconformities 0 max., 0, ''",
        "'nonconformities 12 max: runs and pits', 12, runs and pits",
        "'nonconformities 2:scratches: flange side', 2, scratches: flange side"
    })
    void isReadAndReadsItselfBack(String text, String upper, String what) {
        CountedRequirement read = (CountedRequirement) RequirementNotation.parse(text);
        assertThat(read.upper()).isEqualByComparingTo(upper);
        assertThat(read.what().orElse("")).isEqualTo(what);
        assertThat(RequirementNotation.parse(read.text())).isEqualTo(read);
        assertThat(read.nature()).isEqualTo(Requirement.Nature.MEASURED);
        assertThat(read.unit(Unit.INCH)).isEqualTo(Unit.NONE);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "nonconformities",
                "nonconformities max",
                "nonconformities 2.5 max",
                "nonconformities -1 max",
                "nonconformities 3 min",
                "nonconformities 1..3",
                "nonconformities 3 max scratches",
                "nonconformities 12345678901 max"
            })
    void whatIsNoWholeUpperLimit_isRefusedWithAnExample(String text) {
        assertThatThrownBy(() -> RequirementNotation.parse(text))
                .isInstanceOfSatisfying(
                        RequirementFault.class,
                        fault -> assertThat(fault.expected()).isEqualTo("nonconformities 3 max"));
    }

    @Test
    void numbersThatAreNotWhole_areNoRequirement() {
        assertThatThrownBy(() -> new CountedRequirement(new BigDecimal("1.5"), java.util.Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CountedRequirement(new BigDecimal("-1"), java.util.Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
