package io.github.firstoff.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Hand;
import io.github.firstoff.report.model.PaperSize;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Edges of figures and tables; the sheets stay in {@code target} for the eye. */
class OddSheetsTest {
    private static List<String> pages(String name, List<Block> blocks) throws IOException {
        Path file = Path.of("target", name);
        try (OutputStream out = Files.newOutputStream(file)) {
            RenderedSheet sheet = new PdfRenderer().render(Specimen.sheet(Hand.STARBOARD, PaperSize.A4, blocks), out);
            assertThat(sheet.messages()).isEmpty();
        }
        return ReadBack.pages(Files.readAllBytes(file));
    }

    @Test
    void figuresOfOnePointAndOfAThousandStayOnOnePage() throws IOException {
        assertThat(pages("specimen-odd-figures.pdf", OddSheets.oddFigures()))
                .singleElement()
                .satisfies(
                        page -> assertThat(page).contains("insert 4, new coolant", "1, 2", "−4", "moving range, mm"));
    }

    @Test
    void sixPiecesAndACrowdedStripFitTheMeasure() throws IOException {
        assertThat(pages("specimen-odd-table.pdf", OddSheets.oddTable()))
                .singleElement()
                .satisfies(page -> assertThat(page).contains("Piece 6", "0.7 (3)", "3 over, the most by 0.7"));
    }

    @Test
    void aCertificateTakesOnePage() throws IOException {
        assertThat(pages("specimen-certificate.pdf", OddSheets.certificate()))
                .singleElement()
                .satisfies(page -> assertThat(page).contains("All 125 pieces delivered conform", "Issued by"));
    }
}
