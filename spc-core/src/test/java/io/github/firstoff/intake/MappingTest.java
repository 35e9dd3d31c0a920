package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.ResolvedPlan;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What mappings make of lines, and what they refuse. */
class MappingTest {
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();
    private static final String COLUMNS = """
            { "schema": "firstoff-mapping-1", "layout": "delimited", "delimiter": "semicolon",
              "part": { "label": "Piece" }, "time": { "label": "At", "form": "d.M.yyyy HH:mm" },
              "partNumber": { "label": "Part" }, "piece": { "begins": "***" }, "unit": "mm",
              "rows": { "name": [1, 2], "nominal": 3, "upperTolerance": 4, "lowerTolerance": 5, "actual": 6 },
              "names": { "BORE D": "1", "FLANGE T": "2", "FACE RA": "7", "EDGES": "9" },
              "notInPlan": ["DATUM A"],
              "skip": [ { "begins": "---" }, { "contains": "page" } ] }
            """;

    private static Intake read(String mapping, String text) {
        return ReadingFiles.readInputs(
                PLAN,
                List.of(Input.text("cell.txt", text)),
                IntakeSettings.USUAL.withMapping(Mapping.read(Input.text("mapping.json", mapping))));
    }

    private static List<String> values(Intake intake) {
        List<String> values = new ArrayList<>();
        for (PartRecord part : intake.recordOrRefuse().parts()) {
            part.readings()
                    .values()
                    .forEach(list -> list.forEach(reading -> values.add(part.serial() + " "
                            + reading.characteristic() + " "
                            + (reading instanceof Reading.Measured measured
                                    ? measured.value().toPlainString()
                                            + measured.unit().symbol()
                                    : String.valueOf(((Reading.Observed) reading).pass())))));
        }
        return values;
    }

    @Test
    void headsHoldForTheRowsBelow_untilThePieceEnds() {
        Intake intake = read(COLUMNS, """
                *** report, page 1
                Part HQ-310-P   Piece: S001   At 20.11.2026 08:15
                BORE;D;52.000;-0.021;-0.051;51.9620
                FLANGE;T;12.5;0.05;-0.05;12.512
                FACE;RA;;;;0.62
                EDGES;;;;;i.O.
                DATUM;A;0;;;0.003
                --- end

                *** report
                Piece: S002   At 3.12.2026 09:00
                FLANGE;T;12.5;0.05;-0.05;12.498
                """);
        assertThat(values(intake))
                .containsExactlyInAnyOrder(
                        "S001 1 51.9620mm", "S001 2 12.512mm", "S001 7 0.62µm", "S001 9 true", "S002 2 12.498mm");
        assertThat(intake.rows()).isEqualTo(new RowCounts(6, 5, 0, 1));
        assertThat(intake.recordOrRefuse()
                        .parts()
                        .get(1)
                        .readings()
                        .get("2")
                        .get(0)
                        .context()
                        .time())
                .contains(LocalDateTime.of(2026, 12, 3, 9, 0));
        assertThat(intake.notices())
                .extracting(Notice::line)
                .containsExactly(
                        "cell.txt: 1 line was skipped because the mapping skips lines that contain \"page\" (line 1)",
                        "cell.txt: 1 line was skipped because the mapping skips lines that begin with \"---\" (line 8)",
                        "cell.txt: \"DATUM A\" is not of the plan, as the mapping says, and was not used (line 7)",
                        "cell.txt: 1 row holds no reading (line 7)");
    }

    @Test
    void aPieceWithoutItsOwnSerialNumber_doesNotTakeThatOfTheOneBefore() {
        Intake intake = read(COLUMNS, """
                Piece: S001
                FLANGE;T;12.5;0.05;-0.05;12.512
                *** next
                FLANGE;T;12.5;0.05;-0.05;12.498
                """);
        assertThat(intake.refused().lines())
                .containsExactly("cell.txt:4, part: found nothing; expected the serial number or name of the piece");
    }

