package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Member;
import io.github.firstoff.intake.JsonValue.Place;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.remark.Remark;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Makes readings of JSON objects, whatever they are listed in. */
final class JsonRows {
    private static final int MOST_NOTICED = 1000;

    private final String file;
    private final RowCheck check;
    private final Rows sink;
    private final Map<ReadingColumn, Member> ofDocument;
    private final Marks marks;
    private final Set<String> noticed = new HashSet<>();

    /**
     * Rows of one file.
     *
     * @param ofDocument what the document says for all rows that do not say otherwise
     */
    JsonRows(String file, RowCheck check, Map<ReadingColumn, Member> ofDocument) {
        this.file = file;
        this.check = check;
        this.sink = check.sink();
        this.ofDocument = ofDocument;
        this.marks = sink.settings().decimalMark().map(Marks::stated).orElse(Marks.POINT);
    }

    /** Reads an item of a list as a row. */
    void row(JsonValue item, List<Fault> found) {
        if (item instanceof JsonValue.Obj object) {
            JsonRow row = new JsonRow(file, object, ofDocument, marks);
            sink.begin(row);
            found.forEach(sink::refuse);
            row(row, object);
        } else {
            sink.begin(new JsonRow(file, item, ofDocument, marks));
            found.forEach(sink::refuse);
            refuse(FaultKind.WRONG_TYPE, item.at(), "", "", item.described(), "a reading, which is an object { … }");
        }
        sink.end();
    }

    private void row(JsonRow row, JsonValue.Obj object) {
        boolean isLong = object.members().keySet().stream()
                .map(ReadingColumn::named)
                .anyMatch(column ->
                        column.filter(ReadingColumn.OF_LONG_ROWS::contains).isPresent());
        List<Wide> values = new ArrayList<>();
        boolean sound = true;
        for (Map.Entry<String, Member> entry : object.members().entrySet()) {
            sound &= member(
                    row,
                    entry.getKey(),
                    entry.getValue(),
                    isLong,
                    values,
                    object.members().keySet());
        }
        // A member that cannot be read would only be called missing.
        Optional<RowCheck.Head> head = sound ? check.head(row) : Optional.empty();
        if (isLong) {
            readLong(row, head);
        } else if (values.isEmpty() && sound) {
            refuse(
                    FaultKind.MISSING,
                    object.at(),
                    "",
                    "the reading has no value",
                    "",
                    "\"characteristic\" and \"value\", or a key for each characteristic");
        } else if (head.isPresent()) {
            for (Wide wide : values) {
                if (!JsonRow.isNull(wide.value())) {
                    check.values().wideValue(head.get(), wide.characteristic(), cell(wide.value(), wide.key()));
                }
            }
        }
    }

    /** A value under the number of its characteristic. */
    private record Wide(String key, ResolvedCharacteristic characteristic, JsonValue value) {}

    /** Files a member under its column or its characteristic; false if it is at fault. */
    private boolean member(
            JsonRow row, String key, Member member, boolean isLong, List<Wide> values, Set<String> keys) {
        JsonValue value = member.value();
        // As in a table, a note may have comments beside it; it is the note, and the others are told of.
        Optional<ReadingColumn> column =
                ReadingColumn.named(key).filter(each -> each != ReadingColumn.NOTE || isTheNote(row, key, keys));
        if (column.isPresent()) {
            if (row.put(column.get(), member).isPresent()) {
                refuse(
                        FaultKind.DOUBLED_NAME,
                        member.keyAt(),
                        key,
                        "two keys mean the same",
                        Echo.quoted(key),
                        "each once");
                return false;
            }
            if (column.get() != ReadingColumn.VALUE && !JsonRow.isText(value)) {
                refuse(FaultKind.WRONG_TYPE, value.at(), key, "", value.described(), "text in quotation marks");
                return false;
            }
            return true;
        }
        Optional<ResolvedCharacteristic> characteristic = check.plan().find(key);
        if (characteristic.isPresent() && !isLong) {
            values.add(new Wide(key, characteristic.get(), value));
            row.putWide(key, value);
            return true;
        }
        Optional<ReadingColumn> meant = ReadingColumn.meant(key)
                .filter(each -> !row.has(each) && ReadingColumn.named(key).isEmpty());
        if (meant.isPresent()) {
            refuse(
                    FaultKind.MISSPELT,
                    member.keyAt(),
                    "",
                    "",
                    "the key " + Echo.quoted(key),
                    Echo.quoted(meant.get().word()));
            return false;
        }
        if (!isLong && !key.isEmpty() && Character.isDigit(key.charAt(0))) {
            row.putWide(key, value);
            return check.characteristic(key, where(member.keyAt(), "")).isPresent() || check.leavesOthersAlone();
        }
        if (characteristic.isPresent()) {
            refuse(
                    FaultKind.CONTRADICTION,
                    member.keyAt(),
                    "",
                    "the reading has a value of its own and a key for a characteristic",
                    Echo.quoted(key),
                    "one or the other");
            return false;
        }
        if (noticed.size() < MOST_NOTICED && noticed.add(key)) {
            sink.notice(
                    where(member.keyAt(), ""),
                    Remark.of("notice.not-understood", "{0} is not understood and was not used", Echo.quoted(key)));
        }
        return true;
    }

    private static boolean isTheNote(JsonRow row, String key, Set<String> keys) {
        return CsvHeading.isCalledNote(key)
                || (!row.has(ReadingColumn.NOTE) && keys.stream().noneMatch(CsvHeading::isCalledNote));
    }

    private void readLong(JsonRow row, Optional<RowCheck.Head> head) {
        Optional<ResolvedCharacteristic> characteristic =
                check.characteristic(row.text(ReadingColumn.CHARACTERISTIC), row.where(ReadingColumn.CHARACTERISTIC));
        if (!check.values().hasOneReading(row) || head.isEmpty() || characteristic.isEmpty()) {
            return;
        }
        Optional<JsonValue> several = row.value(ReadingColumn.VALUE)
                .filter(found -> found instanceof JsonValue.Array || found instanceof JsonValue.Obj);
        if (several.isPresent()) {
            refuse(
                    FaultKind.WRONG_TYPE,
                    several.get().at(),
                    ReadingColumn.VALUE.word(),
                    "",
                    several.get().described(),
                    "one value");
        } else {
            check.values().ofRow(head.get(), characteristic.get(), row);
        }
    }

    private Cell cell(JsonValue value, String key) {
        return JsonRow.cell(value, where(value.at(), Echo.plain(key)), marks);
    }

    private Where where(Place at, String field) {
        return new Where(file, at.line(), at.column(), field);
    }

    private void refuse(FaultKind kind, Place at, String field, String message, String found, String expected) {
        sink.refuse(Fault.of(kind, where(at, Echo.plain(field)), message, found, expected));
    }
}
