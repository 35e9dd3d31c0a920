package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.util.List;
import java.util.Set;

/**
 * Readings in a sheet of a workbook, long or wide, under a heading with the names of columns as in CSV. Numbers are taken as the decimals
 * that stand in the file, see {@link SheetNumber}; formulas count by the result that is stored.
 */
final class WorkbookReadings implements ReadingSource {
    private final boolean openDocument;

    /**
     * Workbooks of one kind.
     *
     * @param openDocument whether those of OpenDocument, or all others
     */
    WorkbookReadings(boolean openDocument) {
        this.openDocument = openDocument;
    }

    @Override
    public boolean recognises(Beginning beginning) {
        return WorkbookFile.recognises(beginning) && WorkbookFile.saysOpenDocument(beginning) == openDocument;
    }

    @Override
    public void read(InputBytes bytes, RowCheck check) throws IOException {
        String file = bytes.input().name();
        try (Workbook workbook = WorkbookFile.open(bytes)) {
            read(file, workbook, check);
        }
    }

    /** Reads a workbook that is open. */
    static void read(String file, Workbook workbook, RowCheck check) throws IOException {
        workbook.notices().forEach(notice -> check.sink().notice(Where.inFile(file), notice));
        Set<String> numbers = CsvDialect.numbersOf(check.plan());
        SheetChoice choice = SheetChoice.of(
                file,
                workbook,
                check.sink().settings().sheet(),
                fields -> score(fields, numbers),
                "part,characteristic,value");
        SheetPass pass = new SheetPass(file, workbook, choice, check);
        try {
            workbook.walk(pass);
        } finally {
            // Rows before a fault that ends the file are read all the same, so that all their faults are named.
            pass.finish();
        }
        pass.requireRows();
    }

    /** As in a text, a heading with the column part counts before one without. */
    private static int score(List<String> fields, Set<String> numbers) {
        List<String> stripped = fields.stream().map(String::strip).toList();
        if (CsvDialect.namesIn(stripped, numbers, true) > 1) {
            return SheetChoice.SURE;
        }
        return CsvDialect.namesIn(stripped, numbers, false) > 1 ? 1 : 0;
    }
}
