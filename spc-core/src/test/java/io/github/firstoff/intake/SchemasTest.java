package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import com.networknt.schema.dialect.DialectId;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The published schemas say the same as the readers, and hold for the files that lie beside the tests and in the samples. */
class SchemasTest {
    private static final Path SCHEMAS = Path.of("../docs/schemas");
    private static final Path INTAKE = Path.of("src/test/resources/intake");
    private static final Path MIRROR = Path.of("src/test/resources/intake-mirror/starboard.plan.json");
    private static final Path RESULTS = Path.of("src/test/resources/schemas");
    private static final Path SAMPLES = Path.of("../sample-measurements");
    private static final SchemaRegistry REGISTRY =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static Schema schema(String name) throws IOException {
        return REGISTRY.getSchema(Files.readString(SCHEMAS.resolve(name + ".schema.json")));
    }

    private static List<String> errors(String schema, String document) throws IOException {
        return schema(schema).validate(document, InputFormat.JSON).stream()
                .map(Error::toString)
                .toList();
    }

    private static List<String> errors(String schema, Path document) throws IOException {
        return errors(schema, Files.readString(document));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"plan", "job", "readings", "result", "assembly", "mapping", "stack", "fit-result", "stack-result"
            })
    void aSchema_isItselfOfTheEditionItNames(String name) throws IOException {
        String text = Files.readString(SCHEMAS.resolve(name + ".schema.json"));
        Schema edition = REGISTRY.getSchema(SchemaLocation.of(DialectId.DRAFT_2020_12));

        assertThat(edition.validate(text, InputFormat.JSON)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"plan, plan.json", "plan, plan-full.json", "job, job.json"})
    void filesThatTheReadersAccept_areValid(String schema, String file) throws IOException {
        assertThat(errors(schema, INTAKE.resolve(file))).isEmpty();
    }

    @Test
    void aMirrorImage_isValidAndMayHoldNothingOfItsOwn() throws IOException {
        assertThat(errors("plan", MIRROR)).isEmpty();
        assertThat(errors("plan", MIRROR.resolveSibling("port.plan.json"))).isEmpty();
        String mirror = Files.readString(MIRROR);
        assertThat(errors("plan", mirror.replace("\"mirrorAxis\"", "\"unit\": \"mm\", \"mirrorAxis\"")))
                .isNotEmpty();
        assertThat(errors("plan", mirror.replace("\"mirrorAxis\": \"x\"", "\"mirrorAxis\": \"w\"")))
                .isNotEmpty();
        assertThat(errors("plan", mirror.replace("\"hand\": \"starboard\", ", "")))
                .isNotEmpty();
    }

    @Test
    void samples_areValid() throws IOException {
        try (Stream<Path> files = Files.list(SAMPLES)) {
            List<Path> documents =
                    files.filter(file -> file.toString().endsWith(".json")).toList();
            assertThat(documents).hasSizeGreaterThan(8);
            for (Path document : documents) {
                // the name of a sample says its kind: hq-310-p.plan.json
                String[] name = document.getFileName().toString().split("\\.", -1);
                String schema = name[name.length - 2];
                assertThat(errors(schema, document)).as(document.toString()).isEmpty();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "schema-missing",
                "schema-newer",
                "part-missing",
                "part-a-text",
                "revision-missing",
                "revision-null",
                "hand-unknown",
                "unit-unknown",
                "unit-missing",
                "decision-rule",
                "characteristics-missing",
                "characteristics-empty",
                "characteristics-not-objects",
                "number-a-list",
                "feature-blank",
                "class-unknown",
                "coverage-factor-alone",
                "numbers",
                "nan-as-text",
                "date",
                "chart-unknown",
                "chart-missing",
                "subgroup",
                "form-unknown",
                "inspect",
                "repeated",
                "rule-without-a-name",
                "rule-a-list",
                "comparison-unknown",
                "settings-a-text",
                "settings-blank",
                "at-incomplete",
                "axis-unknown",
                "classes",
                "temperature-empty",
                "budget-shapes",
                "budget-contradictions",
                "mirror-axis-alone",
                "mirror-not-a-file"
            })
    void plansThatTheReaderRefusesForTheirForm_areInvalid(String fault) throws IOException {
        assertThat(errors("plan", INTAKE.resolve("plan-invalid-" + fault + ".json")))
                .isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "schema-of-a-plan",
                "quantity",
                "quantity-zero",
                "date",
                "kind",
                "kind-missing",
                "firm-without-name",
                "materials-an-object",
                "inspector-a-text"
            })
    void jobsThatTheReaderRefusesForTheirForm_areInvalid(String fault) throws IOException {
        assertThat(errors("job", INTAKE.resolve("job-invalid-" + fault + ".json")))
                .isNotEmpty();
    }

    @Test
    void readingsInBothForms_areValid() throws IOException {
        assertThat(errors(
                        "readings",
                        "[{\"part\": \"S1\", \"characteristic\": 2, \"value\": 12.5, \"time\": \"2026-11-20T08:15\"}]"))
                .isEmpty();
        assertThat(
                        errors(
                                "readings",
                                "{\"schema\": \"firstoff-readings-1\", \"partNumber\": \"HQ-310-P\", \"readings\": [{\"part\": \"S1\", \"2\": 12.5, \"9\": \"pass\"}]}"))
                .isEmpty();
        assertThat(
                        errors(
                                "readings",
                                "[{\"part\": \"S1\", \"characteristic\": 1, \"x\": 12.5, \"y\": \"-30\", \"temperature\": 23}]"))
                .isEmpty();
        assertThat(errors("readings", "[{\"part\": \"S1\", \"characteristic\": 1, \"x\": 12.5}]"))
                .isNotEmpty();
        assertThat(errors("readings", "[{\"part\": \"S1\", \"characteristic\": 1}]"))
                .isNotEmpty();
        for (String fault :
                List.of("no-list", "list-a-text", "empty-list", "schema", "not-objects", "part-an-object")) {
            assertThat(errors("readings", INTAKE.resolve("readings-invalid-" + fault + ".json")))
                    .as(fault)
                    .isNotEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"result-batch.json", "result-certificate-refused.json"})
    void resultsAsTheyArePromised_areValid(String file) throws IOException {
        assertThat(errors("result", RESULTS.resolve(file))).isEmpty();
    }

    /** Each change breaks one promise that scripts rely on. */
    @Test
    void resultsThatBreakAPromise_areInvalid() throws IOException {
        Map<String, Consumer<ObjectNode>> breaches = Map.ofEntries(
                Map.entry("no verdict", result -> result.remove("verdict")),
                Map.entry("a verdict of another name", result -> result.put("verdict", "good")),
                Map.entry("a count that is missing", result -> counts(result).remove("notMeasured")),
                Map.entry("a count below nothing", result -> counts(result).put("conforming", -1)),
                Map.entry("a limit that is a number", result -> first(result).put("lower", 51.949)),
                Map.entry("a limit with an exponent", result -> first(result).put("upper", "5.1979E+1")),
                Map.entry("a mean that is text", result -> first(result).put("mean", "51.9645")),
                Map.entry("a batch without charts", result -> first(result).remove("chart")),
                Map.entry(
                        "an index that is missing",
                        result -> object(first(result), "indices").remove("ppk")),
                Map.entry("an interval of one end", result -> interval(result).remove(1)),
                Map.entry(
                        "a level of 95",
                        result -> object(first(result), "intervals").put("level", 95)),
                Map.entry("a signal at point 0", result -> signal(result).put("at", 0)),
                Map.entry("a signal without points", result -> signal(result).putArray("points")),
                Map.entry(
                        "a panel without a centre",
                        result -> object(chart(result), "location").remove("centre")),
                Map.entry("no counts of signals", result -> chart(result).remove("signalCounts")),
                Map.entry("another command", result -> result.put("command", "lot")));
        for (Map.Entry<String, Consumer<ObjectNode>> breach : breaches.entrySet()) {
            ObjectNode result = (ObjectNode) MAPPER.readTree(Files.readString(RESULTS.resolve("result-batch.json")));
            breach.getValue().accept(result);
            assertThat(errors("result", result.toString())).as(breach.getKey()).isNotEmpty();
        }
        ObjectNode certificate =
                (ObjectNode) MAPPER.readTree(Files.readString(RESULTS.resolve("result-certificate-refused.json")));
        certificate.remove("reasons");
        assertThat(errors("result", certificate.toString())).isNotEmpty();
    }

    private static ObjectNode object(JsonNode node, String key) {
        return (ObjectNode) node.get(key);
    }

    private static ObjectNode counts(ObjectNode result) {
        return object(result, "counts");
    }

    private static ObjectNode first(ObjectNode result) {
        return (ObjectNode) result.get("characteristics").get(0);
    }

    private static ObjectNode chart(ObjectNode result) {
        return object(first(result), "chart");
    }

    private static ObjectNode signal(ObjectNode result) {
        return (ObjectNode) chart(result).get("signals").get(0);
    }

    private static ArrayNode interval(ObjectNode result) {
        return (ArrayNode) first(result).get("intervals").get("cpk");
    }

    /**
     * The schema names no key that the reader does not know, and the full plan and job use every key that the schema names: so the two
     * agree in both directions.
     */
    @Test
    void schemaAndReaderKnowTheSameKeys() throws IOException {
        assertThat(PlanFile.read(INTAKE.resolve("plan-full.json")).notices()).isEmpty();
        assertThat(JobFile.read(INTAKE.resolve("job.json")).notices()).isEmpty();

        assertThat(PlanFile.read(MIRROR).notices()).isEmpty();
        Set<String> ofPlans = keysOf(INTAKE.resolve("plan-full.json"));
        ofPlans.addAll(keysOf(MIRROR));
        assertThat(ofPlans).containsExactlyElementsOf(namedBy("plan"));
        assertThat(keysOf(INTAKE.resolve("job.json"))).containsExactlyElementsOf(namedBy("job"));
    }

    @Test
    void schemaAndReaderKnowTheSameNamesOfColumns() throws IOException {
        Set<String> known = new TreeSet<>();
        for (String key : namedBy("readings")) {
            if (ReadingColumn.named(key).isPresent()) {
                known.add(ReadingColumn.named(key).get().word());
            } else {
                assertThat(key).isIn("readings", "schema");
            }
        }
        assertThat(known).containsExactlyInAnyOrderElementsOf(ReadingColumn.allWords());
    }

    private static Set<String> keysOf(Path document) throws IOException {
        Set<String> keys = new TreeSet<>();
        collect(MAPPER.readTree(Files.readString(document)), keys);
        return keys;
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.properties().forEach(member -> {
            keys.add(member.getKey());
            // the keys within are numbers of characteristics
            if (!member.getKey().equals("partSigmas")) {
                collect(member.getValue(), keys);
            }
        });
        if (node.isArray()) {
            node.forEach(child -> collect(child, keys));
        }
    }

    /** Every key under a "properties" of the schema, but the one for editors. */
    private static Set<String> namedBy(String schema) throws IOException {
        List<JsonNode> properties = new ArrayList<>();
        properties.addAll(MAPPER.readTree(Files.readString(SCHEMAS.resolve(schema + ".schema.json")))
                .findValues("properties"));
        Set<String> keys = new TreeSet<>();
        // findValues stops at the first "properties" on each way down; those below are looked for in turn.
        while (!properties.isEmpty()) {
            JsonNode next = properties.remove(properties.size() - 1);
            next.fieldNames().forEachRemaining(keys::add);
            next.forEach(child -> properties.addAll(child.findValues("properties")));
        }
        keys.remove("$schema");
        return keys;
    }

    @ParameterizedTest
    @ValueSource(strings = {"cell-mapping", "bench-mapping"})
    void theMappingsOfTheGuide_areValid_andKeysThatMustBeThereAre(String name) throws IOException {
        String guide = Files.readString(Path.of("../docs/intake.md"));
        int from = guide.indexOf("```json " + name + "\n") + name.length() + 9;
        String mapping = guide.substring(from, guide.indexOf("```", from));
        assertThat(errors("mapping", mapping)).isEmpty();
        assertThat(errors("mapping", mapping.replace("\"actual\"", "\"found\"")))
                .isNotEmpty();
        assertThat(errors("mapping", mapping.replace("\"begins\"", "\"matches\"")))
                .isNotEmpty();
        assertThat(errors("mapping", mapping.replaceFirst("\"layout\": \"[a-z]+\"", "\"layout\": \"delimited\"")))
                .isNotEmpty();
    }
}
