package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.House;
import io.github.firstoff.intake.HouseFile;
import io.github.firstoff.intake.Input;
import io.github.firstoff.proof.Samples;
import io.github.firstoff.words.Labels;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every sample on both papers, plain and on the house's paper, in every language: nothing leaves the paper, no page is nearly empty. */
class PaperTest {
    private static final float DPI = 36;
    private static final double MM = DPI / 25.4;

    /** What a page must at least be filled of its type area; a sheet of one page may be short. */
    private static final double LEAST_FILLED = 0.2;

    @TempDir
    Path folder;

    static Stream<Samples.Sample> samples() {
        return Samples.all();
    }

    /** The longest words on the shorter paper, where there is least room. */
    @ParameterizedTest
    @MethodSource("samples")
    void everySampleFitsTheShorterPaperInTheLongerLanguage(Samples.Sample sample) throws IOException {
        check(sample, House.Paper.LETTER, "de", List.of());
    }

    @Tag("slow")
    @ParameterizedTest
    @MethodSource("samples")
    void everySampleFitsBothPapersInEveryLanguage(Samples.Sample sample) throws IOException {
        for (House.Paper paper : House.Paper.values()) {
            for (String language : Labels.languages()) {
                // plain A4 in English is set by SampleSheetsTest and read back by others
                if (paper == House.Paper.LETTER || !language.equals("en")) {
                    check(sample, paper, language, List.of());
                }
            }
        }
        check(
                sample,
                House.Paper.LETTER,
                "en",
                List.of(
                        "--house",
                        Samples.FOLDER.resolve("hollin-quay.house.json").toString()));
    }

    private void check(Samples.Sample sample, House.Paper paper, String language, List<String> more)
            throws IOException {
        Path pdf = folder.resolve("sheet.pdf");
        Files.deleteIfExists(pdf);
        List<String> options = new ArrayList<>(List.of("--paper", paper.word(), "--language", language));
        options.addAll(more);
        Samples.Run run = sample.make(pdf, options.toArray(String[]::new));
        if (!Files.exists(pdf)) {
            // a certificate that is refused has no pages
            assertThat(sample.command()).as(run.err()).isEqualTo("certificate");
            return;
        }
        String told = sample + " on " + paper.word() + " in " + language;
        assertThat(run.err()).as(told).doesNotContain("too wide", "typeface", "runs over", "shortened");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            float width = document.getPage(0).getMediaBox().getWidth();
            assertThat(width)
                    .isBetween(paper == House.Paper.A4 ? 595f : 611.9f, paper == House.Paper.A4 ? 595.4f : 612.1f);
            assertThat(outside(document)).as(told).isEmpty();
            PDFRenderer renderer = new PDFRenderer(document);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                double filled = filled(renderer.renderImageWithDPI(page, DPI));
                assertThat(filled)
                        .as(told + ", page " + (page + 1) + " of " + document.getNumberOfPages())
                        .isGreaterThan(LEAST_FILLED);
            }
        }
    }

    /** Signs of text that stand outside the margins of 18 mm; the bar of a handed part is turned and stands at the edge. */
    private static List<String> outside(PDDocument document) throws IOException {
        List<String> found = new ArrayList<>();
        new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition sign) {
                float left = sign.getXDirAdj();
                float right = left + sign.getWidthDirAdj();
                boolean turned = sign.getDir() != 0;
                if (!turned && (left < 50.5 || right > sign.getPageWidth() - 50.5)) {
                    found.add(sign.getUnicode() + " at " + left);
                }
                super.processTextPosition(sign);
            }
        }.getText(document);
        return found;
    }

    /** How far down the type area its lowest ink stands. */
    private static double filled(BufferedImage page) {
        int top = (int) (25 * MM);
        int bottom = (int) (page.getHeight() - 18 * MM);
        int left = (int) (12 * MM);
        int lowest = top;
        for (int y = top; y < bottom; y++) {
            for (int x = left; x < page.getWidth() - left; x++) {
                if ((page.getRGB(x, y) & 0xFF) < 200) {
                    lowest = y;
                }
            }
        }
        return (lowest - top) / (double) (bottom - top);
    }

    @org.junit.jupiter.api.Test
    void theSampleHouseIsRead() {
        House house = HouseFile.read(Input.file(Samples.FOLDER.resolve("hollin-quay.house.json")), Labels.languages())
                .house();
        assertThat(house.firm().name()).isEqualTo("Hollin Quay Deck Gear");
        assertThat(house.logo())
                .hasValueSatisfying(logo -> assertThat(logo.isVector()).isTrue());
    }
}
