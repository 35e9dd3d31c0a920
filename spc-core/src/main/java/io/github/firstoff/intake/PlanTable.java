package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a source says of a plan, before anybody has asked whether it makes one.
 *
 * @param facts what it says of part and drawing
 * @param rows what it says of each characteristic, in the order of the source
 * @param merged the merged cells of its sheet
 */
record PlanTable(Map<PlanFact, Text> facts, List<Row> rows, MergedRanges merged) {
    PlanTable {
        facts = Map.copyOf(facts);
        rows = List.copyOf(rows);
    }

    /** A table without merged cells. */
    PlanTable(Map<PlanFact, Text> facts, List<Row> rows) {
        this(facts, rows, MergedRanges.NONE);
    }

    /** The table with other rows. */
    PlanTable with(List<Row> other) {
        return new PlanTable(facts, other, merged);
    }

    /** The table with another fact. */
    PlanTable with(PlanFact fact, Text text) {
        Map<PlanFact, Text> changed = new EnumMap<>(PlanFact.class);
        changed.putAll(facts);
        changed.put(fact, text);
        return new PlanTable(changed, rows, merged);
    }

    /**
     * A text and where it stands.
     *
     * @param text the text without surrounding space
     * @param where where it stands
     * @param isNumber whether a spreadsheet holds a number there, whose mark is the point in the file
     */
    record Text(String text, Where where, boolean isNumber) {
        /** A text that is no number of a spreadsheet. */
        Text(String text, Where where) {
            this(text, where, false);
        }

        Text with(String other) {
            return new Text(other, where, isNumber);
        }
    }

    /**
     * A characteristic.
     *
     * @param where where it stands
     * @param texts what is said of it
     */
    record Row(Where where, Map<PlanColumn, Text> texts) {
        Row {
            texts = Map.copyOf(texts);
        }

        /** The row with another text in a column. */
        Row with(PlanColumn column, Text text) {
            Map<PlanColumn, Text> changed = new EnumMap<>(PlanColumn.class);
            changed.putAll(texts);
            changed.put(column, text);
            return new Row(where, changed);
        }

        Optional<Text> text(PlanColumn column) {
            return Optional.ofNullable(texts.get(column))
                    .filter(found -> !found.text().isEmpty());
        }

        /** Where something of it stands or should stand. */
        Where where(PlanColumn column) {
            Text text = texts.get(column);
            return text == null
                    ? new Where(where.file(), where.sheet(), where.line(), where.column(), column.word())
                    : text.where();
        }
    }
}
