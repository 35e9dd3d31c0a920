package io.github.firstoff.command;

import static io.github.firstoff.proof.Samples.run;
import static io.github.firstoff.proof.Samples.runWith;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.firstoff.proof.Samples.Run;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the command line does with readings that are not all plain and not all good. */
class ReadingsCommandTest {
    private static final String PLAN = """
            { "schema": "firstoff-plan-1", "part": { "number": "HQ-077", "revision": "B" }, "unit": "mm",
              "characteristics": [
                { "number": "1", "feature": "pin diameter", "requirement": "12 0/-0.018" },
                { "number": "2", "feature": "length", "requirement": "40 ±0.3" } ] }
            """;

    @TempDir
    private Path folder = Path.of("");

    private Path put(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void keepGoing_judgesTheGoodRows_keepsTheOthers_andIsNeverAccepted() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", """
                part;1;2;note
                S1;11,99;40,1;
                S2;11,98;forty;=2+3
                S3;;;
                S4;11,985;40,2;short;long
                S5;11,985;40,2;
                """);
        Path pdf = folder.resolve("sheet.pdf");

        Run strict = run("first-article", "--plan", plan, readings, "--out", pdf);
        assertThat(strict.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(strict.err())
                .contains("5 rows read: 2 used, 2 refused, 1 explained")
                .contains("--keep-going");
        assertThat(pdf).doesNotExist();

        Run run = run("first-article", "--plan", plan, readings, "--out", pdf, "--keep-going", "--json");
        assertThat(run.err()).contains("lot.csv:3, column 2: found \"forty\"").contains("lot.refused.csv");
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(json.get("verdict").asText()).isEqualTo("incomplete");
        assertThat(json.get("intake").toString())
                .isEqualTo("{\"rowsRead\":5,\"used\":2,\"refused\":2,\"explained\":1}");
        assertThat(json.at("/counts/conforming").asInt()).isEqualTo(2);
        assertThat(firstPage(pdf))
                .contains("Incomplete, so not accepted")
                .contains("Of 5 rows of readings, 2 were refused and not judged.");

        assertThat(folder.resolve("lot.refused.csv"))
                .hasContent(String.join("\r\n", """
                part;1;2;note;refused in (numbers with a decimal comma);refused because
                S2;"11,98";forty;'=2+3;"lot.csv, line 3 [bc347857a8]";"column 2: found ""forty""; expected a decimal number such as 12.5"
                S4;"11,985";"40,2";short;"lot.csv, line 5 [fbf356c629]";found 5 fields; expected 4 as in the heading; further fields: long
                """.split("\n"))
                                .replace(
                                        ";found 5 fields; expected 4 as in the heading; further fields: long",
                                        ";\"found 5 fields; expected 4 as in the heading; further fields: long\"")
                        + "\r\n");
    }

    private static String firstPage(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setEndPage(1);
            return stripper.getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void theRefusedRows_putRight_areReadAgainBesideTheOthers() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", "part,1,2\nS1,11.99,40.1\nS2,11.985,forty\n");
        run("first-article", "--plan", plan, readings, "--keep-going");
        Path refused = folder.resolve("lot.refused.csv");
        Path mended = put("mended.csv", Files.readString(refused).replace("forty", "40.0"));
        Path good = put("good.csv", "part,1,2\nS1,11.99,40.1\n");

        Run run = run("first-article", "--plan", plan, good, mended);

        assertThat(run.out()).contains("2 rows read: 2 used, 0 refused, 0 explained.");
        assertThat(run.code()).isEqualTo(ExitCodes.ACCEPTED);
    }

    @Test
    void refusedRows_neverOverwriteWhatIsNotTheirs() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", "part,1,2\nS1,11.99,40.1\nS2,11.985,forty\n");
        Path theirs = put("lot.refused.csv", "notes of somebody else\n");

        Run run = run("batch", "--plan", plan, readings, "--keep-going", "--out", folder.resolve("s.pdf"));

        assertThat(run.code()).isEqualTo(ExitCodes.OUTPUT);
        assertThat(theirs).hasContent("notes of somebody else\n");
        assertThat(folder.resolve("s.pdf")).doesNotExist();
        Files.delete(theirs);
        assertThat(run("batch", "--plan", plan, readings, "--keep-going").code())
                .isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run("batch", "--plan", plan, readings, "--keep-going").code())
                .isEqualTo(ExitCodes.NOT_ACCEPTED);
        byte[] before = Files.readAllBytes(theirs);
        assertThat(run("batch", "--plan", plan, readings, theirs, "--keep-going")
                        .code())
                .as("the file of refused rows is an input here, and nothing in it was put right")
                .isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(theirs).hasBinaryContent(before);
        Files.delete(folder.resolve("lot.refused.refused.csv"));
        Path other = put("lot.txt", "part,1,2\nS3,11.99,40.1\nS4,11.985,forty\n");
        assertThat(run("batch", "--plan", plan, other, theirs, "--keep-going").code())
                .as("rows of another file would go where an input is")
                .isEqualTo(ExitCodes.OUTPUT);
        assertThat(theirs).hasBinaryContent(before);
    }

    @Test
    void refusedRows_putRightInTheirFile_countBesideTheFileTheyWereRefusedFrom_andAreNotOverwritten()
            throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", "part,1,2\nS1,11.99,40.1\nS2,11.985,forty\n");
        run("batch", "--plan", plan, readings, "--keep-going");
        Path refused = folder.resolve("lot.refused.csv");
        String mended = Files.readString(refused).replace("forty", "40.0");
        Files.writeString(refused, mended);

        assertThat(run("batch", "--plan", plan, readings, "--keep-going").code())
                .isEqualTo(ExitCodes.OUTPUT);
        assertThat(refused).as("somebody's work").hasContent(mended);
        Run run = run("batch", "--plan", plan, readings, refused);

        assertThat(run.err()).contains("1 row at fault stands again in a table of refused rows");
        assertThat(run.out()).contains("3 rows read: 2 used, 0 refused, 1 explained.");
        assertThat(run.code()).isEqualTo(ExitCodes.ACCEPTED);
    }

    @Test
    void keepGoing_aFaultOfTheWholeFile_isStillRefused() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", "part,1,2\nS1,11.99,40.1\nS2,\"11.98,40\nS3,11.99,40\n");

        Run run = run("batch", "--plan", plan, readings, "--keep-going");

        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(folder.resolve("lot.refused.csv")).doesNotExist();
    }

    @Test
    void certificate_withRefusedRows_isRefused() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path job = put("job.json", """
                { "schema": "firstoff-job-1", "issuer": { "name": "Hollin Quay Deck Gear" }, "customer": { "name": "Marrow Bay Yachts" },
                  "order": "MB-1", "batch": "B1", "quantity": 2 }
                """);
        Path readings = put("lot.csv", "part,1,2\nS1,11.99,40.1\nS2,11.985,forty\n");

        Run run = run("certificate", "--plan", plan, "--job", job, readings, "--keep-going");

        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out()).contains("1 row of readings could not be read");
    }

    @Test
    void decimalMark_saysWhichOfTwoReadingsIsMeant() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", "part;1;2\nS1;11,990;40,100\n");

        assertThat(run("first-article", "--plan", plan, readings).err()).contains("this could mean 11990 or 11.990");
        assertThat(run("first-article", "--plan", plan, readings, "--decimal-mark", "comma")
                        .code())
                .isEqualTo(ExitCodes.ACCEPTED);
        assertThat(run("first-article", "--plan", plan, readings, "--decimal-mark", "point")
                        .out())
                .contains("11990");
        assertThat(run("first-article", "--plan", plan, readings, "--decimal-mark", "dot")
                        .code())
                .isEqualTo(ExitCodes.USAGE);
    }

    @Test
    void standardInput_isReadLikeAFile() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path pdf = folder.resolve("s.pdf");
        for (Object[] out : new Object[][] {{}, {"--out", pdf}}) {
            Run run = runWith(
                    new ByteArrayInputStream("part,1,2\nS1,11.99,40.1\n".getBytes(StandardCharsets.UTF_8)),
                    Stream.concat(Stream.of("first-article", "--plan", plan, "-"), Arrays.stream(out))
                            .toArray());
            assertThat(run.err()).isEmpty();
            assertThat(run.code()).isEqualTo(ExitCodes.ACCEPTED);
        }
        assertThat(run("batch", "--plan", plan, "-", "-").code()).isEqualTo(ExitCodes.USAGE);
        assertThat(pdf).exists();
    }

    @Test
    void foldersDevicesAndNothing_areRefusedByName() throws IOException {
        Path plan = put("plan.json", PLAN);

        assertThat(run("batch", "--plan", plan).code()).isEqualTo(ExitCodes.USAGE);
        for (Object[] out : new Object[][] {{}, {"--out", folder.resolve("s.pdf")}}) {
            Object[] more = out;
            assertThat(run(Stream.concat(Stream.of("batch", "--plan", plan, folder), Arrays.stream(more))
                                    .toArray())
                            .err())
                    .contains("found a directory");
            if (Files.exists(Path.of("/dev/zero"))) {
                Run run = run(Stream.concat(Stream.of("batch", "--plan", plan, "/dev/zero"), Arrays.stream(more))
                        .toArray());
                assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
                assertThat(run.err()).contains("/dev/zero: found a device or a pipe");
            }
        }
    }

    @Test
    void follow_renewsTheSheetWithEveryFile_andEndsWhenIdle() throws Exception {
        Path plan = put("plan.json", PLAN);
        Path comes = Files.createDirectory(folder.resolve("comes"));
        Path pdf = folder.resolve("s.pdf");
        Files.writeString(comes.resolve("a.csv"), "part,1,2\nS1,11.99,40.1\n");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int[] code = {-1};
        Thread following = new Thread(() -> code[0] = Firstoff.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                Stream.of("batch", "--plan", plan, "--follow", comes, "--until-idle", "4", "--out", pdf)
                        .map(Object::toString)
                        .toArray(String[]::new)));
        following.start();
        await(() -> Files.exists(pdf));
        byte[] first = Files.readAllBytes(pdf);
        Files.writeString(comes.resolve(".b.csv.tmp"), "no readings");
        Files.writeString(comes.resolve("b.csv"), "part,1,2\nS2,11.985,fort");
        await(() -> err.toString(StandardCharsets.UTF_8)
                .contains("The sheet was not renewed and still shows 1 file as before; 1 waits."));
        assertThat(Files.readAllBytes(pdf))
                .as("a bad file leaves the sheet as it was")
                .isEqualTo(first);
        Files.writeString(comes.resolve("b.csv"), "part,1,2\nS2,11.985,40.0\n");
        following.join(120_000);

        assertThat(following.isAlive()).isFalse();
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("b.csv:2, column 2: found \"fort\"");
        assertThat(out.toString(StandardCharsets.UTF_8))
                .contains("conform on 1 piece.")
                .contains("conform on 2 pieces.");
        assertThat(code[0]).isEqualTo(ExitCodes.ACCEPTED);
        assertThat(Files.readAllBytes(pdf)).isNotEqualTo(first);
    }

    @Test
    void follow_aFileThatIsStillWritten_isNotReadByHalves() throws Exception {
        Path comes = Files.createDirectory(folder.resolve("comes"));
        FollowedFolder followed = new FollowedFolder(comes, java.util.Set.of());
        assertThat(followed.look()).isFalse();
        Path file = comes.resolve("a.csv");
        for (int i = 0; i < 5; i++) {
            Files.writeString(file, "x".repeat(i + 1));
            assertThat(followed.look()).as("it changed since the last look").isFalse();
        }
        assertThat(followed.look()).isTrue();
        assertThat(followed.files()).containsExactly(file);
        assertThat(followed.look()).isFalse();
        Files.delete(file);
        assertThat(followed.look()).isTrue();
        assertThat(followed.files()).isEmpty();
    }

    @Test
    void follow_aRenamedFile_isNeverMissedInBetween_andOneThatIsGoneIsNamed() throws Exception {
        Path comes = Files.createDirectory(folder.resolve("comes"));
        FollowedFolder followed = new FollowedFolder(comes, java.util.Set.of());
        Path a = Files.writeString(comes.resolve("a.csv"), "x");
        Path b = Files.writeString(comes.resolve("b.csv"), "y");
        followed.look();
        assertThat(followed.look()).isTrue();
        assertThat(followed.gone()).isEmpty();
        Path c = Files.move(a, comes.resolve("c.csv"));
        assertThat(followed.look()).as("neither name is complete").isFalse();
        assertThat(followed.look()).isTrue();
        assertThat(followed.files()).containsExactlyInAnyOrder(b, c);
        assertThat(followed.gone()).containsExactly(a);
        Files.writeString(b, "other");
        Files.delete(c);
        followed.look();
        assertThat(followed.look()).isTrue();
        assertThat(followed.gone()).containsExactly(c);
        assertThat(followed.changed()).containsExactly(b);
    }

    @Test
    void aRefusedRow_withDecimalCommas_mayBePutRightWithOne() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("comma.csv", "part;1;2\nS1;11,99;40,1\nS2;11,985;forty\n");
        run("first-article", "--plan", plan, readings, "--keep-going");
        Path refused = folder.resolve("comma.refused.csv");
        assertThat(Files.readString(refused))
                .startsWith(
                        "part;1;2;refused in (numbers with a decimal comma);refused because\r\nS2;\"11,985\";forty;");
        run("first-article", "--plan", plan, readings, "--keep-going");
        Files.writeString(refused, Files.readString(refused).replaceFirst("forty", "40,2"));
        Path mended = Files.move(refused, folder.resolve("mended.csv"));
        assertThat(run("first-article", "--plan", plan, mended).code()).isEqualTo(ExitCodes.ACCEPTED);
    }

    @Test
    void aFileOfAnotherPart_leavesNoDoubtThatNothingWasJudged() throws IOException {
        Run run = run(
                "first-article", "--plan", put("plan.json", PLAN), put("r.csv", "Part no. HQ-078\npart,1\nS1,11.99\n"));
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err())
                .contains("r.csv:1: the readings are of another part")
                .endsWith("Nothing was judged.\n");
    }

    private static void await(BooleanSupplier happened) throws InterruptedException {
        for (int i = 0; i < 600 && !happened.getAsBoolean(); i++) {
            Thread.sleep(50);
        }
        assertThat(happened.getAsBoolean()).isTrue();
    }

    @Test
    void temporaryFilesOfRefusedRows_areRemoved() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", "part,1,2\nS1,11.99,40.1\nS2,11.985,forty\n");
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        long before = spools(temporary);
        run("batch", "--plan", plan, readings, "--keep-going");
        assertThat(spools(temporary)).isEqualTo(before);
    }

    private static long spools(Path temporary) throws IOException {
        try (Stream<Path> files = Files.list(temporary)) {
            return files.sorted(Comparator.naturalOrder())
                    .filter(path -> path.getFileName()
                            .toString()
                            .matches("firstoff-" + ProcessHandle.current().pid() + "-.*\\.refused\\.csv"))
                    .count();
        }
    }

    @Test
    void mapping_readsItsExampleFromStandardInput_andOtherFilesAreAskedForByName() throws IOException {
        Path plan = put("plan.json", PLAN);
        String export = "Serial: S1\nname;set;found\npin;12;11.990\nlength;40;40.1\n";
        Run run = runWith(
                new ByteArrayInputStream(export.getBytes(StandardCharsets.UTF_8)), "mapping", "--plan", plan, "-");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).contains("2 rows read: 2 used, 0 refused, 0 explained");

        Run asPlan = run("batch", "--plan", "-", plan);
        assertThat(asPlan.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(asPlan.err())
                .contains("the name of a file; standard input is read only where a command's help says so");
    }

    @Test
    void drift_followsAFileInUtf16_whoseLastLineIsStillBeingWritten() throws IOException {
        Path plan = put("plan.json", PLAN);
        StringBuilder text = new StringBuilder("\uFEFFpart;2\n");
        for (int i = 1; i <= 12; i++) {
            text.append("S")
                    .append(i)
                    .append(";40,0")
                    .append(i % 3)
                    .append(i % 7)
                    .append("5\n");
        }
        Path log = Files.write(
                folder.resolve("log.csv"), text.append("S13;4").toString().getBytes(StandardCharsets.UTF_16LE));
        Run run = run("drift", "--plan", plan, "--characteristic", "2", "--follow", log, "--until-idle", "1");
        assertThat(run.out()).contains("12 rows read: 12 used, 0 refused, 0 explained.");
    }

    @Test
    void keepGoing_whereNoRowIsGood_keepsThemAll_andMakesNoSheet() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("lot.csv", "part,characteristic,value\nS1,2,forty\nS2,3,40.1\n");
        Path pdf = folder.resolve("sheet.pdf");
        Run run = run("batch", "--plan", plan, readings, "--out", pdf, "--keep-going");
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err())
                .contains("2 rows read: 0 used, 2 refused, 0 explained")
                .contains("lot.refused.csv");
        assertThat(pdf).doesNotExist();
        assertThat(folder.resolve("lot.refused.csv")).content().contains("S1,2,forty,", "S2,3,40.1,");
    }
}
