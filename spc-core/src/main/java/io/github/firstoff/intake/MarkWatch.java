package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
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
final class MarkWatch<R> {
    private static final int MOST_ROWS = 10_000;
    private static final int MOST_CHARACTERS = 4 << 20;

    private final boolean pointIsPlain;
    private final boolean commaIsPlain;
    private final ReadingSink sink;
    private final int[] numbers;
    private final Rows<R> rows;
    private final BiConsumer<R, Marks> taker;
    private final List<R> waiting = new ArrayList<>();
    private int characters;
    private boolean mayWait = true;
    private @Nullable Notice commaShown;
    private Marks marks;

    /** How rows are looked at. */
    interface Rows<R> {
        /** How many fields a row has. */
        int size(R row);

        /** A field that may hold a number, without surrounding space; empty where it is no text or holds none. */
        String text(R row, int index);

        /** About how many characters it keeps in memory. */
        int characters(R row);

        /** Where it stands. */
        Where where(R row);
    }

    /**
     * A watch over the rows of a file.
     *
     * @param pointIsPlain whether a point with three digits behind it is a decimal point
     * @param commaIsPlain whether a decimal comma shows as soon as one number has it
     * @param stated the mark that the user states
     * @param sink takes the notice of a decimal comma
     * @param numbers the fields in which numbers may stand
     * @param rows how rows are looked at
     * @param taker takes every row in its order, with what is known of the mark
     */
    MarkWatch(
            boolean pointIsPlain,
            boolean commaIsPlain,
            Optional<DecimalMark> stated,
            ReadingSink sink,
            int[] numbers,
            Rows<R> rows,
            BiConsumer<R, Marks> taker) {
        this.pointIsPlain = pointIsPlain;
        this.commaIsPlain = commaIsPlain;
        this.sink = sink;
        this.numbers = numbers;
        this.rows = rows;
        this.taker = taker;
        this.marks = stated.map(Marks::stated).orElse(Marks.UNKNOWN);
    }

    /** Takes the next row. */
    void take(R record) {
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
            characters += rows.characters(record);
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
    private boolean look(R record) {
        boolean open = false;
        for (int index : numbers) {
            if (index >= rows.size(record)) {
                continue;
            }
            String text = rows.text(record, index);
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
                commaShown = new Notice(
                        rows.where(record),
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

    private void handOn(R record) {
        taker.accept(record, marks);
    }
}
