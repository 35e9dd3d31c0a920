package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Member;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** One object of a JSON list of readings, with what the document says for all of them. */
final class JsonRow implements Row {
    private static final Set<ReadingColumn> OF_EVERY_READING =
            Set.of(ReadingColumn.CHARACTERISTIC, ReadingColumn.VALUE);

    private final String file;
    private final JsonValue item;
    private final Marks marks;
    private final Map<ReadingColumn, Member> own = new EnumMap<>(ReadingColumn.class);
    private final Map<ReadingColumn, Member> ofDocument;
    private final Map<String, JsonValue> wide = new LinkedHashMap<>();

    /**
     * An item of a list; one that is no object says nothing.
     *
     * @param marks which decimal mark numbers in texts have
     */
    JsonRow(String file, JsonValue item, Map<ReadingColumn, Member> ofDocument, Marks marks) {
        this.file = file;
        this.item = item;
        this.ofDocument = ofDocument;
        this.marks = marks;
    }

    /** Takes a member for a column; the one that was there before, if any. */
    Optional<Member> put(ReadingColumn column, Member member) {
        return Optional.ofNullable(own.putIfAbsent(column, member));
    }

    /** Takes a value under the number of its characteristic. */
    void putWide(String number, JsonValue value) {
        wide.putIfAbsent(number, value);
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
    public Where where() {
        return new Where(file, item.at().line(), item.at().column(), "");
    }

    @Override
    public List<String> heading() {
        List<String> names = new ArrayList<>();
        columns().forEach(column -> names.add(column.word()));
        names.addAll(wide.keySet());
        return names;
    }

    @Override
    public List<String> fields() {
        List<String> texts = new ArrayList<>();
        columns().forEach(column -> texts.add(value(column).map(this::written).orElse("")));
        wide.values().forEach(value -> texts.add(written(value)));
        return texts;
    }

    /** Those of every reading, or the piece alone where it has values of several, and whatever else is said. */
    private List<ReadingColumn> columns() {
        return Arrays.stream(ReadingColumn.values())
                .filter(column -> column == ReadingColumn.PART
                        || (wide.isEmpty() && OF_EVERY_READING.contains(column))
                        || own.containsKey(column)
                        || ofDocument.containsKey(column))
                .toList();
    }

    private String written(JsonValue value) {
        if (value instanceof JsonValue.Text text) {
            return text.text();
        }
        if (value instanceof JsonValue.Numeral number) {
            return marks.written(number.literal());
        }
        return isNull(value) ? "" : value.json();
    }

    @Override
    public String asItStood() {
        return item.json();
    }

    @Override
    public Marks marks() {
        return marks;
    }

    @Override
    public String text(ReadingColumn column) {
        return value(column).map(JsonRow::textOf).orElse("");
    }

    /** The text of a text, the literal of a number; nothing of anything else, which {@link #isText} refuses. */
    static String textOf(JsonValue value) {
        if (value instanceof JsonValue.Text text) {
            return Blanks.strip(text.text());
        }
        return value instanceof JsonValue.Numeral number ? number.literal() : "";
    }

    @Override
    public Cell cell(ReadingColumn column) {
        return value(column)
                .filter(found -> !isNull(found))
                .map(found -> cell(found, where(column), marks))
                .orElseGet(() -> new Cell("", Cell.Form.TEXT, where(column)));
    }

    /** A value as the checks take it. */
    static Cell cell(JsonValue value, Where where, Marks marks) {
        if (value instanceof JsonValue.Text text) {
            return new Cell(Blanks.strip(text.text()), Cell.Form.TEXT, where, marks);
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
        JsonValue.Place at = value(column).map(JsonValue::at).orElse(item.at());
        return new Where(file, at.line(), at.column(), column.word());
    }
}
