package io.github.firstoff.intake;

import java.util.List;
import java.util.Map;

/** A JSON value that knows where it stands. */
sealed interface JsonValue {

    /** Where it begins. */
    Place at();

    /** What it is, for messages. */
    String described();

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
    }

    /** A number, as its literal says it. */
    record Numeral(Place at, String literal) implements JsonValue {
        @Override
        public String described() {
            return literal.length() > 50 ? "a number of " + literal.length() + " characters" : "the number " + literal;
        }
    }

    /** One of the words true, false and null. */
    record Word(Place at, String word) implements JsonValue {
        @Override
        public String described() {
            return word;
        }
    }

    /** A list. */
    record Array(Place at, List<JsonValue> items) implements JsonValue {
        @Override
        public String described() {
            return "a list";
        }
    }

    /** An object; of a key that stands twice the first value. */
    record Obj(Place at, Map<String, Member> members) implements JsonValue {
        @Override
        public String described() {
            return "an object";
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
