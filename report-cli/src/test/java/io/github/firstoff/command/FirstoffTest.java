package io.github.firstoff.command;

import static io.github.firstoff.proof.Samples.run;
import static io.github.firstoff.proof.Samples.runWith;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.firstoff.proof.Samples.Run;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command line as a user meets it: what it says, what it writes, and how it ends. */
class FirstoffTest {
    private static final Path SAMPLES = Path.of("..", "sample-measurements");

    private static final String PLAN = """
            { "schema": "firstoff-plan-1",
              "part": { "number": "HQ-900-P", "name": "trial ring", "drawing": "HQ-900", "revision": "A", "hand": "port" },
              "unit": "mm",
              "gauges": [ { "id": "MIC-1", "kind": "micrometer", "resolution": "0.001", "expandedUncertainty": "0.002",
                            "calibrationDue": "2026-12-31", "certificate": "K-1" } ],
              "characteristics": [
                { "number": "1", "feature": "outside diameter", "requirement": "40 ±0.05", "gauge": "MIC-1" },
                { "number": "2", "feature": "edges", "requirement": "visual: no burrs" } ] }
            """;

    private static final String JOB = """
            { "schema": "firstoff-job-1", "issuer": { "name": "Hollin Quay Deck Gear" }, "batch": "B-1", "date": "2026-11-20",
              "customer": { "name": "Marrow Bay Yachts" }, "certificate": { "number": "C-1" } }
            """;

    @TempDir
    private Path folder;

    private Path put(String name, String content) throws IOException {
        return Files.writeString(folder.resolve(name), content);
    }

    @Test
    void memoryThatDoesNotSuffice_isSaidInWords() throws IOException {
        Path plan = put("plan.json", PLAN);
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                throw new OutOfMemoryError("made up for a test");
            }

