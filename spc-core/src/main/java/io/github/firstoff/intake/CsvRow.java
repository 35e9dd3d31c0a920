package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.intake.Fault.Where;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A row of a CSV file under its heading; one object serves all rows of a file. */
final class CsvRow implements TableRow {
    private final String file;
    private final CsvHeading heading;
    private final int linesBefore;
    private @Nullable CsvRecord current;
    private Marks marks = Marks.UNKNOWN;

    /**
     * A row under a heading.
     *
     * @param linesBefore how many lines stand before the heading
     */
    CsvRow(String file, CsvHeading heading, int linesBefore) {
        this.file = file;
        this.heading = heading;
        this.linesBefore = linesBefore;
    }

    void set(CsvRecord record) {
        current = record;
    }

    @Override
    public Marks marks() {
        return marks;
    }

    void read(Marks known) {
        marks = known;
    }

    private CsvRecord record() {
        if (current == null) {
            throw new IllegalStateException("a row was asked before it was set");
        }
        return current;
    }

    @Override
    public Where where() {
        return new Where(file, record().getStartingLineNumber() + linesBefore, 0, "");
    }

    @Override
    public List<String> heading() {
        return heading.written();
    }

    @Override
    public List<String> fields() {
        return heading.withoutRemarks(record().getFields());
    }

    @Override
    public String asItStood() {
        int index = heading.indexOfRemark(RefusedTable.AS_IT_STOOD::equals);
        return index < 0 || index >= fieldCount() ? "" : text(index);
    }

    int fieldCount() {
        return record().getFieldCount();
    }

    @Override
    public String text(int index) {
        String text = Blanks.strip(record().getField(index));
        return heading.isOfRefusedRows() ? RefusedTable.unescaped(text) : text;
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
        return new Cell(text(column), Cell.Form.TEXT, where(column), marks);
    }

    @Override
    public Cell cell(int index, String label) {
        return new Cell(text(index), Cell.Form.TEXT, where(index, label), marks);
    }

    @Override
    public Where where(int index, String label) {
        return new Where(file, line(), 0, label);
    }

    @Override
    public Where where(int index) {
        return where(index, "column " + (index + 1));
    }

    @Override
    public boolean isBlank() {
        for (int i = 0; i < fieldCount(); i++) {
            if (!Blanks.strip(record().getField(i)).isEmpty()) {
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
