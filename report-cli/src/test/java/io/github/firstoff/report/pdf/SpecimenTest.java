package io.github.firstoff.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.model.GeometricSymbol;
import io.github.firstoff.report.model.Hand;
import io.github.firstoff.report.model.Modifier;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.junit.jupiter.api.Test;

/** Renders a sheet that holds everything, for the eye ({@code target/specimen.pdf}), and reads it back. */
class SpecimenTest {
    @Test
    void everyBlockAndFigureIsOnTheSheetAndNothingIsReplaced() throws IOException {
        Path file = Path.of("target", "specimen.pdf");
        RenderedSheet sheet;
        try (OutputStream out = Files.newOutputStream(file)) {
            sheet = new PdfRenderer().render(Specimen.sheet(Hand.PORT), out);
        }
        byte[] pdf = Files.readAllBytes(file);

        assertThat(sheet.messages()).isEmpty();
        List<String> pages = ReadBack.pages(pdf);
        assertThat(pages).hasSize(sheet.pages()).hasSize(7);
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i))
                    .contains(
                            "HQ-310-P", "B-2207", "FA-0419", "First article inspection", "9f3ac2d01b7e", "ISO 14253-1")
                    .contains("page " + (i + 1) + " of 7");
        }
        assertThat(pages.get(0))
                .contains("Not accepted: 1 of 14 characteristics", "over by 0.004", "What needs a decision", "PO 7781")
                .contains("Inspected by", "A. Quill, inspector");
        assertThat(pages.get(1)).contains("bearing bore", "51.9532", "not measured", "+0.02", "M5x0.8-6H go/no-go");
        assertThat(pages.get(2))
                .contains("UCL 51.9673", "LCL 51.9617", "subgroup", "required 1.33", "1.88 (1.63 to 2.13)")
                .contains("Caution:", "\u22120.004", "normal", "lower limit");
        assertThat(pages.get(3)).contains("new insert", "moving range, mm", "upper limit 20.000", "cumulative sum, σ");
        assertThat(pages.get(6)).contains("Coverage: Ø ± µ ° − ≤ ≥ × σ Δ … – — ’ “ ” Ω α β γ ÄÖÜ éèê Łódź Čeština Øre");
    }

    @Test
    void allTypeIsEmbeddedAndNothingIsAPicture() throws IOException {
        byte[] pdf = ReadBack.bytes(Specimen.sheet(Hand.STARBOARD));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<PDFont> fonts = ReadBack.fonts(document);
            assertThat(fonts)
                    .isNotEmpty()
                    .allMatch(PDFont::isEmbedded)
                    .allMatch(font -> font.getName().matches("[A-Z]{6}\\+Lato-(Regular|Semibold)"));
            assertThat(ReadBack.images(document)).isZero();
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en-GB");
            assertThat(document.getDocumentCatalog().getMetadata()).isNotNull();
            assertThat(document.getDocumentCatalog().getOutputIntents()).hasSize(1);
        }
    }

    @Test
    void drawnSymbolsReadAsTheirCharacters() throws IOException {
        List<String> readings = ReadBack.readings(ReadBack.bytes(Specimen.sheet(Hand.NONE)));
        List<String> expected = new ArrayList<>();
        Stream.of(GeometricSymbol.values()).map(GeometricSymbol::character).forEach(expected::add);
        Stream.of(Modifier.values()).map(Modifier::character).forEach(expected::add);
        assertThat(readings).containsAll(expected);
        // The characters of Unicode 15.1, block "Miscellaneous Technical" and others, as named there.
        assertThat(expected).startsWith("⏤", "⏥", "○", "⌭", "⌒", "⌓", "∥", "⟂", "∠", "⌖", "◎", "⌯", "↗", "⌰", "Ⓜ", "Ⓛ");
    }

    @Test
    void equalModelsGiveEqualFiles() throws IOException {
        assertThat(ReadBack.bytes(Specimen.sheet(Hand.PORT))).isEqualTo(ReadBack.bytes(Specimen.sheet(Hand.PORT)));
    }

    @Test
    void theBarStandsAtTheEdgeOfItsHand() throws IOException {
        double width = PaperSize.A4.widthMm() * Type.MM;
        assertThat(barPlaces(Hand.PORT)).isNotEmpty().allMatch(x -> x < 25);
        assertThat(barPlaces(Hand.STARBOARD)).isNotEmpty().allMatch(x -> x > width - 25);
        assertThat(barPlaces(Hand.NONE)).isEmpty();
    }

    /** Places of turned letters: only the word in the bar is turned. */
    private static List<Double> barPlaces(Hand hand) throws IOException {
        ReportModel model = Specimen.sheet(hand, PaperSize.A4, Specimen.firstPage());
        double margin = PageFrame.MARGIN - 1;
        double width = PaperSize.A4.widthMm() * Type.MM;
        List<Double> places = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(ReadBack.bytes(model))) {
            org.apache.pdfbox.text.PDFTextStripper stripper = new org.apache.pdfbox.text.PDFTextStripper() {
                @Override
                protected void processTextPosition(org.apache.pdfbox.text.TextPosition position) {
                    double x = position.getTextMatrix().getTranslateX();
                    if (x < margin || x > width - margin) {
                        places.add(x);
                    }
                }
            };
            stripper.getText(document);
        }
        return places;
    }

    @Test
    void usLetterHoldsTheSameSheet() throws IOException {
        Path file = Path.of("target", "specimen-letter.pdf");
        ReportModel model = Specimen.sheet(
                Hand.STARBOARD, PaperSize.US_LETTER, Specimen.sheet(Hand.NONE).blocks());
        try (OutputStream out = Files.newOutputStream(file)) {
            assertThat(new PdfRenderer().render(model, out).messages()).isEmpty();
        }
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612f);
            assertThat(document.getPage(0).getMediaBox().getHeight()).isEqualTo(792f);
        }
    }
}
