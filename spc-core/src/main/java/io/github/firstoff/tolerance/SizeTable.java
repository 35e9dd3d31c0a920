package io.github.firstoff.tolerance;

import io.github.firstoff.quantity.SourcedTable;
import io.github.firstoff.quantity.SourcedTable.Marked;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A table of a standard: ranges of size down, classes or letters across. Kept as text beside this package in a folder named for
 * standard and edition.
 *
 * <p>The first two headings are the bounds of the range. A row holds for sizes over its first
 * bound up to and including its second; a size on a bound thus belongs to the lower range. Every value carries its mark of
 * provenance, one letter.
 */
final class SizeTable {
    private final String name;
    private final List<String> columns;
    private final List<Row> rows;

    /** One range of sizes. */
    record Row(BigDecimal over, Optional<BigDecimal> upTo, Map<String, Marked> cells) {
        boolean holds(BigDecimal size) {
            return size.compareTo(over) > 0 && (upTo.isEmpty() || size.compareTo(upTo.get()) <= 0);
        }

        /** The range in words. */
        String range() {
            return upTo.map(bound -> "over " + over.toPlainString() + " to " + bound.toPlainString())
                    .orElseGet(() -> "over " + over.toPlainString());
        }
    }

    private SizeTable(String name, List<String> columns, List<Row> rows) {
        this.name = name;
        this.columns = List.copyOf(columns);
        this.rows = List.copyOf(rows);
    }

    /**
     * Reads a table that comes with the program.
     *
     * @throws IllegalStateException if it is missing or damaged, which is a fault of the program's packaging
     */
    static SizeTable read(String name) {
        SourcedTable table = SourcedTable.of(SizeTable.class, name, ',');
        List<String> headings = table.headings();
        List<Row> rows =
                table.rows().stream().map(cells -> row(headings, cells)).toList();
        return new SizeTable(name, headings.subList(2, headings.size()), rows);
    }

    private static Row row(List<String> headings, List<String> cells) {
        Map<String, Marked> values = new LinkedHashMap<>();
        for (int i = 2; i < cells.size(); i++) {
            if (!cells.get(i).isEmpty()) {
                values.put(headings.get(i), Marked.of(cells.get(i)));
            }
        }
        Optional<BigDecimal> upTo =
                cells.get(1).isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(cells.get(1)));
        return new Row(new BigDecimal(cells.get(0)), upTo, values);
    }

    String name() {
        return name;
    }

    List<String> columns() {
        return columns;
    }

    List<Row> rows() {
        return rows;
    }

    /** The row that holds for the size; empty if no range reaches it. */
    Optional<Row> rowFor(BigDecimal size) {
        return rows.stream().filter(row -> row.holds(size)).findFirst();
    }

    /** The value for the size under a heading; empty if the table has none there. */
    Optional<BigDecimal> value(BigDecimal size, String column) {
        return rowFor(size)
                .flatMap(row -> Optional.ofNullable(row.cells().get(column)))
                .map(Marked::value);
    }

    /** The ranges of size that have a value under a heading, joined where they meet, in words. */
    String rangesOf(String column) {
        List<String> found = new ArrayList<>();
        Optional<BigDecimal> from = Optional.empty();
        Optional<BigDecimal> to = Optional.empty();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            boolean here = row.cells().containsKey(column);
            if (here && from.isEmpty()) {
                from = Optional.of(row.over());
            }
            if (here) {
                to = row.upTo();
            }
            boolean last = i == rows.size() - 1;
            if (from.isPresent() && (!here || last)) {
                found.add(inWords(from.get(), to));
                from = Optional.empty();
            }
        }
        return String.join(" and ", found);
    }

    private static String inWords(BigDecimal from, Optional<BigDecimal> to) {
        String end = to.map(bound -> "up to " + bound.toPlainString() + " mm").orElse("");
        if (from.signum() == 0) {
            return end.isEmpty() ? "all sizes" : end;
        }
        return "over " + from.toPlainString() + (end.isEmpty() ? " mm" : " " + end);
    }
}