    @Test
    void nominalAndLimitsThatAreNotThePlans_areRefused_namingBoth() {
        Intake intake = read(COLUMNS, """
                Piece: S001
                BORE;D;52.1;-0.021;-0.051;51.9620
                FLANGE;T;12.5;0.06;-0.05;12.512
                """);
        assertThat(intake.refused().lines())
                .containsExactly(
                        "cell.txt:2, nominal: the nominal of characteristic 1 is not that of the plan (Ø52 -0.021/-0.051); "
                                + "found 52.1 mm; expected 52 mm",
                        "cell.txt:2, upperTolerance: the upper limit of characteristic 1 is not that of the plan "
                                + "(Ø52 -0.021/-0.051); found 52.079 mm; expected 51.979 mm",
                        "cell.txt:2, lowerTolerance: the lower limit of characteristic 1 is not that of the plan "
                                + "(Ø52 -0.021/-0.051); found 52.049 mm; expected 51.949 mm",
                        "cell.txt:3, upperTolerance: the upper limit of characteristic 2 is not that of the plan "
                                + "(12.5 ±0.05); found 12.56 mm; expected 12.55 mm");
        assertThat(intake.rows()).isEqualTo(new RowCounts(2, 0, 2, 0));
    }

    @Test
    void nominalsAreHeldAgainstThePlan_alsoWhereTheMappingStatesNoUnit() {
        String mapping = COLUMNS.replace("\"unit\": \"mm\",", "");
        assertThat(read(mapping, "Piece: S1\nFLANGE;T;12.6;;;12.5\n").refused().lines())
                .containsExactly("cell.txt:2, nominal: the nominal of characteristic 2 is not that of the plan "
                        + "(12.5 ±0.05); found 12.6 mm; expected 12.5 mm");
    }

    @Test
    void limitsInInches_areHeldAgainstMillimetresExactly() {
        String inches = COLUMNS.replace("\"unit\": \"mm\"", "\"unit\": \"inch\"");
        // 12.5 mm is 0.4921259842519685… inch: no finite decimal, so an inch export of it contradicts the plan.
        assertThat(read(inches, "Piece: S1\nFLANGE;T;0.4921;;;0.4921\n")
                        .refused()
                        .lines())
                .containsExactly("cell.txt:2, nominal: the nominal of characteristic 2 is not that of the plan "
                        + "(12.5 ±0.05); found 0.4921 in; expected 12.5 mm");
        assertThat(values(read(inches, "Piece: S1\nFLANGE;T;;;;0.4921\n"))).containsExactly("S1 2 0.4921in");
    }

    @Test
    void linesThatNothingExplains_areRefusedNotDropped() {
        Intake intake = read(COLUMNS, """
                Piece: S001
                FLANGE;T;12.5;0.05;-0.05;12.512
                probe changed
                FLANGE;X;12.5;0.05;-0.05;12.512
                FLANGE;T;12.5;0.05;-0.05;
                """);
        assertThat(intake.refused().lines())
                .containsExactly(
                        "cell.txt:3: the mapping does not say what this line is; found \"probe changed\"; expected a row with "
                                + "a name and a value, a label of the mapping, or an entry under \"skip\"",
                        "cell.txt:4, name: neither the plan nor the mapping has such a name; perhaps \"FLANGE T\" is meant; "
                                + "found \"FLANGE X\"; expected a name under \"names\", or under \"notInPlan\"",
                        "cell.txt:5, actual: found nothing; expected a value, or no row for what was not measured");
    }

