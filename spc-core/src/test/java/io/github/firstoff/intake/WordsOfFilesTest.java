package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The words, times and names that files may use, and what is near enough to be meant. */
class WordsOfFilesTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pass",
                "PASS",
                "Passed",
                "ok",
                "OK",
                "O.K.",
                "go",
                "good",
                "accept",
                "accepted",
                "conform",
                "conforms",
                "conforming",
                "i.O.",
                "i. O.",
                "io"
            })
    void passes(String word) {
        assertThat(PassOrFail.parse(word)).contains(true);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "fail",
                "failed",
                "nok",
                "NOK",
                "not ok",
                "not OK",
                "n.ok",
                "no-go",
                "no go",
                "NoGo",
                "not good",
                "bad",
                "ng",
                "reject",
                "rejected",
                "nonconform",
                "nonconforming",
                "non-conforming",
                "not conforming",
                "does not conform",
                "n.i.O.",
                "n. i. O."
            })
    void fails(String word) {
        assertThat(PassOrFail.parse(word)).contains(false);
    }

    @ParameterizedTest
    @ValueSource(strings = {"yes", "no", "1", "0", "true", "false", "x", "", "-", "passable", "okay?", "fine", "12.5"})
    void saysNeither(String word) {
        assertThat(PassOrFail.parse(word)).isEmpty();
    }

    /** Examples of ISO 8601-1:2019, 4.3.2, 5.3.1.4 and 5.4 (from memory), in a year of ours. */
    @ParameterizedTest
    @CsvSource({
        "2026-11-20, 2026-11-20T00:00, DATE",
        "2026-11-20T08:15, 2026-11-20T08:15, LOCAL",
        "2026-11-20T08:15:30, 2026-11-20T08:15:30, LOCAL",
        "2026-11-20t08:15:30.125, 2026-11-20T08:15:30.125, LOCAL",
        "2026-11-20 08:15:30, 2026-11-20T08:15:30, LOCAL",
        "2026-11-20T08:15:30Z, 2026-11-20T08:15:30, OFFSET",
        "2026-11-20T08:15:30+01:00, 2026-11-20T07:15:30, OFFSET",
        "2026-11-20T22:15:30-05:00, 2026-11-21T03:15:30, OFFSET",
        "2028-02-29T00:00, 2028-02-29T00:00, LOCAL"
    })
    void timesOfIso8601(String text, LocalDateTime time, Timestamp.Kind kind) {
        assertThat(Timestamp.parse(text)).contains(new Timestamp(time, kind));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "now",
                "20.11.2026",
                "11/20/2026",
                "2026-11-31",
                "2026-02-29",
                "2026-11-20T24:30",
                "2026-11-20T08",
                "08:15",
                "2026-11-20T08:15:30+25:00",
                "26-11-20T08:15",
                "1026-11-20T08:15",
                "2026-11-20T08:15 ",
                "2026-11-20X08:15",
                "1763626530"
            })
    void noTimes(String text) {
        assertThat(Timestamp.parse(text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "requirment, requirement",
        "requirements, requirement",
        "Requirement, requirement",
        "sizefeature, sizeFeature",
        "size_feature, sizeFeature",
        "charcateristic, characteristic",
        "gague, gauge",
        "untit, unit"
    })
    void nearEnoughToBeMeant(String written, String meant) {
        assertThat(Nearest.to(written, List.of("requirement", "sizeFeature", "characteristic", "gauge", "unit", "id")))
                .contains(meant);
    }

    @ParameterizedTest
    @ValueSource(strings = {"colour", "at", "ix", "name", "uint8", "require", "gap", ""})
    void notNearEnough(String written) {
        assertThat(Nearest.to(
                        written,
                        List.of("requirement", "sizeFeature", "characteristic", "gauge", "unit", "id", "note")))
                .isEmpty();
    }

    /** Worked by hand: put in, left out, exchanged, swapped. */
    @Test
    void distance_countsSteps() {
        assertThat(Nearest.distance("gauge", "gauge")).isZero();
        assertThat(Nearest.distance("gage", "gauge")).isEqualTo(1);
        assertThat(Nearest.distance("gauuge", "gauge")).isEqualTo(1);
        assertThat(Nearest.distance("gouge", "gauge")).isEqualTo(1);
        assertThat(Nearest.distance("guage", "gauge")).isEqualTo(1);
        assertThat(Nearest.distance("kitten", "sitting")).isEqualTo(3);
        assertThat(Nearest.distance("", "unit")).isEqualTo(4);
    }

    @ParameterizedTest
    @CsvSource({
        "Part, PART",
        "VALUE, VALUE",
        "timestamp, TIME",
        "Part Number, PART_NUMBER",
        "partNumber, PART_NUMBER",
        "part_number, PART_NUMBER",
        "sub-group, SUBGROUP",
        "Comment, NOTE",
        "remarks, NOTE"
    })
    void columns_byName(String name, ReadingColumn column) {
        assertThat(ReadingColumn.named(name)).contains(column);
    }

    @Test
    void everyOtherWordForAColumn_isNoNameOfOne() {
        for (String word :
                List.of("serial", "balloon", "actual", "date", "instrument", "units", "Messwert", "Prüfer")) {
            assertThat(ReadingColumn.named(word)).isEmpty();
            assertThat(ReadingColumn.meant(word)).isNotEqualTo(Optional.empty());
        }
    }

    @Test
    void echo_isHarmlessAndCut() {
        assertThat(Echo.quoted("a\u001b[2J\nb\u202e\u0000\u200b"))
                .isEqualTo("\"a\\u001B[2J\\nb\\u202E\\u0000\\u200B\"");
        assertThat(Echo.quoted("Ø52 – µm ⌖ 𝕏")).isEqualTo("\"Ø52 – µm ⌖ 𝕏\"");
        assertThat(Echo.quoted("x".repeat(100))).isEqualTo("\"" + "x".repeat(60) + "…\"");
        assertThat(Echo.quoted("x".repeat(59) + "𝕏yz")).isEqualTo("\"" + "x".repeat(59) + "…\"");
    }

    @ParameterizedTest
    @CsvSource({
        "'{\"part\": \"S1\"}\n{\"part\": \"S2\"}', JSON_LINES",
        "'{\"part\": \"S1\", \"2\": 12.5}', JSON_LINES",
        "'{\"readings\": [\n{\"part\": \"S1\"},\n{\"part\": \"S2\"}\n]}', JSON",
        "'  {\"a\": 1}', JSON",
        "'\n\t[1]', JSON",
        "'part,1', CSV",
        "'', CSV",
        "'\"part\",1', CSV"
    })
    void formats_byTheirBeginning(String text, ReadingFormat format) {
        assertThat(ReadingFormat.recognise(Beginning.of(text.getBytes(StandardCharsets.UTF_8), true)))
                .isEqualTo(format);
    }
}
