package io.github.firstoff.samples;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.tolerance.RequirementNotation;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every requirement of the sample plans is read, and written again means the same. */
class SampleRequirementsTest {

    static Stream<String> requirements() {
        return Stream.of(
                        DrumCarrier.PORT.characteristics(),
                        DrumCarrier.STARBOARD.characteristics(),
                        CleatScrew.characteristics())
                .flatMap(List::stream)
                .map(Checked::requirement)
                .distinct();
    }

    @ParameterizedTest
    @MethodSource("requirements")
    void isRead(String text) {
        var read = RequirementNotation.parse(text);

        assertThat(RequirementNotation.parse(read.text())).isEqualTo(read);
    }
}
