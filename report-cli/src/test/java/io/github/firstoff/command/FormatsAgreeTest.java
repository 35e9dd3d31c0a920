package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.firstoff.intake.PlanFile;
import io.github.firstoff.intake.ReadingFiles;
import io.github.firstoff.intake.ReadingFormat;
import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
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

    /** A row for a piece: its name and what its characteristics are, in their order. */
    private static List<List<String>> pieces(List<List<String>> rows) {
        Map<String, List<String>> pieces = new LinkedHashMap<>();
        rows.forEach(row -> pieces.computeIfAbsent(row.get(0), part -> new ArrayList<>(List.of(part)))
                .add(row.get(2)));
        return List.copyOf(pieces.values());
    }

    private static String wide(List<List<String>> rows) {
        return pieces(rows).stream()
                .map(piece -> String.join(";", piece).replace('.', ',') + "\n")
                .collect(Collectors.joining("", "part;1;2;3\n", ""));
    }

    private static String wideObjects(List<List<String>> rows, String before, String between, String after) {
        return pieces(rows).stream()
                .map(piece -> String.format(
                        Locale.ROOT, "{\"part\": \"%s\", \"1\": %s, \"2\": %s, \"3\": \"%s\"}", piece.toArray()))
                .collect(Collectors.joining(between, before, after));
    }

    /** A document of ISO 23952 (QIF 3.0) with characteristics and results, the balloon as designator. */
    private static String qif(List<List<String>> rows) {
        List<String> kinds = List.of("Diameter", "Length", "UserDefinedAttribute");
        StringBuilder text =
                new StringBuilder("<QIFDocument xmlns=\"http://qifstandards.org/xsd/qif3\" versionQIF=\"3.0.0\">"
                        + "<QPId>8C1E4A70-31B0-4C51-9D0E-0077C0000001</QPId><FileUnits><PrimaryUnits><LinearUnit><UnitName>mm"
                        + "</UnitName></LinearUnit></PrimaryUnits></FileUnits><Characteristics>");
        for (String list : List.of("Definition", "Nominal", "Item")) {
            text.append("<Characteristic" + list + "s n=\"3\">");
            for (int i = 1; i <= kinds.size(); i++) {
                String name = kinds.get(i - 1) + "Characteristic" + list;
                text.append(
                        switch (list) {
                            case "Definition" -> "<" + name + " id=\"1" + i + "\"/>";
                            case "Nominal" ->
                                "<" + name + " id=\"2" + i + "\"><CharacteristicDefinitionId>1" + i
                                        + "</CharacteristicDefinitionId></" + name + ">";
                            default ->
                                "<" + name + " id=\"3" + i + "\"><CharacteristicDesignator><Designator>" + i
                                        + "</Designator></CharacteristicDesignator><CharacteristicNominalId>2" + i
                                        + "</CharacteristicNominalId></" + name + ">";
                        });
            }
            text.append("</Characteristic" + list + "s>");
        }
        text.append("</Characteristics><Results><MeasurementResultsSet n=\"1\">");
        int id = 1000;
        for (List<String> piece : pieces(rows)) {
            text.append("<MeasurementResults id=\"" + id++
                    + "\"><MeasuredCharacteristics><CharacteristicMeasurements n=\"3\">");
            for (int i = 1; i <= kinds.size(); i++) {
                String value = piece.get(i);
                String name = kinds.get(i - 1) + "CharacteristicMeasurement";
                String status = value.equals("pass") ? "PASS" : value.equals("fail") ? "FAIL" : "NOT_ANALYZED";
                text.append("<" + name + " id=\"" + id++ + "\"><Status><CharacteristicStatusEnum>" + status
                        + "</CharacteristicStatusEnum></Status><CharacteristicItemId>3" + i + "</CharacteristicItemId>"
                        + (i == 3 ? "" : "<Value>" + value + "</Value>") + "</" + name + ">");
            }
            text.append("</CharacteristicMeasurements></MeasuredCharacteristics><ActualComponentIds n=\"1\"><Id>9"
                    + piece.get(0).substring(1) + "</Id></ActualComponentIds></MeasurementResults>");
        }
        text.append("</MeasurementResultsSet><ActualComponentSets n=\"1\"><ActualComponentSet n=\"1\">");
        pieces(rows)
                .forEach(piece ->
                        text.append("<ActualComponent id=\"9" + piece.get(0).substring(1) + "\"><SerialNumber>"
                                + piece.get(0) + "</SerialNumber></ActualComponent>"));
        return text.append("</ActualComponentSet></ActualComponentSets></Results></QIFDocument>")
                .toString();
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
        List<String> named = List.of("part", "characteristic", "value");
        files.put("book.xlsx", Workbooks.xlsx(named, rows));
        files.put("book.ods", Workbooks.ods(named, rows));
        files.put("wide.xlsx", Workbooks.xlsx(List.of("part", "1", "2", "3"), pieces(rows)));
        files.put("wide.ods", Workbooks.ods(List.of("part", "1", "2", "3"), pieces(rows)));
        files.put("wide.json", wideObjects(rows, "[", ",\n", "]").getBytes(StandardCharsets.UTF_8));
        files.put("wide.jsonl", wideObjects(rows, "", "\n", "\n").getBytes(StandardCharsets.UTF_8));
        files.put("results.qif", qif(rows).getBytes(StandardCharsets.UTF_8));
        files.put(
                "columns.txt",
                rows.stream()
                        .map(row -> String.format(Locale.ROOT, "K%-9s%10s   %s%n", row.get(1), row.get(2), row.get(0)))
                        .collect(Collectors.joining())
                        .getBytes(StandardCharsets.UTF_8));
        files.put(
                "parted.txt",
                rows.stream()
                        .map(row -> row.get(0) + "|K" + row.get(1) + "|"
                                + row.get(2).replace('.', ',') + "\n")
                        .collect(Collectors.joining())
                        .getBytes(StandardCharsets.UTF_8));
        files.put(
                "bench.txt",
                rows.stream()
                        .map(row -> "item K" + row.get(1) + "\n piece " + row.get(0) + "\n  found "
                                + row.get(2).replace('.', ',') + "\n")
                        .collect(Collectors.joining("", "test bench\n", "end\n"))
                        .getBytes(StandardCharsets.UTF_8));
        return files;
    }

    private static final Map<String, String> MAPPINGS = Map.of("bench.txt", """
            { "schema": "firstoff-mapping-1", "layout": "labels", "decimalMark": "comma", "prefix": "K",
              "rows": { "name": "item", "part": "piece", "actual": "found" },
              "skip": [ { "begins": "test bench" }, { "begins": "end" } ] }
            """, "columns.txt", """
            { "schema": "firstoff-mapping-1", "layout": "columns", "prefix": "K",
              "rows": { "name": "1-10", "actual": "11-20", "part": "21-40" } }
            """, "parted.txt", """
            { "schema": "firstoff-mapping-1", "layout": "delimited", "delimiter": "bar", "decimalMark": "comma", "prefix": "K",
              "rows": { "part": 1, "name": 2, "actual": 3 } }
            """);

    private String result(Path plan, Path readings) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("batch", "--plan", plan.toString(), "--json"));
        String mapping = MAPPINGS.get(readings.getFileName().toString());
        if (mapping != null) {
            arguments.addAll(List.of(
                    "--mapping",
                    Files.writeString(folder.resolve("mapping.json"), mapping).toString()));
        }
        arguments.add(readings.toString());
        Samples.Run run = Samples.run(arguments.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        ObjectNode result = (ObjectNode) run.json();
        assertThat(result.at("/madeFrom/readings").asInt()).isEqualTo(120);
        OF_THE_FILE.forEach(result::remove);
        return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(result);
    }

    @Test
    void everyFormat_givesTheSameResult() throws IOException {
        Path plan = Files.writeString(folder.resolve("plan.json"), PLAN);
        String first = "";
        Set<ReadingFormat> read = EnumSet.noneOf(ReadingFormat.class);
        for (Map.Entry<String, byte[]> file : files(readings()).entrySet()) {
            String result = result(plan, Files.write(folder.resolve(file.getKey()), file.getValue()));
            if (first.isEmpty()) {
                first = result;
                assertThat(first).contains("nonconforming").contains("\"chart\"");
            }
            assertThat(result).as(file.getKey()).isEqualTo(first);
            read.add(
                    MAPPINGS.containsKey(file.getKey())
                            ? ReadingFormat.MAPPED
                            : ReadingFiles.read(PlanFile.read(plan).resolve(), List.of(folder.resolve(file.getKey())))
                                    .files()
                                    .get(0)
                                    .format());
        }
        assertThat(read)
                .as("a format that joins must stand here too")
                .containsExactlyInAnyOrder(ReadingFormat.values());
    }
}
