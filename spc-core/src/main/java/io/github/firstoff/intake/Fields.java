package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.intake.JsonValue.Member;
import io.github.firstoff.intake.JsonValue.Place;
import io.github.firstoff.remark.Remark;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;

/**
 * Takes the members of a JSON object one by one and remembers which were asked for, so that what is left over can be named at the
 * end. Whatever is wrong goes to the collector, and the answer is then empty. A null and an empty text mean "not stated".
 */
final class Fields {
    private static final int LONGEST_TEXT = 2000;

    private final String file;
    private final FaultCollector faults;
    private final JsonValue.Obj object;
    private final String label;
    private final Set<String> asked = new LinkedHashSet<>();
    private final Map<String, String> missing = new LinkedHashMap<>();

    /**
     * The members of an object.
     *
     * @param label what the object is called in messages; empty for the document itself
     */
    Fields(String file, FaultCollector faults, JsonValue.Obj object, String label) {
        this.file = file;
        this.faults = faults;
        this.object = object;
        this.label = label;
    }

    /** A reader of the same object with a better name, which begins anew. */
    Fields called(String betterLabel) {
        return new Fields(file, faults, object, betterLabel);
    }

    /** The same reader with a better name in place of the last part of its own; what was asked so far stays asked. */
    Fields renamed(String better) {
        int last = label.lastIndexOf(", entry ");
        String whole = last < 0 ? label : label.substring(0, last);
        Fields same = new Fields(file, faults, object, whole + ", " + better);
        same.asked.addAll(asked);
        same.missing.putAll(missing);
        return same;
    }

    JsonValue.Obj object() {
        return object;
    }

    /** A value that is there; a null is not. */
    Optional<JsonValue> value(String key) {
        asked.add(key);
        Member member = object.members().get(key);
        if (member == null || JsonRow.isNull(member.value())) {
            return Optional.empty();
        }
        return Optional.of(member.value());
    }

    /** Whether the key is there, whatever its value. */
    boolean has(String key) {
        return object.members().containsKey(key);
    }

    /** One line of text. */
    Optional<String> text(String key) {
        return value(key).flatMap(value -> textOf(key, value, false)).filter(text -> !text.isEmpty());
    }

    /** Text that may have several lines, such as an address. */
    Optional<String> lines(String key) {
        return value(key).flatMap(value -> textOf(key, value, true)).filter(text -> !text.isEmpty());
    }

    /** One line of text that must be there. */
    Optional<String> requiredText(String key, String expected) {
        return required(key, text(key), expected);
    }

    /** A name that is text, or a whole number as people write balloon numbers. */
    Optional<String> name(String key) {
        return value(key).flatMap(value -> nameOf(key, value)).filter(text -> !text.isEmpty());
    }

    /** A name that must be there. */
    Optional<String> requiredName(String key, String expected) {
        return required(key, name(key), expected);
    }

    /** A list of names; empty if it is not there or anything in it was refused. */
    List<String> names(String key, String expected) {
        Optional<JsonValue> value = value(key);
        if (value.isEmpty()) {
            return List.of();
        }
        if (!(value.get() instanceof JsonValue.Array array)) {
            refuse(key, FaultKind.WRONG_TYPE, "", value.get().described(), expected);
            return List.of();
        }
        List<String> names = new ArrayList<>();
        for (JsonValue item : array.items()) {
            Optional<String> name = nameOf(key, item);
            if (name.filter(String::isEmpty).isPresent()) {
                refuse(key, FaultKind.BLANK, "", "an empty text", expected);
            }
            name.ifPresent(names::add);
        }
        return names;
    }

    /** Refuses the absence of a value, unless it was there and already refused. A key that is not there is refused at the end. */
    <T> Optional<T> required(String key, Optional<T> found, String expected) {
        if (found.isEmpty() && !wasRefused(key)) {
            Member member = object.members().get(key);
            if (member == null) {
                missing.put(key, expected);
            } else {
                refuse(key, FaultKind.BLANK, "", member.value().described(), expected);
            }
        }
        return found;
    }

    /** Whether a value is there that is neither null nor an empty text, so that its absence means that it was refused. */
    private boolean wasRefused(String key) {
        Member member = object.members().get(key);
        if (member == null) {
            return false;
        }
        if (member.value() instanceof JsonValue.Text text) {
            return !text.text().isBlank();
        }
        return !(member.value() instanceof JsonValue.Word word && word.word().equals("null"));
    }

