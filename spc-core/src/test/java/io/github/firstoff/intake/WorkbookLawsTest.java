package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Nested;

/** The laws of all formats, for workbooks: texts and numbers, either kind, with other sheets and lines around the table. */
class WorkbookLawsTest {

    private static List<List<String>> table(List<ReadingFormatLaws.Line> lines) {
        List<List<String>> table = new ArrayList<>();
        table.add(ReadingFormatLaws.Line.NAMES);
        lines.forEach(line -> table.add(line.all()));
        return table;
    }

    @Nested
    class OfficeOpenXmlOfNumbers extends ReadingFormatLaws {
        @Override
        byte[] file(List<Line> lines) {
            XlsxWriter writer = new XlsxWriter();
            return writer.sheet("Readings", writer.table(table(lines), true)).bytes();
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.XLSX;
        }
    }

    @Nested
    class OfficeOpenXmlOfTextsBesideAnotherSheet extends OfficeOpenXmlOfNumbers {
        @Override
        byte[] file(List<Line> lines) {
            XlsxWriter writer = new XlsxWriter();
            return writer.sheet("Notes", List.of(XlsxWriter.row(1, XlsxWriter.text("A1", "what was done"))))
                    .sheet("Readings", writer.table(table(lines), false))
                    .bytes();
        }
    }

    @Nested
    class OpenDocumentOfNumbers extends ReadingFormatLaws {
        @Override
        byte[] file(List<Line> lines) {
            return new OdsWriter()
                    .sheet("Readings", OdsWriter.table(table(lines), true))
                    .bytes();
        }

        @Override
        ReadingFormat format() {
            return ReadingFormat.ODS;
        }
    }

    @Nested
    class OpenDocumentOfTextsUnderALine extends OpenDocumentOfNumbers {
        @Override
        byte[] file(List<Line> lines) {
            return new OdsWriter()
                    .sheet("Notes", OdsWriter.row(OdsWriter.text("what was done")))
                    .sheet(
                            "Readings",
                            OdsWriter.row(OdsWriter.text("Part number: HQ-310-P"))
                                    + OdsWriter.table(table(lines), false))
                    .bytes();
        }
    }
}
