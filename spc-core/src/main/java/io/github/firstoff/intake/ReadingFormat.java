package io.github.firstoff.intake;

import java.util.Locale;

/** The formats in which readings arrive, recognised by how they begin, whatever the file is called. */
public enum ReadingFormat {
    /** A JSON document with a list of readings. */
    JSON("{[", new JsonReadings()),
    /** Comma-separated values, long or wide; anything that is none of the others. */
    CSV("", new CsvReadings());

    private final String firstCharacters;
    private final ReadingSource source;

    ReadingFormat(String firstCharacters, ReadingSource source) {
        this.firstCharacters = firstCharacters;
        this.source = source;
    }

    /** What reads the format. */
    ReadingSource source() {
        return source;
    }

    /** The word for the format, in lower case. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The format that a text has, by its beginning.
     *
     * @param beginning the first characters of the text; space and line ends before the first other character do not matter
     */
    public static ReadingFormat recognise(CharSequence beginning) {
        for (int i = 0; i < beginning.length(); i++) {
            char c = beginning.charAt(i);
            if (!Character.isWhitespace(c)) {
                for (ReadingFormat format : values()) {
                    if (format.firstCharacters.indexOf(c) >= 0) {
                        return format;
                    }
                }
                return CSV;
            }
        }
        return CSV;
    }
}
