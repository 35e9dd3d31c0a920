package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Small things that a reader of a sheet stumbles over, on plans and readings made to provoke them. */
class SheetDetailsTest {
    @TempDir
    Path folder;

    private Samples.Run run;

    private Path made(String command, String characteristics, String readings, String... more) throws IOException {
        Path plan = Files.writeString(
                folder.resolve("p.plan.json"),
                "{\"schema\": \"firstoff-plan-1\", \"part\": {\"number\": \"HQ-350\", \"revision\": \"B\"}, \"unit\": \"mm\","
                        + " \"generalTolerance\": \"ISO 2768-mK\", \"characteristics\": [" + characteristics + "]}");
        Path csv = Files.writeString(folder.resolve("r.csv"), readings);
        Path pdf = folder.resolve("sheet.pdf");
        String[] arguments = {command, "--plan", plan.toString(), csv.toString(), "--out", pdf.toString()};
        run = Samples.run(IntStream.range(0, arguments.length + more.length)
                .mapToObj(i -> i < arguments.length ? arguments[i] : more[i - arguments.length])
                .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isLessThan(2);
        return pdf;
    }

    private static String text(Path pdf, int first, int last) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(first);
            stripper.setEndPage(last);
            return stripper.getText(document).replaceAll("\\s+", " ");
        }
    }

    private static String text(Path pdf) throws IOException {
        return text(pdf, 1, Integer.MAX_VALUE);
    }

    private static String one(String requirement, String study) {
        return "{\"number\": \"1\", \"feature\": \"pin\", \"requirement\": \"" + requirement + "\"" + study + "}";
    }

    private static String individuals(int count, java.util.function.IntFunction<String> value) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(i -> String.format(Locale.ROOT, "%03d,1,%s", i, value.apply(i)))
                .collect(Collectors.joining("\n", "part,characteristic,value\n", "\n"));
    }

    @Test
    void everyModifierIsDrawnAsItsLetterInARingAndExtractedAsSuch() throws IOException {
        String plan = IntStream.range(0, 5)
                .mapToObj(i -> "{\"number\": \"" + (i + 1) + "\", \"feature\": \"f\", \"requirement\": \""
                        + new String[] {
                                    "Ø20 ±0.01 (E)",
                                    "surface profile 0.2 (U) 0.05 A",
                                    "perpendicularity Ø0.05 (P) 12 A",
                                    "flatness 0.05 (F)",
                                    "angularity 0.1 (T) A"
                                }
                                [i]
                        + "\"}")
                .collect(Collectors.joining(","));
        Path pdf = made("first-article", plan, "part,1,2,3,4,5\nS1,20.001,0.01,0.01,0.01,0.01\n");
        assertThat(text(pdf)).contains("Ⓔ", "Ⓤ", "Ⓟ", "Ⓕ", "Ⓣ").doesNotContain("□", "(U)", "(P)", "(E)");
        assertThat(run.err()).doesNotContain("typeface");
    }

    @Test
    void theHeadOfAHistoryNamesRevisionAndBatches() throws IOException {
        Path pdf = folder.resolve("history.pdf");
        Samples.Run made = Samples.run(
                "history",
                "--plan",
                Samples.FOLDER.resolve("hq-310-p.plan.json").toString(),
                "--characteristic",
                "1",
                Samples.FOLDER.resolve("batch-2207.csv").toString(),
                Samples.FOLDER.resolve("batch-2208.csv").toString(),
                "--out",
                pdf.toString());
        assertThat(made.code()).isEqualTo(1);
        assertThat(text(pdf)).contains("revision C", "batch B-2207 to B-2208");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getDocumentInformation().getTitle())
                    .isEqualTo("History, HQ-310-P revision C, characteristic 1");
        }
    }

    @Test
    void manyPhasesHaveLettersOverTheChartAndTheirNamesBelow() throws IOException {
        String readings = IntStream.range(0, 96)
                .mapToObj(i -> String.format(
                        Locale.ROOT,
                        "%03d,1,%.3f,set-up %d after a new tool",
                        i + 1,
                        10 + 0.001 * (i * 7 % 5),
                        i / 12 + 1))
                .collect(Collectors.joining("\n", "part,characteristic,value,phase\n", "\n"));
        String told = text(made("batch", one("10 ±0.03", ", \"study\": {\"chart\": \"individuals\"}"), readings))
                .replace('\u00a0', ' ');
        assertThat(told).contains("a piece 013 (phase set-up 2 after a new tool)", "g piece 085 (");
    }

    @Test
    void readingsThatAreAllAlikeStandBetweenTheirLimitsOnScalesOfTheirOwnSteps() throws IOException {
        String told = text(made(
                "batch", one("10 ±0.03", ", \"study\": {\"chart\": \"individuals\"}"), individuals(30, i -> "10.000")));
        assertThat(told)
                .contains("upper limit 10.03", "lower limit 9.97", "0.005")
                .doesNotContain("0.00000", "outside the picture");
    }

    @Test
    void singlePointsBeyondTheirLimitAreNoRun() throws IOException {
        String readings = IntStream.rangeClosed(1, 400)
                .mapToObj(i ->
                        i + ",1," + (i % 50 == 0 || (i > 180 && i <= 186) || (i > 280 && i <= 286) ? "fail" : "pass"))
                .collect(Collectors.joining("\n", "part,characteristic,value\n", "\n"));
        assertThat(text(made(
                        "batch",
                        one("visual: no burrs", ", \"study\": {\"chart\": \"p\", \"subgroup\": 20}"),
                        readings)))
                .contains("The proportion nonconforming lies above its upper control limit at samples 10 and 15");
    }

    @Test
    void aRunWithAPointOnTheOtherSideIsNotSaidToBeWhole() throws IOException {
        // Four of five beyond one sigma below the centre, the other one far above it.
        double[] tail = {-0.015, 0.012, -0.015, -0.016, -0.015, 0.002, 0.001, -0.001, 0.002};
        String told = text(made(
                "batch",
                one("10 ±0.1", ", \"study\": {\"chart\": \"individuals\"}"),
                individuals(
                        49,
                        i -> String.format(
                                Locale.ROOT, "%.3f", 10 + (i <= 40 ? 0.006 * (i % 2 * 2 - 1) : tail[i - 41])))));
        assertThat(told).contains("lies mostly below the centre line from piece 041 to piece 045");
    }

    @Test
    void signaturesStayOnTheFirstPageWhereTheyHaveRoom() throws IOException {
        Path pdf = made(
                "first-article",
                IntStream.rangeClosed(1, 12)
                        .mapToObj(i -> one("10 ±0.1", "").replace("\"1\"", "\"" + i + "\""))
                        .collect(Collectors.joining(",")),
                "part,1\nS1,10.01\n");
        assertThat(text(pdf, 1, 1)).contains("Approved by");
    }

    @Test
    void aNegativeFigureInASentenceHasAMinus() throws IOException {
        String told = text(made(
                "batch",
                one("10 ±0.03", ", \"study\": {\"chart\": \"individuals\"}"),
                individuals(40, i -> i % 2 == 0 ? "10.001" : "9.999")));
        assertThat(told).contains("lag-1 autocorrelation −").doesNotContain("autocorrelation -");
    }
}
