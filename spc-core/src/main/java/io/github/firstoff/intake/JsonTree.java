package io.github.firstoff.intake;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Member;
import io.github.firstoff.intake.JsonValue.Place;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads JSON text (RFC 8259, nothing beyond it) into values that know where they stand. */
final class JsonTree implements AutoCloseable {
    static final int DEEPEST = 20;
    private static final int LONGEST_TEXT = 20_000;
    private static final JsonFactory FACTORY = JsonFactory.builder()
            // Whoever opened the text reads the rest and closes it.
            .disable(StreamReadFeature.AUTO_CLOSE_SOURCE)
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEEPEST)
                    .maxStringLength(LONGEST_TEXT)
                    .maxNameLength(LONGEST_TEXT)
                    // Longer numbers than that are text of no use; shorter ones get a message of our own.
                    .maxNumberLength(LONGEST_TEXT)
                    .build())
            .build();

    private final String file;
    private final FaultCollector faults;
    private final JsonParser parser;

    JsonTree(String file, Reader text, FaultCollector faults) throws IOException {
        this.file = file;
        this.faults = faults;
        this.parser = FACTORY.createParser(text);
    }

    /** The one value of a whole text; empty with a fault collected if the text is no JSON. */
    static Optional<JsonValue> parse(SourceText source, FaultCollector faults) {
        if (source.text().isBlank()) {
            faults.refuse(
                    Fault.of(FaultKind.EMPTY, Where.inFile(source.name()), "", "an empty file", "a JSON document"));
            return Optional.empty();
        }
        try (JsonTree tree = new JsonTree(source.name(), new StringReader(source.text()), faults)) {
            JsonToken first = tree.next();
            JsonValue value = tree.value(first);
            tree.expectEnd();
            return Optional.of(value);
        } catch (TextRefused refused) {
            Fault fault = refused.fault();
            faults.refuse(fault.where().line() > 0 ? fault.with(Excerpts.of(source, fault.where())) : fault);
            return Optional.empty();
        } catch (IOException impossible) {
            throw new IllegalStateException("a text in memory can always be read", impossible);
        }
    }

    /** The next token, null at the end. */
    @Nullable
    JsonToken next() throws IOException {
        try {
            return parser.nextToken();
        } catch (JsonProcessingException fault) {
            throw new TextRefused(JsonSyntax.fault(file, fault, place(parser.currentLocation())));
        }
    }

    /** Refuses anything after the value. */
    void expectEnd() throws IOException {
        if (next() != null) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    where(here()),
                    "there is more after the end of the JSON document",
                    "",
                    "the end of the file"));
        }
    }

    /** The value that begins with the token. */
    JsonValue value(@Nullable JsonToken token) throws IOException {
        Place at = here();
        if (token == null) {
            throw new TextRefused(Fault.of(FaultKind.SYNTAX, where(at), "", "the end of the file", "a JSON value"));
        }
        return switch (token) {
            case START_OBJECT -> object(at);
            case START_ARRAY -> array(at);
            case VALUE_STRING -> new JsonValue.Text(at, text());
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new JsonValue.Numeral(at, text());
            case VALUE_TRUE -> new JsonValue.Word(at, "true");
            case VALUE_FALSE -> new JsonValue.Word(at, "false");
            case VALUE_NULL -> new JsonValue.Word(at, "null");
            default -> throw new IllegalStateException("the parser gives no value that begins with " + token);
        };
    }

    private JsonValue object(Place at) throws IOException {
        Map<String, Member> members = new LinkedHashMap<>();
        while (next() == JsonToken.FIELD_NAME) {
            Place keyAt = here();
            String key = text();
            JsonValue value = value(next());
            Member first = members.putIfAbsent(key, new Member(keyAt, value));
            if (first != null) {
                faults.refuse(Fault.of(
                        FaultKind.DOUBLED_NAME,
                        where(keyAt),
                        "the key " + Echo.quoted(key) + " stands twice (first in line "
                                + first.keyAt().line() + ")",
                        "",
                        "each key once"));
            }
        }
        return new JsonValue.Obj(at, members);
    }

    private JsonValue array(Place at) throws IOException {
        List<JsonValue> items = new ArrayList<>();
        JsonToken token = next();
        while (token != JsonToken.END_ARRAY) {
            items.add(value(token));
            token = next();
        }
        return new JsonValue.Array(at, items);
    }

    /** The text of the current key, text or number. */
    String text() throws IOException {
        try {
            return parser.getText();
        } catch (JsonProcessingException fault) {
            throw new TextRefused(JsonSyntax.fault(file, fault, place(parser.currentLocation())));
        }
    }

    /** Where the current token begins. */
    Place here() {
        return place(parser.currentTokenLocation());
    }

    Where where(Place at) {
        return new Where(file, at.line(), at.column(), "");
    }

    private static Place place(JsonLocation location) {
        return new Place(Math.max(1, location.getLineNr()), Math.max(1, location.getColumnNr()));
    }

    @Override
    public void close() throws IOException {
        parser.close();
    }
}
