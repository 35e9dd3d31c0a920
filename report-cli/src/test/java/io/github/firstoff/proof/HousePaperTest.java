package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Sheets on a firm's paper: fit for the archive, and made again from what they carry, logo included. */
class HousePaperTest {
    @TempDir
    Path folder;

    private Path pdf;

    @BeforeEach
    void writeLogos() throws IOException {
        pdf = folder.resolve("sheet.pdf");
        BufferedImage image = new BufferedImage(300, 120, BufferedImage.TYPE_INT_ARGB);
        Graphics2D pen = image.createGraphics();
        pen.setColor(new Color(0x17, 0x3A, 0x63));
        pen.fillOval(10, 10, 100, 100);
        pen.dispose();
        ImageIO.write(image, "png", folder.resolve("mark.png").toFile());
        Files.copy(Samples.FOLDER.resolve("hollin-quay.svg"), folder.resolve("mark.svg"));
    }

    private Path house(String logo) throws IOException {
        return Files.writeString(
                folder.resolve("house.json"),
                "{\"schema\": \"firstoff-house-1\", \"name\": \"Hollin Quay Deck Gear\", \"logo\": \"" + logo
                        + "\", \"paper\": \"letter\", \"language\": \"de\"}");
    }

    @ParameterizedTest
    @ValueSource(strings = {"mark.svg", "mark.png"})
    void aSheetWithALogoIsFitForTheArchiveAndVerifiesItself(String logo) throws IOException {
        Samples.Run made = Samples.batch().make(pdf, "--house", house(logo).toString());
        assertThat(made.code()).as(made.err()).isZero();
        byte[] file = Files.readAllBytes(pdf);
        assertThat(ArchiveFormat.departures(file, PDFAFlavour.PDFA_3_A)).isEmpty();
        assertThat(ArchiveFormat.departures(file, PDFAFlavour.PDFUA_1)).isEmpty();
        Samples.Run verified = Samples.run("verify", pdf.toString());
        assertThat(verified.code()).as(verified.out()).isZero();
        assertThat(verified.out()).contains("the same file to the last byte");
        SheetFile sheet = SheetFile.read("sheet", Files.readAllBytes(pdf));
        assertThat(sheet.attachment("house-house.json")).isPresent();
        assertThat(sheet.attachment("house-logo-" + logo)).hasValue(Files.readAllBytes(folder.resolve(logo)));
    }

    @Test
    void theFirmIsTheIssuerWhereTheJobStatesNone() throws IOException {
        Path job = folder.resolve("job.json");
        Files.writeString(job, "{\"schema\": \"firstoff-job-1\", \"date\": \"2026-11-20\"}");
        Samples.Run made = Samples.run(
                "certificate",
                "--plan",
                Samples.FOLDER.resolve("hq-310-s.plan.json").toString(),
                "--job",
                job.toString(),
                Samples.FOLDER.resolve("batch-2209.csv").toString(),
                "--house",
                Samples.FOLDER.resolve("hollin-quay.house.json").toString(),
                "--out",
                pdf.toString());
        assertThat(made.code()).as(made.err()).isZero();
        SheetFile sheet = SheetFile.read("sheet", Files.readAllBytes(pdf));
        assertThat(sheet.pages().get(0)).contains("Hollin Quay Deck Gear declares");
    }

    @Test
    void aHouseThatCannotBeReadStopsTheSheet() throws IOException {
        Files.writeString(folder.resolve("mark.svg"), "<svg xmlns='http://www.w3.org/2000/svg'/>");
        Samples.Run made =
                Samples.batch().make(pdf, "--house", house("mark.svg").toString());
        assertThat(made.code()).isEqualTo(3);
        assertThat(made.err()).contains("mark.svg:1", "no size");
        assertThat(pdf).doesNotExist();
    }

    @Test
    void theResultIsTheSameInEveryLanguage() {
        Samples.Run english = Samples.batch().make(pdf, "--json");
        Samples.Run german = Samples.batch().make(pdf, "--json", "--language", "de");
        assertThat(german.out()).isEqualTo(english.out());
    }

    @Test
    void anUnknownLanguageIsAFaultOfTheCommandLine() {
        Samples.Run made = Samples.batch().make(pdf, "--language", "xx");
        assertThat(made.code()).isEqualTo(2);
        assertThat(made.err()).contains("--language xx", "en");
    }

    @Test
    void theSampleHouseFollowsItsSchema() throws IOException {
        var schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(Path.of("..", "docs", "schemas", "house.schema.json")));
        assertThat(schema.validate(
                        Files.readString(Samples.FOLDER.resolve("hollin-quay.house.json")), InputFormat.JSON))
                .isEmpty();
        assertThat(schema.validate("{\"schema\": \"firstoff-house-1\", \"nam\": 1}", InputFormat.JSON))
                .isNotEmpty();
    }
}
