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
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code firstoff plan}, and QIF results where readings are expected. */
class PlanCommandTest {
    private static final Path SAMPLES = Path.of("..", "sample-measurements");

    @TempDir
    private Path folder;

    private Path put(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void aTable_isWrittenAsAPlan_andListedWithItsLimits() throws IOException {
        Path table = put(
                "table.csv",
                "number,feature,requirement,class,gauge\n1,bore,52 P7,critical,BG-1\n2,flange,12.5 ±0.05,,\n");
        Path plan = folder.resolve("made.json");

        Run run = run("plan", table, "--out", plan, "--part", "HQ-900", "--revision", "A", "--unit", "mm");

        assertThat(run.code()).isEqualTo(ExitCodes.ACCEPTED);
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("HQ-900 revision A", "51.949", "51.979", "12.45", "12.55", "Check each line", "Written: ");
        JsonNode read = new ObjectMapper().readTree(plan.toFile());
        assertThat(read.path("schema").asText()).isEqualTo("firstoff-plan-1");
        assertThat(read.path("characteristics")).hasSize(2);
        Path readings = put("r.csv", "part,characteristic,value\nS1,1,51.96\nS1,2,12.5\n");
        assertThat(run("first-article", "--plan", plan, readings).code()).isEqualTo(ExitCodes.ACCEPTED);
    }

    @Test
    void decimalCommas_areTakenAndTold_andAskedAboutWhereTheyMayPartThousands() throws IOException {
        Path table = put(
                "table.csv",
                "Balloon #;Description;Spec;Target\n1;flange;12,5 ±0,05;12,49\n2;edges;visual: views 1,2 free of burrs;\n");
        Path plan = folder.resolve("made.json");

        Path open = put("open.csv", "Balloon #;Description;Spec\n1;length;1,250 max\n");

        Run refused = run("plan", open, "--out", plan);
        assertThat(refused.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(refused.err()).contains("1.250 max or 1250 max", "--decimal-mark comma");
        assertThat(plan).doesNotExist();
        assertThat(run("plan", open, "--decimal-mark", "comma").out()).contains("1.250 max");
        assertThat(run("plan", table).err()).contains("the figures have decimal commas", "read as 12.5 ±0.05");
        Run run = run("plan", table, "--out", plan, "--decimal-mark", "comma");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCodes.ACCEPTED);
        JsonNode characteristics = new ObjectMapper().readTree(plan.toFile()).path("characteristics");
        assertThat(characteristics.get(0).path("requirement").asText()).isEqualTo("12.5 ±0.05");
        assertThat(characteristics.get(0).path("target").asText()).isEqualTo("12.49");
        assertThat(characteristics.get(1).path("requirement").asText()).isEqualTo("visual: views 1,2 free of burrs");
    }

    @Test
    void theListing_showsLimitsOfRequirementsInParts_andTheSizeOfSubgroups() throws IOException {
        Path table = put(
                "table.csv",
                "Nr.;Merkmal;Nennmaß;oberes Abmaß;unteres Abmaß;Regelkarte\n2;Tiefe;15,1;0,06;0;mean and range of 5\n");

        Run run = run("plan", table);

        assertThat(run.code()).as(run.err()).isEqualTo(ExitCodes.ACCEPTED);
        assertThat(run.out()).containsPattern("2 +Tiefe +15\\.1 \\+0\\.06/0 +15\\.1 +15\\.16 +mm +minor +xbar-r 5");
        assertThat(run.err()).contains("\"oberes Abmaß\" as upper tolerance");
    }

    @Test
    void json_isOneDocument_withLimitsAsDecimalText() throws IOException {
        Run run = run("plan", SAMPLES.resolve("hq-310-p.plan.qif"), "--json");

        JsonNode document = new ObjectMapper().readTree(run.out());
        assertThat(document.path("command").asText()).isEqualTo("plan");
        assertThat(document.path("characteristics")).hasSize(22);
        assertThat(document.path("characteristics").get(0).path("lower").asText())
                .isEqualTo("51.949");
        assertThat(document.path("characteristics").get(0).path("place").asText())
                .contains("hq-310-p.plan.qif:");
        assertThat(document.path("characteristics").get(18).path("lower").isNull())
                .isTrue();
        assertThat(document.path("characteristics").get(11).path("judged").asBoolean())
                .isFalse();
    }

    @Test
    void whatCannotBeUnderstood_isRefusedWithItsPlace_andNothingIsWritten() throws IOException {
        Path table = put("table.csv", "number,feature,requirement\n1,bore,52 P7\n2,flange,roughly 12\n");
        Path plan = put("made.json", "what was there before");

        Run run = run("plan", table, "--out", plan);

        assertThat(run.code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run.err()).contains("table.csv:3", "roughly 12");
        assertThat(plan).hasContent("what was there before");
    }

    @Test
    void theSourceItself_isNeverOverwritten() throws IOException {
        Path table = put("table.csv", "number,feature,requirement\n1,bore,52 P7\n");

        assertThat(run("plan", table, "--out", table).code()).isEqualTo(ExitCodes.USAGE);
        assertThat(Files.readString(table)).startsWith("number");
    }

    @Test
    void aMissingSource_orAFolderInPlaceOfTheTarget_isSaid() throws IOException {
        Path table = put("table.csv", "number,feature,requirement\n1,bore,52 P7\n");

        assertThat(run("plan", folder.resolve("none.csv")).code()).isEqualTo(ExitCodes.INPUT);
        assertThat(run("plan", table, "--out", folder).code()).isEqualTo(ExitCodes.OUTPUT);
    }

    /** The result rests on the readings, not on the format in which they came; only what is said of the files themselves differs. */
    @Test
    void theSameReadings_asCsvAndAsQif_giveTheSameJson_toTheByte() throws IOException {
        Path plan = SAMPLES.resolve("hq-310-p.plan.json");

        String csv = result(plan, SAMPLES.resolve("first-article-hq-310-p.csv"));

        assertThat(result(plan, SAMPLES.resolve("first-article-hq-310-p.together.qif")))
                .isEqualTo(csv);
        assertThat(result(
                        plan,
                        SAMPLES.resolve("first-article-hq-310-p.results.qif"),
                        SAMPLES.resolve("hq-310-p.plan.qif")))
                .isEqualTo(csv);
        assertThat(csv).contains("\"verdict\" : \"accepted\"");
    }

    private static String result(Path plan, Path... readings) throws IOException {
        List<Object> arguments = new ArrayList<>(List.of("first-article", "--json", "--plan", plan));
        arguments.addAll(List.of(readings));
        Run run = run(arguments.toArray());
        assertThat(run.code()).as(run.err()).isZero();
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode document = (ObjectNode) mapper.readTree(run.out());
        // What is said of the files, and when.
        document.remove(List.of("madeFrom", "notices"));
        return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(document);
    }
}
