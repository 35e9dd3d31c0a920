package io.github.firstoff.intake;

import java.io.IOException;
import java.util.List;

/** Takes the sheets of a workbook and their rows in the order of the workbook. */
interface SheetTaker {

    /**
     * Begins a sheet.
     *
     * @param name its name
     * @param hidden whether the spreadsheet does not show it
     * @return whether its rows are wanted
     */
    boolean begin(String name, boolean hidden) throws IOException;

    /**
     * Takes a row in which something stands.
     *
     * @return whether further rows of the sheet are wanted
     */
    boolean row(SheetRow row) throws IOException;

    /** Ends a sheet of which rows were wanted, with what is known of its columns and cells beside the rows. */
    void end(Layout layout) throws IOException;

    /**
     * What a sheet says beside its rows.
     *
     * @param hidden the ranges of hidden columns
     * @param merged the first ten thousand ranges of cells that are merged to one
     * @param mergedCount how many such ranges there are
     */
    record Layout(List<Range> hidden, List<Range> merged, long mergedCount) {
        /** Nothing is hidden or merged. */
        static final Layout PLAIN = new Layout(List.of(), List.of(), 0);

        /** Copies the lists. */
        public Layout {
            hidden = List.copyOf(hidden);
            merged = List.copyOf(merged);
        }
    }

    /** A range of columns and rows, all counted from 1; of whole columns, rows are 0. */
    record Range(int fromColumn, long fromRow, int toColumn, long toRow) {
        /** Whether a cell lies in it and is not its first, which alone holds anything. */
        boolean hides(long row, int column) {
            return fromColumn <= column
                    && column <= toColumn
                    && fromRow <= row
                    && row <= toRow
                    && (row > fromRow || column > fromColumn);
        }

        /** For example {@code A2:A4}, or {@code C} or {@code C to E} of whole columns. */
        @Override
        public String toString() {
            String from = Fault.Where.letters(fromColumn);
            String to = Fault.Where.letters(toColumn);
            if (fromRow == 0) {
                return fromColumn == toColumn ? from : from + " to " + to;
            }
            return from + fromRow + ":" + to + toRow;
        }
    }
}
