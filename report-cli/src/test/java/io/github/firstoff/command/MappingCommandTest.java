package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code mapping} does what docs/intake.md says, and a mapping that it wrote is carried by the sheets made with it. */
class MappingCommandTest {
    private static final Path PLAN = Path.of("../spc-core/src/test/resources/intake/plan.json");

    @TempDir
    private Path folder = Path.of("");

    private String guide = "";
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @BeforeEach
    void readGuide() throws IOException {
        guide = Files.readString(Path.of("../docs/intake.md"));
    }

    private String block(String name) {
        Matcher matcher =
                Pattern.compile("```" + name + "\n(.*?)```", Pattern.DOTALL).matcher(guide);
        assertThat(matcher.find()).as(name).isTrue();
        return matcher.group(1);
    }

    private int run(String... arguments) {
        out.reset();
        err.reset();
        return Firstoff.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                arguments);
    }

    @Test
    void theProposal_isTheTableOfTheGuide() throws IOException {
        Path cell = Files.writeString(folder.resolve("cell.txt"), block("text cell"));
        Path mapping = folder.resolve("mapping.json");

        int code = run("mapping", cell.toString(), "--plan", PLAN.toString(), "--out", mapping.toString());

        assertThat(code).isEqualTo(ExitCodes.NOT_ACCEPTED);
        assertThat(out.toString(StandardCharsets.UTF_8).replace(mapping.toString(), "mapping.json"))
                .isEqualTo(block("text cell-table"));
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("found \"Datum A\"");
        assertThat(Files.readString(mapping).replace("\"notInPlan\": []", "\"notInPlan\": [\"Datum A\"]"))
                .isEqualTo(block("json cell-mapping"));
    }

    @Test
    void json_saysWhatTheTableSays_asTheSchemaSays() throws IOException {
        Path cell = Files.writeString(folder.resolve("cell.txt"), block("text cell"));
        Path mapping = folder.resolve("mapping.json");

        int code = run("mapping", cell.toString(), "--plan", PLAN.toString(), "--out", mapping.toString(), "--json");

        assertThat(code).isEqualTo(ExitCodes.NOT_ACCEPTED);
        String text = out.toString(StandardCharsets.UTF_8);
        String schema = Files.readString(Path.of("../docs/schemas/mapping-proposal.schema.json"));
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(schema, InputFormat.JSON)
                        .validate(text, InputFormat.JSON))
                .isEmpty();
        ObjectMapper mapper = new ObjectMapper();
        JsonNode json = mapper.readTree(text);
        assertThat(json.get("mapping")).isEqualTo(mapper.readTree(Files.readString(mapping)));
        assertThat(json.get("written").asText()).isEqualTo(mapping.toString());
        assertThat(json.get("unmatchedNames").toString()).isEqualTo("[\"Datum A\"]");
        assertThat(json.get("notFound").findValuesAsText("characteristic")).containsExactly("3");
        assertThat(json.get("intake").toString())
                .isEqualTo("{\"rowsRead\":12,\"used\":10,\"refused\":2,\"explained\":0}");
        List<String> table = block("text cell-table").lines().skip(1).limit(10).toList();
        assertThat(json.get("readings")).hasSize(table.size());
        for (int i = 0; i < table.size(); i++) {
            JsonNode each = json.get("readings").get(i);
            assertThat(table.get(i))
                    .contains(
                            each.get("part").asText(),
                            each.get("name").asText(),
                            each.get("value").asText())
                    .contains(each.get("characteristic").asText() + " "
                            + each.get("feature").asText() + ", "
                            + each.get("requirement").asText())
                    .endsWith(each.get("matchedBy").asText());
        }
        assertThat(json.get("refused").get(0).asText()).contains("Datum A");
    }

    @Test
    void anExampleIsNeverOverwritten_andWithoutOutNothingIsWritten() throws IOException {
        Path cell = Files.writeString(folder.resolve("cell.txt"), block("text cell"));
        assertThat(run("mapping", cell.toString(), "--plan", PLAN.toString(), "--out", cell.toString()))
                .isEqualTo(ExitCodes.USAGE);
        assertThat(Files.readString(cell)).isEqualTo(block("text cell"));
        run("mapping", cell.toString(), "--plan", PLAN.toString());
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("Nothing was written");
        assertThat(folder.toFile().list()).containsExactly("cell.txt");
    }

    @Test
    void aSheetMadeWithAMapping_carriesIt_andIsMadeAgainFromIt() throws IOException {
        Path cell = Files.writeString(folder.resolve("cell.txt"), block("text cell"));
        Path mapping = Files.writeString(folder.resolve("cell.mapping.json"), block("json cell-mapping"));
        Path sheet = folder.resolve("sheet.pdf");

        run(
                "batch",
                "--plan",
                PLAN.toString(),
                "--mapping",
                mapping.toString(),
                "--out",
                sheet.toString(),
                cell.toString());

        assertThat(sheet).exists();
        Files.delete(mapping);
        run("verify", sheet.toString());
        String said = out.toString(StandardCharsets.UTF_8);
        assertThat(said)
                .contains(
                        "3 files that it carries are",
                        "the same file to the last byte",
                        "Everything that was checked holds.");
    }

    @Test
    void aSheetOfAWorkbook_isMadeAgainWithTheSameSheet() throws IOException {
        Path book = Files.write(
                folder.resolve("lot.xlsx"),
                Workbooks.xlsx(
                        List.of("part", "characteristic", "value"),
                        List.of(List.of("S001", "2", "12.51"), List.of("S001", "9", "pass"))));
        Path sheet = folder.resolve("sheet.pdf");
        run("batch", "--plan", PLAN.toString(), "--sheet", "Lot", "--out", sheet.toString(), book.toString());
        assertThat(err.toString(StandardCharsets.UTF_8)).doesNotContain("Exception");
        assertThat(sheet).exists();
        run("verify", sheet.toString());
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("Everything that was checked holds.");
    }
}
