package io.github.firstoff.tolerance;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A table of a standard: ranges of size down, classes or letters across. Kept as text beside this package in a folder named for
 * standard and edition.
 *
 * <p>The file begins with {@code #} lines that name source, edition, clause, units and the meaning of the marks; without them it is
 * not read. Then the headings, of which the first two are the bounds of the range, then the rows. A row holds for sizes over its first
 * bound up to and including its second; a size on a bound thus belongs to the lower range. Every value carries its mark of
 * provenance, one letter.
 */
final class SizeTable {
    private static final List<String> HEADER = List.of("source", "edition", "clause", "units", "marks");

    private final String name;
    private final List<String> columns;
    private final List<Row> rows;

    /** One range of sizes. */
    record Row(BigDecimal over, Optional<BigDecimal> upTo, Map<String, Cell> cells) {
        boolean holds(BigDecimal size) {
            return size.compareTo(over) > 0 && (upTo.isEmpty() || size.compareTo(upTo.get()) <= 0);
        }

        /** The range in words. */
        String range() {
            return upTo.map(bound -> "over " + over.toPlainString() + " to " + bound.toPlainString())
                    .orElseGet(() -> "over " + over.toPlainString());
        }
    }

    /** One value with its mark of provenance. */
    record Cell(BigDecimal value, char mark) {}

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
        try (InputStream in = SizeTable.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the table " + name + " is missing from the program");
            }
            return new Reading(name).read(new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
        } catch (IOException failed) {
            throw new UncheckedIOException("the table " + name + " cannot be read", failed);
        }
    }

    private static final class Reading {
        private final String name;
        private final StringBuilder header = new StringBuilder();
        private final List<String> columns = new ArrayList<>();
        private final List<Row> rows = new ArrayList<>();

        Reading(String name) {
            this.name = name;
        }

        SizeTable read(BufferedReader in) throws IOException {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (line.startsWith("#")) {
                    header.append(line).append('\n');
                } else if (columns.isEmpty()) {
                    columns.addAll(cells(line));
                } else {
                    rows.add(row(cells(line)));
                }
            }
            for (String key : HEADER) {
                if (!header.toString().contains("# " + key + ": ")) {
                    throw damaged("no line “# " + key + ": …”");
                }
            }
            if (rows.isEmpty()) {
                throw damaged("no rows");
            }
            return new SizeTable(name, columns.subList(2, columns.size()), rows);
        }

        private static List<String> cells(String line) {
            List<String> cells = new ArrayList<>();
            for (String cell : line.split(",", -1)) {
                cells.add(cell.strip());
            }
            return cells;
        }

        private Row row(List<String> cells) {
            if (cells.size() != columns.size()) {
                throw damaged(cells.size() + " cells under " + columns.size() + " headings");
            }
            Map<String, Cell> values = new LinkedHashMap<>();
            for (int i = 2; i < cells.size(); i++) {
                String cell = cells.get(i);
                if (!cell.isEmpty()) {
                    int mark = cell.length() - 1;
                    values.put(columns.get(i), new Cell(new BigDecimal(cell.substring(0, mark)), cell.charAt(mark)));
                }
            }
            Optional<BigDecimal> upTo =
                    cells.get(1).isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(cells.get(1)));
            return new Row(new BigDecimal(cells.get(0)), upTo, values);
        }

        private IllegalStateException damaged(String how) {
            return new IllegalStateException("the table " + name + " is damaged: " + how);
        }
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
                .map(Cell::value);
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
