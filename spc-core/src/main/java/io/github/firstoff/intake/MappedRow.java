package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.Mapping.Item;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/** A row of a text that is understood by a mapping, with what the lines above it say of it. */
final class MappedRow implements LooseRow {
    private final Where where;
    private final String line;
    private final Marks marks;
    private final Map<Item, Text> own;
    private final Map<ReadingColumn, Text> said = new EnumMap<>(ReadingColumn.class);

    /**
     * A text and where it stands.
     *
     * @param text the text without surrounding blanks
     * @param where where it stands
     */
    record Text(String text, Where where) {}

    /**
     * A row.
     *
     * @param where its line, or the first of its lines
     * @param line all that stands there
     * @param own what it says itself
     * @param heads what the lines above it say
     */
    MappedRow(Where where, String line, Marks marks, Map<Item, Text> own, Map<ReadingColumn, Text> heads) {
        this.where = where;
        this.line = line;
        this.marks = marks;
        this.own = own;
        said.putAll(heads);
        own.forEach((item, text) ->
                item.column().filter(column -> !text.text().isEmpty()).ifPresent(column -> said.put(column, text)));
        put(ReadingColumn.VALUE, Item.ACTUAL);
    }

    private void put(ReadingColumn column, Item item) {
        Text text = own.get(item);
        if (text != null) {
            said.put(column, text);
        }
    }

    /** Says which characteristic its name means. */
    void means(String number) {
        said.put(ReadingColumn.CHARACTERISTIC, new Text(number, where(Item.NAME)));
    }

    /** Says in which unit its value is. */
    void isIn(String unit) {
        said.putIfAbsent(ReadingColumn.UNIT, new Text(unit, where(ReadingColumn.UNIT)));
    }

    /** Says a time otherwise than it stands there. */
    void at(String iso) {
        said.put(ReadingColumn.TIME, new Text(iso, where(ReadingColumn.TIME)));
    }

    /** What it says itself under the name that the mapping has for it; empty if nothing. */
    String text(Item item) {
        Text text = own.get(item);
        return text == null ? "" : text.text();
    }

    Where where(Item item) {
        Text text = own.get(item);
        return text == null ? new Where(where.file(), where.line(), 0, item.key()) : text.where();
    }

    /** One of its numbers as the checks take it. */
    Cell cell(Item item) {
        return new Cell(text(item), Cell.Form.TEXT, where(item), marks);
    }

    @Override
    public Where where() {
        return where;
    }

    @Override
    public Set<ReadingColumn> said() {
        return said.keySet();
    }

    @Override
    public String asItStood() {
        return line;
    }

    @Override
    public Marks marks() {
        return marks;
    }

    @Override
    public String text(ReadingColumn column) {
        Text text = said.get(column);
        return text == null ? "" : text.text();
    }

    @Override
    public Cell cell(ReadingColumn column) {
        return new Cell(text(column), Cell.Form.TEXT, where(column), marks);
    }

    @Override
    public String noun() {
        return "row";
    }

    @Override
    public Where where(ReadingColumn column) {
        Text text = said.get(column);
        return text == null ? new Where(where.file(), where.line(), 0, column.word()) : text.where();
    }
}
