package io.github.firstoff.intake;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** A JSON value that knows where it stands. */
sealed interface JsonValue {

    /** Where it begins. */
    Place at();

    /** What it is, for messages. */
    String described();

    /** The same as JSON text in one line. */
    String json();

    /** Text as a JSON text in quotation marks. */
    static String quoted(String text) {
        StringBuilder out = new StringBuilder(text.length() + 2).append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                out.append('\\').append(c);
            } else if (c < ' ') {
                out.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
            } else {
                out.append(c);
            }
        }
        return out.append('"').toString();
    }

    /**
     * A place in the text.
     *
     * @param line counted from 1
     * @param column counted from 1
     */
    record Place(long line, int column) {}

    /** Text. */
    record Text(Place at, String text) implements JsonValue {
        @Override
        public String described() {
            return Echo.quoted(text);
        }

        @Override
        public String json() {
            return quoted(text);
        }
    }

    /** A number, as its literal says it. */
    record Numeral(Place at, String literal) implements JsonValue {
        @Override
        public String described() {
            return literal.length() > 50 ? "a number of " + literal.length() + " characters" : "the number " + literal;
        }

        @Override
        public String json() {
            return literal;
        }
    }

    /** One of the words true, false and null. */
    record Word(Place at, String word) implements JsonValue {
        @Override
        public String described() {
            return word;
        }

        @Override
        public String json() {
            return word;
        }
    }

    /** A list. */
    record Array(Place at, List<JsonValue> items) implements JsonValue {
        @Override
        public String described() {
            return "a list";
        }

        @Override
        public String json() {
            return items.stream().map(JsonValue::json).collect(Collectors.joining(", ", "[", "]"));
        }
    }

    /** An object; of a key that stands twice the first value. */
    record Obj(Place at, Map<String, Member> members) implements JsonValue {
        @Override
        public String described() {
            return "an object";
        }

        @Override
        public String json() {
            return members.entrySet().stream()
                    .map(entry -> quoted(entry.getKey()) + ": "
                            + entry.getValue().value().json())
                    .collect(Collectors.joining(", ", "{", "}"));
        }
    }

    /**
     * A key with its value.
     *
     * @param keyAt where the key begins
     * @param value the value
     */
    record Member(Place keyAt, JsonValue value) {}
}
