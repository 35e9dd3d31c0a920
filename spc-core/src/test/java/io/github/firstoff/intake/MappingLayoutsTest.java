package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Proposals of a mapping for layouts that machines write, each made up: what is proposed must read its own example. */
class MappingLayoutsTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Input.text("plan.json", """
                    { "schema": "firstoff-plan-1",
                      "part": { "number": "HQ-900-P", "revision": "A", "hand": "port", "counterpart": "HQ-900-S" }, "unit": "mm",
                      "characteristics": [
                        { "number": "1", "feature": "bearing bore", "requirement": "Ø52 P7" },
                        { "number": "2", "feature": "flange thickness", "requirement": "12.5 ±0.05" },
                        { "number": "3", "feature": "hub length", "requirement": "40 ±0.2" },
                        { "number": "4", "feature": "bolt hole position", "requirement": "position Ø0.2 A" },
                        { "number": "5", "feature": "flank angle", "requirement": "30° ±0.5°" },
                        { "number": "6", "feature": "edges", "requirement": "visual: no burrs" } ] }
                    """)).resolve();

    private static MappingDraft draft(String text) {
        return MappingDraft.of(Input.text("export.txt", text), PLAN);
    }

    private static List<String> readings(MappingDraft draft) {
        return draft.entries().stream()
                .map(each -> each.line() + " " + each.part() + " "
                        + each.characteristic().number() + " " + each.value())
                .toList();
    }

    @Test
    void tabs_decimalCommas_andLabelsInFieldsOfTheirOwn() {
        MappingDraft draft = draft("""
                Messprotokoll|Station 3
                Teilenummer:|HQ-900-P|Index:|A
                Seriennummer:|S001
                Datum:|20.11.2026
                Prüfer:|A. Quill

                Merkmal|Bezeichnung|Nennmaß|OT|UT|Istmaß|Abw.|Einh.
                1|Lagerbohrung|52,000|-0,021|-0,051|51,962|-0,038|mm
                2|Flansch|12,500|0,050|-0,050|12,510|0,010|mm
                4|Position Bohrung|0,000|0,200||0,081|0,081|mm
                5|Flankenwinkel|30,000|0,500|-0,500|30,120|0,120|°
                Ende des Protokolls
                """.replace('|', '\t'));
        assertThat(draft.intake().refused().lines()).isEmpty();
        assertThat(readings(draft))
                .containsExactly(
                        "8 S001 1 51.962 mm", "9 S001 2 12.510 mm", "10 S001 4 0.081 mm", "11 S001 5 30.120 °");
        assertThat(draft.text())
                .contains(
                        "\"partNumber\": { \"label\": \"Teilenummer\" }",
                        "\"revision\": { \"label\": \"Index\" }",
                        "\"time\": { \"label\": \"Datum\", \"form\": \"dd.MM.yyyy\" }",
                        "\"operator\": { \"label\": \"Prüfer\" }",
                        "\"unit\": \"8\"",
                        "{ \"begins\": \"Merkmal\" }");
    }

    @Test
    void fixedColumns_withARunningNumberBeforeTheName() {
        String page = """
                ================================================================
                  STATION 7          PROGRAM HQ-900-P REV A
                  SERIAL: %s       DATE: 2026-11-20   OPERATOR: M. THORNE
                ================================================================
                  # FEATURE               ACTUAL   NOMINAL    +TOL    -TOL  STAT
                  1 BEARING BORE         51.9620   52.0000  -0.021  -0.051  OK
                  2 FLANGE THICKNESS     12.5030   12.5000   0.050  -0.050  OK
                  3 HUB LENGTH           40.0200   40.0000   0.200  -0.200  OK
                  END OF PART %s
                """;
        MappingDraft draft = draft(page.formatted("S001", "1") + page.formatted("S002", "2"));
        assertThat(draft.intake().refused().lines()).isEmpty();
        assertThat(readings(draft))
                .containsExactly(
                        "6 S001 1 51.9620 mm",
                        "7 S001 2 12.5030 mm",
                        "8 S001 3 40.0200 mm",
                        "15 S002 1 51.9620 mm",
                        "16 S002 2 12.5030 mm",
                        "17 S002 3 40.0200 mm");
        assertThat(draft.text())
                .contains("\"upperTolerance\"", "\"lowerTolerance\"", "{ \"begins\": \"END OF PART\" }");
    }

    @Test
    void blocksOfLabelledLines_withALabelThatTellsNothing() {
        String block = """
                Feature: %s
                  Nominal: %s
                  Upper limit: %s
                  Lower limit: %s
                  Actual: %s
                  Result: IN

                """;
        MappingDraft draft = draft("REPORT 5512\nPart number: HQ-900-P\n\nPiece: S001\nmeasured at 2026-11-20 10:00\n\n"
                + block.formatted("bearing bore", "52.000", "51.979", "51.949", "51.961")
                + block.formatted("hub length", "40.000", "40.200", "39.800", "40.013"));
        assertThat(draft.intake().refused().lines()).isEmpty();
        assertThat(readings(draft)).containsExactly("7 S001 1 51.961 mm", "14 S001 3 40.013 mm");
        assertThat(draft.text())
                .contains(
                        "{ \"begins\": \"REPORT\" }",
                        "{ \"begins\": \"measured at\" }",
                        "{ \"begins\": \"Result:\" }",
                        "\"upperLimit\": \"Upper limit\"");
    }

    @Test
    void aTableOfForeignHeadings_whichNamesThePieceInEveryRow() {
        MappingDraft draft = draft("""
                Exported by station 4;;;;;
                Werkstück;Merkmal;Sollwert;Istwert;Einheit;Prüfer
                S001;Lagerbohrung;52,0000;51,9620;mm;A. Quill
                S001;Flansch;12,5000;12,5130;mm;A. Quill
                S002;Lagerbohrung;52,0000;51,9640;mm;A. Quill
                S002;Flansch;12,5000;12,5030;mm;A. Quill
                """);
        assertThat(draft.intake().refused().lines()).isEmpty();
        assertThat(readings(draft))
                .containsExactly(
                        "3 S001 1 51.9620 mm", "4 S001 2 12.5130 mm", "5 S002 1 51.9640 mm", "6 S002 2 12.5030 mm");
        assertThat(draft.text()).contains("\"part\": \"1\"", "\"unit\": \"5\"", "\"operator\": \"6\"");
    }

    @Test
    void labelsInFieldsOfDelimitedLines_areReadUpToWhatPartsThem() {
        MappingDraft draft = draft("""
                Part number,HQ-900-P,Revision,A
                Serial,S001,Operator,A. Quill
                Date,2026-11-20 08:15
                No,Description,Min,Max,Actual,Result
                1,Bearing bore,51.949,51.979,51.962,PASS
                2,Flange thickness,12.45,12.55,12.513,PASS
                5,Flank angle,29.5,30.5,30.13,PASS
                """);
        assertThat(draft.intake().refused().lines()).isEmpty();
        assertThat(readings(draft)).containsExactly("5 S001 1 51.962 mm", "6 S001 2 12.513 mm", "7 S001 5 30.13 °");
        assertThat(draft.text()).contains("\"upperLimit\": \"4\"", "\"lowerLimit\": \"3\"", "\"label\": \"Operator\"");
        assertThat(draft.saysPiece()).isTrue();
    }

    @Test
    void aColumnThatSaysTheSameInEveryRow_isNoName_andAPieceThatIsNotFoundIsSaid() {
        MappingDraft draft = draft("""
                S;S001;20.11.2026 08:01
                M;K1;52,0000;51,9620
                M;K2;12,5000;12,5130
                M;K3;40,0000;40,0300
                """);
        assertThat(draft.text()).contains("\"K1\": \"1\"", "\"K2\": \"2\"", "\"K3\": \"3\"");
        assertThat(draft.saysPiece()).isFalse();
        assertThat(draft.isComplete()).isFalse();
        assertThat(draft.intake().rows()).isEqualTo(new RowCounts(3, 0, 3, 0));
    }

    @Test
    void serialNumbersThatEndInNumbersOfThePlan_areNoNames() {
        MappingDraft draft = draft("""
                S001;alpha;52.0000;51.9620
                S001;beta;12.5000;12.5130
                S002;alpha;52.0000;51.9640
                S002;beta;12.5000;12.5030
                """);
        assertThat(draft.text()).contains("\"alpha\": \"1\"", "\"beta\": \"2\"").doesNotContain("\"S001\"");
    }
}
