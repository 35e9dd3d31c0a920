package io.github.firstoff.remark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextPatternTest {
    @Test
    void aWordingHoldsPlacesOfItsOwn() {
        TextPattern pattern = new TextPattern("{0|one of {1}|{0} of {1|a single piece|{1} pieces}}.");
        assertThat(pattern.filled(List.of(1, 8))).isEqualTo("one of 8.");
        assertThat(pattern.filled(List.of(3, 8))).isEqualTo("3 of 8 pieces.");
        assertThat(pattern.filled(List.of(3, 1))).isEqualTo("3 of a single piece.");
    }

    @Test
    void signsOfPlacesInArgumentsAreText() {
        assertThat(new TextPattern("{0} and {1}").filled(List.of("{1|a|b}", "}")))
                .isEqualTo("{1|a|b} and }");
    }

    @ParameterizedTest
    @ValueSource(strings = {"{", "{0", "{0|piece", "{0|piece}", "{0|piece|pieces", "{0 pieces}", "{x}", "{1}"})
    void aSlipInATranslationIsNamedAndNotPrinted(String text) {
        assertThatThrownBy(() -> new TextPattern(text).filled(List.of(2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(text);
    }
}
