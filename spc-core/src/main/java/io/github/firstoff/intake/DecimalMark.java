package io.github.firstoff.intake;

import java.util.Locale;

/** The character between the whole and the fraction of a number in a file of readings. */
public enum DecimalMark {
    /** The point, as in 12.5. */
    POINT('.'),
    /** The comma, as in 12,5. */
    COMMA(',');

    private final char character;

    DecimalMark(char character) {
        this.character = character;
    }

    char character() {
        return character;
    }

    DecimalMark other() {
        return this == POINT ? COMMA : POINT;
    }

    /** The word for it, in lower case. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
