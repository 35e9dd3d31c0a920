package io.github.firstoff.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import java.util.Optional;

/**
 * How a measuring machine writes times: a pattern of {@code yyyy}, {@code MM}, {@code dd}, {@code HH}, {@code mm} and {@code ss} with what
 * stands between them, such as {@code dd.MM.yyyy HH:mm}. A day and a month may have one digit where the pattern has one letter.
 */
final class TimeForm {
    static final String EXPECTED =
            "yyyy, MM, dd and perhaps HH, mm and ss with what stands between them, such as dd.MM.yyyy HH:mm";
    private static final int LONGEST = 40;

    private final String pattern;
    private final DateTimeFormatter formatter;

    private TimeForm(String pattern, DateTimeFormatter formatter) {
        this.pattern = pattern;
        this.formatter = formatter;
    }

    /** The form of a pattern; empty if it is none, or leaves day, month or year out. */
    static Optional<TimeForm> of(String pattern) {
        boolean letters = pattern.chars().filter(Character::isLetter).allMatch(c -> "yMdHms".indexOf(c) >= 0);
        boolean whole = pattern.contains("yyyy")
                && !pattern.contains("yyyyy")
                && !pattern.contains("MMM")
                && pattern.contains("M")
                && pattern.contains("d");
        boolean plain = pattern.chars().noneMatch(c -> "'[]{}#".indexOf(c) >= 0);
        if (!letters || !whole || !plain || pattern.length() > LONGEST) {
            return Optional.empty();
        }
        try {
            return Optional.of(new TimeForm(
                    pattern,
                    DateTimeFormatter.ofPattern(pattern.replace('y', 'u'), Locale.ROOT)
                            .withResolverStyle(ResolverStyle.STRICT)));
        } catch (IllegalArgumentException unknown) {
            return Optional.empty();
        }
    }

    String pattern() {
        return pattern;
    }

    /** The time as ISO 8601 writes it; empty if the text is no time of this form. */
    Optional<String> iso(String text) {
        try {
            TemporalAccessor parsed = formatter.parse(text);
            boolean withTime = parsed.isSupported(ChronoField.HOUR_OF_DAY);
            return Optional.of(
                    withTime
                            ? LocalDateTime.from(parsed).toString()
                            : LocalDate.from(parsed).toString());
        } catch (DateTimeException unreadable) {
            return Optional.empty();
        }
    }
}
