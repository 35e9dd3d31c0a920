package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Readings that can be used, in both formats, and what becomes of their order. */
class ReadingFilesTest {
    private static final ResolvedPlan PLAN = plan();

    private static ResolvedPlan plan() {
        InputStream stream = Objects.requireNonNull(ReadingFilesTest.class.getResourceAsStream("/intake/plan.json"));
        return PlanFile.read(Input.stream("plan.json", stream)).resolve();
    }

    private static Intake read(String... texts) {
        List<Input> inputs = Arrays.stream(texts)
                .map(text -> Input.text(text.startsWith("{") || text.startsWith("[") ? "r.json" : "r.csv", text))
                .toList();
        return ReadingFiles.readInputs(PLAN, inputs);
    }

    private static List<String> valuesOf(Intake intake, String part) {
        return intake.recordOrRefuse().parts().stream()
                .filter(each -> each.serial().equals(part))
                .flatMap(each -> each.readings().values().stream())
                .flatMap(List::stream)
                .map(ReadingFilesTest::written)
                .toList();
    }

    private static String written(Reading reading) {
        if (reading instanceof Reading.Measured measured) {
            return reading.characteristic() + "=" + measured.value().toPlainString() + " "
                    + measured.unit().word();
        }
        return reading.characteristic() + "=" + (((Reading.Observed) reading).pass() ? "pass" : "fail");
    }

    @Test
    void longCsv_keepsTrailingZerosAndTheOrderOfRows() {
        Intake intake = read("part,characteristic,value\nS2,2,12.500\nS1,1,51.9700\nS2,9,ok\n");

        InspectionRecord record = intake.recordOrRefuse();
        assertThat(record.parts()).extracting(PartRecord::serial).containsExactly("S2", "S1");
        assertThat(valuesOf(intake, "S2")).containsExactly("2=12.500 mm", "9=pass");
        assertThat(valuesOf(intake, "S1")).containsExactly("1=51.9700 mm");
    }

    @Test
    void wideCsv_anEmptyCellIsNoReading() {
        Intake intake = read("9,PART,2,1\npass,S1,12.51,51.96\nfail,S2,,51.97\n");

        assertThat(valuesOf(intake, "S1")).containsExactly("9=pass", "2=12.51 mm", "1=51.96 mm");
        assertThat(valuesOf(intake, "S2")).containsExactly("9=fail", "1=51.97 mm");
    }

    @Test
    void unitOfARow_isKept() {
        Intake intake = read("part,characteristic,value,unit\nS1,2,.4921,inch\nS1,7,0.7,um\nS2,2,12510,µm\n");

        assertThat(valuesOf(intake, "S1")).containsExactly("2=0.4921 inch", "7=0.7 µm");
        assertThat(valuesOf(intake, "S2")).containsExactly("2=12510 µm");
    }

    @Test
    void timesOnAllRows_makeTheOrderOfProductionAcrossFiles() {
        Intake intake = read(
                "part,characteristic,value,time\nS1,2,12.5,2026-11-20T08:30\n",
                "timestamp,part,characteristic,value\n2026-11-20 07:30:15,S2,2,12.49\n");

        assertThat(intake.recordOrRefuse().parts())
                .extracting(PartRecord::serial)
                .containsExactly("S2", "S1");
    }

    @Test
    void timesWithOffsets_areTakenToUtc() {
        Intake intake = read("""
                part,characteristic,value,time
                S1,2,12.5,2026-11-20T08:30+01:00
                S2,2,12.5,2026-11-20T08:00Z
                S3,2,12.5,2026-11-20T02:00:00.5-05:00
                """);

        assertThat(intake.recordOrRefuse().parts())
                .extracting(PartRecord::serial)
                .containsExactly("S3", "S1", "S2");
    }

    @Test
    void contextOfARow_isKept() {
        Intake intake = read("""
                part,characteristic,value,operator,gauge,machine,subgroup,setting,note,tool,phase,offset
                S1,2,12.5,A. Quill,MIC-1,lathe 2,4,low,"first, after change",T3,after,-0.005
                """);

        Reading.Context context =
                intake.recordOrRefuse().parts().get(0).of("2").get(0).context();
        assertThat(context.operator()).contains("A. Quill");
        assertThat(context.gauge()).contains("MIC-1");
        assertThat(context.machine()).contains("lathe 2");
        assertThat(context.subgroup()).contains("4");
        assertThat(context.setting()).contains("low");
        assertThat(context.note()).contains("first, after change");
        assertThat(context.production().tool()).contains("T3");
        assertThat(context.production().phase()).contains("after");
        assertThat(context.production().offset()).contains(new BigDecimal("-0.005"));
        assertThat(context.origin()).isEqualTo(new Reading.Origin("r.csv", 2));
    }

