package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** A file that stands where another kind belongs is called what it is, in one line, whatever its name. */
class OtherFileTest {
    private static final Path SAMPLES = Path.of("../sample-measurements");
    private static final ResolvedPlan PLAN =
            PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

    /** What there is, under the words by which it must be called. */
    private static Map<String, byte[]> files() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("a QIF document", sample("hq-310-p.plan.qif"));
        files.put("readings", sample("batch-2207.csv"));
        files.put("a table of requirements", sample("hq-310-p.table.txt"));
        files.put("an SVG picture", sample("hollin-quay.svg"));
        files.put("a PDF document", bytes("%PDF-1.7\n"));
        files.put("a web page", bytes("<!DOCTYPE html>\n<html></html>"));
        files.put("an XML document that is no QIF", bytes("<?xml version=\"1.0\"?><a/>"));
        XlsxWriter writer = new XlsxWriter();
        files.put(
                "a workbook",
                writer.sheet("A", List.of(XlsxWriter.row(1, XlsxWriter.text("A1", "x"))))
                        .bytes());
        files.put("readings as JSON lines", bytes("""
                {"part": "S1", "1": "52"}
                {"part": "S2", "1": "52"}
                """));
        files.put("a list of readings", bytes("[{\"part\": \"S1\", \"1\": \"52\"}]"));
        files.put("the result of firstoff batch", bytes("{\"command\":\"batch\",\"part\":\"HQ-310-P\"}"));
        files.put("a plan", sample("hq-310-p.plan.json"));
        files.put("a job", sample("batch-2207.job.json"));
        files.put("an assembly", sample("pawl-bush-p.assembly.json"));
        files.put("a file of members", sample("drum-play.stack.json"));
        files.put("a house file", sample("hollin-quay.house.json"));
        files.put("a mapping", bytes("{ \"schema\": \"firstoff-mapping-1\", \"layout\": \"columns\" }"));
        return files;
    }

    private static byte[] sample(String name) throws IOException {
        return Files.readAllBytes(SAMPLES.resolve(name));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static List<String> refused(ThrowingCallable reading) {
        return catchThrowableOfType(InputRefused.class, reading).lines();
    }

    /** Who reads what. */
    private static Map<String, Consumer<Input>> readers() {
        Map<String, Consumer<Input>> readers = new LinkedHashMap<>();
        readers.put("a plan", PlanFile::read);
        readers.put("a job", JobFile::read);
        readers.put("an assembly", AssemblyFile::read);
        readers.put("a file of members", StackFile::read);
        readers.put("a house file", input -> HouseFile.read(input, List.of("en")));
        readers.put("a mapping", Mapping::read);
        return readers;
    }

    @TestFactory
    Stream<DynamicTest> whateverStandsInThePlaceOfADocument_isCalledByItsName() throws IOException {
        Map<String, byte[]> files = files();
        return readers().entrySet().stream()
                .flatMap(reader -> files.entrySet().stream()
                        .filter(file -> !file.getKey().equals(reader.getKey()))
                        .map(file -> DynamicTest.dynamicTest(file.getKey() + " for " + reader.getKey(), () -> {
                            assertThat(refused(() -> reader.getValue().accept(input("given.json", file.getValue()))))
                                    .singleElement()
                                    .asString()
                                    .startsWith("given.json: found " + file.getKey())
                                    .contains("; expected " + reader.getKey() + " (JSON, see docs/");
                        })));
    }

    private static Input input(String name, byte[] bytes) {
        return Input.bytes(name, bytes, relative -> Optional.empty());
    }

    @TestFactory
    Stream<DynamicTest> whateverStandsInThePlaceOfReadings_isCalledByItsName() throws IOException {
        return files().entrySet().stream()
                .filter(file -> !file.getKey().contains("readings"))
                // Readers of readings take, or refuse in words of their own, whatever else is no text of rows.
                .filter(file ->
                        Stream.of("QIF", "workbook", "SVG", "PDF", "web page").noneMatch(file.getKey()::contains))
                .map(file -> DynamicTest.dynamicTest(
                        file.getKey(),
                        () -> assertThat(ReadingFiles.readInputs(PLAN, List.of(input("given.csv", file.getValue())))
                                        .refused()
                                        .lines())
                                .singleElement()
                                .asString()
                                .startsWith("given.csv: found " + file.getKey())
                                .contains("; expected ", "readings")));
    }

    @Test
    void whatToDoIsSaid_ofWhatAPlanCanBeMadeOf() throws IOException {
        for (String each : List.of("a QIF document", "a table of requirements", "a workbook")) {
            assertThat(refused(() -> PlanFile.read(input("my drawing.x", files().get(each))))
                            .get(0))
                    .endsWith("make a plan of it first: firstoff plan \"my drawing.x\" --out plan.json");
        }
        assertThat(refused(() -> PlanFile.read(input("r.csv", files().get("readings"))))
                        .get(0))
                .endsWith("; readings stand behind the options");
        assertThat(refused(() -> Mapping.read(input("r.csv", bytes("a;b;c\n1;2;3\n4;5;6\n"))))
                        .get(0))
                .endsWith("; of an export, this proposes one: firstoff mapping r.csv --plan PLAN --out mapping.json");
    }

    @Test
    void aFileThatIsReadWithoutAMapping_needsNone_andReadingsAreNoPlan() throws IOException {
        for (String each : List.of("readings", "a QIF document", "a list of readings", "readings as JSON lines")) {
            assertThat(refused(() -> MappingDraft.of(input("r.txt", files().get(each)), PLAN)))
                    .containsExactly("r.txt: found " + each
                            + "; expected a machine's text; such a file is read without a mapping");
        }
        for (String each : List.of("readings", "a list of readings", "readings as JSON lines")) {
            assertThat(refused(() -> PlanDraft.of(input("r.txt", files().get(each)), List.of(), Map.of())))
                    .singleElement()
                    .asString()
                    .startsWith("r.txt: found " + each + "; expected a table");
        }
    }

    @Test
    void aSlipInADocumentOfTheRightKind_isStillShownWithItsPlace() {
        assertThat(refused(() -> PlanFile.read(
                                input("p.json", bytes("{ \"schema\": \"firstoff-plan-1\",\n  part: 1 }"))))
                        .get(0))
                .startsWith("p.json:2:3: found \"p\"; expected a key in quotation marks");
    }
}
