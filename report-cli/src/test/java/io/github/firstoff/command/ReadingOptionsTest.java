package io.github.firstoff.command;

import static io.github.firstoff.proof.Samples.run;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.firstoff.proof.Samples.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every command that reads readings reads them in the same ways, and says so in the same words. */
class ReadingOptionsTest {
    private static final Path SAMPLES = Path.of("../sample-measurements");
    private static final String OPTIONS = "--decimal-mark|--sheet|--mapping";

    private static final List<String> LONG = List.of("part", "characteristic", "value");

    @TempDir
    private Path folder = Path.of("");

    private Path put(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void theOptions_areExplainedInTheSameWordsEverywhere() {
        Map<String, List<String>> words = new LinkedHashMap<>();
        for (String command : List.of("first-article", "batch", "certificate", "history", "drift", "fit")) {
            Matcher option = Pattern.compile("(?m)^ +(?:" + OPTIONS + ")=.*(?:\\R {10,}[^-\\s].*)*")
                    .matcher(run(command, "--help").out());
            words.put(
                    command,
                    option.results()
                            .map(each -> each.group().replaceAll("\\s+", " "))
                            .toList());
        }
        assertThat(words.get("batch")).hasSize(3);
        assertThat(words.values()).allSatisfy(each -> assertThat(each).isEqualTo(words.get("batch")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"first-article", "batch", "certificate", "history", "drift"})
    void openNumbersMachineTextsAndWorkbooks_areReadByEachCommand(String command) throws IOException {
        Path plan = put("plan.json", """
                { "schema": "firstoff-plan-1", "part": { "number": "HQ-077", "revision": "B" }, "unit": "mm",
                  "characteristics": [ { "number": "1", "feature": "pin diameter", "requirement": "12 0/-0.018" } ] }
                """);
        Path job = put("job.json", """
                { "schema": "firstoff-job-1", "issuer": { "name": "Hollin Quay Deck Gear" }, "customer": { "name": "Marrow Bay Yachts" },
                  "order": "MB-1", "batch": "B1", "quantity": 30 }
                """);
        StringBuilder open = new StringBuilder("part;1\n");
        StringBuilder lines = new StringBuilder();
        StringBuilder table = new StringBuilder("part,1\n");
        for (int i = 0; i < 30; i++) {
            String value = String.format(java.util.Locale.ROOT, "11,%03d", 986 + (i * 7) % 5 + i / 10);
            open.append("S" + i + ";" + value + "\n");
            lines.append("S" + i + "  pin  " + value + "\n");
            table.append("S" + i + "," + value.replace(',', '.') + "\n");
        }
        Path mapping = put("m.json", """
                { "schema": "firstoff-mapping-1", "layout": "delimited", "delimiter": "spaces", "decimalMark": "comma",
                  "rows": { "part": 1, "name": 2, "actual": 3 }, "names": { "pin": "1" } }
                """);
        String asText = run(with(command, plan, job, put("lot.csv", table.toString()), "--json"))
                .out();
        assertThat(asText).contains("\"command\"");

        Run stated =
                run(with(command, plan, job, put("lot.csv", open.toString()), "--json", "--decimal-mark", "comma"));
        assertThat(judged(stated.out())).as(stated.err()).isEqualTo(judged(asText));
        Run mapped = run(with(command, plan, job, put("lot.csv", lines.toString()), "--json", "--mapping", mapping));
        assertThat(judged(mapped.out())).as(mapped.err()).isEqualTo(judged(asText));
        Path workbook = folder.resolve("lot.xlsx");
        Files.write(
                workbook,
                Workbooks.xlsx(
                        LONG,
                        table.toString()
                                .lines()
                                .skip(1)
                                .map(line -> List.of(line.split(",", -1)[0], "1", line.split(",", -1)[1]))
                                .toList()));
        assertThat(judged(run(with(command, plan, job, workbook, "--json", "--sheet", "Lot"))
                        .out()))
                .isEqualTo(judged(asText));
        Run other = run(with(command, plan, job, workbook, "--sheet", "Other"));
        assertThat(other.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(other.err()).contains("\"Lot\"");
    }

    private static Object[] with(String command, Path plan, Path job, Object... more) {
        List<Object> arguments = new java.util.ArrayList<>(List.of(command, "--plan", plan));
        if (command.equals("history")) {
            arguments.addAll(List.of("--characteristic", "1"));
        } else {
            arguments.addAll(List.of("--job", job));
        }
        arguments.addAll(Arrays.asList(more));
        return arguments.toArray();
    }

    /** The result without what speaks of the files and of how they were read. */
    private static String judged(String json) throws IOException {
        JsonNode tree = new ObjectMapper().readTree(json);
        for (String key : List.of("madeFrom", "intake", "notices", "made")) {
            ((ObjectNode) tree).remove(key);
        }
        // A history names the file of each batch.
        return tree.toString().replace("\"lot.xlsx\"", "\"lot.csv\"");
    }

    @Test
    void sizesForAPressFit_areReadFromMachineTextsAndWorkbooksToo() throws IOException {
        Path assembly = SAMPLES.resolve("pawl-bush-p.assembly.json");
        Path bores = SAMPLES.resolve("pawl-bush-p.bores.csv");
        String table = Files.readString(bores);
        Run plain = run("fit", assembly, "--bores", bores, "--json");
        assertThat(plain.out()).isNotEmpty();
        Path workbook = folder.resolve("bores.xlsx");
        Files.write(
                workbook,
                Workbooks.xlsx(
                        LONG,
                        table.lines()
                                .skip(1)
                                .map(line ->
                                        List.of(line.split(",", -1)[0], line.split(",", -1)[2], line.split(",", -1)[3]))
                                .toList()));
        Run sheet = run("fit", assembly, "--bores", workbook, "--sheet", "Lot", "--json");
        assertThat(judged(sheet.out())).as(sheet.err()).isEqualTo(judged(plain.out()));
        StringBuilder lines = new StringBuilder();
        table.lines()
                .skip(1)
                .map(line -> line.split(",", -1))
                .forEach(line -> lines.append(line[0] + ";seat;25,00;" + line[3].replace('.', ',') + ";+0,021;0\n")
                        .append(line[0] + ";depth;12,0;12,01;0,1;0,1\n"));
        Path mapping = put("m.json", """
                { "schema": "firstoff-mapping-1", "layout": "delimited", "delimiter": "semicolon", "decimalMark": "comma",
                  "rows": { "part": 1, "name": 2, "nominal": 3, "actual": 4, "upperTolerance": 5, "lowerTolerance": 6 },
                  "names": { "seat": "7" }, "notInPlan": ["depth"] }
                """);
        Run mapped =
                run("fit", assembly, "--bores", put("bores.txt", lines.toString()), "--mapping", mapping, "--json");
        assertThat(judged(mapped.out())).as(mapped.err()).isEqualTo(judged(plain.out()));
        assertThat(run("fit", assembly, "--bores", workbook, "--sheet", "Rings").code())
                .isEqualTo(ExitCodes.INPUT);
    }
}