    @Test
    void json_objectsWithOneOrManyValues() {
        Intake intake = read("""
                {"operator": "A. Quill", "readings": [
                  {"part": "S1", "characteristic": 1, "value": 51.9700},
                  {"part": "S1", "2": "12.50", "9": "pass", "7": null},
                  {"part": 7, "characteristic": "2", "value": 1.25e1, "unit": "mm"}]}
                """);

        assertThat(valuesOf(intake, "S1")).containsExactly("1=51.9700 mm", "2=12.50 mm", "9=pass");
        assertThat(valuesOf(intake, "7")).containsExactly("2=12.5 mm");
        assertThat(intake.parts().get(0).of("1").get(0).context().operator()).contains("A. Quill");
    }

    @Test
    void aPieceMayGoOnInTheNextFile_butNotRepeatItself() {
        Intake intake = read("part,characteristic,value\nS1,2,12.5\n", "[{\"part\": \"S1\", \"1\": 51.96}]");
        assertThat(valuesOf(intake, "S1")).containsExactly("2=12.5 mm", "1=51.96 mm");

        Intake doubled = read("part,characteristic,value\nS1,2,12.5\n", "[{\"part\": \"S1\", \"2\": 12.5}]");
        assertThat(doubled.refused().lines())
                .containsExactly("r.json:1:22, 2: part S1, characteristic 2 was already read in r.csv:2; "
                        + "expected one reading of it, or \"repeated\": true in the plan");
    }

    @Test
    void goodRowsStandBesideRefusedOnes_andTheRecordIsRefused() {
        Intake intake = read("part,characteristic,value\nS1,2,12.5\nS1,1,forty\n");

        assertThat(intake.recordOfTheGoodRows().readingCount()).isEqualTo(1);
        assertThat(intake.recordOfTheGoodRows().refusedRows()).isEqualTo(1);
        assertThat(intake.rows()).isEqualTo(new RowCounts(2, 1, 1, 0));
        InputRefused refused = catchThrowableOfType(InputRefused.class, intake::recordOrRefuse);
        assertThat(refused.lines())
                .containsExactly("r.csv:3, column value: found \"forty\"; expected a decimal number such as 12.5");
    }

    @Test
    void units_ofAWideRowSpeakOfTheDrawingsLengthsOnly() {
        Intake intake = read("part,2,7,unit\nS1,0.4921,0.7,inch\n");
        assertThat(intake.refused().lines())
                .containsExactly("r.csv:2, column 7: whether the unit inch of the row holds for characteristic 7 too, "
                        + "which the plan has in µm, is not known; expected a reading of its own with its unit");

        assertThat(valuesOf(read("part,2,7,unit\nS1,12.5,0.7,mm\n"), "S1")).containsExactly("2=12.5 mm", "7=0.7 µm");
    }

    @Test
    void filesOfBothFormats_areReadToTheirEndAndClosed(@TempDir Path folder) throws IOException {
        Path csv = Files.writeString(folder.resolve("a.csv"), "\uFEFFpart,2\r\nS1,12.5\r\n");
        Path json = Files.writeString(folder.resolve("b.txt"), "[{\"part\": \"S2\", \"2\": 12.5}]\n");

        Intake intake = ReadingFiles.read(PLAN, List.of(csv, json));

        assertThat(intake.recordOrRefuse().parts())
                .extracting(PartRecord::serial)
                .containsExactly("S1", "S2");
        assertThat(intake.files())
                .extracting(Intake.ReadFile::format)
                .containsExactly(ReadingFormat.CSV, ReadingFormat.JSON);
    }

    @Test
    void aPlanWithoutGauges_takesAnyGaugeWithANotice() {
        ResolvedPlan bare = PlanFile.read(Input.text("p.json", """
                        {"schema": "firstoff-plan-1", "part": {"number": "HQ-900-P", "revision": "A"}, "unit": "mm",
                         "characteristics": [{"number": 2, "feature": "face", "requirement": "12.5 ±0.1"}]}
                        """)).resolve();

        Intake intake = ReadingFiles.readInputs(
                bare, List.of(Input.text("r.csv", "part,2,gauge\nS1,12.5,MIC-7\nS2,12.5,MIC-8\n")));

        assertThat(intake.recordOrRefuse().readingCount()).isEqualTo(2);
        assertThat(intake.notices())
                .extracting(Notice::line)
                .containsExactly("r.csv:2, column gauge: the plan lists no gauges, so nothing is known of gauge MIC-7 "
                        + "or any other that the file names");
    }

    @Test
    void unknownColumns_areNoticed() {
        assertThat(read("part,2,shift\nS1,12.5,late\n").notices())
                .extracting(Notice::line)
                .containsExactly("r.csv:1, column 3: \"shift\" is not understood and was not used");
        assertThat(
                        read("[{\"part\": \"S1\", \"2\": 12.5, \"shift\": 1}, {\"part\": \"S2\", \"2\": 12.5, \"shift\": 2}]")
                                .notices())
                .hasSize(1);
    }

    @Test
    void emptyColumnsAndRowsOfASpreadsheet_doNotMatter() {
        Intake intake = read("part,2,,\nS1,12.5,,\n,,,\n\nS2,12.4,,\n,,,\n");

        assertThat(intake.recordOrRefuse().parts())
                .extracting(PartRecord::serial)
                .containsExactly("S1", "S2");
    }

