package io.github.firstoff.command;

import static io.github.firstoff.proof.Samples.run;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.firstoff.proof.Samples.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command {@code drift} from the command line to the printed sheet, the JSON result and the lines of a file that grows. */
class DriftCommandTest {
    private static final Path SAMPLES = Path.of("..", "sample-measurements");
    private static final String PLAN = """
            {"schema": "firstoff-plan-1", "part": {"number": "HQ-340-P", "revision": "A", "hand": "port"}, "unit": "mm",
             "characteristics": [
              {"number": "1", "feature": "bearing bore", "requirement": "52 ±0.03"},
              {"number": "2", "feature": "spigot", "requirement": "60 ±0.03"},
              {"number": "3", "feature": "edges", "requirement": "visual: no burrs"},
              {"number": "4", "feature": "relief", "requirement": "(5)"}]}
            """;

    @TempDir
    private Path folder;

    private Run drift(Object... more) throws IOException {
        List<String> arguments = new ArrayList<>(
                List.of("drift", "--plan", put("plan.json", PLAN).toString()));
        Arrays.stream(more).map(Object::toString).forEach(arguments::add);
        return run(arguments.toArray(String[]::new));
    }

    private Path put(String name, String content) throws IOException {
        return Files.writeString(folder.resolve(name), content);
    }

    private static String sample(String name) {
        return SAMPLES.resolve(name).toString();
    }

