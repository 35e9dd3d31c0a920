package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.intake.Fault.Where;
import org.jspecify.annotations.Nullable;

/** A row of a CSV file under its heading; one object serves all rows of a file. */
final class CsvRow implements Row {
    private final String file;
    private final CsvHeading heading;
    private @Nullable CsvRecord current;

    CsvRow(String file, CsvHeading heading) {
        this.file = file;
        this.heading = heading;
    }

    void set(CsvRecord record) {
        current = record;
    }

    private CsvRecord record() {
        if (current == null) {
            throw new IllegalStateException("a row was asked before it was set");
        }
        return current;
    }

    @Override
    public long line() {
        return record().getStartingLineNumber();
    }

    int fieldCount() {
        return record().getFieldCount();
    }

    String text(int index) {
        return record().getField(index).strip();
    }

    @Override
    public String text(ReadingColumn column) {
        int index = heading.indexOf(column);
        return index < 0 ? "" : text(index);
    }

    @Override
    public Where where(ReadingColumn column) {
        return new Where(file, line(), 0, heading.labelOf(column));
    }

    @Override
    public Cell cell(ReadingColumn column) {
        return new Cell(text(column), Cell.Form.TEXT, where(column));
    }

    @Override
    public String noun() {
        return "row";
    }

    /** Whether no field has anything in it. */
    boolean isBlank() {
        for (int i = 0; i < fieldCount(); i++) {
            if (!record().getField(i).isBlank()) {
                return false;
            }
        }
        return true;
    }

    /** Whether two neighbouring fields together look like a number with a decimal comma. */
    boolean holdsDecimalComma() {
        for (int i = 0; i + 1 < fieldCount(); i++) {
            if (text(i).matches("[+-]?\\d{1,6}") && text(i + 1).matches("\\d{1,6}")) {
                return true;
            }
        }
        return false;
    }
}
