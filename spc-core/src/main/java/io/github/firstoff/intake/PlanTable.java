package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a source says of a plan, before anybody has asked whether it makes one.
 *
 * @param facts what it says of part and drawing
 * @param rows what it says of each characteristic, in the order of the source
 */
record PlanTable(Map<PlanFact, Text> facts, List<Row> rows) {
    PlanTable {
        facts = Map.copyOf(facts);
        rows = List.copyOf(rows);
    }

    /**
     * A text and where it stands.
     *
     * @param text the text without surrounding space
     * @param where where it stands
     */
    record Text(String text, Where where) {}

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
