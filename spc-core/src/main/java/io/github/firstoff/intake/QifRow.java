package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** One measurement of a QIF document, with what the document says of its piece and its run. */
final class QifRow implements LooseRow {
    private final Where where;
    private final Map<ReadingColumn, String> texts = new EnumMap<>(ReadingColumn.class);
    private final Map<ReadingColumn, Where> places = new EnumMap<>(ReadingColumn.class);
    private String status = "";

    QifRow(Where where) {
        this.where = where;
    }

    /** Says something of the reading. */
    void put(ReadingColumn column, String text, Where place) {
        // Where a writer breaks lines to keep them short, a break says no more than a space.
        texts.put(column, text.replaceAll("\\s*[\\r\\n]+\\s*", " "));
        places.put(column, new Where(place.file(), place.line(), place.column(), column.word()));
    }

    /** Says what the document itself makes of the reading. */
    void status(String word) {
        status = word;
    }

    @Override
    public Where where() {
        return where;
    }

    @Override
    public Set<ReadingColumn> said() {
        return texts.keySet();
    }

    @Override
    public String asItStood() {
        return status.isEmpty() ? "" : "status " + status;
    }

    @Override
    public String text(ReadingColumn column) {
        return texts.getOrDefault(column, "");
    }

    @Override
    public Cell cell(ReadingColumn column) {
        return new Cell(text(column), Cell.Form.TEXT, where(column));
    }

    @Override
    public String noun() {
        return "measurement";
    }

    @Override
    public Where where(ReadingColumn column) {
        @Nullable Where place = places.get(column);
        return place == null ? new Where(where.file(), where.line(), where.column(), column.word()) : place;
    }
}
