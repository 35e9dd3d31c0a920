package io.github.firstoff.report.model;

import java.util.List;

/** A line of a table: cells, or the heading of a group of lines. No line is ever split over two pages. */
public sealed interface TableRow {
    /** A row of cells in the order of the columns. */
    static TableRow of(Cell... cells) {
        return new Cells(List.of(cells));
    }

    /** A heading across the table, kept with the row that follows it. */
    static TableRow group(String label) {
        return new Group(label);
    }

    /**
     * A row of cells.
     *
     * @param cells one per column
     */
    record Cells(List<Cell> cells) implements TableRow {
        /** Copies the list. */
        public Cells {
            cells = List.copyOf(cells);
        }
    }

    /**
     * A heading across the table.
     *
     * @param label its words
     */
    record Group(String label) implements TableRow {}
}
