package io.github.firstoff.intake;

import de.siegmar.fastcsv.reader.CsvRecord;
import io.github.firstoff.intake.Fault.Where;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Finds the decimal mark of a text out from its numbers. Rows are handed on at once until a number turns up that could be read in two
 * ways; then they wait, up to a bound, for one that shows the mark. Where none does, the rows are handed on with the mark unknown, and
 * what could be read in two ways is refused.
 *
 * <p>A point shows that it is the decimal mark even where three digits follow, as in 51.962, unless semicolons part the columns: that is
 * what programs write where the comma is the decimal mark and the point parts thousands off. Where commas part the columns, a decimal
 * comma is believed only if no number of the file has a decimal point.
 */
final class MarkWatch {
    private static final int MOST_ROWS = 10_000;
    private static final int MOST_CHARACTERS = 4 << 20;

    private final String file;
    private final boolean pointIsPlain;
    private final boolean commaIsPlain;
    private final ReadingSink sink;
    private final CsvRow row;
    private final int[] numbers;
    private final Consumer<CsvRow> taker;
    private final List<CsvRecord> waiting = new ArrayList<>();
    private int characters;
    private boolean mayWait = true;
    private @Nullable Notice commaShown;
    private Marks marks;

    MarkWatch(String file, char separator, Rows sink, CsvRow row, Consumer<CsvRow> taker) {
        this.file = file;
        this.pointIsPlain = separator != ';';
        this.commaIsPlain = separator != ',';
        this.sink = sink;
        this.row = row;
        this.numbers = row.under().numbers();
        this.taker = taker;
        this.marks = sink.settings().decimalMark().map(Marks::stated).orElse(Marks.UNKNOWN);
    }

    /** Takes the next row. */
    void take(CsvRecord record) {
        if (marks != Marks.UNKNOWN) {
            handOn(record);
            return;
        }
        boolean open = look(record);
        if (marks != Marks.UNKNOWN) {
            flush();
            handOn(record);
        } else if (mayWait && (open || !waiting.isEmpty())) {
            waiting.add(record);
            characters += record.getFields().stream().mapToInt(String::length).sum();
            if (waiting.size() >= MOST_ROWS || characters > MOST_CHARACTERS) {
                mayWait = false;
                finish();
            }
        } else {
            handOn(record);
        }
    }

    /** Hands on what still waits: nothing showed more. */
    void finish() {
        if (marks == Marks.UNKNOWN && commaShown != null) {
            marks = Marks.COMMA;
            sink.notice(commaShown.where(), commaShown.message());
        }
        flush();
    }

    /** Looks for numbers that show the mark; true if one could be read in two ways. */
    private boolean look(CsvRecord record) {
        boolean open = false;
        for (int index : numbers) {
            if (index >= record.getFieldCount()) {
                continue;
            }
            String text = record.getField(index).strip();
            if (text.isEmpty() || text.length() > ExactNumber.LONGEST) {
                continue;
            }
            if (Marks.isOpen(text)) {
                if (pointIsPlain && text.indexOf('.') >= 0) {
                    marks = Marks.POINT;
                    return false;
                }
                open = true;
                continue;
            }
            Optional<DecimalMark> shown = Marks.shownBy(text);
            if (shown.isEmpty()) {
                continue;
            }
            if (shown.get() == DecimalMark.POINT) {
                marks = Marks.POINT;
                return false;
            }
            if (commaShown == null) {
                row.set(record);
                commaShown = new Notice(
                        new Where(file, row.line(), 0, ""),
                        "numbers are read with a decimal comma, as " + Echo.quoted(text) + " shows");
            }
            if (commaIsPlain) {
                marks = Marks.COMMA;
                sink.notice(commaShown.where(), commaShown.message());
                return false;
            }
            open = true;
        }
        return open;
    }

    private void flush() {
        waiting.forEach(this::handOn);
        waiting.clear();
        characters = 0;
    }

    private void handOn(CsvRecord record) {
        row.set(record);
        row.read(marks);
        taker.accept(row);
    }
}