            @Override
            public int read(byte[] buffer, int offset, int length) {
                return read();
            }
        };
        Path sheet = folder.resolve("batch.pdf");

        Run run = runWith(endless, "batch", "--plan", plan, "-", "--out", sheet);

        assertThat(run.code()).isEqualTo(ExitCodes.OUTPUT);
        assertThat(run.err())
                .isEqualTo("firstoff: the memory that Java was given is too small for these inputs;"
                        + " set FIRSTOFF_JAVA_OPTIONS=-Xmx4g or more" + System.lineSeparator());
        assertThat(run.out()).isEmpty();
        assertThat(sheet).doesNotExist();
    }

    @Test
    void whereTheTableCannotBeWritten_thereIsNoSheetEither_andTheOtherWayRound() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,40.00\nS1,2,pass\n");
        Path nowhere = put("a-file", "").resolve("within.out");
        Path pdf = folder.resolve("batch.pdf");
        Path csv = folder.resolve("batch.csv");

        Run table = run("batch", "--plan", plan, readings, "--out", pdf, "--csv", nowhere);
        Run sheet = run("batch", "--plan", plan, readings, "--out", nowhere, "--csv", csv);

        assertThat(List.of(table.code(), sheet.code())).containsOnly(ExitCodes.OUTPUT);
        assertThat(table.err()).contains("cannot be written");
        assertThat(sheet.err()).contains("cannot be written");
        assertThat(pdf).doesNotExist();
        assertThat(csv).doesNotExist();
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(path -> path.getFileName().toString())).noneMatch(name -> name.endsWith(".part"));
        }
        assertThat(run("batch", "--plan", plan, readings, "--out", pdf, "--csv", csv)
                        .code())
                .isLessThanOrEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(pdf).isNotEmptyFile();
        assertThat(csv).isNotEmptyFile();
    }

    @Test
    void theCounterpartOfAMirrorImage_isNotOverwritten() throws IOException {
        Path port = put("hq-320-p.plan.json", Files.readString(SAMPLES.resolve("hq-320-p.plan.json")));
        Path starboard = put("hq-320-s.plan.json", Files.readString(SAMPLES.resolve("hq-320-s.plan.json")));
        String before = Files.readString(port);

        Run run =
                run("first-article", "--plan", starboard, SAMPLES.resolve("first-article-hq-320-s.csv"), "--out", port);

        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("would overwrite an input");
        assertThat(Files.readString(port)).isEqualTo(before);
    }

    @Test
    void aJobAboutTheOtherHand_isRefused() {
        Run run = run(
                "first-article",
                "--plan",
                SAMPLES.resolve("hq-320-s.plan.json"),
                "--job",
                SAMPLES.resolve("first-article-hq-320-p.job.json"),
                SAMPLES.resolve("first-article-hq-320-s.csv"));

        assertThat(run.code()).isEqualTo(3);
        assertThat(run.err()).contains("the job is about the part of the other hand");
    }

    private List<String> filesBeside(Path... known) throws IOException {
        List<String> names = new ArrayList<>();
        try (Stream<Path> all = Files.list(folder)) {
            all.filter(path -> !List.of(known).contains(path))
                    .forEach(path -> names.add(path.getFileName().toString()));
        }
        return names;
    }

    @Test
    void firstArticle_everythingOnItsLimits_acceptedWithExitZero() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,40.0500\nS1,2,pass\nS2,1,39.95\nS2,2,ok\n");
        Path pdf = folder.resolve("fa.pdf");
        Run run = run("first-article", "--plan", plan, readings, "--out", pdf, "--json");
        assertThat(run.err()).isEmpty();
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(json.get("verdict").asText()).isEqualTo("accepted");
        assertThat(json.at("/characteristics/0/lower").asText()).isEqualTo("39.95");
        assertThat(json.at("/characteristics/0/upper").asText()).isEqualTo("40.05");
        assertThat(json.at("/characteristics/0/maximum").asText()).isEqualTo("40.0500");
        assertThat(run.code()).isEqualTo(ExitCodes.ACCEPTED);
        assertThat(Files.readString(pdf, StandardCharsets.ISO_8859_1)).startsWith("%PDF-");
    }

    @Test
    void firstArticle_missingReading_isIncompleteNeverAccepted() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,40.00\n");
        Run run = run("first-article", "--plan", plan, readings);
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out()).contains("Incomplete").contains("2  visual: no burrs  not measured");
    }

    @Test
    void batch_unreadableNumber_exitThreeNamesThePlaceAndWritesNothing() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("letters.csv", "part,characteristic,value\nS1,1,forty\n");
        Run run = run("batch", "--plan", plan, readings, "--out", folder.resolve("b.pdf"), "--json");
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .contains("letters.csv:2")
                .contains("forty")
                .doesNotContain("Exception")
                .doesNotContain("\tat ");
        assertThat(filesBeside(plan, readings)).isEmpty();
    }

    @Test
    void batch_decimalComma_isNeverGuessed() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("comma.csv", "part,characteristic,value\nS1,1,\"40,010\"\nS1,2,pass\n");
        Run run = run("batch", "--plan", plan, readings);
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err()).contains("comma.csv:2").contains("40010 or 40.010");
    }

    @Test
    void anyCommand_olderSheetAndUnusableInput_leavesTheOlderSheet() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("bad.csv", "part,characteristic,value\nS1,7,1\n");
        Path pdf = put("old.pdf", "older");
        assertThat(run("batch", "--plan", plan, readings, "--out", pdf).code()).isEqualTo(ExitCodes.INPUT);
        assertThat(pdf).hasContent("older");
    }

    @Test
    void certificate_nonconforming_refusedWithReasonsAndWithoutPdf() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path job = put("job.json", JOB);
        Path readings = put("over.csv", "part,characteristic,value\nS1,1,40.051\nS1,2,pass\n");
        Run run =
                run("certificate", "--plan", plan, "--job", job, readings, "--out", folder.resolve("c.pdf"), "--json");
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(json.at("/reasons/0").asText()).contains("outside diameter").contains("S1 over by 0.001");
        assertThat(filesBeside(plan, job, readings)).isEmpty();
    }

    @Test
    void certificate_calibrationRunOutOnTheDayOfUse_refused() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path job = put("job.json", JOB);
        Path readings = put(
                "late.csv",
                "part,characteristic,value,time\nS1,1,40.00,2027-01-01T09:00\nS1,2,pass,2027-01-01T09:01\n");
        Run run = run("certificate", "--plan", plan, "--job", job, readings, "--json");
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out()).contains("MIC-1").contains("2026-12-31").contains("2027-01-01");
        Path inTime = put(
                "due-day.csv",
                "part,characteristic,value,time\nS1,1,40.00,2026-12-31T09:00\nS1,2,pass,2026-12-31T09:01\n");
        assertThat(run("certificate", "--plan", plan, "--job", job, inTime).code())
                .isEqualTo(ExitCodes.ACCEPTED);
    }

    @Test
    void certificate_withoutJob_isACommandLineFault() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,40.00\nS1,2,pass\n");
        Run run = run("certificate", "--plan", plan, readings);
        assertThat(run.code()).isEqualTo(ExitCodes.USAGE);
        assertThat(run.err()).contains("--job");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "individuals",
                "xbar-r",
                "xbar-s",
                "median-r",
                "between-within",
                "ewma",
                "cusum",
                "deviation",
                "standardised-deviation"
            })
    void batch_everyChartOfMeasuredValues_isDrawn(String chart) throws IOException {
        String plan = Files.readString(SAMPLES.resolve("hq-310-p.plan.json"))
                .replace(
                        "\"chart\": \"xbar-r\", \"subgroup\": 5, \"baseline\": 10",
                        "\"chart\": \"" + chart + "\"" + (chart.equals("individuals") ? "" : ", \"subgroup\": 5"));
        Path pdf = folder.resolve("b.pdf");
        Run run = run("batch", "--plan", put("plan.json", plan), SAMPLES.resolve("batch-2207.csv"), "--out", pdf);
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCodes.ACCEPTED);
        assertThat(pdf).isNotEmptyFile();
    }

    @Test
    void batch_chartThatNobodyKnows_refusedByNameWithItsPlace() throws IOException {
        Path plan = put(
                "plan.json",
                PLAN.replace("\"gauge\": \"MIC-1\" }", "\"gauge\": \"MIC-1\", \"study\": { \"chart\": \"cusun\" } }"));
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,40.00\nS1,2,pass\n");
        Run run = run("batch", "--plan", plan, readings);
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err()).contains("plan.json:7").contains("perhaps cusum is meant");
    }

    @Test
    void firstArticle_planThatJudgesNothing_isIncomplete() throws IOException {
        Path plan = put("plan.json", """
                {"schema": "firstoff-plan-1", "part": {"number": "HQ-1", "revision": "A"}, "unit": "mm",
                 "characteristics": [{"number": "1", "feature": "overall", "requirement": "(40)"}]}
                """);
        Path readings = put("r.csv", "part,1\nA,40.02\n");
        Run run = run("first-article", "--plan", plan, readings);
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out()).contains("Incomplete");
    }

    @Test
    void certificate_demandedIndexNotReached_refused() throws IOException {
        Path plan = put(
                "plan.json",
                PLAN.replace(
                                "\"unit\": \"mm\",",
                                "\"unit\": \"mm\", \"classes\": {\"critical\": {\"minimum\": {\"ppk\": \"1.33\"}}},")
                        .replace(
                                "\"gauge\": \"MIC-1\" }",
                                "\"gauge\": \"MIC-1\", \"class\": \"critical\", \"study\": {\"chart\": \"individuals\"} }"));
        StringBuilder rows = new StringBuilder("part,1,2\n");
        for (int i = 0; i < 40; i++) {
            rows.append("S")
                    .append(i)
                    .append(",")
                    .append(i % 2 == 0 ? "40.040" : "39.962")
                    .append(",pass\n");
        }
        Run run = run("certificate", "--plan", plan, "--job", put("job.json", JOB), put("r.csv", rows.toString()));
        assertThat(run.code()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(run.out()).contains("demands Ppk of at least 1.33");
    }

    @ParameterizedTest
    @CsvSource({"median-r, true", "ewma, false", "deviation, true"})
    void batch_furtherCharts_areDrawnAndToldInJson(String chart, boolean dispersion) throws IOException {
        String plan = Files.readString(SAMPLES.resolve("hq-310-p.plan.json"))
                .replace(
                        "\"chart\": \"xbar-r\", \"subgroup\": 5, \"baseline\": 10",
                        "\"chart\": \"" + chart + "\", \"subgroup\": 5");
        Path pdf = folder.resolve("b.pdf");
        Run run = run(
                "batch", "--plan", put("plan.json", plan), SAMPLES.resolve("batch-2207.csv"), "--out", pdf, "--json");
        JsonNode json = new ObjectMapper().readTree(run.out()).at("/characteristics/0/chart");
        assertThat(json.get("kind").asText()).isEqualTo(chart);
        assertThat(json.get("control").asText()).isEqualTo("out-of-control");
        assertThat(json.get("location").get("note") == null).isEqualTo(dispersion);
        assertThat(json.get("dispersion").isNull()).isEqualTo(!dispersion);
        assertThat(pdf).isNotEmptyFile();
    }

    @Test
    void batch_rangeBeyondItsLimit_isNamedApartFromTheZoneTests() throws IOException {
        Run run = run(
                "batch", "--plan", SAMPLES.resolve("hq-310-p.plan.json"), SAMPLES.resolve("batch-2208.csv"), "--json");
        JsonNode chart = new ObjectMapper().readTree(run.out()).at("/characteristics/0/chart");
        assertThat(chart.at("/signals/0/test").asText()).isEqualTo("dispersion-limits");
        assertThat(chart.at("/signals/0/chart").asText()).isEqualTo("dispersion");
        assertThat(chart.at("/signalCounts/western-electric-1").asInt()).isZero();
        assertThat(chart.at("/signalCounts/dispersion-limits").asInt()).isEqualTo(1);
    }

    @Test
    void firstArticle_targetOnAnInchDrawing_isReadInInchesAgainstLimitsInMillimetres() throws IOException {
        String plan = """
                {"schema": "firstoff-plan-1", "part": {"number": "HQ-1", "revision": "A"}, "unit": "inch",
                 "characteristics": [{"number": "1", "feature": "bore", "requirement": "2 H7", "target": "2.0005"}]}
                """;
        Path readings = put("r.csv", "part,1\nA,2.0004\n");
        assertThat(run("first-article", "--plan", put("in.json", plan), readings)
                        .code())
                .isEqualTo(ExitCodes.ACCEPTED);
        Run out = run("first-article", "--plan", put("out.json", plan.replace("2.0005", "2.1")), readings);
        assertThat(out.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(out.err()).contains("2.1 inch lies outside the limits 50.8 to 50.83 mm");
    }

    @Test
    void mistypedCommand_exitTwoWithSuggestion() {
        Run run = run("bath");
        assertThat(run.code()).isEqualTo(ExitCodes.USAGE);
        assertThat(run.err()).contains("batch");
    }

    @Test
    void noCommand_exitTwo() {
        assertThat(run().code()).isEqualTo(ExitCodes.USAGE);
    }

    @Test
    void help_listsCommandsAndExitCodes() {
        Run run = run("--help");
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("first-article", "batch", "certificate", "Exit codes");
        assertThat(run("--version").out()).startsWith("firstoff");
    }

    @Test
    void out_isAnInput_refused() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,40.00\nS1,2,pass\n");
        Run run = run("batch", "--plan", plan, readings, "--out", readings);
        assertThat(run.code()).isEqualTo(ExitCodes.USAGE);
        assertThat(readings).content().startsWith("part,");
    }

    @Test
    void out_isAFolder_exitFour() throws IOException {
        Path plan = put("plan.json", PLAN);
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,40.00\nS1,2,pass\n");
        Run run = run("batch", "--plan", plan, readings, "--out", folder);
        assertThat(run.code()).isEqualTo(ExitCodes.OUTPUT);
        assertThat(run.err()).contains("folder");
    }

    @Test
    void missingFiles_exitThreeByName() {
        Run run = run("batch", "--plan", folder.resolve("none.json"), folder.resolve("none.csv"));
        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err()).contains("none.json");
    }

    @ParameterizedTest
    @CsvSource({
        "first-article, hq-310-p, first-article-hq-310-p, 0, accepted",
        "first-article, hq-310-s, first-article-hq-310-s, 0, accepted",
        "first-article, hq-310-p, first-article-rejected, 1, rejected",
        "first-article, hq-310-p, first-article-incomplete, 1, incomplete",
        "first-article, hq-310-p-guarded, first-article-guarded, 1, inconclusive",
        "first-article, hq-045, first-article-hq-045, 0, accepted",
        "batch, hq-310-p, batch-2207, 0, accepted",
        "batch, hq-310-p, batch-2208, 1, rejected",
        "batch, hq-310-s, batch-2209, 0, accepted",
        "batch, hq-330, batch-2213, 0, accepted",
        "batch, hq-331, batch-2214, 1, rejected",
        "certificate, hq-310-s, batch-2209, 0, accepted",
        "certificate, hq-310-p, batch-2208, 1, rejected"
    })
    void samples_verdictAndExitCode(String command, String plan, String name, int code, String verdict)
            throws IOException {
        Run run = run(
                command,
                "--plan",
                SAMPLES.resolve(plan + ".plan.json"),
                "--job",
                SAMPLES.resolve(name + ".job.json"),
                SAMPLES.resolve(name + ".csv"),
                "--json");
        assertThat(run.err().lines().filter(line -> !line.startsWith("note: "))).isEmpty();
        assertThat(new ObjectMapper().readTree(run.out()).get("verdict").asText())
                .isEqualTo(verdict);
        assertThat(run.code()).isEqualTo(code);
    }
}
