package io.github.firstoff.command;

import static io.github.firstoff.proof.Samples.runWith;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.firstoff.proof.Samples.Run;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guided entry through a pipe: what is asked, understood, questioned, kept and said. */
class MeasureTest {
    private static final String PLAN = """
            { "schema": "firstoff-plan-1",
              "part": { "number": "HQ-900-P", "name": "trial ring", "drawing": "HQ-900", "revision": "A", "hand": "port",
                        "counterpart": "HQ-900-S" },
              "unit": "mm",
              "temperature": { "expansion": "0.0000236", "expansionHalfWidth": "0.000001", "gaugeExpansion": "0.0000115" },
              "gauges": [ { "id": "MIC-1", "kind": "micrometer", "resolution": "0.001", "calibrationDue": "2001-10-31" },
                          { "id": "CMM-1", "kind": "coordinate measuring machine", "calibrationDue": "2099-12-31" } ],
              "characteristics": [
                { "number": "1", "feature": "bore", "requirement": "Ø52 P7", "gauge": "MIC-1" },
                { "number": "2", "feature": "hole", "requirement": "position Ø0.2 A B", "gauge": "CMM-1", "at": { "x": "10", "y": "-4" } },
                { "number": "3", "feature": "face", "requirement": "45° ±30'" },
                { "number": "4", "feature": "thread", "requirement": "M5x0.8-6H go/no-go", "settings": ["go end", "no-go end"] },
                { "number": "5", "feature": "wall", "requirement": "2 ±0.1", "repeated": true },
                { "number": "6", "feature": "pitch", "requirement": "[88]" } ] }
            """;

    private static final String ONE_PIECE = "51.962\n10.02 -4.01\n45d10m\npass\npass\n2.01\n2.02\n\n";

    @TempDir
    private Path folder;

    private Path plan;
    private Path out;

    @BeforeEach
    void writePlan() throws IOException {
        plan = Files.writeString(folder.resolve("plan.json"), PLAN);
        out = folder.resolve("readings.csv");
    }

    private Run measure(String keyed, String... more) {
        List<String> arguments = new ArrayList<>(List.of("measure", "--plan", plan.toString()));
        if (!List.of(more).contains("--out")) {
            arguments.addAll(List.of("--out", out.toString()));
        }
        arguments.addAll(List.of(more));
        return run(keyed, arguments);
    }

    private static Run run(String keyed, List<String> arguments) {
        return runWith(new ByteArrayInputStream(keyed.getBytes(StandardCharsets.UTF_8)), arguments.toArray());
    }

    /** What stands in one column, row by row. */
    private List<String> column(String name) throws IOException {
        List<String> lines = Files.readAllLines(out);
        int index = List.of(lines.get(0).split(",", -1)).indexOf(name);
        return lines.stream().skip(1).map(line -> line.split(",", -1)[index]).toList();
    }

    @Test
    void everyKindOfReading_isKept_andEveryCommandReadsTheFile() throws IOException {
        Run run = measure(ONE_PIECE, "--pieces", "A1", "--operator", "A. Quill");

        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("Accepted: 5 of 5 characteristics conform on 1 piece.")
                .contains("0 left to measure, 0 skipped");
        assertThat(column("value")).containsExactly("51.962", "", "45°10'", "pass", "pass", "2.01", "2.02");
        assertThat(column("x")).containsExactly("", "10.02", "", "", "", "", "");
        assertThat(column("setting")).containsExactly("", "", "", "go end", "no-go end", "", "");
        assertThat(column("gauge")).containsExactly("MIC-1", "CMM-1", "", "", "", "", "");
        assertThat(column("operator")).containsOnly("A. Quill");
        assertThat(column("part number")).containsOnly("HQ-900-P");
        Run sheet = run("", List.of("first-article", "--plan", plan.toString(), out.toString()));
        assertThat(sheet.out()).contains("Accepted: 5 of 5 characteristics conform on 1 piece.");
        assertThat(sheet.code()).isZero();
    }

