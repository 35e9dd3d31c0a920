package io.github.firstoff.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One thing that was decided in a session, as the journal keeps it.
 *
 * @param kind what sort
 * @param fields the rest, without control characters
 */
record KeyedEvent(Kind kind, List<String> fields) {

    KeyedEvent {
        fields = List.copyOf(fields);
        if (fields.size() != kind.fields) {
            throw new IllegalArgumentException(kind + " has " + kind.fields + " fields, not " + fields.size());
        }
        if (fields.stream().anyMatch(field -> field.chars().anyMatch(c -> c < ' '))) {
            throw new IllegalArgumentException("a field of an event has a control character");
        }
    }

    /** The sorts, with the number of their fields. */
    enum Kind {
        /** Version of the journal, hash of the plan, part number, revision, heading of the readings file, order. */
        BEGIN(6),
        /** The hash of a plan that was changed and confirmed. */
        PLAN(1),
        /** Another order. */
        ORDER(1),
        /** A piece that the person names. */
        PIECE(1),
        /** A piece that was known beforehand. */
        GIVEN(1),
        /** There are no more pieces to name. */
        CLOSED(0),
        /** Piece, characteristic, setting, row. */
        READING(4),
        /** Another text for the last row. */
        AMEND(1),
        /** Left unmeasured for now: piece, characteristic, setting. */
        SKIP(3),
        /** No further reading of what may be measured repeatedly: piece, characteristic, setting. */
        NEXT(3),
        /** The last piece, reading, skip or next did not happen. */
        UNDO(0),
        /** What was skipped is asked again. */
        AGAIN(0),
        /** A remark for the next reading; empty for none. */
        REMARK(1),
        /** Characteristic, gauge. */
        GAUGE(2),
        /** The temperature of the pieces; empty for none. */
        TEMPERATURE(1),
        /** On how much nonconformities are counted; empty for one. */
        SIZE(1),
        /** How many readings close what is measured repeatedly; 0 where only the person decides. */
        REPEATS(1),
        /** The decimal mark of what is keyed. */
        MARK(1);

        private final int fields;

        Kind(int fields) {
            this.fields = fields;
        }

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    static KeyedEvent of(Kind kind, String... fields) {
        return new KeyedEvent(kind, List.of(fields));
    }

    String field(int index) {
        return fields.get(index);
    }

    /** The event on one line, its fields parted by tabs. */
    String text() {
        return fields.isEmpty() ? kind.word() : kind.word() + '\t' + String.join("\t", fields);
    }

    /** The event of that text; empty if it is none. */
    static Optional<KeyedEvent> parse(String text) {
        String[] parts = text.split("\t", -1);
        for (Kind kind : Kind.values()) {
            if (kind.word().equals(parts[0]) && parts.length == kind.fields + 1) {
                return Optional.of(new KeyedEvent(kind, List.of(parts).subList(1, parts.length)));
            }
        }
        return Optional.empty();
    }
}
