package io.github.firstoff.intake;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.JsonRecyclerPools;
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
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Reads JSON text (RFC 8259, nothing beyond it) into values that know where they stand. */
final class JsonTree implements AutoCloseable {
    static final int DEEPEST = 20;
    private static final int MOST_OF_A_ROW = 20_000;
    private static final int LONGEST_TEXT = 20_000;
    private static final JsonFactory FACTORY = JsonFactory.builder()
            // Whoever opened the text reads the rest and closes it.
            .disable(StreamReadFeature.AUTO_CLOSE_SOURCE)
            // A table of all keys ever met would grow with the file.
            .disable(JsonFactory.Feature.CANONICALIZE_FIELD_NAMES)
            .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
            // a recycled buffer would move the place at which a text that is too long is noticed
            .recyclerPool(JsonRecyclerPools.nonRecyclingPool())
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEEPEST)
                    .maxStringLength(LONGEST_TEXT)
                    .maxNameLength(LONGEST_TEXT)
                    // Longer numbers than that are text of no use; shorter ones get a message of our own.
                    .maxNumberLength(LONGEST_TEXT)
                    .build())
            .build();

    private final String file;
    private final long linesBefore;
    private final Consumer<Fault> faults;
    private final JsonParser parser;
    private int left = Integer.MAX_VALUE;
    private Place last;

    /**
     * A text to read.
     *
     * @param linesBefore how many lines of the file stand before the text
     * @param faults takes what is wrong with the text but does not hinder reading on: keys that stand twice
     */
    JsonTree(String file, long linesBefore, Reader text, Consumer<Fault> faults) throws IOException {
        this.file = file;
        this.linesBefore = linesBefore;
        this.faults = faults;
        this.parser = FACTORY.createParser(text);
        this.last = new Place(linesBefore + 1, 1);
    }

    /** The one value of a whole text; empty with a fault collected if the text is no JSON. */
    static Optional<JsonValue> parse(SourceText source, FaultCollector faults) {
        if (source.text().isBlank()) {
            faults.refuse(
                    Fault.of(FaultKind.EMPTY, Where.inFile(source.name()), "", "an empty file", "a JSON document"));
            return Optional.empty();
        }
        try (JsonTree tree = new JsonTree(source.name(), 0, new StringReader(source.text()), faults::refuse)) {
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
            JsonToken token = parser.nextToken();
            last = here();
            return token;
        } catch (JsonProcessingException fault) {
            throw refused(fault, last);
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

    /** The value of one row that begins with the token; refused if it holds more than a row can sensibly hold. */
    JsonValue row(@Nullable JsonToken token) throws IOException {
        left = MOST_OF_A_ROW;
        JsonValue value = value(token);
        left = Integer.MAX_VALUE;
        return value;
    }

    /** The value that begins with the token. */
    JsonValue value(@Nullable JsonToken token) throws IOException {
        Place at = here();
        if (--left < 0) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    where(at),
                    "",
                    "one reading with more than " + MOST_OF_A_ROW + " values",
                    "a reading, or a piece with a value for each characteristic"));
        }
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
                faults.accept(Fault.of(
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
            throw refused(fault, here());
        }
    }

    private TextRefused refused(JsonProcessingException fault, Place token) {
        return new TextRefused(JsonSyntax.fault(file, linesBefore, fault, place(parser.currentLocation()), token));
    }

    /** Where the current token begins. */
    Place here() {
        return place(parser.currentTokenLocation());
    }

    Where where(Place at) {
        return new Where(file, at.line(), at.column(), "");
    }

    private Place place(JsonLocation location) {
        return new Place(linesBefore + Math.max(1, location.getLineNr()), Math.max(1, location.getColumnNr()));
    }

    @Override
    public void close() throws IOException {
        parser.close();
    }
}
