package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same readings through every format give byte-identical results, apart from what speaks of the file itself: its name and digest, its
 * rows, and what was found out about it. A format joins by a line in {@link #files}.
 */
class FormatsAgreeTest {
    private static final List<String> OF_THE_FILE = List.of("madeFrom", "intake", "notices");
    private static final String PLAN = """
            { "schema": "firstoff-plan-1", "part": { "number": "HQ-077", "revision": "B" }, "unit": "mm",
              "characteristics": [
                { "number": "1", "feature": "pin diameter", "requirement": "12 0/-0.018",
                  "study": { "chart": "individuals" } },
                { "number": "2", "feature": "length", "requirement": "40 ±0.3" },
                { "number": "3", "feature": "edges", "requirement": "visual: no burrs" } ] }
            """;

    @TempDir
    private Path folder = Path.of("");

    /** Part, characteristic and value, as they are typed: no zero at the end, which a workbook would not keep. */
    private static List<List<String>> readings() {
        Random random = new Random(77);
        List<List<String>> rows = new ArrayList<>();
        for (int i = 1; i <= 40; i++) {
            String part = "S" + i;
            rows.add(List.of(
                    part,
                    "1",
                    String.format(Locale.ROOT, "11.99%02d", random.nextInt(10) * 10 + 1 + random.nextInt(9))));
            rows.add(List.of(
                    part, "2", String.format(Locale.ROOT, "%d.%d", 39 + random.nextInt(2), 1 + random.nextInt(9))));
            rows.add(List.of(part, "3", random.nextInt(9) == 0 ? "fail" : "pass"));
        }
        return rows;
    }

    private static String separated(List<List<String>> rows, String separator, char mark) {
        return rows.stream()
                .map(row -> row.get(0) + separator + row.get(1) + separator
                        + row.get(2).replace('.', mark) + "\n")
                .collect(Collectors.joining("", String.join(separator, "part", "characteristic", "value") + "\n", ""));
    }

    private static String wide(List<List<String>> rows) {
        Map<String, List<String>> pieces = new LinkedHashMap<>();
        rows.forEach(row ->
                pieces.computeIfAbsent(row.get(0), part -> new ArrayList<>()).add(row.get(2)));
        StringBuilder text = new StringBuilder("part;1;2;3\n");
        pieces.forEach((part, values) -> text.append(part)
                .append(';')
                .append(String.join(";", values).replace('.', ','))
                .append('\n'));
        return text.toString();
    }

    private static String objects(List<List<String>> rows, String before, String between, String after) {
        return rows.stream()
                .map(row -> String.format(
                        Locale.ROOT,
                        "{\"part\": \"%s\", \"characteristic\": \"%s\", \"value\": %s}",
                        row.get(0),
                        row.get(1),
                        row.get(1).equals("3") ? '"' + row.get(2) + '"' : row.get(2)))
                .collect(Collectors.joining(between, before, after));
    }

    private static Map<String, byte[]> files(List<List<String>> rows) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("long.csv", separated(rows, ",", '.').getBytes(StandardCharsets.UTF_8));
        files.put("semicolons.csv", separated(rows, ";", ',').getBytes(StandardCharsets.UTF_8));
        files.put("tabs.txt", ("\uFEFF" + separated(rows, "\t", ',')).getBytes(StandardCharsets.UTF_16LE));
        files.put("bars.txt", separated(rows, "|", '.').getBytes(StandardCharsets.UTF_16BE));
        files.put(
                "export.csv",
                ("Prüfprotokoll\nPart number: HQ-077\n\n" + separated(rows, ";", ','))
                        .getBytes(Charset.forName("windows-1252")));
        files.put("wide.csv", wide(rows).getBytes(StandardCharsets.UTF_8));
        files.put("list.json", objects(rows, "{\"readings\": [\n", ",\n", "]}").getBytes(StandardCharsets.UTF_8));
        files.put("lines.jsonl", objects(rows, "", "\n", "\n").getBytes(StandardCharsets.UTF_8));
        files.put("book.xlsx", Workbooks.xlsx(rows));
        files.put("book.ods", Workbooks.ods(rows));
        files.put(
                "bench.txt",
                rows.stream()
                        .map(row -> "item K" + row.get(1) + "\n piece " + row.get(0) + "\n  found "
                                + row.get(2).replace('.', ',') + "\n")
                        .collect(Collectors.joining("", "test bench\n", "end\n"))
                        .getBytes(StandardCharsets.UTF_8));
        return files;
    }

    private static final String MAPPING = """
            { "schema": "firstoff-mapping-1", "layout": "labels", "decimalMark": "comma", "prefix": "K",
              "rows": { "name": "item", "part": "piece", "actual": "found" },
              "skip": [ { "begins": "test bench" }, { "begins": "end" } ] }
            """;

    private String result(Path plan, Path readings) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        List<String> arguments = new ArrayList<>(List.of("batch", "--plan", plan.toString(), "--json"));
        if (readings.toString().endsWith("bench.txt")) {
            arguments.addAll(List.of(
                    "--mapping",
                    Files.writeString(folder.resolve("mapping.json"), MAPPING).toString()));
        }
        arguments.add(readings.toString());
        int code = Firstoff.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                arguments.toArray(String[]::new));
        assertThat(code).as(err.toString(StandardCharsets.UTF_8)).isEqualTo(ExitCodes.NOT_ACCEPTED);
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode result = (ObjectNode) mapper.readTree(out.toString(StandardCharsets.UTF_8));
        assertThat(result.at("/madeFrom/readings").asInt()).isEqualTo(120);
        OF_THE_FILE.forEach(result::remove);
        return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(result);
    }

    @Test
    void everyFormat_givesTheSameResult() throws IOException {
        Path plan = Files.writeString(folder.resolve("plan.json"), PLAN);
        String first = "";
        for (Map.Entry<String, byte[]> file : files(readings()).entrySet()) {
            String result = result(plan, Files.write(folder.resolve(file.getKey()), file.getValue()));
            if (first.isEmpty()) {
                first = result;
                assertThat(first).contains("nonconforming").contains("\"chart\"");
            }
            assertThat(result).as(file.getKey()).isEqualTo(first);
        }
    }
}
