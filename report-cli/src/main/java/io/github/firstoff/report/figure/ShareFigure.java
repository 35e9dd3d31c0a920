package io.github.firstoff.report.figure;

import java.util.List;

/**
 * Shares of a whole, one bar to a row, the figure at its end.
 *
 * @param head what the bars show
 * @param rows the rows, from the top
 */
public record ShareFigure(String head, List<Row> rows) implements Figure {
    /** Copies the list. */
    public ShareFigure {
        rows = List.copyOf(rows);
    }

    /**
     * A row.
     *
     * @param name what has the share
     * @param share from 0 to 1
     * @param figure the share as printed
     */
    public record Row(String name, double share, String figure) {
        /** Refuses what is no share. */
        public Row {
            if (!(share >= 0 && share <= 1)) {
                throw new IllegalArgumentException("a share lies from 0 to 1, not " + share);
            }
        }
    }
}
