package io.github.firstoff.quantity;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A table of published values that comes with the program, as text beside the class that uses it.
 *
 * <p>The file begins with {@code #} lines that name source, edition, clause, units and the meaning of the marks; without them it is not read.
 * Then comes a line of headings, then the rows, each with as many cells as there are headings. A value may carry its mark of provenance,
 * one letter behind the figure.
 *
 * @param name the file's name
 * @param headings the headings, without space around them
 * @param rows the rows from top to bottom, one at least, the cells without space around them
 */
public record SourcedTable(String name, List<String> headings, List<List<String>> rows) {
    private static final List<String> PROVENANCE = List.of("source", "edition", "clause", "units", "marks");

    /** Copies the lists. */
    public SourcedTable {
        headings = List.copyOf(headings);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /**
     * A value with its mark of provenance.
     *
     * @param value the value
     * @param mark the letter whose meaning the head of the file states
     */
    public record Marked(BigDecimal value, char mark) {

        /**
         * The value and mark of a cell such as {@code 23.6r}.
         *
         * @throws NumberFormatException if the cell holds no figure with a letter behind it
         */
        public static Marked of(String cell) {
            if (cell.isEmpty() || !Character.isLetter(cell.charAt(cell.length() - 1))) {
                throw new NumberFormatException("\"" + cell + "\" has no mark of provenance");
            }
            int mark = cell.length() - 1;
            return new Marked(new BigDecimal(cell.substring(0, mark)), cell.charAt(mark));
        }
    }

    /**
     * Reads a table.
     *
     * @param owner the class beside which it lies
     * @param name the file's name from there
     * @param separator what stands between two cells
     * @throws IllegalStateException if it is missing or damaged, which is a fault of the program's packaging
     */
    public static SourcedTable of(Class<?> owner, String name, char separator) {
        try (InputStream in = owner.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the table " + name + " is missing from the program");
            }
            return read(name, new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)), separator);
        } catch (IOException failed) {
            throw new UncheckedIOException("the table " + name + " cannot be read", failed);
        }
    }

    static SourcedTable read(String name, BufferedReader in, char separator) throws IOException {
        StringBuilder head = new StringBuilder();
        List<String> headings = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            if (line.startsWith("#")) {
                head.append(line).append('\n');
            } else if (headings.isEmpty()) {
                headings.addAll(cells(line, separator));
            } else {
                List<String> row = cells(line, separator);
                if (row.size() != headings.size()) {
                    throw damaged(
                            name, row.size() + " cells under " + headings.size() + " headings in \"" + line + "\"");
                }
                rows.add(row);
            }
        }
        for (String key : PROVENANCE) {
            if (head.indexOf("# " + key + ": ") < 0) {
                throw damaged(name, "no line \"# " + key + ": …\"");
            }
        }
        if (rows.isEmpty()) {
            throw damaged(name, "no rows");
        }
        return new SourcedTable(name, headings, rows);
    }

    private static List<String> cells(String line, char separator) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.split(Pattern.quote(String.valueOf(separator)), -1)) {
            cells.add(cell.strip());
        }
        return cells;
    }

    /** The fault of a table that does not hold what it should; for the code that knows what that is. */
    public IllegalStateException damaged(String how) {
        return damaged(name, how);
    }

    private static IllegalStateException damaged(String name, String how) {
        return new IllegalStateException("the table " + name + " is damaged: " + how);
    }
}
