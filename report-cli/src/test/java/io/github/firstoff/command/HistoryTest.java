package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class HistoryTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    Path folder;

    private static Samples.Run history(String number, String... more) {
        List<String> line = new ArrayList<>(List.of(
                "history",
                "--plan",
                Samples.FOLDER.resolve("hq-310-p.plan.json").toString(),
                "--characteristic",
                number,
                Samples.FOLDER.resolve("batch-2207.csv").toString(),
                Samples.FOLDER.resolve("batch-2208.csv").toString()));
        line.addAll(List.of(more));
        return Samples.run(line.toArray(String[]::new));
    }

    @Test
    void theResultFollowsItsSchemaAndTellsWhatTheBatchesTell() throws IOException {
        Samples.Run run = history("1", "--json");
        assertThat(run.code()).as(run.err()).isEqualTo(1);
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(Path.of("..", "docs", "schemas", "history-result.schema.json")))
                        .validate(run.out(), InputFormat.JSON))
                .isEmpty();
        JsonNode batches = MAPPER.readTree(run.out()).get("batches");
        assertThat(batches).hasSize(2);
        for (JsonNode batch : batches) {
            String name = batch.get("file").asText().replace(".csv", "");
            Samples.Run own = Samples.run(
                    "batch",
                    "--plan",
                    Samples.FOLDER.resolve("hq-310-p.plan.json").toString(),
                    "--json",
                    Samples.FOLDER.resolve(name + ".csv").toString());
            JsonNode seat = MAPPER.readTree(own.out()).get("characteristics").get(0);
            for (String key : List.of("count", "nonconforming", "minimum", "maximum", "mean", "verdict")) {
                assertThat(batch.get(key)).as(name + " " + key).isEqualTo(seat.get(key));
            }
            assertThat(batch.get("standardDeviation"))
                    .isEqualTo(seat.get("standardDeviation").get("overall"));
            assertThat(batch.get("control")).isEqualTo(seat.get("chart").get("control"));
        }
        assertThat(batches.get(0).get("batch").asText()).isEqualTo("B-2207");
    }

    @ParameterizedTest
    @CsvSource({"1,a4,en", "1,letter,de", "4,letter,en", "5,a4,de", "19,a4,en", "20,letter,de", "11,a4,en"})
    void itIsOnePage(String number, String paper, String language) throws IOException {
        Path pdf = folder.resolve("history.pdf");
        Samples.Run run = history(number, "--paper", paper, "--language", language, "--out", pdf.toString());
        assertThat(run.code()).as(run.err()).isLessThan(2);
        assertThat(run.err()).doesNotContain("typeface", "too wide", "runs over");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(document))
                    .contains("B-2207", "B-2208", language.equals("de") ? "Verlauf" : "History");
        }
    }

    @Test
    void aCharacteristicThatThePlanDoesNotJudgeIsRefusedWithThoseItDoes() {
        Samples.Run run = history("99");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("--characteristic 99", "1, 2, 3");
    }

    @Test
    void sheetAndTableAreWrittenTogetherOrNotAtAll() throws IOException {
        Path pdf = folder.resolve("history.pdf");
        Path csv = folder.resolve("table.csv");
        String nowhere = Files.createDirectory(folder.resolve("a folder")).toString();
        assertThat(history("1", "--out", pdf.toString(), "--csv", nowhere).code())
                .isEqualTo(4);
        assertThat(history("1", "--out", nowhere, "--csv", csv.toString()).code())
                .isEqualTo(4);
        assertThat(pdf).doesNotExist();
        assertThat(csv).doesNotExist();
    }

    @Test
    void theTableOfBatchesHasTheFiguresOfTheResult() throws IOException {
        Path csv = folder.resolve("table.csv");
        JsonNode batches = MAPPER.readTree(
                        history("5", "--json", "--csv", csv.toString()).out())
                .get("batches");
        List<NamedCsvRecord> rows = rows(csv);
        assertThat(rows).hasSize(batches.size());
        for (int i = 0; i < rows.size(); i++) {
            JsonNode batch = batches.get(i);
            rows.get(i).getFieldsAsMap().forEach((name, field) -> assertSame(name, field, batch.get(name)));
        }
    }

    static Stream<Samples.Sample> samples() {
        return Samples.all();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void theTableOfCharacteristicsHasTheFiguresOfTheResult(Samples.Sample sample) throws IOException {
        Path csv = folder.resolve("table.csv");
        List<String> line = new ArrayList<>(sample.arguments());
        line.addAll(List.of("--json", "--csv", csv.toString()));
        JsonNode characteristics =
                MAPPER.readTree(Samples.run(line.toArray(String[]::new)).out()).get("characteristics");
        List<NamedCsvRecord> rows = rows(csv);
        assertThat(rows).hasSize(characteristics.size());
        for (int i = 0; i < rows.size(); i++) {
            JsonNode told = characteristics.get(i);
            rows.get(i).getFieldsAsMap().forEach((name, field) -> {
                JsonNode found = switch (name) {
                    case "missing" -> told.get("missingCount");
                    case "standardDeviation" -> told.get("standardDeviation").get("overall");
                    case "control" -> told.get("chart").get("control");
                    case "cp", "cpk", "pp", "ppk", "cpm" -> told.get("indices").get(name);
                    default -> told.get(name);
                };
                assertSame(name, field, found);
            });
        }
    }

    private static void assertSame(String name, String field, JsonNode told) {
        if (told == null || told.isNull()) {
            assertThat(field).as(name).isEmpty();
        } else if (told.isNumber()) {
            assertThat(new BigDecimal(field)).as(name).isEqualByComparingTo(new BigDecimal(told.asText()));
        } else {
            boolean guarded = field.startsWith("'");
            assertThat(guarded ? field.substring(1) : field).as(name).isEqualTo(told.asText());
        }
    }

    private static List<NamedCsvRecord> rows(Path csv) throws IOException {
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(csv)) {
            return reader.stream().toList();
        }
    }

    @Test
    void aTextThatASpreadsheetWouldRunStandsBehindAnApostrophe() throws IOException {
        Path plan = folder.resolve("plan.json");
        Files.writeString(
                plan,
                "{\"schema\": \"firstoff-plan-1\", \"part\": {\"number\": \"HQ-9\", \"revision\": \"A\"}, \"unit\": \"mm\","
                        + " \"characteristics\": [{\"number\": \"1\", \"feature\": \"=1+2, \\\"x\\\"\","
                        + " \"requirement\": \"-0.5 ±0.1\"}]}");
        Path readings = folder.resolve("readings.csv");
        Files.writeString(readings, "part,characteristic,value\nA,1,-0.45\n");
        Path csv = folder.resolve("table.csv");
        Samples.run("first-article", "--plan", plan.toString(), readings.toString(), "--csv", csv.toString());
        NamedCsvRecord row = rows(csv).get(0);
        assertThat(row.getField("feature")).isEqualTo("'=1+2, \"x\"");
        assertThat(row.getField("requirement")).isEqualTo("'-0.5 ±0.1");
        assertThat(row.getField("minimum")).isEqualTo("-0.45");
    }

    @Test
    void theTableNeverOverwritesAnInput() {
        String plan = Samples.FOLDER.resolve("hq-310-p.plan.json").toString();
        assertThat(history("1", "--csv", plan).code()).isEqualTo(2);
    }

    @Test
    void sheetAndTableCannotBeOneFile() {
        String both = folder.resolve("both").toString();
        Samples.Run run = history("1", "--out", both, "--csv", both);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("--csv and --out name one file");
        assertThat(Path.of(both)).doesNotExist();
    }

    @Test
    void twentyBatchesStandOnOnePage() throws IOException {
        List<String> line = new ArrayList<>(List.of(
                "history",
                "--plan",
                Samples.FOLDER.resolve("hq-310-p.plan.json").toString(),
                "--characteristic",
                "1"));
        String readings = Files.readString(Samples.FOLDER.resolve("batch-2208.csv"));
        for (int batch = 2301; batch <= 2320; batch++) {
            Path file = folder.resolve("lot-" + batch + ".csv");
            Files.writeString(file, readings.replace("2208-", batch + "-"));
            line.add(file.toString());
        }
        Path sheet = folder.resolve("history.pdf");
        line.addAll(List.of("--out", sheet.toString()));
        Samples.Run run = Samples.run(line.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isEqualTo(1);
        try (PDDocument document = Loader.loadPDF(sheet.toFile())) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(document)).contains("lot-2301", "lot-2320");
        }
    }
}
