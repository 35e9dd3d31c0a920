package io.github.firstoff.proof;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Readings as a sheet took them, a line each: what lets a check name the very one that was changed, where the result only holds means. The
 * columns before {@code value} say whose reading it is; behind it stand a {@code unit} and perhaps a {@code verdict}.
 */
public final class ReadingLines {
    private static final String VALUE = "value";

    private final String name;
    private final String description;
    private final List<String> heading;
    private final List<List<String>> lines;

    /**
     * Readings.
     *
     * @param name the name of the file that holds them
     * @param description what it is, in a few words
     * @param heading the names of the columns; {@code value} is one of them
     * @param lines the fields of each reading, as many as there are columns
     * @throws IllegalArgumentException if there is no column {@code value}, or a line of another length than the heading
     */
    public ReadingLines(String name, String description, List<String> heading, List<List<String>> lines) {
        if (!heading.contains(VALUE)) {
            throw new IllegalArgumentException("readings have a column \"" + VALUE + "\", and not only " + heading);
        }
        for (List<String> line : lines) {
            if (line.size() != heading.size()) {
                throw new IllegalArgumentException(line + " is no line under " + heading);
            }
        }
        this.name = name;
        this.description = description;
        this.heading = List.copyOf(heading);
        this.lines = lines.stream().map(List::copyOf).toList();
    }

    /**
     * Sizes of pieces that are no readings of characteristics of a plan.
     *
     * @param description what they are, in a few words
     * @param heading the names of the columns; {@code value} is one of them
     * @param lines the fields of each size, as many as there are columns
     * @return empty without a line
     */
    public static Optional<ReadingLines> ofSizes(String description, List<String> heading, List<List<String>> lines) {
        return lines.isEmpty()
                ? Optional.empty()
                : Optional.of(new ReadingLines("sizes.csv", description, heading, lines));
    }

    /** The name of the file that holds them. */
    String name() {
        return name;
    }

    /** What it is. */
    String description() {
        return description;
    }

    /** The file. */
    byte[] csv() {
        StringBuilder csv = new StringBuilder();
        line(csv, heading);
        lines.forEach(line -> line(csv, line));
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void line(StringBuilder csv, List<String> fields) {
        for (int i = 0; i < fields.size(); i++) {
            if (i > 0) {
                csv.append(',');
            }
            String text = fields.get(i);
            boolean quoted = text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
            csv.append(quoted ? "\"" + text.replace("\"", "\"\"") + "\"" : text);
        }
        csv.append('\n');
    }

    /** The lines of such a file, without its heading. */
    List<String> linesOf(byte[] csv) {
        List<String> found =
                new ArrayList<>(new String(csv, StandardCharsets.UTF_8).lines().toList());
        if (!found.isEmpty() && found.get(0).equals(String.join(",", heading))) {
            found.remove(0);
        }
        return found;
    }

    /** A line in words: {@code characteristic 1, part S003: 51.964 mm, conforms}. */
    String inWords(String line) {
        List<String> fields = fields(line);
        if (fields.size() != heading.size()) {
            return "\u201C" + line + "\u201D";
        }
        return place(line) + ": " + fields.get(heading.indexOf(VALUE)) + after(" ", "unit", fields)
                + after(", ", "verdict", fields);
    }

    private String after(String mark, String column, List<String> fields) {
        int at = heading.indexOf(column);
        return at < 0 || fields.get(at).isEmpty() ? "" : mark + fields.get(at);
    }

    /** Whose reading a line is: {@code characteristic 1, part S003}. */
    String place(String line) {
        List<String> fields = fields(line);
        if (fields.size() != heading.size()) {
            return "\u201C" + line + "\u201D";
        }
        List<String> words = new ArrayList<>();
        for (int i = 0; i < heading.indexOf(VALUE); i++) {
            if (!fields.get(i).isEmpty()) {
                words.add(heading.get(i) + " " + fields.get(i));
            }
        }
        return String.join(", ", words);
    }

    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                if (quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                    field.append('"');
                    i++;
                } else {
                    quoted = !quoted;
                }
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }
}
