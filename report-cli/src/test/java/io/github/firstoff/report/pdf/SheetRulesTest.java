package io.github.firstoff.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;
import static org.assertj.core.api.Assertions.within;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Cell;
import io.github.firstoff.report.model.Column;
import io.github.firstoff.report.model.Hand;
import io.github.firstoff.report.model.Notation;
import io.github.firstoff.report.model.PaperSize;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.report.model.TableRow;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The rules every sheet keeps, each on a sheet made for it. */
class SheetRulesTest {
    private static ReportModel sheet(Block... blocks) {
        return Specimen.sheet(Hand.NONE, PaperSize.A4, List.of(blocks));
    }

    private static ReportModel sheet(List<Block> blocks) {
        return Specimen.sheet(Hand.NONE, PaperSize.A4, blocks);
    }

    @Test
    void aCharacterThatTheTypefaceLacksIsSeenAndReported() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        RenderedSheet sheet = new PdfRenderer()
                .render(
                        sheet(new Block.Facts(List.of(
                                Block.FactGroup.of("Order", Block.Fact.of("customer", "Marrow Bay 港 Yachts"))))),
                        out);

        assertThat(ReadBack.text(out.toByteArray())).contains("Marrow Bay □ Yachts");
        assertThat(sheet.messages()).hasSize(1);
        assertThat(sheet.messages().get(0)).contains("U+6E2F", "港", "Marrow Bay 港 Yachts");
    }

    @Test
    void decomposedAccentsAreComposedRatherThanReplaced() throws IOException {
        byte[] pdf = ReadBack.bytes(sheet(new Block.Paragraph(Text.of("Ge\u0301ranium"))));
        assertThat(ReadBack.text(pdf)).contains("G\u00E9ranium");
    }

    @Test
    void figuresStandOnTheirDecimalMarks() throws IOException {
        List<String> figures = List.of("1.5", "−12.25", "100.125", "0.0", "7");
        List<TableRow> rows = new ArrayList<>();
        for (String figure : figures) {
            rows.add(TableRow.of(Cell.text("x"), Cell.figure(figure)));
        }
        byte[] pdf =
                ReadBack.bytes(sheet(new Block.Table(List.of(Column.narrow("k"), Column.figure("Value", "mm")), rows)));

        List<ReadBack.Glyph> marks = ReadBack.glyphs(pdf).stream()
                .filter(glyph -> glyph.text().equals(".") && glyph.y() < 300 && glyph.size() > 7)
                .toList();
        assertThat(marks).hasSize(4);
        assertThat(marks)
                .allSatisfy(mark -> assertThat(mark.x()).isCloseTo(marks.get(0).x(), within(0.01)));
        ReadBack.Glyph seven = ReadBack.glyphs(pdf).stream()
                .filter(glyph -> glyph.text().equals("7") && glyph.size() > 7 && glyph.y() < 300)
                .reduce((first, second) -> second)
                .orElseThrow();
        // A whole number ends where the mark would stand.
        assertThat(seven.x() + seven.width()).isCloseTo(marks.get(0).x(), within(0.05));
    }

    @Test
    void figuresOfOneSizeAreEquallyWide() {
        Faces faces = new Faces();
        for (boolean strong : new boolean[] {false, true}) {
            double zero = faces.width("0", strong, 8.5);
            for (char digit = '1'; digit <= '9'; digit++) {
                assertThat(faces.width(String.valueOf(digit), strong, 8.5)).isEqualTo(zero);
            }
        }
    }

    @Test
    void tableHeadsAreRepeatedAndNoRowIsLost() throws IOException {
        List<TableRow> rows = new ArrayList<>();
        for (int i = 1; i <= 120; i++) {
            rows.add(TableRow.of(Cell.text("row-" + i + "-"), Cell.text("first line\nlast-" + i + "-")));
        }
        List<String> pages = ReadBack.pages(ReadBack.bytes(
                sheet(new Block.Table(List.of(Column.narrow("Serial"), Column.text("What was seen", 1)), rows))));

        assertThat(pages).hasSizeGreaterThan(2).allMatch(page -> page.contains("What was seen"));
        for (int i = 1; i <= 120; i++) {
            int row = i;
            assertThat(pages)
                    .filteredOn(page -> page.contains("row-" + row + "-"))
                    .singleElement()
                    .satisfies(page -> assertThat(page).contains("last-" + row + "-"));
        }
    }

    @Test
    void aHeadingIsNeverLeftAlone() throws IOException {
        // Whatever stands above, the heading shares its page with the first line of what follows.
        for (int lines = 40; lines <= 62; lines++) {
            List<Block> blocks = new ArrayList<>();
            for (int i = 0; i < lines; i++) {
                blocks.add(new Block.Note(Text.of("remark")));
            }
            blocks.add(Block.Heading.of("Gauges used"));
            blocks.add(new Block.Table(
                    List.of(Column.text("Gauge", 1)),
                    List.of(TableRow.of(Cell.text("micrometer")), TableRow.of(Cell.text("caliper")))));
            List<String> pages = ReadBack.pages(ReadBack.bytes(sheet(blocks)));
            assertThat(pages)
                    .filteredOn(page -> page.contains("Gauges used"))
                    .singleElement()
                    .satisfies(page -> assertThat(page).contains("micrometer"));
        }
    }

    @Test
    void aNoteUnderATableSharesAPageWithARowOfIt() throws IOException {
        // Wherever the foot of the page falls, what explains a table is read beneath at least one of its rows.
        for (int lines = 40; lines <= 62; lines++) {
            List<Block> blocks = new ArrayList<>();
            for (int i = 0; i < lines; i++) {
                blocks.add(new Block.Note(Text.of("remark")));
            }
            blocks.add(new Block.Table(
                    List.of(Column.text("Gauge", 1)),
                    List.of(
                            TableRow.of(Cell.text("micrometer")),
                            TableRow.of(Cell.text("caliper")),
                            TableRow.of(Cell.text("plug")))));
            blocks.add(new Block.Note(Text.of("coarse for its tolerance")));
            for (int i = 0; i < 20; i++) {
                // So much follows that no tighter setting saves the second page.
                blocks.add(new Block.Paragraph(Text.of("what follows")));
            }
            List<String> pages = ReadBack.pages(ReadBack.bytes(sheet(blocks)));
            assertThat(pages)
                    .filteredOn(page -> page.contains("coarse for its tolerance"))
                    .singleElement()
                    .satisfies(page -> assertThat(page).contains("plug"));
        }
    }

    @Test
    void aTableThatAPageCanHoldIsNotTornWhereThatCostsNoPage() throws IOException {
        int onTwoPages = 0;
        for (int lines = 36; lines <= 54; lines += 2) {
            List<Block> blocks = new ArrayList<>();
            for (int i = 0; i < lines; i++) {
                blocks.add(new Block.Note(Text.of("remark")));
            }
            List<TableRow> rows = new ArrayList<>();
            for (int i = 1; i <= 15; i++) {
                rows.add(TableRow.of(Cell.text("row-" + i + "-")));
            }
            blocks.add(Block.Heading.of("Characteristics"));
            blocks.add(new Block.Table(List.of(Column.text("Feature", 1)), rows));
            List<String> pages = ReadBack.pages(ReadBack.bytes(sheet(blocks)));
            if (pages.size() > 1) {
                assertThat(pages.get(1)).contains("Characteristics", "row-1-", "row-15-");
                onTwoPages++;
            }
        }
        // The fewest lines leave room for the whole table on one page.
        assertThat(onTwoPages).isBetween(4, 9);
    }

    @Test
    void theExplanationsOfMarksStandTogether() throws IOException {
        for (int lines = 40; lines <= 62; lines++) {
            List<Block> blocks = new ArrayList<>();
            for (int i = 0; i < lines; i++) {
                blocks.add(new Block.Note(Text.of("remark")));
            }
            blocks.add(new Block.MarkedList(List.of(
                    new Block.MarkedItem("1", Text.of("first-signal")),
                    new Block.MarkedItem("2", Text.of("second-signal")),
                    new Block.MarkedItem("3", Text.of("third-signal")))));
            for (int i = 0; i < 20; i++) {
                blocks.add(new Block.Paragraph(Text.of("what follows")));
            }
            List<String> pages = ReadBack.pages(ReadBack.bytes(sheet(blocks)));
            assertThat(pages)
                    .filteredOn(page -> page.contains("first-signal"))
                    .singleElement()
                    .satisfies(page -> assertThat(page).contains("second-signal", "third-signal"));
        }
    }

    @Test
    void aRequirementThatIsASentenceWrapsAndLeavesRoomForWhatMayBeDone() throws IOException {
        Block.ExceptionItem item = new Block.ExceptionItem(
                "13",
                "edges",
                Notation.of(
                        "visual: no burrs, edges broken 0.2 max, no nicks on the sealing face, no scratches along the axis"),
                Text.of("fail on piece 2231-05"),
                "failed",
                Tone.OUT,
                Text.of("Put right and check again, where that can be done. Otherwise scrap."));
        String text = ReadBack.text(
                ReadBack.bytes(sheet(new Block.Exceptions("What needs a decision", List.of(item), "Nothing."))));
        assertThat(text).contains("Put right and check again, where");
    }

    @Test
    void pageBreaksMakeNoEmptyPages() throws IOException {
        List<String> pages = ReadBack.pages(ReadBack.bytes(sheet(
                new Block.PageBreak(),
                new Block.Paragraph(Text.of("one")),
                new Block.PageBreak(),
                new Block.PageBreak(),
                new Block.Paragraph(Text.of("two")),
                new Block.PageBreak())));
        assertThat(pages).hasSize(2);
    }

    @Test
    void blocksKeptTogetherShareAPage() throws IOException {
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < 44; i++) {
            blocks.add(new Block.Note(Text.of("remark")));
        }
        List<Block> together = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            together.add(new Block.Paragraph(Text.of("kept-" + i + "-")));
        }
        blocks.add(new Block.KeepTogether(together));
        List<String> pages = ReadBack.pages(ReadBack.bytes(sheet(blocks)));
        assertThat(pages)
                .filteredOn(page -> page.contains("kept-"))
                .singleElement()
                .satisfies(page -> assertThat(page).contains("kept-0-", "kept-11-"));
    }

    @Test
    void nothingLeavesTheMeasure() throws IOException {
        double left = PageFrame.MARGIN - 0.5;
        double right = PaperSize.A4.widthMm() * Type.MM - PageFrame.MARGIN + 0.5;
        String serial = "HQ-310-P-2207-0000000000000000000000000000000000000000000000000000000000000000001";
        List<Column> columns = new ArrayList<>();
        List<Cell> cells = new ArrayList<>();
        columns.add(Column.text("Serial", 1));
        cells.add(Cell.text(serial));
        for (int i = 0; i < 6; i++) {
            columns.add(Column.figure("Piece 2207-00" + i, "mm"));
            cells.add(Cell.figure(String.format(Locale.ROOT, "%.4f", 19.98 + i)));
        }
        byte[] pdf = ReadBack.bytes(sheet(
                new Block.Paragraph(Text.of(serial.repeat(3))),
                new Block.Table(columns, List.of(TableRow.of(cells.toArray(Cell[]::new))))));
        assertThat(ReadBack.glyphs(pdf))
                .isNotEmpty()
                .allMatch(glyph -> glyph.x() >= left && glyph.x() + glyph.width() <= right);
        assertThat(ReadBack.text(pdf).replaceAll("\\s", "")).contains(serial.repeat(3));
    }

    @Test
    void aStreamThatFailsIsReportedAsSuch() {
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("no space left");
            }
        };
        assertThatIOException()
                .isThrownBy(() -> new PdfRenderer().render(sheet(new Block.Paragraph(Text.of("one"))), full))
                .withMessageContaining("no space left");
    }
}