    @Test
    void timesInOneFileOnly_leaveTheOrderOfFilesWithANotice() {
        Intake intake = read("part,2,time\nS2,12.5,2026-11-20T09:00\nS1,12.5,2026-11-20T08:00\n", "part,1\nS2,51.96\n");

        assertThat(intake.recordOrRefuse().parts())
                .extracting(PartRecord::serial)
                .containsExactly("S2", "S1");
        assertThat(intake.notices())
                .extracting(Notice::message)
                .containsExactly(
                        "it states no times and other files do, so production order is the order of files and rows");
    }

    @Test
    void repeatedReadings_areKeptInOrderWhereThePlanAllowsThem() {
        ResolvedPlan repeated = PlanFile.read(Input.text("p.json", """
                        {"schema": "firstoff-plan-1", "part": {"number": "HQ-900-P", "revision": "A"}, "unit": "mm",
                         "characteristics": [
                           {"number": "2", "feature": "face", "requirement": "12.5 ±0.1", "repeated": true},
                           {"number": "3", "feature": "pawl", "requirement": "function: pawl engages"}]}
                        """)).resolve();

        Intake intake = ReadingFiles.readInputs(
                repeated,
                List.of(
                        Input.text(
                                "r.csv",
                                "part,characteristic,value,setting\nS1,2,12.50,\nS1,2,12.51,\nS1,3,pass,low\nS1,3,fail,high\n")));

        assertThat(valuesOf(intake, "S1")).containsExactly("2=12.50 mm", "2=12.51 mm", "3=pass", "3=fail");
    }

    @Test
    void partNumberAndHandOfThePlan_areAcceptedInEitherVocabulary() {
        assertThat(read("part number,revision,hand,part,2\nHQ-310-P,C,left,S1,12.5\n")
                        .refused()
                        .isEmpty())
                .isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Part number: HQ-311-P",
                "\"Part number\",\"HQ-311-P\"",
                "Part no., ,HQ-311-P",
                "P/N HQ-311-P",
                "Part: HQ-311-P",
                "Teilenummer;HQ-311-P",
                "printed for HQ-310-S",
                "Rev. B",
                "Hand: starboard",
                "Drawing no. HQ-311"
            })
    void aLineBeforeTheHeading_thatSpeaksOfAnotherPart_isRefused(String line) {
        assertThat(read("Machine 4\n\n" + line + "\npart,2\nS1,12.5\n")
                        .refused()
                        .lines())
                .singleElement()
                .asString()
                .startsWith("r.csv:3: the readings are ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Part number: HQ-310-P Revision: C",
                "\"Part number\",\"HQ-310-P\",\"Revision\",\"C\"",
                "Part number:,Revision:,C",
                "Part: S001",
                "Part name: carrier",
                "Drawing HQ-310 sheet 2",
                "Hand: port",
                "Review of partners, 4 parts noted"
            })
    void aLineBeforeTheHeading_thatSpeaksOfThisPart_orOfNone_isOnlyNamed(String line) {
        Intake intake = read(line + "\npart,2\nS1,12.5\n");
        assertThat(intake.refused().lines()).isEmpty();
        assertThat(intake.notices().get(0).line()).startsWith("r.csv: line 1 stands before the heading");
    }

    @ParameterizedTest
    @ValueSource(strings = {"Mean", "nominal", "Upper tol.", "Std. Dev", "USL", "Max", "Cpk", "+Tol"})
    void aRowThatSpeaksOfItsColumns_isNoPiece(String name) {
        assertThat(read("part,2\nS1,12.5\n" + name + ",12.5\n").refused().lines())
                .singleElement()
                .asString()
                .startsWith("r.csv:3, column part: this names no piece");
        assertThat(read("part,2\nS1,12.5\n" + name + " 1,12.5\n").refused().isEmpty())
                .isTrue();
    }

    @Test
    void aBrokenSecondLine_doesNotMakeAnotherFormatOfJsonLines() {
        Intake intake = read("{\"part\": \"S1\", \"2\": 12.5}\n{\"part\": \"S2\", \"2\":\n");
        assertThat(intake.refused().lines()).singleElement().asString().startsWith("r.json:2:");
        assertThat(intake.rows().used()).isEqualTo(1);
    }

    @Test
    void manyFaults_areCountedAndFewArePrinted() {
        StringBuilder text = new StringBuilder("part,characteristic,value\n");
        for (int i = 0; i < 100; i++) {
            text.append("S1,unknown ").append(i).append(",1\n");
        }

        Intake intake = read(text.toString());

        assertThat(intake.refused().count()).isEqualTo(100);
        assertThat(intake.refused().lines()).hasSize(21);
        assertThat(intake.refused().lines().get(20)).isEqualTo("and 80 more faults");
    }

    @Test
    void digestOfAFile_isThatOfItsBytes() {
        // From coreutils: printf 'part,characteristic,value\nS1,2,12.5\n' | sha256sum
        assertThat(read("part,characteristic,value\nS1,2,12.5\n").files().get(0).sha256())
                .isEqualTo("f06308f606346badbc20361713dfd2d8871a4b01b34b03dcc63aaa0642371c48");
    }
}
