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

    private Samples.Run firstArticleOf(String readings, String article) throws IOException {
        return Samples.run(
                "first-article",
                "--json",
                "--plan",
                Samples.FOLDER.resolve("hq-310-p.plan.json").toString(),
                "--job",
                Files.writeString(
                                folder.resolve("part.job.json"),
                                "{\"schema\": \"firstoff-job-1\", \"firstArticle\": " + article + "}")
                        .toString(),
                Files.writeString(folder.resolve("part.csv"), "part,characteristic,value\n" + readings)
                        .toString(),
                "--out",
                folder.resolve("part.pdf").toString());
    }

    @Test
    void aPartialFirstArticleIsAcceptedOnWhatItCoversAndClaimsNothingElse() throws IOException {
        Samples.Run run = firstArticleOf(
                "S1,1,51.960\nS1,4,63.980\n",
                "{\"kind\": \"partial\", \"baseline\": \"J-1150\", \"characteristics\": [\"1\", 4]}");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("\"verdict\" : \"accepted\"", "\"notCovered\" : [", "\"kind\" : \"partial\"")
                .contains("\"number\" : \"4\"")
                .doesNotContain("\"number\" : \"5\"");
        assertThat(text(folder.resolve("part.pdf")))
                .contains(
                        "This first article covers 2 of the 20 characteristics of the plan and claims nothing of the others.")
                .contains("not covered 2, 3, 5, 6,")
                .contains("baseline J-1150");
        assertThat(Samples.run("verify", folder.resolve("part.pdf").toString()).code())
                .isZero();
    }

    @Test
    void whatAPartialFirstArticleCoversMustBeMeasuredAndWhatWasMeasuredCounts() throws IOException {
        String one =
                "{\"kind\": \"delta\", \"baseline\": \"J-1150\", \"changes\": \"seat\", \"characteristics\": [\"1\"]}";
        assertThat(firstArticleOf("S1,4,63.980\n", one).out()).contains("\"verdict\" : \"incomplete\"");
        assertThat(firstArticleOf("S1,1,51.960\nS1,4,64.200\n", one).out()).contains("\"verdict\" : \"rejected\"");
    }

    @Test
    void withoutAListEveryCharacteristicMustBeMeasured() throws IOException {
        Samples.Run run = firstArticleOf("S1,1,51.960\n", "{\"kind\": \"partial\"}");
        assertThat(run.out())
                .contains(
                        "\"verdict\" : \"incomplete\"", "does not say which characteristics this first article covers");
    }

    @Test
    void aCharacteristicThatThePlanHasNotIsNotCovered() throws IOException {
        Samples.Run unknown =
                firstArticleOf("S1,1,51.960\n", "{\"kind\": \"partial\", \"characteristics\": [\"1\", \"77\"]}");
        assertThat(unknown.code()).isEqualTo(3);
        assertThat(unknown.err())
                .contains("firstArticle, characteristics", "the plan has no such characteristic", "\"77\"");
        Samples.Run full = firstArticleOf("S1,1,51.960\n", "{\"kind\": \"full\", \"characteristics\": [\"1\"]}");
        assertThat(full.code()).isEqualTo(3);
        assertThat(full.err()).contains("a full first article covers every characteristic");
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
