package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The refused rows that stand again in a table of refused rows among the inputs of one run. In the file from which they were refused they
 * count as explained: whether they are right now is judged where they stand again.
 */
final class Corrections {
    static final Corrections NONE = new Corrections();

    private final Map<String, Integer> places = new HashMap<>();

    private Corrections() {}

    /** What the tables of refused rows among the inputs hold; only files are looked at, not streams. */
    static Corrections among(List<Input> inputs, ResolvedPlan plan) {
        Corrections corrections = new Corrections();
        if (inputs.size() > 1) {
            inputs.stream().filter(Input::canBeReadAgain).forEach(input -> corrections.look(input, plan));
        }
        return corrections;
    }

    private void look(Input input, ResolvedPlan plan) {
        try (InputBytes bytes = new InputBytes(input, Long.MAX_VALUE)) {
            if (ReadingFormat.recognise(bytes.beginning()) != ReadingFormat.CSV
                    || !RefusedTable.begins(bytes.beginning())) {
                return;
            }
            TextReader text = TextReader.of(bytes);
            CsvDialect dialect = CsvDialect.of(bytes.beginning().text(), plan);
            CsvReader.CsvReaderBuilder builder = CsvReader.builder()
                    .fieldSeparator(dialect.separator())
                    .allowExtraFields(true)
                    .allowMissingFields(true)
                    .maxBufferSize(2 * LimitedLines.LONGEST);
            try (CsvReader<CsvRecord> reader = builder.ofCsvRecord(new LimitedLines(input.name(), text))) {
                int column = -1;
                for (CsvRecord record : reader) {
                    if (column < 0) {
                        column = placeIn(record.getFields());
                    } else if (column < record.getFieldCount()) {
                        places.merge(record.getField(column).strip(), 1, Integer::sum);
                    }
                }
            }
        } catch (IOException | UncheckedIOException | CsvParseException toldWhenItIsRead) {
            // Whatever is wrong with the file is said when it is read; without it the rows stay refused.
            places.clear();
        }
    }

    private static int placeIn(List<String> fields) {
        for (int i = 0; i < fields.size(); i++) {
            if (RefusedTable.isPlace(fields.get(i).strip())) {
                return i;
            }
        }
        return -1;
    }

    boolean isEmpty() {
        return places.isEmpty();
    }

    /** Whether a refused row stands again elsewhere; each place there stands for one row. */
    boolean take(RefusedRow row) {
        String place = RefusedTable.placeOf(row);
        Integer left = places.get(place);
        if (left == null) {
            return false;
        }
        if (left == 1) {
            places.remove(place);
        } else {
            places.put(place, left - 1);
        }
        return true;
    }
}
