package io.github.firstoff;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A file of expected values. Its head says where they come from; one without that is refused, so that no number enters a test
 * without a source.
 */
public final class ReferenceFile {
    private static final List<String> HEAD =
            List.of("# source:", "# edition:", "# made by:", "# units:", "# tolerance:");

    private ReferenceFile() {}

    /** The rows of a file under {@code reference/}, each as column name to text. */
    public static List<Map<String, String>> rows(String name) {
        List<String> head = new ArrayList<>();
        List<String> body = new ArrayList<>();
        for (String line : lines(name)) {
            (line.startsWith("#") ? head : body).add(line);
        }
        for (String needed : HEAD) {
            if (head.stream().noneMatch(line -> line.startsWith(needed))) {
                throw new IllegalStateException("reference/" + name + " does not say \"" + needed + "\"");
            }
        }
        String[] columns = body.get(0).split(",", -1);
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : body.subList(1, body.size())) {
            String[] cells = line.split(",", -1);
            if (cells.length != columns.length) {
                throw new IllegalStateException(
                        "reference/" + name + ": \"" + line + "\" has not " + columns.length + " cells");
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < columns.length; i++) {
                row.put(columns[i], cells[i]);
            }
            rows.add(row);
        }
        if (rows.isEmpty()) {
            throw new IllegalStateException("reference/" + name + " has no rows");
        }
        return rows;
    }

    private static List<String> lines(String name) {
        try (InputStream in = ReferenceFile.class.getResourceAsStream("/reference/" + name)) {
            if (in == null) {
                throw new IllegalStateException("no reference/" + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank())
                    .toList();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }
}
