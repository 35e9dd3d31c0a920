package io.github.firstoff.words;

import java.util.Locale;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A language that nobody speaks: every word of every English text stands between marks, {@code ‹so›}. What is printed without marks
 * while it is spoken did not come from the file of texts, and no translation of that file would reach it.
 */
public final class PseudoLanguage {
    /** A place keeps its number; a run of letters is a word. */
    private static final Pattern PLACE_OR_WORD = Pattern.compile("\\{\\d+|[\\p{L}\\p{M}]+(?:[’'-][\\p{L}\\p{M}]+)*");

    /** A word of this language where it is printed. */
    public static final Pattern WORD = Pattern.compile("‹[^‹›]*›");

    private PseudoLanguage() {}

    /** The language. */
    public static Labels labels() {
        Properties texts = new Properties();
        for (String key : Labels.ENGLISH.keys()) {
            texts.setProperty(key, marked(Labels.ENGLISH.raw(key).orElseThrow()));
        }
        return new Labels(Locale.forLanguageTag("qaa"), texts);
    }

    private static String marked(String text) {
        return PLACE_OR_WORD
                .matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(
                        found.group().startsWith("{") ? found.group() : "‹" + found.group() + "›"));
    }
}
