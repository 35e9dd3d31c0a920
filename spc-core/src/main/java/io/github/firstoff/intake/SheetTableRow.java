package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A row of a sheet under its heading; one object serves all rows of a sheet. */
final class SheetTableRow implements TableRow {
    private final String file;
    private final String sheet;
    private final CsvHeading heading;
    private final int firstColumn;
    private final @Nullable SheetCell[] cells;
    private long number;
    private Marks marks = Marks.UNKNOWN;

    /**
     * A row under a heading.
     *
     * @param firstColumn the column of the sheet in which the heading begins, counted from 1
     */
    SheetTableRow(String file, String sheet, CsvHeading heading, int firstColumn) {
        this.file = file;
        this.sheet = sheet;
        this.heading = heading;
        this.firstColumn = firstColumn;
        this.cells = new SheetCell[heading.size()];
    }

    void set(SheetRow row, Marks known) {
        Arrays.fill(cells, null);
        number = row.number();
        marks = known;
        for (SheetCell cell : row.cells()) {
            int index = cell.column() - firstColumn;
            if (index >= 0 && index < cells.length) {
                cells[index] = cell;
            }
        }
    }

    @Nullable
    SheetCell sheetCell(int index) {
        return index < 0 ? null : cells[index];
    }

    /** Where a cell stands, by the name of its column. */
    Where at(int sheetColumn, String label) {
        return new Where(file, sheet, number, sheetColumn, label);
    }

    @Override
    public Where where() {
        return at(0, "");
    }

    @Override
    public List<String> heading() {
        return heading.written();
    }

    @Override
    public List<String> fields() {
        return heading.withoutRemarks(Arrays.stream(cells).map(this::written).toList());
    }

    @Override
    public String asItStood() {
        return text(heading.indexOfRemark(RefusedTable.AS_IT_STOOD::equals));
    }

    /** Numbers as the texts beside them are written: in one table they have one decimal mark. */
    private String written(@Nullable SheetCell cell) {
        if (cell == null) {
            return "";
        }
        return cell.kind() == SheetCell.Kind.NUMBER ? marks.written(cell.text()) : cell.text();
    }

    @Override
    public Marks marks() {
        return marks;
    }

    @Override
    public String text(int index) {
        SheetCell cell = sheetCell(index);
        if (cell == null) {
            return "";
        }
        return heading.isOfRefusedRows() ? RefusedTable.unescaped(cell.text()) : cell.text();
    }

    @Override
    public String text(ReadingColumn column) {
        return text(heading.indexOf(column));
    }

    @Override
    public Cell cell(int index, String label) {
        SheetCell cell = sheetCell(index);
        boolean isNumber = cell != null && cell.kind() == SheetCell.Kind.NUMBER;
        return new Cell(text(index), isNumber ? Cell.Form.NUMBER : Cell.Form.TEXT, where(index, label), marks);
    }

    @Override
    public Cell cell(ReadingColumn column) {
        return cell(heading.indexOf(column), heading.labelOf(column));
    }

    @Override
    public Where where(ReadingColumn column) {
        return where(heading.indexOf(column), heading.labelOf(column));
    }

    @Override
    public Where where(int index, String label) {
        return at(index < 0 ? 0 : index + firstColumn, label);
    }

    @Override
    public Where where(int index) {
        return where(index, "");
    }

    @Override
    public boolean isBlank() {
        return Arrays.stream(cells).allMatch(cell -> cell == null || cell.isBlank());
    }
}
