package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The printed sheets of studies of drift, press fits, loops and histories read back, in every language: the figures of the JSON result stand there, rounded. */
class StudiesAgainstJsonTest {
    /**
     * Which figures of which kind of sheet; {@code []} stands for each entry of a list. Members of a loop are printed as the drawing has them, and of a slope its interval.
     */
    private static final Map<String, List<String>> FIGURES = Map.of(
            "history",
            List.of(
                    "characteristic.lower",
                    "characteristic.upper",
                    "batches[].count",
                    "batches[].minimum",
                    "batches[].maximum",
                    "batches[].mean",
                    "batches[].standardDeviation"),
            "stack",
            List.of(
                    "wanted.minimum",
                    "wanted.maximum",
                    "worstCase.minimum",
                    "worstCase.maximum",
                    "rootSumSquare.minimum",
                    "rootSumSquare.maximum",
                    "monteCarlo.low",
                    "monteCarlo.high"),
            "drift",
            List.of(
                    "characteristics[].lower",
                    "characteristics[].upper",
                    "characteristics[].segments[].slopeInterval[]",
                    "characteristics[].forecast.piece",
                    "characteristics[].forecast.limit",
                    "characteristics[].advice.offset",
                    "characteristics[].advice.toolLife",
                    "characteristics[].withinTrend.cpk.value",
                    "characteristics[].withinTrend.cpk.interval[]",
                    "characteristics[].wholeToolLife.ppk.value",
                    "characteristics[].wholeToolLife.ppk.interval[]"),
            "fit",
            List.of(
                    "interference.minimum",
                    "interference.mean",
                    "interference.maximum",
                    "pressure.minimum",
                    "pressure.maximum",
                    "outerStress.maximum",
                    "innerStress.maximum",
                    "temperatures[].interference.minimum",
                    "temperatures[].interference.maximum",
                    "matching.pairs[].interference"));

    @TempDir
    private Path folder;

    static Stream<Arguments> studies() {
        return Samples.studies().flatMap(study -> Stream.of("en", "de").map(language -> Arguments.of(study, language)));
    }

    @ParameterizedTest
    @MethodSource("studies")
    void study_sheetAndJson_agree(Samples.Made study, String language) throws IOException {
        Path pdf = folder.resolve("sheet.pdf");
        Samples.Run run = study.make(pdf, "--json", "--language", language);
        assertThat(run.code()).as(run.err()).isLessThanOrEqualTo(ExitCodes.NOT_ACCEPTED);
        JsonNode json = new ObjectMapper()
                .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .readTree(run.out());
        String text;
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
            text = SheetAgainstJsonTest.text(document);
        }
        List<String> missing = new ArrayList<>();
        int found = 0;
        for (String path : FIGURES.get(study.command())) {
            for (BigDecimal figure : at(json, List.of(path.split("\\.", -1)))) {
                if (stands(text, figure)) {
                    found++;
                } else {
                    missing.add(path + " = " + figure.toPlainString());
                }
            }
        }
        assertThat(missing).isEmpty();
        assertThat(found).isGreaterThan(5);
    }

    private static List<BigDecimal> at(JsonNode node, List<String> steps) {
        if (steps.isEmpty()) {
            boolean figure =
                    node.isNumber() || (node.isTextual() && node.asText().matches("-?\\d+(\\.\\d+)?"));
            return figure ? List.of(new BigDecimal(node.asText())) : List.of();
        }
        List<String> rest = steps.subList(1, steps.size());
        String step = steps.get(0);
        if (!step.endsWith("[]")) {
            return at(node.path(step), rest);
        }
        List<BigDecimal> all = new ArrayList<>();
        node.path(step.substring(0, step.length() - 2)).forEach(entry -> all.addAll(at(entry, rest)));
        return all;
    }

    /**
     * Whether a figure stands in the text, as it is or in thousandths (sheets say micrometres where results say millimetres), rounded
     * half to even, up or down to at least two digits that count.
     */
    private static boolean stands(String text, BigDecimal figure) {
        for (BigDecimal value : List.of(figure.abs(), figure.abs().movePointRight(3))) {
            for (int places = 0; places <= 6; places++) {
                for (RoundingMode mode : List.of(RoundingMode.HALF_EVEN, RoundingMode.UP, RoundingMode.DOWN)) {
                    BigDecimal rounded = value.setScale(places, mode);
                    boolean enough = rounded.precision() >= 2 || rounded.compareTo(value) == 0;
                    if (enough
                            && Pattern.compile("(?<![\\d.])" + Pattern.quote(rounded.toPlainString()) + "(?!\\d)")
                                    .matcher(text)
                                    .find()) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
