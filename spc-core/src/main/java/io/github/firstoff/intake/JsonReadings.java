package io.github.firstoff.intake;

import com.fasterxml.jackson.core.JsonToken;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Member;
import io.github.firstoff.intake.JsonValue.Place;
import io.github.firstoff.plan.ResolvedCharacteristic;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Readings as JSON: a list of objects whose keys are the names of the columns of a CSV file, or an object with such a list under
 * {@code readings}. An object with a {@code value} is one reading; one without may have a key per characteristic number. What stands
 * beside {@code readings} under the name of a column holds for all readings that do not say otherwise.
 */
final class JsonReadings implements ReadingSource {
    static final String SCHEMA = "firstoff-readings-1";
    private static final String LIST = "readings";
    private static final Set<ReadingColumn> OF_ONE_READING = Set.of(
            ReadingColumn.PART,
            ReadingColumn.CHARACTERISTIC,
            ReadingColumn.VALUE,
            ReadingColumn.X,
            ReadingColumn.Y,
            ReadingColumn.Z,
            ReadingColumn.TIME);

    @Override
    public void read(String file, Reader text, RowCheck check) throws IOException {
        FaultCollector doubledKeys = new FaultCollector();
        try (JsonTree tree = new JsonTree(file, text, doubledKeys)) {
            new Pass(file, tree, check, doubledKeys).read();
        }
    }

    /** One reading of one file. */
    private static final class Pass {
        private final String file;
        private final JsonTree tree;
        private final RowCheck check;
        private final ReadingSink sink;
        private final FaultCollector doubledKeys;
        private final Map<ReadingColumn, Member> ofDocument = new EnumMap<>(ReadingColumn.class);
        private final Set<String> noticed = new HashSet<>();

        Pass(String file, JsonTree tree, RowCheck check, FaultCollector doubledKeys) {
            this.file = file;
            this.tree = tree;
            this.check = check;
            this.sink = check.sink();
            this.doubledKeys = doubledKeys;
        }

        void read() throws IOException {
            JsonToken first = tree.next();
            try {
                if (first == JsonToken.START_ARRAY) {
                    list();
                } else if (first == JsonToken.START_OBJECT) {
                    document();
                } else {
                    refuse(
                            FaultKind.WRONG_TYPE,
                            tree.here(),
                            "",
                            "",
                            "",
                            "a list of readings, or an object with such a list under \"readings\"");
                    return;
                }
                tree.expectEnd();
            } finally {
                handOnDoubledKeys();
            }
        }

        private void handOnDoubledKeys() {
            doubledKeys.refusals().faults().forEach(sink::refuse);
        }

        private void document() throws IOException {
            Place start = tree.here();
            Set<String> seen = new HashSet<>();
            boolean listed = false;
            boolean misspelt = false;
            while (tree.next() == JsonToken.FIELD_NAME) {
                Place keyAt = tree.here();
                String key = tree.text();
                JsonToken token = tree.next();
                if (!seen.add(key)) {
                    refuse(
                            FaultKind.DOUBLED_NAME,
                            keyAt,
                            "",
                            "the key " + Echo.quoted(key) + " stands twice",
                            "",
                            "each key once");
                    tree.value(token);
                } else if (key.equals(LIST)) {
                    listed = true;
                    underReadings(token);
                } else {
                    misspelt |= beside(key, keyAt, tree.value(token), listed);
                }
            }
            if (!listed && !misspelt) {
                refuse(
                        FaultKind.MISSING,
                        start,
                        "",
                        "\"readings\" is missing",
                        "",
                        "a list of readings under that key");
            }
        }

        private void underReadings(@Nullable JsonToken token) throws IOException {
            if (token == JsonToken.START_ARRAY) {
                list();
            } else {
                JsonValue other = tree.value(token);
                refuse(FaultKind.WRONG_TYPE, other.at(), LIST, "", other.described(), "a list [ … ]");
            }
        }