    @Test
    void theVerdict_isSaidAtOnce_withItsSignAndItsAmount() {
        Run run = measure("51.980\n10.2\n-4.1\n45\nnot ok\n", "--pieces", "A1");
        assertThat(run.err())
                .contains(" 1  bore: Ø52 P7  (51.949 to 51.979 mm)  gauge MIC-1, micrometer\n")
                .contains("    note: the calibration of gauge MIC-1 was due on 2001-10-31\n")
                .contains("    ✗ over by 0.001 mm (+0.001)   51.949     │")
                .contains("  A1, 2, x in mm: 10.2\n  A1, 2, y in mm: -4.1\n")
                .contains("    ✗ over by 0.25 mm (+0.25)   0     │                ┊                │   ▸ 0.2\n")
                .contains("  A1, 4 at go end, pass or fail: not ok\n    ✗ failed\n");
        assertThat(run.code()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5.1962 | 5.1962 mm is far outside its limits; it looks like 51.962 instead of 5.1962.",
                "2.0457 | 2.0457 mm is far outside its limits; it looks like 2.0457 in, which is 51.96078 mm, or fits characteristic 5 (2 ±0.1).",
                "15.962 | 15.962 mm is far outside its limits; it looks like 51.962 instead of 15.962 (two digits exchanged).",
                "77.777 | 77.777 mm is very far outside its limits; check the reading.",
                "51,962 | 51,962 could mean 51.962 or 51962; confirm takes it as 51.962."
            })
    void whatLooksLikeASlip_isQuestioned_andOnlyKeptWhenConfirmed(String typed, String question) throws IOException {
        Run doubted = measure(typed + "\n", "--pieces", "A1");
        assertThat(doubted.err()).contains(question).contains("  confirm, or key it anew: ");
        assertThat(column("value")).isEmpty();

        measure(typed + "\n51.963\n");
        assertThat(column("value")).containsExactly("51.963");

        measure("undo\n" + typed + "\nconfirm\n");
        assertThat(column("value")).containsExactly(typed.replace(',', '.'));
        assertThat(column("note")).containsExactly(typed.contains(",") ? "" : "confirmed at entry");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "51.96.2 | expected a decimal number such as 12.5",
                "1e2 | a number with an exponent has perhaps been rounded",
                "51.962 kg | \"kg\" behind the number is no unit that is known here; expected mm, inch or µm",
                "51.962 ° | characteristic 1 is measured in mm",
                "pass | needs a value",
                "nan | nothing was measured that way",
                "5 1.962 | a gap among the digits"
            })
    void whatAFileCouldNotSay_isNotTaken(String typed, String why) throws IOException {
        Run run = measure(typed + "\n", "--pieces", "A1");
        assertThat(run.err()).contains("    Not taken: ").contains(why);
        assertThat(column("value")).isEmpty();
    }

    @Test
    void aUnitBehindTheNumber_goesToItsColumn_andTheValueStaysAsRead() throws IOException {
        measure("2.0457 in\nconfirm\n", "--pieces", "A1");
        assertThat(column("value")).containsExactly("2.0457");
        assertThat(column("unit")).containsExactly("inch");
    }

    @Test
    void aDecimalComma_isTakenWhereTheCommandLineSaysSo_andThePointIsThenInDoubt() throws IOException {
        Run run = measure("51,9620\n10,01\n-4.005\nconfirm\n", "--pieces", "A1", "--decimal-mark", "comma");
        assertThat(column("value")).containsExactly("51.9620", "");
        assertThat(column("y")).containsExactly("", "-4.005");
        assertThat(run.err()).contains("-4.005 could mean -4.005 or -4005");
    }

    @Test
    void undoSkipAgainAndRemark_standAfterAnotherStart() throws IOException {
        measure("51.962\nundo\n51.963\nskip\nremark a burr, small\n", "--pieces", "A1,A2");
        assertThat(column("value")).containsExactly("51.963");
        Run second = measure("45.1\nremark last at the \"edge\"\nagain\n");
        assertThat(second.err())
                .contains("The session goes on where it stood: 1 reading on 2 pieces.")
                .contains("Piece A1 (1 of 2)\n 3  face: 45° ±30'")
                .contains(" 2  hole: position Ø0.2 A B");
        assertThat(Files.readAllLines(out).get(2)).contains("\"at the \"\"edge\"\"\"");
        Run third = measure("undo\nundo\n");
        assertThat(third.err()).contains("Taken back: A1, 3, 45.1°.").contains("Taken back: A1, 1, 51.963 mm.");
        assertThat(Files.readAllLines(out)).hasSize(1);
    }

    @Test
    void whatTheCommandLineHasSaidOnce_standsAfterAnotherStart() throws IOException {
        Run first = measure(
                "51,962\n51,963\n10,01\n-4,01\n10,02\n-4,02\n45\n45\npass\npass\npass\npass\n2,01\n",
                "--pieces",
                "A1,A2",
                "--by",
                "characteristic",
                "--repeats",
                "2",
                "--decimal-mark",
                "comma",
                "--operator",
                "A. Quill");
        assertThat(first.err()).contains("  A1, 5, reading 2 in mm (Enter goes on): ");
        Run second = measure("2,02\n2,03\n2,04\n");
        assertThat(second.err())
                .contains("  One characteristic is asked for on all pieces, then the next.\n")
                .contains("  What is measured repeatedly ends with 2 readings.\n")
                .contains("  The comma is the decimal mark.\n")
                .contains("  The reading kept last was taken by A. Quill; those that follow name nobody,")
                .contains("  A1, 5, reading 2 in mm (Enter goes on): 2,02\n")
                .contains("  A2, 5, reading 1 in mm: 2,03\n")
                .contains("Everything is measured");
        assertThat(second.code()).as(second.out()).isZero();
        assertThat(column("value").subList(10, 14)).containsExactly("2.01", "2.02", "2.03", "2.04");
    }

    @Test
    void theSameOptionsAgain_areNotQuestioned() {
        String[] options = {
            "--pieces",
            "A1",
            "--by",
            "characteristic",
            "--repeats",
            "3",
            "--decimal-mark",
            "comma",
            "--operator",
            "A. Quill"
        };
        measure("51,962\n", options);
        assertThat(measure("", options).err())
                .doesNotContain("confirm, or stop")
                .doesNotContain("was taken by");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--by | characteristic | The session is by piece, and --by says characteristic.",
                "--repeats | 3 | ends with 2 readings, and --repeats says 3.",
                "--decimal-mark | comma | The session has the point as its decimal mark, and --decimal-mark says comma."
            })
    void anOptionThatContradictsTheSession_isQuestioned_andTakenOnlyWhenConfirmed(
            String option, String value, String question) throws IOException {
        measure("51.962\n", "--pieces", "A1,A2", "--repeats", "2");
        byte[] journal = Files.readAllBytes(folder.resolve("readings.csv.journal"));
        Run questioned = measure("51.963\nstop\n", option, value);
        assertThat(questioned.err())
                .contains(question)
                .contains("to go on as before, stop and leave the option out.")
                .contains("Nothing is measured before this is settled.");
        assertThat(folder.resolve("readings.csv.journal")).hasBinaryContent(journal);
        assertThat(measure("").err()).doesNotContain("--");
        measure("confirm\n", option, value);
        assertThat(measure("", option, value).err()).doesNotContain("confirm");
        assertThat(column("value")).containsExactly("51.962");
    }

    @Test
    void piecesThatTheSessionDoesNotHave_areQuestioned() throws IOException {
        measure("51.962\n", "--count", "25", "--prefix", "P-");
        Run more = measure("stop\n", "--count", "100", "--prefix", "P-");
        assertThat(more.err())
                .contains(
                        "The session has 25 pieces; the command line names 100 that are not among them, P-001 (and 99 more).");
        assertThat(measure("list\n").err()).contains(" of 25)");
        Run added = measure("confirm\nlist\n", "--pieces", "P-26");
        assertThat(added.err())
                .contains("names 1 that is not among them, P-26. confirm adds it.")
                .contains("(1 of 26)");
    }

    @Test
    void aRemarkThatWaits_andATemperature_areSaidAfterAnotherStart() throws IOException {
        measure("temperature 23.5\nremark a burr, small\n", "--pieces", "A1");
        Run second = measure("51.97\n");
        assertThat(second.err())
                .contains("  Lengths are kept as read at 23.5 °C.\n")
                .contains("  The next value has the remark: a burr, small\n");
        assertThat(Files.readString(out)).contains("\"a burr, small\"");
    }

    @Test
    void byCharacteristic_allPiecesAreNamedFirst_andEachIsAskedForInTurn() throws IOException {
        Run run = measure("A1\nA2\n\n51.96\n51.97\nchart\n", "--by", "characteristic");
        assertThat(column("part")).containsExactly("A1", "A2");
        assertThat(run.err())
                .contains("Next piece (Enter when all are named): ")
                .contains("  A2, 1 in mm: 51.97\n");
        assertThat(measure("").err()).contains("  A1, 2, x in mm: ");
    }

    @ParameterizedTest
    @CsvSource({
        "P-15-S, 'says S, which could mean starboard'",
        "A1-S, 'says S, which could mean starboard'",
        "stbd 4, 'says stbd, which could mean starboard'",
        "HQ900S/7, 'names HQ-900-S, the part of the other hand'"
    })
    void aPieceOfTheOtherHand_isQuestioned(String name, String why) throws IOException {
        Run refused = measure(name + "\nA1\n51.96\n");
        assertThat(refused.err()).contains("The piece " + name + ' ' + why + "; the plan is for HQ-900-P, port.");
        assertThat(column("part")).containsExactly("A1");
        Run named = measure("confirm\nundo\n", "--pieces", name);
        assertThat(named.err()).contains(why);
    }

    @Test
    void aPieceNamedByMistake_isTakenBack_butNoneThatTheCommandLineNames() throws IOException {
        Run run = measure("A1\nA2\n", "--by", "characteristic");
        assertThat(run.code()).isEqualTo(1);
        Run undone = measure("undo\n\n51.96\n10 -4\n");
        assertThat(undone.err())
                .contains("The piece A2 is not among the pieces any more.")
                .contains("  A1, 1 in mm: 51.96\n");
        assertThat(undone.out()).contains("on 1 piece.");
        Files.delete(out);
        Files.delete(folder.resolve("readings.csv.journal"));
        assertThat(measure("undo\n", "--pieces", "A1,A2").err()).contains("There is nothing to undo.");
    }

    @ParameterizedTest
    @CsvSource({"S001", "A1-P", "HQ-900-P-S3", "17"})
    void aPieceWhoseNameSaysNothingOfTheOtherHand_isTaken(String name) throws IOException {
        measure(name + "\n51.96\n");
        assertThat(column("part")).containsExactly(name);
    }

    @Test
    void aJobOfTheOtherHand_isRefusedOrQuestioned() throws IOException {
        Path job = Files.writeString(
                folder.resolve("job.json"), "{ \"schema\": \"firstoff-job-1\", \"program\": \"HQ900S-C-07\" }");
        Run questioned = measure("51.96\n", "--job", job.toString(), "--pieces", "A1");
        assertThat(questioned.err())
                .contains("The job: program HQ900S-C-07 names HQ-900-S, the part of the other hand.")
                .contains("Nothing is measured before this is settled.");
        assertThat(column("value")).isEmpty();
        Files.writeString(job, "{ \"schema\": \"firstoff-job-1\", \"part\": \"HQ-900-S\" }");
        Run refused = measure("", "--job", job.toString());
        assertThat(refused.code()).isEqualTo(3);
    }

    @Test
    void namesAndRemarks_thatASpreadsheetWouldTakeForFormulas_orThatHoldControlCharacters_areNotTaken()
            throws IOException {
        Run run = measure("=1+1\n@A1\nA\u00071\nA1\nremark =cmd|' /C calc'!A0\n51.96\n");
        assertThat(run.err().split("Not taken: ", -1)).hasSize(5);
        assertThat(run.err()).doesNotContain("\u0007");
        assertThat(column("part")).containsExactly("A1");
        assertThat(column("note")).containsExactly("");
        assertThat(measure("", "--operator", "=x").code()).isEqualTo(2);
    }

    @Test
    void aPlanWithAFormulaForASetting_isRefused() throws IOException {
        Files.writeString(plan, PLAN.replace("no-go end", "=1+1"));
        Run run = measure("", "--pieces", "A1");
        assertThat(run.code()).isEqualTo(3);
        assertThat(run.err()).contains("would take this for a formula").contains("=1+1");
        assertThat(out).doesNotExist();
    }

    @Test
    void aTemperature_goesWithLengths_andTheVerdictIsThatAtTwentyDegrees() throws IOException {
        Run run = measure("temperature 400\ntemperature 30\n51.979\n10.01 -4\n45\n", "--pieces", "A1");
        assertThat(run.err())
                .contains("no piece is measured at that temperature")
                .contains("at 20 °C: 51.9727 mm");
        assertThat(column("temperature")).containsExactly("30", "30", "");
    }

    @Test
    void anInputThatEndsWithinALine_leavesThatLineOut() throws IOException {
        Run run = measure("51.962\r\n10.01\r-4.0", "--pieces", "A1");
        assertThat(column("value")).containsExactly("51.962");
        assertThat(run.err()).contains("The input ended within a line; \"-4.0\" was not taken.");
    }

    @Test
    void aHostileLine_isNotTaken() throws IOException {
        Run run = measure("9".repeat(200_000) + "\n51.962\n", "--pieces", "A1");
        assertThat(run.err()).contains("Not taken: the line has 200000 characters; at most 4096.");
        assertThat(run.err().length()).isLessThan(10_000);
        assertThat(column("value")).containsExactly("51.962");
    }

    @Test
    void aChangedPlan_isQuestioned_andOnePartOrRevisionIsNeverTakenForAnother() throws IOException {
        measure("51.962\n", "--pieces", "A1");
        Files.writeString(plan, PLAN.replace("trial ring", "ring"));
        Run questioned = measure("10.01\nconfirm\n10.01 -4\n");
        assertThat(questioned.err()).contains("The plan's file was changed").contains("Nothing is measured before");
        assertThat(column("x")).containsExactly("", "10.01");
        assertThat(measure("").err()).doesNotContain("was changed");

        Files.writeString(plan, PLAN.replace("\"revision\": \"A\"", "\"revision\": \"B\""));
        Run refused = measure("");
        assertThat(refused.code()).isEqualTo(3);
        assertThat(refused.err()).contains("the file was begun for another part or revision");
        Files.writeString(
                plan,
                PLAN.replace("HQ-900-P", "X").replace("HQ-900-S", "HQ-900-P").replace("\"X\"", "\"HQ-900-S\""));
        assertThat(measure("").err()).contains("the file was begun for the part of the other hand");
    }

    @Test
    void aFileChangedByHand_isRefusedUntouched_andTakenAsItStandsWithoutItsJournal() throws IOException {
        measure("51.962\n10.01 -4\n", "--pieces", "A1");
        String edited = Files.readString(out).replace("51.962", "51.963");
        Files.writeString(out, edited);
        Run refused = measure("45\n");
        assertThat(refused.code()).isEqualTo(3);
        assertThat(refused.err()).contains("readings.csv:2: the file was changed since it was measured");
        assertThat(Files.readString(out)).isEqualTo(edited);

        Files.delete(folder.resolve("readings.csv.journal"));
        Files.writeString(out, edited + "A1,3,45.");
        Run taken = measure("45\n");
        assertThat(taken.err())
                .contains("The last line of " + out + " is not whole (\"A1,3,45.\") and was removed")
                .contains("its 2 readings were taken as they stand");
        assertThat(column("value")).containsExactly("51.963", "", "45");
    }

    /** An editor may leave out the last line end, write those of another system, or a mark before the text. */
    @ParameterizedTest
    @CsvSource({"false,false,false", "true,false,false", "false,true,false", "false,false,true", "true,true,true"})
    void aFileEditedByHand_losesNoReading(boolean lineEnds, boolean mark, boolean withoutLast) throws IOException {
        measure("remark a \"burr\", small\n51.962\n10.01 -4\n", "--pieces", "A1");
        Files.delete(folder.resolve("readings.csv.journal"));
        String edited = Files.readString(out).replace("51.962", "51.963");
        String expected = edited;
        edited = withoutLast ? edited.stripTrailing() : edited;
        edited = (mark ? "\uFEFF" : "") + (lineEnds ? edited.replace("\n", "\r\n") : edited);
        Files.writeString(out, edited);
        Run taken = measure("45\n");
        assertThat(taken.err())
                .contains("its 2 readings were taken as they stand")
                .doesNotContain("not whole")
                .contains("  A1, 3 in degree: 45\n");
        assertThat(Files.readString(out)).startsWith(expected);
        assertThat(Files.readAllLines(out)).hasSize(4);
        assertThat(measure("pass\n").err()).doesNotContain("note: " + out);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("plan.json", "readings.csv", "readings.csv.journal");
        }
    }

    @Test
    void aLinkToTheFile_isTheSameSession() throws IOException {
        measure("51.962\n", "--pieces", "A1");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), out);
        Run linked = measure("10.01 -4\n", "--out", link.toString());
        assertThat(linked.err()).contains("The session goes on where it stood: 1 reading on 1 piece.");
        assertThat(folder.resolve("link.csv.journal")).doesNotExist();
        assertThat(measure("").err()).contains("2 readings on 1 piece");
        Path nowhere = Files.createSymbolicLink(folder.resolve("nowhere.csv"), folder.resolve("gone.csv"));
        Run dangling = measure("", "--out", nowhere.toString());
        assertThat(dangling.code()).isEqualTo(4);
        assertThat(dangling.err()).contains("is a link to a file that is not there");
    }

    /** An editor or a program that keeps folders alike puts another file in the place of the one that is being written. */
    @SuppressWarnings("InputStreamSlowMultibyteRead") // what is typed comes key by key
    @ParameterizedTest
    @CsvSource({"readings.csv,true", "readings.csv,false", "readings.csv.journal,false"})
    void aFileThatIsReplacedOrRemovedWithinTheSession_endsItBeforeMoreIsConfirmed(String name, boolean replaced)
            throws IOException {
        Path file = folder.resolve(name);
        byte[] typed = "51.962\n10.01 -4\n45\n".getBytes(StandardCharsets.UTF_8);
        InputStream keyboard = new InputStream() {
            private int at;

            @Override
            public int read() throws IOException {
                if (at == "51.962\n10.01 -4\n".length()) {
                    byte[] old = Files.readAllBytes(file);
                    Files.delete(file);
                    if (replaced) {
                        Files.write(file, old);
                    }
                }
                return at < typed.length ? typed[at++] : -1;
            }
        };
        Run run = runWith(keyboard, "measure", "--plan", plan, "--out", out, "--pieces", "A1");
        assertThat(run.err())
                .contains(name + " was removed or replaced by another program during the session")
                .doesNotContain("45\n    ✓");
        assertThat(run.code()).isEqualTo(4);
        Run after = measure("45\n");
        assertThat(after.err()).contains("2 readings on 1 piece").contains("  A1, 3 in degree: 45\n    ✓");
    }

    @Test
    void aResultThatStandardOutputDoesNotTake_endsWithFour_andTheReadingsAreKept() throws IOException {
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("no space left on device");
            }
        };
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Firstoff.run(
                new ByteArrayInputStream("51.962\n".getBytes(StandardCharsets.UTF_8)),
                new PrintStream(full, false, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                "measure",
                "--plan",
                plan.toString(),
                "--out",
                out.toString(),
                "--pieces",
                "A1",
                "--json");
        assertThat(code).isEqualTo(4);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("standard output did not take the whole result");
        assertThat(column("value")).containsExactly("51.962");
    }

    @Test
    void whatIsNotSettled_isNeverAccepted() {
        assertThat(measure(ONE_PIECE, "--pieces", "A1").code()).isZero();
        Run open = measure("", "--pieces", "A1,A2", "--json");
        assertThat(open.code()).isEqualTo(1);
        assertThat(open.out()).contains("\"end\" : \"unsettled\"");
        assertThat(measure("stop\n", "--pieces", "A1,A2").out()).contains("is not settled; nothing was measured");
        assertThat(measure("").code()).isZero();
    }

    /** What a plan that was changed asks of the readings that are kept: judged anew, or refused, never dropped. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Ø52 P7 | Ø40 P7 | 1 | 0 of 1 reading kept so far conform",
                "\"number\": \"1\" | \"number\": \"11\" | 3 | ",
                "Ø52 P7 | visual: no burrs | 3 | ",
                "MIC-1 | MIC-2 | 3 | ",
                "\"at\": { \"x\": \"10\", \"y\": \"-4\" } | \"at\": { \"x\": \"10\", \"y\": \"-5\" } | 1 | 1 of 1 reading kept so far conform"
            })
    void aPlanThatWasChanged_neverDropsAReading(String from, String to, int code, String said) throws IOException {
        measure("51.962\n", "--pieces", "A1");
        byte[] kept = Files.readAllBytes(out);
        Files.writeString(plan, PLAN.replace(from, to));
        Run run = measure("stop\n");
        assertThat(run.code()).as(run.err()).isEqualTo(code);
        assertThat(run.err()).contains(said == null ? "readings.csv:2" : said);
        assertThat(out).hasBinaryContent(kept);
        Files.writeString(plan, PLAN);
        assertThat(measure("10.01 -4\n").err()).contains("1 reading on 1 piece").doesNotContain("was changed");
    }

    @Test
    void aRemark_mayHoldWhateverALineCan_andComesBackAsItWas() throws IOException {
        String remark = "a, \"b\"; c='d' \\\\ x=1\u2028 – Ø, 'e' # f";
        String harmless = remark.replace("\u2028", "");
        Run run = measure("remark " + remark + "\nremark " + harmless + "\n51.962\n", "--pieces", "A1");
        assertThat(run.err()).contains("Not taken: it holds ");
        measure("10.01 -4\nremark last " + harmless + "\n");
        assertThat(run("", List.of("first-article", "--plan", plan.toString(), out.toString()))
                        .code())
                .isEqualTo(1);
        // The list after another start is made of what the file gives back.
        assertThat(measure("list\n").err().split(Pattern.quote("(" + harmless + ")"), -1))
                .hasSize(3);
    }

    @Test
    void aFileOfSomethingElse_isLeftAlone() throws IOException {
        Files.writeString(out, "part,1\nA1,51.962\n");
        assertThat(measure("45\n").code()).isEqualTo(3);
        assertThat(Files.readString(out)).isEqualTo("part,1\nA1,51.962\n");
        assertThat(measure("", "--out", folder.toString()).code()).isEqualTo(4);
        Run overPlan = run("", List.of("measure", "--plan", plan.toString(), "--out", plan.toString()));
        assertThat(overPlan.code()).isEqualTo(2);
    }

    @Test
    void aValueWhereANameIsAskedFor_isQuestioned() throws IOException {
        Run run = measure("51.962\nA1\n51.962\nstop\n");
        assertThat(run.err()).contains("The name of a piece is asked for, and 51.962 looks like a value.");
        assertThat(column("part")).containsExactly("A1");
    }

    @Test
    void aNameThatNoFileCouldHave_isNotTaken() throws IOException {
        Run run = measure("Mean\nA1\n51.962\nstop\n");
        assertThat(run.err()).contains("Not taken: \"Mean\" names no piece");
        assertThat(column("part")).containsExactly("A1");
    }

    @Test
    void aValueFinerThanItsGaugeShows_isQuestionedOnce() throws IOException {
        Run run = measure("51.9625\n51.962\nstop\n", "--pieces", "A1");
        assertThat(run.err()).contains("51.9625 mm is finer than gauge MIC-1 shows, whose step is 0.001 mm.");
        assertThat(column("value")).containsExactly("51.962");

        Files.delete(out);
        Files.delete(out.resolveSibling("readings.csv.journal"));
        Run twice = measure("51.9625\nconfirm\n51.9635\nstop\n", "--pieces", "A1,A2", "--by", "characteristic");
        assertThat(twice.err()).containsOnlyOnce("is finer than");
        Run later = measure("undo\n51.9635\n");
        assertThat(later.err()).contains("Taken back").doesNotContain("is finer than");
        assertThat(column("value")).containsExactly("51.9625", "51.9635");
        assertThat(column("note")).containsExactly("confirmed at entry", "");
    }

    @Test
    void nonconformities_areCountedOnTheSizeThatIsStated_alsoAfterAnotherStart() throws IOException {
        Files.writeString(plan, """
                { "schema": "firstoff-plan-1", "part": { "number": "HQ-900-P", "revision": "A" }, "unit": "mm",
                  "characteristics": [
                    { "number": "1", "feature": "paint", "requirement": "nonconformities 3 max: runs and pits" } ] }
                """);
        Run first = measure("2\nsize 0\nsize 2.5\n1\n", "--pieces", "A1,A2,A3");
        assertThat(first.err())
                .contains("  A1, 1, count on size 1: 2\n")
                .contains("Not taken: found \"0\"; expected a size above 0")
                .contains("  A2, 1, count on size 2.5: 1\n");
        Run second = measure("3\n");
        assertThat(second.err()).contains("  A3, 1, count on size 2.5: 3\n");
        assertThat(column("size")).containsExactly("", "2.5", "2.5");
        assertThat(run("", List.of("first-article", "--plan", plan.toString(), out.toString()))
                        .code())
                .isZero();
    }

    @Test
    void aTemperature_mayHaveTheDecimalCommaOfTheSession() throws IOException {
        measure("temperature 23,5\n51,962\n", "--pieces", "A1", "--decimal-mark", "comma");
        assertThat(column("temperature")).containsExactly("23.5");
    }

    @Test
    void aSize_whereNothingIsCounted_isNotTaken() {
        assertThat(measure("size 2\nstop\n", "--pieces", "A1").err())
                .contains("Not taken: the plan counts no nonconformities.");
    }

    @Test
    void aClockThatWasSetBack_isQuestioned() throws IOException {
        measure("51.962\n", "--pieces", "A1,A2", "--by", "characteristic");
        // the journal is taken from the file, whose reading is of a time still to come
        Files.delete(out.resolveSibling("readings.csv.journal"));
        Files.writeString(out, Files.readString(out).replaceFirst("\\d{4}(-\\d\\d-\\d\\dT)", "2090$1"));
        Run run = measure("51.963\n51.964\nconfirm\n", "--by", "characteristic", "--pieces", "A1,A2");
        assertThat(run.err()).contains("The clock says ").contains("which is before the reading kept last (2090-");
    }

    @Test
    void json_isOneDocument_asTheSchemaSays() throws IOException {
        Run run = measure("51.980\nskip\n", "--pieces", "A1,A2", "--json");
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(json.get("verdict").asText()).isEqualTo("rejected");
        assertThat(json.get("kept").asInt()).isEqualTo(1);
        assertThat(json.at("/skipped/0/characteristic").asText()).isEqualTo("2");
        assertThat(json.at("/characteristics/0/upper").asText()).isEqualTo("51.979");
        assertThat(json.get("end").asText()).isEqualTo("end-of-input");
        assertThat(json.get("left")).hasSize(10);
        String schema = Files.readString(Path.of("..", "docs", "schemas", "measure.schema.json"));
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(schema, InputFormat.JSON)
                        .validate(run.out(), InputFormat.JSON))
                .isEmpty();
    }

    /** The session that the guide shows is typed again, ends where the guide says that the power went, and says the same. */
    @Test
    void theGuide_showsWhatIsSaid() throws IOException {
        List<String> shown = new ArrayList<>();
        Matcher fences = Pattern.compile("(?ms)^```text\\n(.*?)^```$")
                .matcher(Files.readString(Path.of("..", "docs", "measure.md")).replace("\r\n", "\n"));
        while (fences.find()) {
            shown.add(fences.group(1));
        }
        plan = Files.copy(
                Path.of("..", "sample-measurements", "hq-320-p.plan.json"), folder.resolve("hq-320-p.plan.json"));
        out = folder.resolve("pawl.csv");
        assertThat(shown).hasSize(2);
        for (String session : shown) {
            StringBuilder keyed = new StringBuilder();
            Matcher prompts = Pattern.compile("(?m)^(?:  [^ ].*|First piece|Next piece .*): (.+)$")
                    .matcher(session.split("(?m)^Measured: ", 2)[0]);
            while (prompts.find()) {
                keyed.append(prompts.group(1)).append('\n');
            }
            Run run = measure(keyed.toString(), "--operator", "A. Quill");
            String said = (session.contains("Measured: ") ? run.err() + run.out() : run.err())
                    .replace(folder + java.io.File.separator, "")
                    .replaceAll("(?m)^    note: the calibration of .*\\n", "");
            assertThat(said.strip()).isEqualTo(session.strip());
        }
    }

    @ParameterizedTest
    @CsvSource({"--by,sideways", "--count,0", "--prefix,P", "--decimal-mark,dot", "--repeats,-1", "'--pieces','A1,A1'"})
    void aWrongCommandLine_endsWithTwo(String option, String value) {
        assertThat(measure("", option, value).code()).isEqualTo(2);
        assertThat(out).doesNotExist();
    }
}
