package io.github.firstoff.intake;

import com.fasterxml.jackson.core.JsonToken;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Member;
import io.github.firstoff.intake.JsonValue.Place;
import io.github.firstoff.remark.Remark;
import java.io.IOException;
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
    private static final int MOST_KEYS = 1000;
    private static final Set<ReadingColumn> OF_ONE_READING = Set.of(
            ReadingColumn.PART,
            ReadingColumn.CHARACTERISTIC,
            ReadingColumn.VALUE,
            ReadingColumn.X,
            ReadingColumn.Y,
            ReadingColumn.Z,
            ReadingColumn.TIME);

    @Override
    public boolean recognises(Beginning beginning) {
        char first = beginning.firstCharacter();
        return first == '{' || first == '[';
    }

    @Override
    public void read(InputBytes bytes, RowCheck check) throws IOException {
        String file = bytes.input().name();
        TextReader text = TextReader.of(bytes);
        List<Fault> doubledKeys = new ArrayList<>();
        try (JsonTree tree = new JsonTree(file, 0, text, doubledKeys::add)) {
            new Pass(file, tree, check, doubledKeys).read();
        }
        text.notice().ifPresent(notice -> check.sink().notice(notice.where(), notice.remark()));
    }

    /** One reading of one file. */
    private static final class Pass {
        private final String file;
        private final JsonTree tree;
        private final Rows sink;
        private final JsonRows rows;
        private final List<Fault> doubledKeys;
        private final Map<ReadingColumn, Member> ofDocument = new EnumMap<>(ReadingColumn.class);

        Pass(String file, JsonTree tree, RowCheck check, List<Fault> doubledKeys) {
            this.file = file;
            this.tree = tree;
            this.sink = check.sink();
            this.rows = new JsonRows(file, check, ofDocument);
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
            doubledKeys.forEach(sink::refuse);
            doubledKeys.clear();
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
                if (seen.size() > MOST_KEYS) {
                    throw new TextRefused(Fault.of(
                            FaultKind.TOO_LARGE,
                            tree.where(keyAt),
                            "",
                            "more than " + MOST_KEYS + " keys beside the list of readings",
                            "a list of readings; this is perhaps another file"));
                }
                if (!seen.add(key)) {
                    refuse(
                            FaultKind.DOUBLED_NAME,
                            keyAt,
                            "",
                            "the key " + Echo.quoted(key) + " stands twice",
                            "",
                            "each key once");
                    tree.row(token);
                } else if (key.equals(LIST)) {
                    listed = true;
                    underReadings(token);
                } else {
                    misspelt |= beside(key, keyAt, tree.row(token), listed);
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
                JsonValue other = tree.row(token);
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
                sink.notice(
                        tree.where(keyAt),
                        Remark.of("notice.not-understood", "{0} is not understood and was not used", Echo.quoted(key)));
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
                // What was met so far stands beside the list.
                handOnDoubledKeys();
                JsonValue item = tree.row(token);
                rows.row(item, doubledKeys);
                doubledKeys.clear();
                token = tree.next();
            }
        }

        private Where where(Place at, String field) {
            return new Where(file, at.line(), at.column(), field);
        }

        private void refuse(FaultKind kind, Place at, String field, String message, String found, String expected) {
            sink.refuse(Fault.of(kind, where(at, Echo.plain(field)), message, found, expected));
        }
    }
}