    @Test
    void readingsOfTheOtherHand_areRefused_alsoInALineThatIsSkipped() {
        assertThat(read(COLUMNS, "Part HQ-310-S   Piece: S1\nFLANGE;T;;;;12.5\n")
                        .refused()
                        .lines())
                .containsExactly("cell.txt:1:6, part number: the readings are of the part of the other hand; "
                        + "found \"HQ-310-S\"; expected \"HQ-310-P\"");
        assertThat(read(COLUMNS, "--- HQ-310-S\nPiece: S1\nFLANGE;T;;;;12.5\n")
                        .refused()
                        .lines())
                .containsExactly("cell.txt:1: the readings are of the part of the other hand; found \"HQ-310-S\"; "
                        + "expected \"HQ-310-P\"");
    }

    @Test
    void aTimeOfAnotherForm_isRefused() {
        assertThat(read(COLUMNS, "Piece: S1  At 11/20/2026\nFLANGE;T;;;;12.5\n")
                        .refused()
                        .lines())
                .containsExactly(
                        "cell.txt:1:15, time: found \"11/20/2026\"; expected a date and time as ISO 8601 writes "
                                + "them, such as 2026-11-20T08:15:30 or 2026-11-20T08:15:30+01:00");
    }

    @Test
    void somethingByItsLineAndCharacters_isFoundInEachPiece() {
        String mapping = """
                { "schema": "firstoff-mapping-1", "layout": "columns", "decimalMark": "comma",
                  "piece": { "begins": "PIECE" }, "part": { "line": 2, "from": 4, "to": 7 },
                  "rows": { "name": "1-8", "tolerance": "9-14", "nominal": "15-22", "actual": "23-40" },
                  "prefix": "No." }
                """;
        Intake intake = read(mapping, """
                PIECE
                id S001  left
                No.002  0,05  12,5    12,512
                PIECE
                id S002  left
                No.002  0,05  12,5    12,498
                """);
        assertThat(values(intake)).containsExactly("S001 2 12.512mm", "S002 2 12.498mm");
    }

    @Test
    void everyFaultOfAMapping_isNamedAtOnce() {
        String mapping = """
                { "schema": "firstoff-mapping-1", "layout": "delimited",
                  "part": { "line": 2, "label": "Piece" }, "time": { "label": "At", "form": "dd.MMM.yy" },
                  "unit": "degree", "skip": [ {} ], "namess": {},
                  "rows": { "name": "1-8", "tolerance": 2, "upperTolerance": 3 } }
                """;
        InputRefused refused =
                catchThrowableOfType(InputRefused.class, () -> Mapping.read(Input.text("mapping.json", mapping)));
        assertThat(refused.faults())
                .extracting(Fault::line)
                .containsExactly(
                        "mapping.json:1:1: \"delimiter\" is missing; expected semicolon, comma, tab, bar or spaces",
                        "mapping.json:2:33, part, label: there is a label and a line; expected a label, or a line with from and to",
                        "mapping.json:2:77, time, form: found \"dd.MMM.yy\"; expected yyyy, MM, dd and perhaps HH, mm and ss "
                                + "with what stands between them, such as dd.MM.yyyy HH:mm",
                        "mapping.json:3:11, unit: found \"degree\"; expected mm or inch",
                        "mapping.json:3:31, skip, entry 1, begins: a line is known by one of the two; expected begins, or contains",
                        "mapping.json:3:37: found the key \"namess\"; expected \"names\"",
                        "mapping.json:4:11, rows: \"actual\" is missing; expected where it stands",
                        "mapping.json:4:21, rows, name: found \"1-8\"; expected the number of a column, such as 2",
                        "mapping.json:4:41, rows, tolerance: one tolerance to either side, and one for each side; expected "
                                + "tolerance, or upperTolerance and lowerTolerance");
    }

    @Test
    void aLineTakesNoMoreTimeThanItsLength() {
        String line = "a ".repeat(400_000);
        String labels = COLUMNS.replace("\"Piece\"", "\"" + "a ".repeat(900) + "b\"");
        long from = System.nanoTime();
        read(labels, line + "\n" + line + "\n");
        assertThat(System.nanoTime() - from).isLessThan(20_000_000_000L);
    }

