package io.github.firstoff.intake;

import java.util.Locale;

/**
 * Makes text from an input harmless to print: control characters, line ends and characters that change the direction of writing are
 * written out, and long text is cut.
 */
final class Echo {
    private static final int LONGEST = 60;

    private Echo() {}

    /** The text in quotation marks, cut where it is long. */
    static String quoted(String text) {
        boolean cut = text.length() > LONGEST;
        int end = LONGEST;
        if (cut && Character.isHighSurrogate(text.charAt(end - 1))) {
            end--;
        }
        return '"' + plain(cut ? text.substring(0, end) + "…" : text) + '"';
    }

    /** The text without quotation marks, whole. */
    static String plain(String text) {
        int safe = 0;
        while (safe < text.length() && isHarmless(text.charAt(safe))) {
            safe++;
        }
        if (safe == text.length()) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean pair = Character.isHighSurrogate(c)
                    && i + 1 < text.length()
                    && Character.isLowSurrogate(text.charAt(i + 1));
            if (pair) {
                out.append(c).append(text.charAt(++i));
            } else if (isHarmless(c)) {
                out.append(c);
            } else {
                out.append(written(c));
            }
        }
        return out.toString();
    }

    /** One character in words, for example {@code "}"} or {@code the character U+0007}. */
    static String character(int codePoint) {
        if (codePoint == '"') {
            return "a quotation mark";
        }
        String text = Character.toString(codePoint);
        return codePoint < 0x10000 && !isHarmless((char) codePoint)
                ? String.format(Locale.ROOT, "the character U+%04X", codePoint)
                : '"' + text + '"';
    }

    /** The first character of the text that must not stand in a name, a note or a value; -1 if there is none. */
    static int firstHarmful(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (Character.isHighSurrogate(c) && i + 1 < text.length() && Character.isLowSurrogate(text.charAt(i + 1))) {
                i++;
            } else if (!isHarmless(c)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isHarmless(char c) {
        if (c >= ' ' && c < 0x7F) {
            return true;
        }
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED -> false;
            default -> c != '\uFFFD';
        };
    }

    private static String written(char c) {
        return switch (c) {
            case '\n' -> "\\n";
            case '\r' -> "\\r";
            case '\t' -> "\\t";
            default -> String.format(Locale.ROOT, "\\u%04X", (int) c);
        };
    }
}
