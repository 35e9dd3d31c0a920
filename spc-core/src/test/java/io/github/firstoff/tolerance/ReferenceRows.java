package io.github.firstoff.tolerance;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Rows of a reference file: cells parted by semicolons under a heading line, after a header that names where they come from. */
final class ReferenceRows {
    private static final List<String> HEADER =
            List.of("source", "edition", "made by", "units", "tolerance", "provenance");

    private ReferenceRows() {}

    /** One row; prints as its case. */
    record Row(Map<String, String> cells) {
        String get(String column) {
            String cell = cells.get(column);
            if (cell == null) {
                throw new IllegalArgumentException("no column " + column + " among " + cells.keySet());
            }
            return cell;
        }

        BigDecimal decimal(String column) {
            return new BigDecimal(get(column));
        }

        @Override
        public String toString() {
            return get("case");
        }
    }

    static List<Row> of(String file) {
        List<String> lines;
        try (InputStream in = ReferenceRows.class.getResourceAsStream("/reference/" + file)) {
            if (in == null) {
                throw new IllegalStateException("no reference file " + file);
            }
            lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        for (String key : HEADER) {
            if (lines.stream().noneMatch(line -> line.startsWith("# " + key + ": "))) {
                throw new IllegalStateException(file + " does not name its " + key);
            }
        }
        List<String> body = lines.stream().filter(line -> !line.startsWith("#")).toList();
        String[] columns = body.get(0).split(";", -1);
        List<Row> rows = new ArrayList<>();
        for (String line : body.subList(1, body.size())) {
            String[] cells = line.split(";", -1);
            if (cells.length != columns.length) {
                throw new IllegalStateException(file + ": " + line);
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < cells.length; i++) {
                row.put(columns[i].strip(), cells[i].strip());
            }
            rows.add(new Row(row));
        }
        return rows;
    }
}
