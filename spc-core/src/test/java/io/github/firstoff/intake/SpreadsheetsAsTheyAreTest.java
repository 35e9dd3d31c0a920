package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables as people keep them: whatever cannot be meant is refused with sheet and cell, and nothing passes for a reading that is none. */
class SpreadsheetsAsTheyAreTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    /** A sheet of rows as {@link XlsxWriter#typed} takes them. */
    private static Intake sheet(String... rows) {
        byte[] bytes = new XlsxWriter().sheet("Lot", XlsxWriter.typed(rows)).bytes();
        return ReadingFiles.readInputs(PLAN, List.of(Input.bytes("lot.xlsx", bytes, relative -> Optional.empty())));
    }

    private static Intake text(String text) {
        return ReadingFiles.readInputs(
                PLAN,
                List.of(Input.bytes("lot.csv", text.getBytes(StandardCharsets.UTF_8), relative -> Optional.empty())));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Mean",
                "Mean value",
                "Average:",
                "Sum:",
                "Total",
                "Grand total",
                "Subtotal",
                "Count",
                "Std Dev",
                "Range",
                "Min.",
                "Max.",
                "X-bar",
                "Xbar",
                "x\u0304",
                "\u00D8",
                "Cpk",
                "Cp",
                "Nominal",
                "Target value",
                "Tol",
                "Tol +",
                "Tolerance \u00B1",
                "Upper tol.",
                "USL",
                "LSL",
                "Upper limit",
                "Upper spec limit",
                "Lower specification",
                "Unit",
                "Result",
                "Mittelwert",
                "Summe",
                "Gesamt",
                "Anzahl",
                "Spannweite",
                "Standardabweichung",
                "Sollwert",
                "Nennma\u00DF",
                "Toleranz",
                "Obergrenze",
                "Untergrenze",
                "OSG",
                "USG",
                "OTG",
                "Abweichung",
                "Einheit",
                "Obere Toleranzgrenze",
                "oberes Abma\u00DF"
            })
    void aRowThatSpeaksOfItsColumns_isNoPiece(String label) {
        Intake intake = sheet("part|2", "S1|12.51", label + "|12.5");
        assertThat(intake.rows()).isEqualTo(new RowCounts(2, 1, 1, 0));
        assertThat(intake.refused().lines())
                .singleElement()
                .asString()
                .startsWith("lot.xlsx, sheet \"Lot\", cell A3, column part: this names no piece");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Lower 12",
                "Total-07",
                "U-3",
                "Mean Machine 4",
                "Range Rover",
                "OG-2",
                "S",
                "12",
                "Port 3",
                "Unit 7"
            })
    void aNameThatOnlyBeginsSo_isAPiece(String name) {
        assertThat(sheet("part|2", "'" + name + "|12.51").recordOrRefuse().readingCount())
                .isEqualTo(1);
    }

    @Test
    void aHeadingOnceMore_isNoPiece() {
        Intake stacked = sheet("part|2", "S1|12.51", "", "part|1", "S2|51.96");
        assertThat(stacked.refused().lines())
                .containsExactly(
                        "lot.xlsx, sheet \"Lot\", cell A4, column part: this is a heading once more, and no piece; "
                                + "found \"part\"; expected one heading and pieces under it; another table stands in a file or sheet of "
                                + "its own");
        assertThat(text("part,1,2\nS1,51.962,12.5\npart,1,2\nS2,51.962,12.5\n").rows())
                .isEqualTo(new RowCounts(3, 2, 1, 0));
    }

    @ParameterizedTest
    @CsvSource({
        "part\u00A0|2, S1|12.51",
        "part|2, S1\u00A0|12.51",
        "part|' 2\u202F, \u2007S1|'\u00A012.51\u00A0",
        "part|2, S1 |'12.51 "
    })
    void spaceAroundATextThatNobodySees_isNotPartOfIt(String heading, String row) {
        String readHeading = heading.translateEscapes();
        Intake intake = sheet(readHeading, row.translateEscapes());
        assertThat(intake.recordOrRefuse().parts()).singleElement().satisfies(part -> {
            assertThat(part.serial()).isEqualTo("S1");
            assertThat(part.sizeOf("2").orElseThrow().value()).isEqualByComparingTo("12.51");
        });
    }

    @Test
    void inATextToo_spaceThatHoldsALineTogether_isOnlySpace() {
        Intake intake = text("part\u00A0;2\u00A0\nS1\u00A0;\u00A012,51\n\u00A0;\u00A0\n");
        assertThat(intake.rows()).isEqualTo(new RowCounts(2, 1, 0, 1));
        assertThat(intake.recordOrRefuse().parts().get(0).serial()).isEqualTo("S1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"Comment", "comments", "Remark", "REMARKS", "note"})
    void aColumnOfComments_isTheNote(String name) {
        Intake intake = sheet("part|2|" + name, "S1|12.51|burr taken off");
        assertThat(FirstReading.context(intake, "2").note()).contains("burr taken off");
    }

    @Test
    void aNoteBesideComments_isTheNote_andTheOthersAreNamed() {
        Intake intake = sheet("part|2|Comment|note|Remark", "S1|12.51|one|two|three");
        assertThat(FirstReading.context(intake, "2").note()).contains("two");
        assertThat(intake.notices())
                .extracting(Notice::line)
                .contains(
                        "lot.xlsx, sheet \"Lot\", cell C1: \"Comment\" is not understood and was not used",
                        "lot.xlsx, sheet \"Lot\", cell E1: \"Remark\" is not understood and was not used");
    }

    @Test
    void germanNames_areAnsweredWithThoseThatAreMeant() {
        assertThat(sheet("Seriennummer|Merkmal|Messwert", "S1|'2|12.51")
                        .refused()
                        .lines())
                .containsExactly(
                        "lot.xlsx, sheet \"Lot\", cell A1: found \"Seriennummer\"; expected \"part\"",
                        "lot.xlsx, sheet \"Lot\", cell B1: found \"Merkmal\"; expected \"characteristic\"",
                        "lot.xlsx, sheet \"Lot\", cell C1: found \"Messwert\"; expected \"value\"");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                // units in a row under the head
                "|mm|mm; cell A2, column part: found nothing",
                // two tables side by side, of which the second has no names
                "S1|12.51|51.96||S2|12.5; cell E2: the column has no name",
                // a number with its unit, about so much, less than, a mark behind it
                "S1|'12.51 mm; cell B2, column 2: there is more after the number",
                "S1|'ca. 12.5; cell B2, column 2: found \"ca. 12.5\"",
                "S1|'<12.5; cell B2, column 2: found \"<12.5\"",
                "S1|'12.5*; cell B2, column 2: found \"12.5*\"",
                "S1|'-; cell B2, column 2: found \"-\"",
                "S1|'n/a; cell B2, column 2: found \"n/a\""
            })
    void whatIsNotRead_isRefusedWithSheetAndCell(String row, String message) {
        Intake intake = sheet("part|2|1", row);
        assertThat(intake.rows().used()).isZero();
        assertThat(intake.refused().lines().get(0)).startsWith("lot.xlsx, sheet \"Lot\", " + message);
    }
}
