package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A row that is being keyed: held against the plan by the rules for files, and written as a row of a file. */
final class KeyedRow implements Row {
    private final Map<ReadingColumn, String> texts = new EnumMap<>(ReadingColumn.class);

    /** The row that was written under that heading. */
    static KeyedRow of(String heading, String written) {
        KeyedRow row = new KeyedRow();
        String[] names = heading.split(",", -1);
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(written)) {
            CsvRecord record = reader.iterator().next();
            for (int i = 0; i < Math.min(names.length, record.getFieldCount()); i++) {
                String field = record.getField(i);
                ReadingColumn.named(names[i]).ifPresent(column -> row.set(column, field));
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return row;
    }

    KeyedRow with(ReadingColumn column, String text) {
        set(column, text);
        return this;
    }

    void set(ReadingColumn column, String text) {
        texts.put(column, text.strip());
    }

    @Override
    public Where where() {
        return Where.inFile("keyed");
    }

    @Override
    public List<String> heading() {
        return texts.keySet().stream().map(ReadingColumn::word).toList();
    }

    @Override
    public List<String> fields() {
        return List.copyOf(texts.values());
    }

    @Override
    public String text(ReadingColumn column) {
        return texts.getOrDefault(column, "");
    }

    @Override
    public Where where(ReadingColumn column) {
        return new Where("keyed", 0, 0, column.word());
    }

    @Override
    public Cell cell(ReadingColumn column) {
        return new Cell(text(column), Cell.Form.TEXT, where(column));
    }

    @Override
    public String noun() {
        return "entry";
    }

    /** The row under that heading (RFC 4180), without a line end. */
    String csv(String heading) {
        List<String> fields = new ArrayList<>();
        for (String name : heading.split(",", -1)) {
            fields.add(quoted(ReadingColumn.named(name).map(this::text).orElse("")));
        }
        return String.join(",", fields);
    }

    private static String quoted(String text) {
        boolean plain = text.indexOf(',') < 0 && text.indexOf('"') < 0;
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }

    /**
     * Why a text that a person or a plan gives must not stand in a readings file: a spreadsheet that opens the file would take it for a
     * formula. Empty if it may.
     */
    static Optional<String> formulaIn(String text) {
        String stripped = text.strip();
        return !stripped.isEmpty() && "=+-@".indexOf(stripped.charAt(0)) >= 0
                ? Optional.of("a spreadsheet would take " + Echo.quoted(stripped)
                        + " for a formula; begin with a letter or a figure")
                : Optional.empty();
    }

    /** Whether a text of a plan could do harm as a formula; a setting such as {@code -10 °C} cannot. */
    static boolean isFormula(String text) {
        return text.startsWith("=") || text.startsWith("@") || text.matches("[+-].*[(!|].*");
    }
}
