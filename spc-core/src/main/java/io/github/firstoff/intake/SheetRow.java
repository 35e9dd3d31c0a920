package io.github.firstoff.intake;

import java.util.ArrayList;
import java.util.List;

/**
 * A row of a sheet in which something stands.
 *
 * @param number its number, counted from 1
 * @param hidden whether the spreadsheet does not show it
 * @param cells its cells that hold something, from left to right
 */
record SheetRow(long number, boolean hidden, List<SheetCell> cells) {
    SheetRow {
        cells = List.copyOf(cells);
    }

    /** What stands in it from the first column on, with nothing between for empty cells. */
    List<String> texts() {
        List<String> texts = new ArrayList<>();
        for (SheetCell cell : cells) {
            while (texts.size() < cell.column() - 1) {
                texts.add("");
            }
            texts.add(cell.text());
        }
        return texts;
    }

    /** The texts that stand in it. */
    List<String> stated() {
        return cells.stream().map(SheetCell::text).toList();
    }
}