    private Optional<String> textOf(String key, JsonValue value, boolean severalLines) {
        if (!(value instanceof JsonValue.Text text)) {
            refuse(key, FaultKind.WRONG_TYPE, "", value.described(), "text in quotation marks");
            return Optional.empty();
        }
        return checked(key, text.text(), severalLines);
    }

    private Optional<String> nameOf(String key, JsonValue value) {
        if (value instanceof JsonValue.Numeral number
                && number.literal().length() <= 10
                && number.literal().chars().allMatch(Character::isDigit)) {
            return Optional.of(number.literal());
        }
        return textOf(key, value, false);
    }

    private Optional<String> checked(String key, String text, boolean severalLines) {
        String stripped = text.strip();
        if (stripped.length() > LONGEST_TEXT) {
            refuse(
                    key,
                    FaultKind.TOO_LARGE,
                    "",
                    "a text of " + stripped.length() + " characters",
                    "at most " + LONGEST_TEXT + " characters");
            return Optional.empty();
        }
        String searched = severalLines ? stripped.replace("\r\n", " ").replace('\n', ' ') : stripped;
        int harmful = Echo.firstHarmful(searched);
        if (harmful >= 0) {
            refuse(
                    key,
                    FaultKind.UNREADABLE_TEXT,
                    "",
                    Echo.character(searched.charAt(harmful)) + " in " + Echo.quoted(stripped),
                    "text without control characters");
            return Optional.empty();
        }
        return Optional.of(stripped);
    }

    /** An exact number, as JSON text or a JSON number. */
    Optional<BigDecimal> decimal(String key) {
        Optional<JsonValue> value = value(key);
        if (value.isEmpty()) {
            return Optional.empty();
        }
        try {
            if (value.get() instanceof JsonValue.Numeral number) {
                return Optional.of(ExactNumber.literal(number.literal()));
            }
            if (value.get() instanceof JsonValue.Text text) {
                return text.text().isBlank()
                        ? Optional.empty()
                        : Optional.of(ExactNumber.written(text.text().strip()));
            }
            refuse(key, FaultKind.WRONG_TYPE, "", value.get().described(), ExactNumber.EXAMPLE);
        } catch (NumberRefused refused) {
            refuse(key, refused.kind(), refused.message(), value.get().described(), refused.expected());
        }
        return Optional.empty();
    }

    /** An exact number that is not negative, or greater than zero. */
    Optional<BigDecimal> decimal(String key, boolean mayBeZero) {
        Optional<BigDecimal> number = decimal(key);
        if (number.isPresent()
                && (number.get().signum() < 0 || (!mayBeZero && number.get().signum() == 0))) {
            String expected = mayBeZero ? "a number that is not negative" : "a number greater than 0";
            refuse(key, FaultKind.NUMBER_OUT_OF_RANGE, "", number.get().toPlainString(), expected);
            return Optional.empty();
        }
        return number;
    }

    /** A whole number within bounds, both included. */
    OptionalInt count(String key, int least, int most) {
        Optional<JsonValue> value = value(key);
        if (value.isEmpty()) {
            return OptionalInt.empty();
        }
        String expected = "a whole number from " + least + " to " + most;
        String digits = "";
        if (value.get() instanceof JsonValue.Numeral number) {
            digits = number.literal();
        } else if (value.get() instanceof JsonValue.Text text) {
            digits = text.text().strip();
        } else {
            refuse(key, FaultKind.WRONG_TYPE, "", value.get().described(), expected);
            return OptionalInt.empty();
        }
        boolean whole =
                !digits.isEmpty() && digits.length() <= 9 && digits.chars().allMatch(c -> c >= '0' && c <= '9');
        if (!whole || Integer.parseInt(digits) < least || Integer.parseInt(digits) > most) {
            refuse(key, FaultKind.NUMBER_OUT_OF_RANGE, "", value.get().described(), expected);
            return OptionalInt.empty();
        }
        return OptionalInt.of(Integer.parseInt(digits));
    }