    private static void valid(JsonNode json) throws IOException {
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(Path.of("..", "docs", "schemas", "drift-result.schema.json")))
                        .validate(json.toString(), InputFormat.JSON))
                .isEmpty();
    }

    /** Readings that climb by {@code slope} micrometres a piece about a fixed pattern of a few micrometres. */
    private static String readings(String characteristic, int from, int to, double base, double slope) {
        StringBuilder rows = new StringBuilder();
        for (int i = from; i <= to; i++) {
            double value = base + (slope * i + ((i * 7 + i / 3) % 5) - 2) / 1000;
            rows.append(String.format(Locale.ROOT, "P%03d,%s,%.4f%n", i, characteristic, value));
        }
        return rows.toString().replace(System.lineSeparator(), "\n");
    }

    private static final String HEAD = "part,characteristic,value\n";

    /** Two tool changes and an offset; by its making the bore loses 0.3 µm a piece, and the last bar stands 3.4 µm over it at the end. */
    @Test
    void sample_isForecastAndAdvised() throws IOException {
        Path sheet = folder.resolve("drift.pdf");
        Run run = run(
                "drift",
                "--plan",
                sample("hq-340-p.plan.json"),
                "--job",
                sample("batch-2216.job.json"),
                sample("batch-2216.csv"),
                "--out",
                sheet.toString(),
                "--json");
        assertThat(run.code()).isZero();
        JsonNode json = run.json();
        valid(json);
        JsonNode bore = json.get("characteristics").get(0);
        assertThat(bore.get("number").asText()).isEqualTo("1");
        assertThat(bore.get("segments")).hasSize(4);
        assertThat(bore.get("segments").findValuesAsText("from")).containsExactly("1", "57", "86", "113");
        for (JsonNode segment : bore.get("segments")) {
            assertThat(segment.get("slopeInterval").get(0).asDouble()).isLessThan(-0.0003);
            assertThat(segment.get("slopeInterval").get(1).asDouble()).isGreaterThan(-0.00032);
        }
        // as made: −14.5 − 0.3·(x − 113) − 3·1.3 reaches −39 + 1.6 at piece 179.7
        JsonNode forecast = bore.get("forecast");
        assertThat(forecast.get("interval").get(0).asDouble()).isLessThan(179.7);
        assertThat(forecast.get("interval").get(1).asDouble()).isGreaterThan(179.7);
        assertThat(forecast.get("limit").asText()).isEqualTo("51.9626");
        assertThat(bore.get("advice").get("offset").asDouble()).isCloseTo(0.002, within(1e-12));
        assertThat(bore.get("attention").asText()).isEqualTo("ahead");
        JsonNode spigot = json.get("characteristics").get(1);
        assertThat(spigot.get("forecast").get("piece").isNull()).isTrue();
        assertThat(spigot.get("forecast").get("reason").asText()).contains("not distinguishable from none");
        try (PDDocument document = Loader.loadPDF(sheet.toFile())) {
            String text = new PDFTextStripper().getText(document);
            assertThat(text)
                    .contains("+0.002")
                    .contains("piece " + forecast.get("piece").asInt())
                    .contains("less guard band 51.9626")
                    .contains("What it does not say")
                    .contains("Caution");
            assertThat(document.getNumberOfPages()).isEqualTo(3);
        }
    }

    @Test
    void guidesExample_isWhatTheCommandPrints() throws IOException {
        Run run = run(
                "drift",
                "--plan",
                sample("hq-340-p.plan.json"),
                "--job",
                sample("batch-2216.job.json"),
                sample("batch-2216.csv"),
                "--characteristic",
                "1");
        assertThat(Files.readString(Path.of("..", "docs", "drift.md"))).contains(run.out());
    }

    @Test
    void changePoints_areDetectedWhereNoColumnStatesThem() throws IOException {
        Path file =
                put("batch.csv", HEAD + readings("1", 1, 40, 51.985, 0.5) + readings("1", 41, 80, 51.985 - 0.020, 0.5));
        JsonNode json = drift(file, "--json").json();
        valid(json);
        JsonNode segments = json.get("characteristics").get(0).get("segments");
        assertThat(segments).hasSize(2);
        assertThat(segments.get(1).get("from").asInt()).isBetween(40, 42);
        assertThat(segments.get(1).get("start").asText()).isEqualTo("detected");
        assertThat(segments.get(1).get("evidence").get("significance").asDouble())
                .isLessThan(0.01);
    }

    @Test
    void batches_areStudiedApart_theMostUrgentFirst_unlessAskedOtherwise() throws IOException {
        Path slow = put("slow.csv", HEAD + readings("1", 1, 40, 51.985, 0.2));
        Path fast = put("fast.csv", HEAD + readings("1", 41, 80, 51.96, 0.6));
        JsonNode apart = drift(slow, fast, "--json").json();
        assertThat(apart.get("characteristics").findValuesAsText("batch")).containsExactly("fast.csv", "slow.csv");
        assertThat(apart.get("characteristics")
                        .get(0)
                        .get("segments")
                        .get(0)
                        .get("from")
                        .asInt())
                .isEqualTo(1);
        JsonNode together = drift(slow, fast, "--across-batches", "--json").json();
        assertThat(together.get("characteristics")).hasSize(1);
        assertThat(together.get("characteristics").get(0).get("count").asInt()).isEqualTo(80);
    }

    @Test
    void oneInFive_countsAllPieces() throws IOException {
        Path file = put("batch.csv", HEAD + readings("1", 1, 30, 51.98, 0.5));
        JsonNode each = drift(file, "--json").json().get("characteristics").get(0);
        JsonNode fifth = drift(file, "--every", "5", "--json")
                .json()
                .get("characteristics")
                .get(0);
        assertThat(fifth.get("segments").get(0).get("to").asInt()).isEqualTo(146);
        assertThat(fifth.get("segments").get(0).get("slope").asDouble())
                .isCloseTo(each.get("segments").get(0).get("slope").asDouble() / 5, within(1e-12));
    }

    @Test
    void referenceDimension_hasASlopeAndNoForecast() throws IOException {
        Path file = put("batch.csv", HEAD + readings("4", 1, 30, 5, 0.5));
        Run run = drift(file, "--characteristic", "4", "--json");
        JsonNode forecast = run.json().get("characteristics").get(0).get("forecast");
        assertThat(forecast.get("reason").asText()).contains("no upper limit");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--characteristic 9|2|the plan has no such characteristic; it has 1 (bearing bore)",
                "--characteristic #01|2|did you mean 1 (bearing bore)?",
                "--characteristic BORE|2|did you mean 1 (bearing bore)?",
                "--characteristic 3|3|characteristic 3 (edges) cannot be followed: it is pass or fail",
                "--characteristic 2|3|it has 1 reading in batch.csv (line 22); a line needs at least 3",
                "--every 0|2|one piece in at least 1",
                "--sigma -1|2|standard deviations",
                "--index 0|2|required index",
                "--increment 0|2|an increment is above 0",
                "--stop-on-signal|2|need --follow FILE",
                "--until-idle 5|2|need --follow FILE"
            })
    void badInput_isAnError_thatSaysWhatAndWhere(String options, int code, String message) throws IOException {
        Path file = put("batch.csv", HEAD + readings("1", 1, 20, 51.98, 0.5) + "P001,2,60.001\nP001,3,pass\n");
        List<Object> arguments = new ArrayList<>(List.of(file));
        arguments.addAll(List.of(options.split(" ")));
        Run run = drift(arguments.toArray());
        assertThat(run.err()).contains(message).doesNotContain("Exception");
        assertThat(run.code()).isEqualTo(code);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void samplesOfOne_andNothingMeasured_areErrors() throws IOException {
        Run one = drift(put("one.csv", HEAD + "P001,1,52.001\n"));
        assertThat(one.code()).isEqualTo(3);
        assertThat(one.err()).contains("1 has 1 reading in one.csv (line 2)").contains("; 2 and 4 were not measured;");
        Run none = drift();
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.err()).contains("READINGS are missing");
        Run bad = drift(put("bad.csv", HEAD + "P001,1,forty\n"));
        assertThat(bad.code()).isEqualTo(3);
        assertThat(bad.err()).contains("bad.csv:2");
    }

    @Test
    void readingOutOfTolerance_isNotAccepted_andComesFirst() throws IOException {
        Path file = put(
                "batch.csv",
                HEAD + readings("1", 1, 30, 52, 0) + readings("2", 1, 30, 60, 0).replaceFirst("60\\.0\\d+", "60.0310"));
        Run run = drift(file, "--json");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.json().get("verdict").asText()).isEqualTo("rejected");
        assertThat(run.json().get("characteristics").get(0).get("number").asText())
                .isEqualTo("2");
    }

    @Test
    void follow_tellsEachSubgroupAsItComes_andEndsWhenNothingComes() throws Exception {
        Path file = put("live.csv", HEAD + readings("1", 1, 12, 51.985, 0.5));
        CompletableFuture<Run> running = CompletableFuture.supplyAsync(() -> {
            try {
                return drift("--follow", file, "--until-idle", "2", "--characteristic", "1");
            } catch (IOException fault) {
                throw new java.io.UncheckedIOException(fault);
            }
        });
        Thread.sleep(1200);
        // a row by halves is waited for
        Files.writeString(file, readings("1", 13, 22, 51.985, 0.5) + "P023,1,51.9", StandardOpenOption.APPEND);
        Thread.sleep(700);
        Files.writeString(file, "97\n", StandardOpenOption.APPEND);
        Run run = running.get();
        assertThat(run.code()).isZero();
        List<String> lines =
                run.out().lines().filter(line -> line.contains(": subgroup ")).toList();
        assertThat(lines).hasSize(4);
        assertThat(lines.get(1))
                .startsWith("1 bearing bore: subgroup 2, pieces 6 to 10, mean 51.98")
                .contains("at piece ");
        assertThat(lines.get(3)).contains("pieces 16 to 20").contains("left");
        assertThat(run.err()).isEmpty();
    }

    /** Whatever was asked stands in the manifest, or the study could not be made again. */
    @Test
    void verify_ofAStudyWithEveryChoice_makesItAgain() throws IOException {
        Path one = put("one.csv", HEAD + readings("1", 1, 30, 51.985, 0.5) + readings("2", 1, 30, 60, 0));
        Path two = put("two.csv", HEAD + readings("1", 31, 60, 51.97, 0.5));
        Path pdf = folder.resolve("drift.pdf");
        Run run = drift(
                one,
                two,
                "--characteristic",
                "1",
                "--characteristic",
                "2",
                "--every",
                "5",
                "--sigma",
                "2.7",
                "--index",
                "1.1",
                "--increment",
                "0.002",
                "--across-batches",
                "--decimal-mark",
                "point",
                "--paper",
                "letter",
                "--out",
                pdf);
        assertThat(pdf).as(run.err()).exists();
        Run verified = run("verify", pdf.toString());
        assertThat(verified.out()).contains("the same file to the last byte");
        assertThat(verified.code()).isZero();
    }

    /** The sheet carries the file as it was at the last look: whole lines. */
    @Test
    void verify_ofAFileThatWasFollowed_takesItAsItWas() throws IOException {
        Path file = put("live.csv", HEAD + readings("1", 1, 30, 51.985, 0.5) + "P031,1,51.9");
        Path pdf = folder.resolve("drift.pdf");
        Run run = drift("--follow", file, "--until-idle", "1", "--out", pdf);
        assertThat(pdf).as(run.err()).exists();
        Files.writeString(file, "70\nP032,1,51.971\n", StandardOpenOption.APPEND);
        Run verified = run("verify", pdf.toString());
        assertThat(verified.out()).contains("All 30 readings").contains("the same file to the last byte");
        assertThat(verified.code()).isZero();
    }

    @Test
    void stopOnSignal_endsTheMomentATestFires() throws Exception {
        String jump = "P031,1,52.0250\n";
        Path file =
                put("live.csv", HEAD + readings("1", 1, 30, 51.985, 0.5) + jump + readings("1", 32, 60, 51.985, 0.5));
        Run run = drift("--follow", file, "--stop-on-signal", "--until-idle", "30");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).contains("signal at piece 31 (P031, line 32): western-electric-1");
    }

    @Test
    void follow_withJson_keepsStandardOutputOneDocument() throws Exception {
        Path file = put("live.csv", HEAD + readings("1", 1, 20, 51.985, 0.5));
        Run run = drift("--follow", file, "--until-idle", "1", "--subgroup", "10", "--json");
        valid(run.json());
        assertThat(run.err()).contains("1 bearing bore: subgroup 2, pieces 11 to 20");
    }

    @Test
    void follow_ofAFileThatNeverComes_saysSo() throws Exception {
        Run run = drift("--follow", folder.resolve("never.csv"), "--until-idle", "1");
        assertThat(run.code()).isEqualTo(3);
        assertThat(run.err()).contains("no readings came");
    }
}
