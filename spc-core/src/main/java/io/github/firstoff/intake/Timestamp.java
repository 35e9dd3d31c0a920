package io.github.firstoff.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import java.util.Optional;

/**
 * A time as ISO 8601-1:2019 writes it: a date, or a date and a time of day with or without an offset from UTC. The letter T may be a
 * space.
 *
 * @param time with an offset: the time in UTC; without: as written; of a date alone: its beginning
 * @param kind which of the three it is
 */
record Timestamp(LocalDateTime time, Kind kind) {

    /** Times of two kinds cannot be put in order. */
    enum Kind {
        /** A date alone. */
        DATE("a date alone"),
        /** A date and a time of day. */
        LOCAL("a time without an offset from UTC"),
        /** A date and a time of day with an offset. */
        OFFSET("a time with an offset from UTC");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    static final String EXPECTED =
            "a date and time as ISO 8601 writes them, such as 2026-11-20T08:15:30 or " + "2026-11-20T08:15:30+01:00";

    private static final DateTimeFormatter WRITTEN = new DateTimeFormatterBuilder()
            .parseCaseInsensitive()
            .append(DateTimeFormatter.ISO_LOCAL_DATE)
            .appendLiteral('T')
            .append(DateTimeFormatter.ISO_LOCAL_TIME)
            .optionalStart()
            .appendOffset("+HH:mm", "Z")
            .optionalEnd()
            .toFormatter(Locale.ROOT)
            .withResolverStyle(ResolverStyle.STRICT);

    /** The time that the text states; empty if it is none. */
    static Optional<Timestamp> parse(String text) {
        try {
            Timestamp parsed = text.length() <= 10 ? date(text) : dateTime(text);
            int year = parsed.time().getYear();
            return year >= 1900 && year < 2200 ? Optional.of(parsed) : Optional.empty();
        } catch (DateTimeException unreadable) {
            return Optional.empty();
        }
    }

    private static Timestamp date(String text) {
        return new Timestamp(LocalDate.parse(text).atStartOfDay(), Kind.DATE);
    }

    private static Timestamp dateTime(String text) {
        String withT = text.charAt(10) == ' ' ? text.substring(0, 10) + 'T' + text.substring(11) : text;
        TemporalAccessor parsed = WRITTEN.parse(withT);
        if (parsed.isSupported(ChronoField.OFFSET_SECONDS)) {
            OffsetDateTime offset = OffsetDateTime.from(parsed);
            return new Timestamp(offset.withOffsetSameInstant(ZoneOffset.UTC).toLocalDateTime(), Kind.OFFSET);
        }
        return new Timestamp(LocalDateTime.from(parsed), Kind.LOCAL);
    }
}