    @Test
    void aProposal_isMadeFromColumns_andSaysWhatItCouldNotMatch() {
        String cell = """
                Part HQ-310-P   Rev C   Piece S001   Measured 20.11.2026 08:15   By A. Quill
                Element              Set      Over     Under     Found      Off   Where
                ----------------------------------------------------------------------
                Bearing bore      52,000    -0,021    -0,051   51,9620   -0,0380  --*--
                Flange            12,500     0,050    -0,050   12,5120    0,0120  --*--
                Bolt hole          6,600     0,220     0,000    6,7010    0,1010  -*---
                Edges                                           i.O.
                Datum A            0,000                        0,0031    0,0031
                """;
        MappingDraft draft = MappingDraft.of(Input.text("cell.txt", cell), PLAN);
        assertThat(draft.entries())
                .extracting(each -> each.line() + " " + each.part() + " " + each.name() + " > "
                        + each.characteristic().number() + " " + each.value() + " by " + each.matchedBy())
                .containsExactly(
                        "4 S001 Bearing bore > 1 51.9620 mm by the nominal",
                        "5 S001 Flange > 2 12.5120 mm by the nominal",
                        "6 S001 Bolt hole > 4 6.7010 mm by the nominal",
                        "7 S001 Edges > 9 pass by words of the feature");
        assertThat(draft.unmatchedNames()).containsExactly("Datum A");
        assertThat(draft.notFound()).extracting(each -> each.number()).containsExactly("3", "7");
        assertThat(draft.isComplete()).isFalse();
        assertThat(draft.intake().rows()).isEqualTo(new RowCounts(5, 4, 1, 0));
        Mapping mapping = Mapping.read(Input.text("mapping.json", draft.text()));
        assertThat(mapping.rows().keySet())
                .containsExactly(
                        Mapping.Item.NAME,
                        Mapping.Item.ACTUAL,
                        Mapping.Item.NOMINAL,
                        Mapping.Item.UPPER_TOLERANCE,
                        Mapping.Item.LOWER_TOLERANCE);
    }

    @Test
    void ofNominalsThatAreAlike_theToleranceDecides_andOtherwiseNothingIsMatched() {
        ResolvedPlan plan = PlanFile.read(Input.text("p", """
                        {"schema": "firstoff-plan-1", "part": {"number": "HQ-1", "revision": "A"}, "unit": "mm",
                         "characteristics": [
                          {"number": "1", "feature": "north", "requirement": "12.5 ±0.05"},
                          {"number": "2", "feature": "south", "requirement": "12.5 ±0.1"},
                          {"number": "3", "feature": "east", "requirement": "20 ±0.1"},
                          {"number": "4", "feature": "west", "requirement": "20 ±0.1"}]}
                        """)).resolve();
        MappingDraft draft = MappingDraft.of(Input.text("log.txt", """
                        serial: S1
                        name;nominal;tol;value
                        PLANE_P;12.5;0.1;12.51
                        PLANE_Q;12.5;0.05;12.49
                        PLANE_R;20;0.1;20.02
                        PLANE_T;20;0.1;19.98
                        """), plan);
        assertThat(draft.entries())
                .extracting(each -> each.name() + " " + each.characteristic().number() + " " + each.matchedBy())
                .containsExactly("PLANE_P 2 nominal and tolerance", "PLANE_Q 1 nominal and tolerance");
        assertThat(draft.unmatchedNames()).containsExactly("PLANE_R", "PLANE_T");
    }

    @Test
    void anExampleWithoutReadingsOfThePlan_isRefusedInWords() {
        InputRefused refused = catchThrowableOfType(
                InputRefused.class,
                () -> MappingDraft.of(Input.text("letter.txt", "Dear all,\nsee you at 8.\n"), PLAN));
        assertThat(refused.lines())
                .containsExactly(
                        "letter.txt: no line holds a value near one that the plan requires, beside a name; expected "
                                + "an export with readings of this part; a mapping can also be written by hand");
    }
}
