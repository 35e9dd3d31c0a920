package io.github.firstoff.proof;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
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

    static Stream<Samples.Made> everyKind() {
        Set<String> kinds = new HashSet<>();
        return Samples.everyKind()
                .filter(each ->
                        !each.command().equals("certificate") || each.toString().contains("2209"))
                .filter(each -> kinds.add(each.command()));
    }

    /** Firm, address, approvals, sentence, logo, paper and language bind sheets of every kind. */
    @ParameterizedTest
    @MethodSource("everyKind")
    void theHouseBindsEveryKindOfSheet(Samples.Made sample) throws IOException {
        Path house = Files.writeString(
                folder.resolve("house.json"),
                "{\"schema\": \"firstoff-house-1\", \"name\": \"Hollin Quay Deck Gear\", \"address\": \"Slip Lane 77\","
                        + " \"approvals\": \"Held to a standard of our own.\", \"signOff\": \"Kept for eleven years.\","
                        + " \"logo\": \"mark.svg\", \"paper\": \"letter\", \"language\": \"de\"}");
        Samples.Run made = sample.make(pdf, "--house", house.toString());
        assertThat(made.code()).as(made.err()).isLessThanOrEqualTo(1);
        byte[] file = Files.readAllBytes(pdf);
        SheetFile sheet = SheetFile.read("sheet", file);
        assertThat(sheet.pages().get(0))
                .contains("Hollin Quay Deck Gear", "Slip Lane 77", "Held to a standard of our own.");
        assertThat(String.join(" ", sheet.pages())).contains("Kept for eleven years.");
        assertThat(sheet.attachment("house-logo-mark.svg")).hasValue(Files.readAllBytes(folder.resolve("mark.svg")));
        assertThat(sheet.language().locale().getLanguage()).isEqualTo("de");
        try (PDDocument document = Loader.loadPDF(file)) {
            assertThat(document.getPage(0).getMediaBox().getHeight()).isBetween(791.9f, 792.1f);
            assertThat(document.getDocumentCatalog().getAcroForm(null).getFields())
                    .hasSizeGreaterThanOrEqualTo(2);
        }
        assertThat(ArchiveFormat.departures(file, PDFAFlavour.PDFUA_1)).isEmpty();
        Samples.Run verified = Samples.run("verify", pdf.toString());
        assertThat(verified.code()).as(verified.out()).isZero();
        assertThat(verified.out()).contains("the same file to the last byte");
    }

    /** A logo that runs something, points elsewhere or is too large stops every kind of sheet before anything is written. */
    @ParameterizedTest
    @MethodSource("everyKind")
    void aHostileLogoStopsEveryKindOfSheet(Samples.Made sample) throws IOException {
        String svg =
                "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='10' height='10'>";
        Map<String, byte[]> logos = Map.of(
                "script.svg", (svg + "<script>1</script></svg>").getBytes(StandardCharsets.UTF_8),
                "outside.svg",
                        (svg + "<image xlink:href='http://192.0.2.1/a.png' width='9' height='9'/></svg>")
                                .getBytes(StandardCharsets.UTF_8),
                "file.svg",
                        ("<!DOCTYPE svg [<!ENTITY x SYSTEM 'file:///etc/hostname'>]>" + svg + "&x;</svg>")
                                .getBytes(StandardCharsets.UTF_8),
                "handler.svg",
                        (svg + "<rect width='5' height='5' onclick='x()'/></svg>").getBytes(StandardCharsets.UTF_8),
                "huge.png", png(4001, 1),
                "large.svg", (svg + " ".repeat(1024 * 1024) + "</svg>").getBytes(StandardCharsets.UTF_8));
        for (Map.Entry<String, byte[]> logo : logos.entrySet()) {
            Files.write(folder.resolve(logo.getKey()), logo.getValue());
            Samples.Run made = sample.make(pdf, "--house", house(logo.getKey()).toString());
            assertThat(made.code()).as(logo.getKey() + made.err()).isEqualTo(3);
            assertThat(made.err())
                    .contains(logo.getKey())
                    .doesNotContain("Exception")
                    .doesNotContain("fault in the program");
            assertThat(pdf).doesNotExist();
        }
    }

    private static byte[] png(int width, int height) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), "png", out);
        return out.toByteArray();
    }
}
