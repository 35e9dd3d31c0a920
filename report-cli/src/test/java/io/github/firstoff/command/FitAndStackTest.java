package io.github.firstoff.command;

import static io.github.firstoff.proof.Samples.run;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.firstoff.proof.Samples.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The commands {@code fit} and {@code stack} from the command line to the printed sheet and the JSON result. */
class FitAndStackTest {
    private static final Path SAMPLES = Path.of("..", "sample-measurements");
    private static final List<String> PROMISED =
            List.of("interference", "pressure", "pressInForce", "outerStress", "innerStress", "clearanceLoss");

    @TempDir
    private Path folder;

    private static String sample(String name) {
        return SAMPLES.resolve(name).toString();
    }

    private static void valid(String schema, JsonNode json) throws IOException {
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(Path.of("..", "docs", "schemas", schema + ".schema.json")))
                        .validate(json.toString(), InputFormat.JSON))
                .isEmpty();
    }

    private String pdf(Path file) throws IOException {
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(file))) {
            for (PDPage page : document.getPages()) {
                noImages(page.getResources());
            }
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private static void noImages(PDResources resources) throws IOException {
        for (COSName name : resources.getXObjectNames()) {
            PDXObject object = resources.getXObject(name);
            assertThat(object).isNotInstanceOf(PDImageXObject.class);
            if (object instanceof PDFormXObject form && form.getResources() != null) {
                noImages(form.getResources());
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "spindle-bearing, , , 0, 'Grips with at least 633 N at 60 °C in every pair within limits; bearing keeps 1.0 µm or more'",
        "hq-310-p-seat, , , 1, 'bearing may be without clearance at −10 °C'",
        "hq-310-p-seat, batch-2207.csv, , 1, 'Loose at 60 °C in'",
        "pawl-bush-p, pawl-bush-p.bores.csv, pawl-bush.rings.csv, 1, 'Does not grip with the required 12 N·m at 50 °C in'"
    })
    void fit_ofEachSample_saysTheSameOnSheetAndInJson(String name, String bores, String rings, int code, String answer)
            throws IOException {
        Path out = folder.resolve("fit.pdf");
        List<String> arguments = new ArrayList<>(List.of("fit", sample(name + ".assembly.json")));
        if (bores != null) {
            arguments.addAll(List.of("--bores", sample(bores)));
        }
        if (rings != null) {
            arguments.addAll(List.of("--rings", sample(rings)));
        }
        arguments.addAll(List.of("--out", out.toString(), "--json"));

        Run run = run(arguments.toArray(String[]::new));

        assertThat(run.code()).isEqualTo(code);
        JsonNode json = run.json();
        valid("fit-result", json);
        assertThat(json.path("verdict").asText()).isEqualTo(code == 0 ? "accepted" : "rejected");
        assertThat(json.path("answer").asText()).contains(answer);
        String text = pdf(out);
        assertThat(text).contains(json.path("answer").asText());
        for (JsonNode decision : json.path("decisions")) {
            assertThat(text).contains(decision.asText());
        }
        assertThat(text)
                .contains("Caution: pressed parts pinch and can fly, heated and cooled parts burn. Wear eye protection")
                .contains("Caution: keep hands out from between the parts and the press")
                .contains("never with an open flame")
                .contains("qualified engineer");
        if (!name.startsWith("pawl")) {
            assertThat(text).contains("never strike a bearing ring", "bearing maker's instructions");
        }
        for (JsonNode pair : json.path("matching").path("pairs")) {
            assertThat(text)
                    .contains(
                            pair.path("outer").asText() + " ",
                            pair.path("inner").asText() + " ");
        }
        assertThat(run.err()).doesNotContain("Exception");
    }

    /** The inputs and names of the published contract, with figures that can be worked out by hand. */
    @Test
    void fit_ofTheContract_hasItsNamesAndFigures() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), """
                {"schema": "firstoff-assembly-1", "joint": {"nominal": "40", "length": "12", "friction": 0.12},
                 "outer": {"material": {"name": "alloy", "youngsModulus": 70000, "poissonsRatio": 0.33, "expansion": 2.3e-05, "yield": 240},
                           "outsideDiameter": "60", "requirement": "40 -0.020/-0.045", "roughnessRz": 0},
                 "inner": {"material": {"name": "steel", "youngsModulus": 208000, "poissonsRatio": 0.3, "expansion": 1.2e-05, "yield": 1500},
                           "insideDiameter": "30", "requirement": "40 0/-0.011", "roughnessRz": 0},
                 "temperature": {"assembly": 20, "minimum": -10, "maximum": 60}}
                """);

        JsonNode json = run("fit", file.toString(), "--json").json();

        for (String name : PROMISED) {
            for (String key : List.of("minimum", "mean", "maximum", "unit")) {
                assertThat(json.path(name).has(key)).as(name + " " + key).isTrue();
            }
        }
        assertThat(json.path("probability").has("grip")).isTrue();
        assertThat(json.path("probability").has("noOverstress")).isTrue();
        assertThat(json.path("interference").path("minimum").asDouble()).isEqualTo(9);
        assertThat(json.path("interference").path("mean").asDouble())
                .isCloseTo(27, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(json.path("interference").path("maximum").asDouble()).isEqualTo(45);
        // 0.045/(40·((5200/2000 + 0.33)/70000 + (2500/700 − 0.3)/208000))
        double pressure = 0.045 / (40 * ((5200.0 / 2000 + 0.33) / 70000 + (2500.0 / 700 - 0.3) / 208000));
        assertThat(json.path("pressure").path("maximum").asDouble())
                .isCloseTo(pressure, org.assertj.core.data.Percentage.withPercentage(1e-9));
        assertThat(json.path("pressInForce").path("maximum").asDouble())
                .isCloseTo(Math.PI * 40 * 12 * pressure * 0.12, org.assertj.core.data.Percentage.withPercentage(1e-9));
    }

    @Test
    void stack_ofTheSample_saysTheSameOnSheetAndInJson() throws IOException {
        Path out = folder.resolve("stack.pdf");

        Run run = run("stack", sample("drum-play.stack.json"), "--out", out.toString(), "--json");

        assertThat(run.code()).isZero();
        JsonNode json = run.json();
        valid("stack-result", json);
        assertThat(json.path("worstCase").path("minimum").asText()).isEqualTo("0.120");
        assertThat(json.path("worstCase").path("maximum").asText()).isEqualTo("0.670");
        assertThat(json.path("outside").path("total").asDouble()).isLessThan(0.0027);
        assertThat(pdf(out))
                .contains(json.path("answer").asText())
                .contains("0.120", "0.670", "go by the worst case")
                .contains("carrier, shoulder to cover");
    }

    @Test
    void theFirstCautionIsSetInTheTypeOfTheAnswer() throws IOException {
        Path out = folder.resolve("fit.pdf");
        run("fit", sample("spindle-bearing.assembly.json"), "--out", out.toString());
        List<Float> sizes = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(out))) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    if (text.startsWith("Grips with") || text.startsWith("Caution: pressed")) {
                        sizes.add(positions.get(0).getFontSizeInPt());
                    }
                }
            };
            stripper.getText(document);
        }
        assertThat(sizes).hasSize(2);
        assertThat(sizes.get(0)).isEqualTo(sizes.get(1));
    }

    @Test
    void anotherRun_makesTheSameBytes() throws IOException {
        Path one = folder.resolve("one.pdf");
        Path two = folder.resolve("two.pdf");
        run("stack", sample("drum-play.stack.json"), "--out", one.toString());
        run("stack", sample("drum-play.stack.json"), "--out", two.toString());

        assertThat(run("stack", sample("drum-play.stack.json"), "--json").out())
                .isEqualTo(
                        run("stack", sample("drum-play.stack.json"), "--json").out());
        assertThat(pdf(one)).isEqualTo(pdf(two));
    }

    @Test
    void badInput_writesNothingAndExits3() throws IOException {
        Path file = Files.writeString(
                folder.resolve("bad.json"),
                Files.readString(SAMPLES.resolve("pawl-bush-p.assembly.json")).replace("\"48\"", "\"24\""));
        Path out = folder.resolve("bad.pdf");

        Run run = run("fit", file.toString(), "--out", out.toString(), "--json");

        assertThat(run.code()).isEqualTo(3);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("bad.json:11", "outsideDiameter", "wrong way round", "expected more than");
        assertThat(out).doesNotExist();
    }

    @Test
    void starboardRings_doNotGoIntoPortBores() throws IOException {
        Path rings = Files.writeString(
                folder.resolve("starboard.csv"),
                Files.readString(SAMPLES.resolve("pawl-bush-p.bores.csv"))
                        .replace(",port,", ",starboard,")
                        .replace("25.0", "25.03"));

        Run run = run(
                "fit",
                sample("pawl-bush-p.assembly.json"),
                "--bores",
                sample("pawl-bush-p.bores.csv"),
                "--rings",
                rings.toString());

        assertThat(run.code()).isEqualTo(3);
        assertThat(run.err()).contains("starboard.csv:2", "other hand", "port");
    }

    @Test
    void anInputIsNeverOverwritten() {
        Run run = run("stack", sample("drum-play.stack.json"), "--out", sample("drum-play.stack.json"));

        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("would overwrite an input");
    }

    @Test
    void withoutJson_theAnswerComesFirst() {
        Run run = run("fit", sample("spindle-bearing.assembly.json"));

        assertThat(run.out().lines().skip(1).findFirst().orElseThrow())
                .startsWith("Grips with at least 633 N at 60 °C");
        assertThat(run.out()).doesNotContain("{");
    }

    /** The guides show files and what comes of them; both are taken from there and run. */
    @ParameterizedTest
    @CsvSource({"fit", "stack"})
    void theExampleOfTheGuide_saysWhatTheGuideSays(String command) throws IOException {
        String guide = Files.readString(Path.of("..", "docs", command + ".md")).replace("\r\n", "\n");
        int json = guide.indexOf("```json\n") + "```json\n".length();
        String file = guide.substring(json, guide.indexOf("```", json));
        int comes = guide.indexOf("```\n", guide.indexOf("## What comes out")) + "```\n".length();
        String said = guide.substring(comes, guide.indexOf("```", comes));

        Run run = run(
                command, Files.writeString(folder.resolve("example.json"), file).toString());

        assertThat(run.code()).isZero();
        assertThat(run.out()).startsWith(said);
    }
}
