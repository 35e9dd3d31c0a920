package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Member;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** One object of a JSON list of readings, with what the document says for all of them. */
final class JsonRow implements Row {
    private final String file;
    private final JsonValue.Obj object;
    private final Map<ReadingColumn, Member> own = new EnumMap<>(ReadingColumn.class);
    private final Map<ReadingColumn, Member> ofDocument;

    JsonRow(String file, JsonValue.Obj object, Map<ReadingColumn, Member> ofDocument) {
        this.file = file;
        this.object = object;
        this.ofDocument = ofDocument;
    }

    /** Takes a member for a column; the one that was there before, if any. */
    Optional<Member> put(ReadingColumn column, Member member) {
        return Optional.ofNullable(own.putIfAbsent(column, member));
    }

    boolean has(ReadingColumn column) {
        return own.containsKey(column);
    }

    Optional<JsonValue> value(ReadingColumn column) {
        Member member = own.get(column);
        if (member == null) {
            member = ofDocument.get(column);
        }
        return member == null ? Optional.empty() : Optional.of(member.value());
    }

    @Override
    public long line() {
        return object.at().line();
    }

    @Override
    public String text(ReadingColumn column) {
        return value(column).map(JsonRow::textOf).orElse("");
    }

    /** The text of a text, the literal of a number; nothing of anything else, which {@link #isText} refuses. */
    static String textOf(JsonValue value) {
        if (value instanceof JsonValue.Text text) {
            return text.text().strip();
        }
        return value instanceof JsonValue.Numeral number ? number.literal() : "";
    }

    @Override
    public Cell cell(ReadingColumn column) {
        return value(column)
                .filter(found -> !isNull(found))
                .map(found -> cell(found, where(column)))
                .orElseGet(() -> new Cell("", Cell.Form.TEXT, where(column)));
    }

    /** A value as the checks take it. */
    static Cell cell(JsonValue value, Where where) {
        if (value instanceof JsonValue.Text text) {
            return new Cell(text.text().strip(), Cell.Form.TEXT, where);
        }
        if (value instanceof JsonValue.Numeral number) {
            return new Cell(number.literal(), Cell.Form.NUMBER, where);
        }
        return new Cell(value.described(), Cell.Form.OTHER, where);
    }

    @Override
    public String noun() {
        return "reading";
    }

    static boolean isNull(JsonValue value) {
        return value instanceof JsonValue.Word word && word.word().equals("null");
    }

    /** Whether the value can be the text of a column: text, a number or nothing. */
    static boolean isText(JsonValue value) {
        return value instanceof JsonValue.Text || value instanceof JsonValue.Numeral || isNull(value);
    }

    @Override
    public Where where(ReadingColumn column) {
        JsonValue.Place at = value(column).map(JsonValue::at).orElse(object.at());
        return new Where(file, at.line(), at.column(), column.word());
    }
}
