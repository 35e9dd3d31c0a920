package io.github.firstoff.command;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.proof.Samples;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a job says of changes, special processes and inspection documents stands on its sheets, and nothing of it where it says nothing. */
class JobOnSheetsTest {
    private static final String FIRM = "\"issuer\": {\"name\": \"Hollin Quay Deck Gear\"}, \"date\": \"2026-11-20\"";

    @TempDir
    Path folder;

    private String made(String command, String plan, String readings, String job) throws IOException {
        Path jobFile =
                Files.writeString(folder.resolve("job.json"), "{\"schema\": \"firstoff-job-1\", " + FIRM + job + "}");
        Path pdf = folder.resolve("sheet.pdf");
        Samples.Run run = Samples.run(
                command,
                "--plan",
                Samples.FOLDER.resolve(plan).toString(),
                "--job",
                jobFile.toString(),
                Samples.FOLDER.resolve(readings).toString(),
                "--out",
                pdf.toString());
        assertThat(run.code()).as(run.err()).isZero();
        return text(pdf);
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private String firstArticle(String job) throws IOException {
        return made("first-article", "hq-310-p.plan.json", "first-article-hq-310-p.csv", job);
    }

    private String certificate(String job) throws IOException {
        return made("certificate", "hq-310-s.plan.json", "batch-2209.csv", job);
    }

    @Test
    void aDeltaSaysWhatItStartsFromAndWhatChanged() throws IOException {
        assertThat(firstArticle(", \"firstArticle\": {\"kind\": \"delta\", \"reason\": \"new bore tolerance\","
                        + " \"baseline\": \"J-1150\", \"changes\": \"seat P7 was N7\"}"))
                .contains("delta first article", "baseline J-1150", "what changed seat P7 was N7")
                .doesNotContain("the job does not state both");
    }

    @Test
    void aDeltaWithoutItsBaselineSaysSo() throws IOException {
        assertThat(firstArticle(", \"firstArticle\": {\"kind\": \"delta\"}"))
                .contains("baseline not stated", "the job does not state both");
    }

    @Test
    void aFullFirstArticleHasNoBaseline() throws IOException {
        assertThat(firstArticle(", \"firstArticle\": {\"kind\": \"full\"}"))
                .contains("full first article")
                .doesNotContain("baseline");
    }

    @Test
    void specialProcessesStandWithMaterial() throws IOException {
        String processes = ", \"processes\": [{\"name\": \"anodised\", \"specification\": \"ISO 7599\","
                + " \"certificate\": \"A-771\"}]";
        String line = "anodised, to ISO 7599, by not stated, certificate A-771";
        assertThat(firstArticle(processes)).contains("special processes", line);
        assertThat(certificate(processes)).contains("special processes", line);
        assertThat(certificate("")).doesNotContain("special processes");
    }

    @ParameterizedTest
    @CsvSource({
        "2.1, declaration of compliance with the order 2.1, Authorised by",
        "2.2, test report 2.2, Authorised by",
        "3.1, inspection certificate 3.1, Authorised inspection representative",
        "3.2, inspection certificate 3.2, official representative"
    })
    void theInspectionDocumentIsNamedOnlyWhereTheJobStatesIt(String type, String named, String signs)
            throws IOException {
        assertThat(certificate(", \"certificate\": {\"number\": \"C-1\", \"inspectionDocument\": \"" + type + "\"}"))
                .contains(named, "EN 10204", signs);
        assertThat(certificate(", \"certificate\": {\"number\": \"C-1\"}")).doesNotContain("EN 10204");
    }

    @Tag("slow")
    @Test
    void twoHundredCharacteristicsUnderChartsAreMadeInOneGo() throws IOException {
        Random random = new Random(20261120);
        StringBuilder plan = new StringBuilder("{\"schema\": \"firstoff-plan-1\", \"part\": {\"number\": \"HQ-900\","
                + " \"revision\": \"A\"}, \"unit\": \"mm\", \"characteristics\": [");
        StringBuilder readings = new StringBuilder("part,characteristic,value\n");
        for (int c = 1; c <= 200; c++) {
            plan.append(c > 1 ? "," : "")
                    .append("{\"number\": \"" + c + "\", \"feature\": \"bore " + c
                            + "\", \"requirement\": \"12.5 ±0.05\","
                            + " \"study\": {\"chart\": \"xbar-r\", \"subgroup\": 5}}");
        }
        for (int p = 1; p <= 125; p++) {
            for (int c = 1; c <= 200; c++) {
                readings.append(
                        "P-" + p + "," + c + "," + (12500 + Math.round(10 * random.nextGaussian())) / 1000.0 + "\n");
            }
        }
        Path pdf = folder.resolve("sheet.pdf");
        Samples.Run run = Samples.run(
                "batch",
                "--plan",
                Files.writeString(folder.resolve("plan.json"), plan.append("]}"))
                        .toString(),
                Files.writeString(folder.resolve("readings.csv"), readings).toString(),
                "--out",
                pdf.toString());
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(text(pdf)).contains("200 bore 200");
    }
}
