package io.github.firstoff.intake;

import io.github.firstoff.quantity.Unit;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as a person or a gauge keys it, taken apart into what a row of a file says in two columns: the number and the unit behind
 * it. What is neither is handed on as it is, for the rules of files to refuse.
 *
 * @param text the number with a decimal point
 * @param unit the unit behind it
 * @param noUnit what stands behind the number like a unit and is none
 * @param doubt the question that a comma puts, or a point where the comma is the decimal mark
 */
record KeyedNumber(String text, Optional<Unit> unit, Optional<String> noUnit, Optional<KeyedEntry.MarkInDoubt> doubt) {
    private static final Pattern WITH_UNIT = Pattern.compile("([+\\-\u2212]?[\\d.,]+)\\s*([^\\d\\s.,]\\S*)");
    private static final Pattern WORD = Pattern.compile("\\p{L}{1,20}");
    private static final Pattern MARKED = Pattern.compile("([+\\-\u2212]?\\d+)([.,])(\\d+)");

    /** Letters for the marks of an angle, which many keyboards lack: {@code 45d30m15s}. */
    private static final Pattern ANGLE_IN_LETTERS =
            Pattern.compile("([+\\-\u2212]?\\d{1,4})d(\\d{1,3}(?:\\.\\d{1,20})?)m(?:(\\d{1,3}(?:\\.\\d{1,20})?)s)?");

    static KeyedNumber of(String typed, boolean decimalComma) {
        String text = typed.strip();
        Optional<Unit> unit = Optional.empty();
        Matcher angle = ANGLE_IN_LETTERS.matcher(text);
        if (angle.matches()) {
            String seconds = angle.group(3) == null ? "" : angle.group(3) + '"';
            return new KeyedNumber(
                    angle.group(1) + "°" + angle.group(2) + "'" + seconds,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());
        }
        Matcher apart = WITH_UNIT.matcher(text);
        if (apart.matches()) {
            unit = Unit.parse(apart.group(2)).filter(known -> known != Unit.NONE);
            if (unit.isPresent()) {
                text = apart.group(1);
            } else if (WORD.matcher(apart.group(2)).matches()) {
                return new KeyedNumber(text, unit, Optional.of(apart.group(2)), Optional.empty());
            }
        }
        Matcher marked = MARKED.matcher(text);
        if (!marked.matches()) {
            return new KeyedNumber(text, unit, Optional.empty(), Optional.empty());
        }
        String asDecimal = marked.group(1) + "." + marked.group(3);
        if (marked.group(2).equals(decimalComma ? "," : ".")) {
            return new KeyedNumber(asDecimal, unit, Optional.empty(), Optional.empty());
        }
        String behind = unit.map(known -> " " + known.word()).orElse("");
        return new KeyedNumber(
                text,
                unit,
                Optional.empty(),
                Optional.of(new KeyedEntry.MarkInDoubt(
                        typed, asDecimal + behind, marked.group(1) + marked.group(3) + behind)));
    }
}