    /** A calendar date. */
    Optional<LocalDate> date(String key) {
        Optional<String> text = text(key);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            LocalDate date = LocalDate.parse(text.get());
            if (date.getYear() >= 1900 && date.getYear() < 2200) {
                return Optional.of(date);
            }
            refuse(key, FaultKind.NOT_A_DATE, "", Echo.quoted(text.get()), "a date between the years 1900 and 2199");
        } catch (DateTimeException unreadable) {
            refuse(
                    key,
                    FaultKind.NOT_A_DATE,
                    "",
                    Echo.quoted(text.get()),
                    "a date that exists, as year-month-day such as 2026-11-20");
        }
        return Optional.empty();
    }

    /** True or false. */
    Optional<Boolean> flag(String key) {
        Optional<JsonValue> value = value(key);
        if (value.isEmpty()) {
            return Optional.empty();
        }
        if (value.get() instanceof JsonValue.Word word) {
            return Optional.of(word.word().equals("true"));
        }
        refuse(key, FaultKind.WRONG_TYPE, "", value.get().described(), "true or false");
        return Optional.empty();
    }

    /** One of a set of words. */
    <T> Optional<T> word(String key, Function<String, Optional<T>> meaning, List<String> words) {
        Optional<String> text = text(key);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<T> meant = meaning.apply(text.get());
        if (meant.isEmpty()) {
            String suggestion = Nearest.to(text.get(), words)
                    .map(near -> "perhaps " + near + " is meant")
                    .orElse("");
            refuse(key, FaultKind.UNKNOWN_WORD, suggestion, Echo.quoted(text.get()), Words.oneOf(words));
        }
        return meant;
    }

    /** An object within this one. */
    Optional<Fields> object(String key) {
        Optional<JsonValue> value = value(key);
        if (value.isPresent() && value.get() instanceof JsonValue.Obj inner) {
            return Optional.of(new Fields(file, faults, inner, labelOf(key)));
        }
        value.ifPresent(other -> refuse(key, FaultKind.WRONG_TYPE, "", other.described(), "an object { … }"));
        return Optional.empty();
    }

    /** The members of an object that stands in a list of this one. */
    Fields within(JsonValue.Obj inner, String name) {
        return new Fields(file, faults, inner, labelOf(name));
    }

    /** Refuses one value that stands in a list of this object. */
    void refuseAt(JsonValue value, String name, FaultKind kind, String message, String found, String expected) {
        faults.refuse(Fault.of(kind, where(value.at(), labelOf(name)), message, found, expected));
    }

    /** A list of objects; each is called by its key and its place in the list. */
    List<Fields> objects(String key, String each) {
        Optional<JsonValue> value = value(key);
        if (value.isEmpty()) {
            return List.of();
        }
        if (!(value.get() instanceof JsonValue.Array array)) {
            refuse(key, FaultKind.WRONG_TYPE, "", value.get().described(), "a list [ … ]");
            return List.of();
        }
        List<Fields> found = new ArrayList<>();
        int place = 0;
        for (JsonValue item : array.items()) {
            place++;
            String name = labelOf(key) + ", entry " + place;
            if (item instanceof JsonValue.Obj inner) {
                found.add(new Fields(file, faults, inner, name));
            } else {
                faults.refuse(Fault.of(FaultKind.WRONG_TYPE, where(item.at(), name), "", item.described(), each));
            }
        }
        return found;
    }

    /**
     * Names every key that is missing and every key that was not asked for: one that is nearly an absent one is a fault, any
     * other a notice, because the format grows.
     */
    void finish() {
        Set<String> absent = new LinkedHashSet<>(asked);
        absent.removeAll(object.members().keySet());
        for (Map.Entry<String, Member> entry : object.members().entrySet()) {
            String key = entry.getKey();
            if (asked.contains(key)) {
                continue;
            }
            Where where = where(entry.getValue().keyAt(), label);
            Optional<String> meant = Nearest.to(key, absent);
            if (meant.isPresent()) {
                missing.remove(meant.get());
                faults.refuse(Fault.of(
                        FaultKind.MISSPELT, where, "", "the key " + Echo.quoted(key), Echo.quoted(meant.get())));
            } else {
                faults.notice(
                        where,
                        Remark.of("notice.not-understood", "{0} is not understood and was not used", Echo.quoted(key)));
            }
        }
        missing.forEach((key, expected) -> faults.refuse(Fault.of(
                FaultKind.MISSING, where(object.at(), label), Echo.quoted(key) + " is missing", "", expected)));
    }

    /** Where the value of a key stands, or its object if it has none. */
    Where where(String key) {
        Member member = object.members().get(key);
        return where(member == null ? object.at() : member.value().at(), labelOf(key));
    }

    private Where where(Place at, String field) {
        return new Where(file, at.line(), at.column(), field);
    }

    String labelOf(String key) {
        return label.isEmpty() ? key : label + ", " + key;
    }

    void refuse(String key, FaultKind kind, String message, String found, String expected) {
        faults.refuse(Fault.of(kind, where(key), message, found, expected));
    }
}
