package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
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
 *
 * <p>Where the mark was taken for known on such terms, the rest of the file is watched as well: a number that later shows the other mark
 * makes all that was read doubtful, and the file is refused whole. Where the mark was plain, such a number is refused alone, by who reads it.
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
    private @Nullable Seen firstComma;
    /** The number on whose terms the mark was taken for known; null if it was plain, or stated, or has become plain. */
    private @Nullable Seen onTerms;

    private @Nullable Seen against;
    private Marks marks;

    /** A number and its place. */
    private record Seen(Where where, String text) {}

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
     * @param known what is known before the first row
     * @param sink takes the notice of a decimal comma
     * @param numbers the fields in which numbers may stand
     * @param rows how rows are looked at
     * @param taker takes every row in its order, with what is known of the mark
     */
    MarkWatch(
            boolean pointIsPlain,
            boolean commaIsPlain,
            Marks known,
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
        this.marks = known;
    }

    /** Takes the next row. */
    void take(R record) {
        if (marks != Marks.UNKNOWN) {
            if (onTerms != null) {
                lookBack(record);
            }
            handOn(record);
            return;
        }
        boolean open = look(record);
        if (marks != Marks.UNKNOWN) {
            if (onTerms != null) {
                lookBack(record);
            }
            flush();
            handOn(record);
        } else if (mayWait && (open || !waiting.isEmpty())) {
            waiting.add(record);
            characters += rows.characters(record);
            if (waiting.size() >= MOST_ROWS || characters > MOST_CHARACTERS) {
                mayWait = false;
                decideWithoutMore();
            }
        } else {
            handOn(record);
        }
    }

    /** Hands on what still waits: no further row comes. */
    void finish() {
        decideWithoutMore();
        Seen before = onTerms;
        Seen after = against;
        if (before != null && after != null) {
            DecimalMark mark = marks == Marks.POINT ? DecimalMark.POINT : DecimalMark.COMMA;
            sink.refuse(Fault.of(
                    FaultKind.CONTRADICTION,
                    after.where(),
                    "the numbers do not agree on a decimal mark: " + Echo.quoted(before.text()) + " in "
                            + before.where().spot() + " was read with a decimal " + mark.word()
                            + ", and this one has a decimal " + mark.other().word(),
                    Echo.quoted(after.text()),
                    "--decimal-mark point or --decimal-mark comma to say which it is"));
            against = null;
        }
    }

    private void decideWithoutMore() {
        if (marks == Marks.UNKNOWN && commaShown != null) {
            believe(commaShown);
        }
        flush();
    }

    private void believe(Notice comma) {
        marks = Marks.COMMA;
        sink.notice(comma.where(), comma.remark());
        if (!commaIsPlain) {
            onTerms = firstComma;
        }
    }

    /** Looks whether a row bears out or contradicts the mark that was taken for known on terms. */
    private void lookBack(R record) {
        for (int index : numbers) {
            String text = index < rows.size(record) ? rows.text(record, index) : "";
            if (text.isEmpty() || text.length() > ExactNumber.LONGEST) {
                continue;
            }
            Optional<DecimalMark> shown = Marks.shownBy(text);
            if (shown.isPresent() && shown.get() == DecimalMark.POINT && marks == Marks.POINT) {
                onTerms = null;
                against = null;
                return;
            }
            if (shown.isPresent() && Marks.shown(shown.get()) != marks && against == null) {
                against = new Seen(rows.where(record), text);
            }
        }
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
                    onTerms = new Seen(rows.where(record), text);
                    against = firstComma;
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
                firstComma = new Seen(rows.where(record), text);
                commaShown = new Notice(
                        rows.where(record),
                        Remark.of(
                                "notice.decimal-comma",
                                "numbers are read with a decimal comma, as {0} shows",
                                Echo.quoted(text)));
            }
            // Where rows no longer wait, one comma decides, and a point that comes later is refused; were the mark left
            // open, both would be read, each in its own way.
            if (commaIsPlain || !mayWait) {
                believe(commaShown);
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
