package io.github.firstoff.proof;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A JSON document as values: maps, lists, texts, {@link Figure figures}, booleans and {@link Nothing}. Figures keep the letters they
 * were written with.
 */
final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();
    private static final int DEEPEST = 64;

    private Json() {}

    /** A number as it was written. */
    record Figure(String written) {
        @Override
        public String toString() {
            return written;
        }
    }

    /** The JSON null. */
    enum Nothing {
        /** The only one. */
        NOTHING;

        @Override
        public String toString() {
            return "nothing";
        }
    }

    /** Reads one document. */
    static Object parse(byte[] bytes) throws IOException {
        try (JsonParser parser = FACTORY.createParser(bytes)) {
            parser.nextToken();
            Object value = value(parser, 0);
            if (parser.nextToken() != null) {
                throw new IOException("more than one JSON document");
            }
            return value;
        }
    }

    private static Object value(JsonParser parser, int depth) throws IOException {
        JsonToken token = parser.currentToken();
        if (token == null || depth > DEEPEST) {
            throw new IOException("no JSON document that a sheet carries");
        }
        return switch (token) {
            case START_OBJECT -> {
                Map<String, Object> object = new LinkedHashMap<>();
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String name = parser.currentName();
                    parser.nextToken();
                    object.put(name, value(parser, depth + 1));
                }
                yield object;
            }
            case START_ARRAY -> {
                List<Object> array = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    array.add(value(parser, depth + 1));
                }
                yield array;
            }
            case VALUE_STRING -> parser.getText();
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Figure(parser.getText());
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            case VALUE_NULL -> Nothing.NOTHING;
            default -> throw new IOException("no JSON document that a sheet carries");
        };
    }

    /** A member of an object; empty where the value is no object, has no such member, or has the JSON null there. */
    static Optional<Object> member(Object value, String name) {
        return value instanceof Map<?, ?> object
                ? Optional.<Object>ofNullable(object.get(name)).filter(found -> found != Nothing.NOTHING)
                : Optional.empty();
    }

    /** A member that is a text or a figure, as it is written. */
    static Optional<String> text(Object value, String name) {
        return member(value, name)
                .filter(found -> found instanceof String || found instanceof Figure)
                .map(Object::toString);
    }

    /** The entries of a member that is a list; empty where it is none. */
    static List<Object> list(Object value, String name) {
        return member(value, name).orElse(Nothing.NOTHING) instanceof List<?> list ? List.copyOf(list) : List.of();
    }
}
