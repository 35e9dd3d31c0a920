package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.assembly.DimensionLoop;
import io.github.firstoff.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of members as they are read, and every way in which one can be wrong. */
class StackFileTest {
    private static final String SOUND = """
            {
              "schema": "firstoff-stack-1", "hand": "port", "gap": "0.1..0.6",
              "members": [
                { "name": "housing", "requirement": "40 +0.25/+0.1", "direction": 1 },
                { "name": "ring", "requirement": "15 0/-0.12", "direction": "-", "distribution": "uniform", "sensitivity": 2 },
                { "name": "spacer", "direction": "-", "readings": ["9.6", 9.61] },
                { "name": "shim", "direction": "+", "distribution": { "mean": "0.1", "standardDeviation": 0.01 } }
              ]
            }
            """;

    private static StackFile read(String text) {
        return StackFile.read(Input.text("s.json", text));
    }

    @Test
    void aSoundFile_isRead() {
        DimensionLoop loop = read(SOUND).loop();

        assertThat(loop.unit()).isEqualTo(Unit.MILLIMETRE);
        assertThat(loop.gap().upper().orElseThrow()).isEqualByComparingTo("0.6");
        assertThat(loop.members())
                .extracting(member -> member.coefficient().intValue())
                .containsExactly(1, -2, -1, 1);
        assertThat(loop.members())
                .extracting(member -> member.distribution().word())
                .containsExactly("normal", "uniform", "measured", "stated");
        assertThat(loop.members().get(0).nominal().orElseThrow()).isEqualByComparingTo("40");
    }

    @Test
    void aGapInBounds_mayBeOpen() {
        DimensionLoop loop =
                read(SOUND.replace("\"0.1..0.6\"", "{ \"minimum\": \"0.1\" }")).loop();

        assertThat(loop.gap().lower().orElseThrow()).isEqualByComparingTo("0.1");
        assertThat(loop.gap().upper()).isEmpty();
        assertThat(read(SOUND.replace("\"gap\": \"0.1..0.6\",", ""))
                        .loop()
                        .gap()
                        .isOpen())
                .isTrue();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', textBlock = """
            "direction": 1 }          | "direction": 2 }           | s.json:4:71, members, member housing, direction: found the number 2 | where the gap grows
            , "direction": 1          |                            | "direction" is missing          | where the gap grows
            "40 +0.25/+0.1"           | "40 max"                   | the size has only one limit     | two limits
            "40 +0.25/+0.1"           | "40"                       | members, member housing, requirement | found "40"
            "sensitivity": 2          | "sensitivity": -2          | sensitivity: found -2           | greater than 0
            ["9.6", 9.61]             | ["9.6"]                    | a sample of 1                   | at least two sizes
            ["9.6", 9.61]             | ["9.6", "9,61"]            | s.json:6:63, members, member spacer, readings | a decimal point
            "standardDeviation": 0.01 | "standardDeviation": -0.01 | standardDeviation: found -0.01  | not negative
            "distribution": "uniform" | "distribution": "unifrom"  | perhaps uniform is meant        | normal, uniform or measured
            "distribution": "uniform" | "distribution": "measured" | nothing was measured            | "readings" beside it
            , "readings": ["9.6", 9.61] |                          | "requirement" is missing        | or "readings"
            "0.1..0.6"                | "0.6..0.1"                 | gap                             | found "0.6..0.1"
            "0.1..0.6"                | { "minimum": 2, "maximum": 1 } | the least gap is above the greatest | at most 1
            "name": "ring",           | "name": "ring", "hand": "starboard", | the hands are mixed: the loop is for port | found "starboard"
            firstoff-stack-1          | firstoff-assembly-1        | found an assembly, as its "schema" says; expected a file of members | stack.md
            """)
    void whatIsWrong_isNamedWithItsPlace(String sound, String wrong, String message, String expected) {
        assertThat(SOUND).contains(sound);
        String text = SOUND.replace(sound, wrong == null ? "" : wrong);

        InputRefused refused = catchThrowableOfType(InputRefused.class, () -> read(text));

        assertThat(refused).as(text).isNotNull();
        assertThat(String.join("\n", refused.lines())).contains(message, expected);
    }

    @Test
    void noMembers_areRefused() {
        assertThat(catchThrowableOfType(
                                InputRefused.class, () -> read("{ \"schema\": \"firstoff-stack-1\", \"members\": [] }"))
                        .lines()
                        .get(0))
                .contains("members", "an empty list", "at least one member");
    }
}