        /** Takes what stands beside the list; true if it is the list under a misspelt key. */
        private boolean beside(String key, Place keyAt, JsonValue value, boolean afterList) {
            if (key.equals("schema") || key.equals("$schema")) {
                boolean other = key.equals("schema")
                        && !(value instanceof JsonValue.Text text && text.text().equals(SCHEMA));
                if (other) {
                    refuse(FaultKind.WRONG_SCHEMA, value.at(), key, "", value.described(), Echo.quoted(SCHEMA));
                }
                return false;
            }
            Optional<ReadingColumn> column = ReadingColumn.named(key);
            if (column.isPresent()) {
                forAll(column.get(), key, new Member(keyAt, value), afterList);
                return false;
            }
            if (Nearest.to(key, List.of(LIST)).isPresent() && !afterList) {
                refuse(FaultKind.MISSPELT, keyAt, "", "", "the key " + Echo.quoted(key), Echo.quoted(LIST));
                return true;
            }
            Optional<ReadingColumn> meant = ReadingColumn.meant(key).filter(near -> !OF_ONE_READING.contains(near));
            if (meant.isPresent()) {
                refuse(
                        FaultKind.MISSPELT,
                        keyAt,
                        "",
                        "",
                        "the key " + Echo.quoted(key),
                        Echo.quoted(meant.get().word()));
            } else {
                sink.notice(tree.where(keyAt), Echo.quoted(key) + " is not understood and was not used");
            }
            return false;
        }

        private void forAll(ReadingColumn column, String key, Member member, boolean afterList) {
            JsonValue value = member.value();
            boolean ofOneReading = OF_ONE_READING.contains(column);
            if (ofOneReading || !JsonRow.isText(value)) {
                refuse(
                        FaultKind.WRONG_TYPE,
                        value.at(),
                        key,
                        ofOneReading ? "it belongs to a single reading" : "",
                        value.described(),
                        ofOneReading ? "it in each reading" : "text in quotation marks");
            } else if (afterList) {
                refuse(
                        FaultKind.CONTRADICTION,
                        member.keyAt(),
                        key,
                        "it holds for all readings and stands after them",
                        "",
                        "it before \"readings\"");
            } else {
                ofDocument.put(column, member);
            }
        }

        private void list() throws IOException {
            Place start = tree.here();
            JsonToken token = tree.next();
            if (token == JsonToken.END_ARRAY) {
                refuse(FaultKind.EMPTY, start, "", "", "an empty list", "at least one reading");
                return;
            }
            while (token != JsonToken.END_ARRAY) {
                JsonValue item = tree.value(token);
                if (item instanceof JsonValue.Obj object) {
                    row(object);
                } else {
                    refuse(
                            FaultKind.WRONG_TYPE,
                            item.at(),
                            "",
                            "",
                            item.described(),
                            "a reading, which is an object { … }");
                }
                token = tree.next();
            }
        }

        private void row(JsonValue.Obj object) {
            JsonRow row = new JsonRow(file, object, ofDocument);
            boolean isLong = object.members().keySet().stream()
                    .map(ReadingColumn::named)
                    .anyMatch(column ->
                            column.filter(ReadingColumn.OF_LONG_ROWS::contains).isPresent());
            List<Wide> values = new ArrayList<>();
            boolean sound = true;
            for (Map.Entry<String, Member> entry : object.members().entrySet()) {
                sound &= member(row, entry.getKey(), entry.getValue(), isLong, values);
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
        private boolean member(JsonRow row, String key, Member member, boolean isLong, List<Wide> values) {
            JsonValue value = member.value();
            Optional<ReadingColumn> column = ReadingColumn.named(key);
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
                return true;
            }
            Optional<ReadingColumn> meant = ReadingColumn.meant(key).filter(each -> !row.has(each));
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
                return check.characteristic(key, where(member.keyAt(), "")).isPresent();
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
            if (noticed.add(key)) {
                sink.notice(tree.where(member.keyAt()), Echo.quoted(key) + " is not understood and was not used");
            }
            return true;
        }

        private void readLong(JsonRow row, Optional<RowCheck.Head> head) {
            Optional<ResolvedCharacteristic> characteristic = check.characteristic(
                    row.text(ReadingColumn.CHARACTERISTIC), row.where(ReadingColumn.CHARACTERISTIC));
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
            return JsonRow.cell(value, where(value.at(), Echo.plain(key)));
        }

        private Where where(Place at, String field) {
            return new Where(file, at.line(), at.column(), field);
        }

        private void refuse(FaultKind kind, Place at, String field, String message, String found, String expected) {
            sink.refuse(Fault.of(kind, where(at, Echo.plain(field)), message, found, expected));
        }
    }
}
