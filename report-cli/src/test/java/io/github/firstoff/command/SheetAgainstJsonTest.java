package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The printed sheet of every sample read back: it says what the JSON result says, in embedded type, without a raster. */
class SheetAgainstJsonTest {
    private static final Schema RESULT_SCHEMA = resultSchema();

    private static Schema resultSchema() {
        try {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(Files.readString(Path.of("..", "docs", "schemas", "result.schema.json")));
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    @TempDir
    private Path folder;

    /** What a sheet says, without its line breaks and with a hyphen, as data have it, where the sheet sets a minus. */
    static String text(PDDocument sheet) throws IOException {
        return new PDFTextStripper().getText(sheet).replaceAll("\\s+", " ").replace('\u2212', '-');
    }

    @ParameterizedTest
    @MethodSource("io.github.firstoff.proof.Samples#all")
    void sample_sheetAndJson_agree(Samples.Sample sample) throws IOException {
        String command = sample.command();
        Path pdf = folder.resolve("sheet.pdf");
        Samples.Run run = sample.make(pdf, "--json");
        assertThat(run.code()).as(run.err()).isLessThanOrEqualTo(ExitCodes.NOT_ACCEPTED);
        JsonNode json = new ObjectMapper().readTree(run.out());
        if (!Files.exists(pdf)) {
            assertThat(command).isEqualTo("certificate");
            assertThat(json.get("reasons")).isNotEmpty();
            return;
        }
        assertThat(RESULT_SCHEMA.validate(json.toString(), InputFormat.JSON)).isEmpty();
        String text;
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
            text = text(document);
            for (PDPage page : document.getPages()) {
                checkResources(page.getResources());
            }
        }
        assertThat(text)
                .contains(json.get("part").asText())
                .contains(json.get("batch").asText());
        boolean certificate = command.equals("certificate");
        for (JsonNode characteristic : json.get("characteristics")) {
            boolean judged = !characteristic.get("verdict").isNull();
            if (certificate && !judged) {
                continue;
            }
            assertThat(text).contains(characteristic.get("feature").asText());
            if (!certificate) {
                containsDecimal(
                        text,
                        characteristic.get("lower"),
                        characteristic.path("naturalBound").isMissingNode());
                containsDecimal(text, characteristic.get("upper"), true);
            }
            if (command.equals("first-article")) {
                for (JsonNode reading : characteristic.get("readings")) {
                    String value = reading.get("value").asText();
                    boolean minutes = reading.path("unit").asText().equals("arc-minute");
                    assertThat(text).contains(minutes ? degreesAndMinutes(Integer.parseInt(value)) : value);
                }
            } else if (judged) {
                containsDecimal(text, characteristic.get("minimum"), true);
                containsDecimal(text, characteristic.get("maximum"), true);
                containsMean(text, characteristic);
            }
            if (command.equals("batch")) {
                containsLines(text, characteristic.get("chart"));
            }
        }
    }

    /** As a bevel protractor reads: 2706 minutes are 45°6'. */
    private static String degreesAndMinutes(int minutes) {
        return minutes / 60 + "\u00b0" + minutes % 60 + "'";
    }

    private static void containsDecimal(String text, JsonNode figure, boolean required) {
        if (required && !figure.isNull()) {
            assertThat(text).contains(figure.asText());
        }
    }

    /** The sheet rounds a mean for its readers; one of the roundings that a sample of that resolution allows must stand there. */
    private static void containsMean(String text, JsonNode characteristic) {
        if (characteristic.get("mean").isNull()) {
            return;
        }
        BigDecimal mean = characteristic.get("mean").decimalValue();
        int places = new BigDecimal(characteristic.get("minimum").asText()).scale();
        List<String> allowed = List.of(
                mean.setScale(places, RoundingMode.HALF_EVEN).toPlainString(),
                mean.setScale(places + 1, RoundingMode.HALF_EVEN).toPlainString(),
                mean.setScale(places + 2, RoundingMode.HALF_EVEN).toPlainString());
        assertThat(allowed).as("mean of " + characteristic.get("number")).anyMatch(text::contains);
    }

    /** Every control limit and centre line stands on the sheet with a value that rounds what the result says. */
    private static void containsLines(String text, JsonNode chart) {
        if (chart.isNull()) {
            return;
        }
        Map<String, List<String>> names = Map.of(
                "centre",
                List.of("centre"),
                "lower",
                List.of("LCL", "decision line"),
                "upper",
                List.of("UCL", "decision line"));
        for (String panel : List.of("location", "between", "dispersion")) {
            names.forEach((line, called) -> {
                JsonNode value = chart.path(panel).path(line);
                // a limit of 0 on a chart of spread or of counts is none, and lines that differ from point to point are
                // not listed
                if (value.isNumber() && value.decimalValue().signum() != 0) {
                    assertThat(roundings(value.decimalValue()))
                            .as(chart.get("kind") + " " + panel + " " + line)
                            .anyMatch(figure -> called.stream().anyMatch(name -> text.contains(name + " " + figure)));
                }
            });
        }
    }

    @Test
    void everyKindOfChart_sheetAndJson_agree() throws IOException {
        Path studies = Path.of("src", "test", "resources", "studies");
        Path pdf = folder.resolve("every-chart.pdf");
        Samples.Run run = Samples.run(
                "batch",
                "--plan",
                studies.resolve("every-chart.plan.json"),
                studies.resolve("every-chart.csv"),
                "--out",
                pdf,
                "--json");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCodes.NOT_ACCEPTED);
        JsonNode json = run.json();
        assertThat(RESULT_SCHEMA.validate(json.toString(), InputFormat.JSON)).isEmpty();
        Set<String> kinds = new TreeSet<>();
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            for (JsonNode characteristic : json.get("characteristics")) {
                JsonNode chart = characteristic.get("chart");
                kinds.add(chart.get("kind").asText());
                assertThat(text).contains(characteristic.get("feature").asText());
                containsLines(text, chart);
            }
            assertThat(text)
                    .contains("limits from batch B-2206, 25 subgroups")
                    .contains("was left out: chip under the part, seen by the operator.")
                    .contains("new insert after wear, verified by the setter");
        }
        assertThat(kinds)
                .containsExactlyInAnyOrder(
                        "individuals",
                        "xbar-r",
                        "xbar-s",
                        "median-r",
                        "between-within",
                        "ewma",
                        "cusum",
                        "deviation",
                        "standardised-deviation",
                        "p",
                        "np",
                        "c",
                        "u");
    }

    /** The value rounded to 1 to 6 places: the sheet gives it the places of the readings and one more. */
    private static List<String> roundings(BigDecimal value) {
        return IntStream.rangeClosed(1, 6)
                .mapToObj(places -> value.setScale(places, RoundingMode.HALF_EVEN)
                        .toPlainString()
                        .replace('-', '−'))
                .toList();
    }

    private static void checkResources(PDResources resources) throws IOException {
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            assertThat(font.isEmbedded()).as(font.getName()).isTrue();
        }
        for (COSName name : resources.getXObjectNames()) {
            PDXObject object = resources.getXObject(name);
            assertThat(object).isNotInstanceOf(PDImageXObject.class);
            if (object instanceof PDFormXObject form && form.getResources() != null) {
                checkResources(form.getResources());
            }
        }
    }
}
