package io.github.firstoff.words;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * Labels and sentences in one language.
 *
 * <p>A text holds places: {@code {0}} is the first argument as it is; {@code {0|piece|pieces}} is the first wording if the first
 * argument is the number 1 or {@code true}, else the second, and either may hold places itself. Numbers are printed as they come: whoever
 * words a figure has rounded it before.
 *
 * <p>Which language a sheet speaks is known where it is composed, and its words are spoken some twenty calls deeper. {@link #speaking}
 * therefore binds the language to the thread while one sheet is composed; outside it, {@link #text} speaks English. A class that composes
 * nothing takes a {@code Labels} and asks it by {@link #say}.
 */
public final class Labels {
    private static final Map<String, Labels> LOADED = new ConcurrentHashMap<>();
    private static final String ENGLISH_TAG = "en";

    /** English, in which nothing is missing. */
    public static final Labels ENGLISH = load(ENGLISH_TAG, "labels.properties");

    private static final ThreadLocal<Labels> SPOKEN = ThreadLocal.withInitial(() -> ENGLISH);

    private final Locale locale;
    private final Properties texts;

    private Labels(Locale locale, Properties texts) {
        this.locale = locale;
        this.texts = texts;
    }

    /**
     * The labels of a language.
     *
     * @param language its tag, such as {@code de}
     * @return the labels; empty if there is no file for it
     */
    public static Optional<Labels> of(String language) {
        if (language.equals(ENGLISH_TAG)) {
            return Optional.of(ENGLISH);
        }
        if (!language.matches("[a-z]{2,3}")) {
            return Optional.empty();
        }
        String file = "labels_" + language + ".properties";
        return Labels.class.getResource(file) == null
                ? Optional.empty()
                : Optional.of(LOADED.computeIfAbsent(language, tag -> load(tag, file)));
    }

    /** The labels of a language, or English if there is no file for it. */
    public static Labels of(Locale locale) {
        return of(locale.getLanguage()).orElse(ENGLISH);
    }

    /** The tags of the languages that there are files for, English first. */
    public static List<String> languages() {
        return Stream.concat(
                        Stream.of(ENGLISH_TAG),
                        Arrays.stream(Locale.getISOLanguages())
                                .filter(tag -> !tag.equals(ENGLISH_TAG) && of(tag).isPresent()))
                .toList();
    }

    private static Labels load(String language, String file) {
        Properties texts = new Properties();
        try (InputStream in = Labels.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("the labels " + file + " are missing from the program");
            }
            texts.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException fault) {
            throw new UncheckedIOException("the labels " + file + " cannot be read from the program", fault);
        }
        // British English is what the sheets are written in.
        return new Labels(language.equals(ENGLISH_TAG) ? Locale.UK : Locale.forLanguageTag(language), texts);
    }

    /**
     * Does something in this language: every {@link #text} that it asks for on this thread is in it.
     *
     * @param what composes or sets one sheet
     * @return what came of it
     * @throws E if it fails
     */
    public <T, E extends Exception> T speaking(Work<T, E> what) throws E {
        Labels before = SPOKEN.get();
        SPOKEN.set(this);
        try {
            return what.done();
        } finally {
            SPOKEN.set(before);
        }
    }

    /** What is done in a language. */
    @FunctionalInterface
    public interface Work<T, E extends Exception> {
        /**
         * Does it.
         *
         * @return what came of it
         * @throws E if it fails
         */
        T done() throws E;
    }

    /** The language that is spoken on this thread. */
    public static Locale spoken() {
        return SPOKEN.get().locale;
    }

    /**
     * A text in the language that is spoken on this thread.
     *
     * @param key which text
     * @param arguments what stands in its places
     * @throws IllegalArgumentException if there is no such text in any language
     */
    public static String text(String key, Object... arguments) {
        return SPOKEN.get().say(key, arguments);
    }

    /**
     * The word for a code of the program, such as a kind of chart.
     *
     * @param family with what the keys of such codes begin
     * @param code the code
     * @param otherwise what to print where no language has a word for it
     */
    public static String wordOr(String family, String code, String otherwise) {
        String key = family + "." + code.replace(' ', '-');
        Labels spoken = SPOKEN.get();
        return spoken.has(key) || ENGLISH.has(key) ? spoken.say(key) : otherwise;
    }

    /**
     * A sentence that comes ready in English from elsewhere in the program, worded anew in other languages.
     *
     * @param key which text
     * @param english the English sentence, printed where the spoken language has no text of its own
     * @param arguments what stands in the places of that text
     */
    public static String library(String key, String english, Object... arguments) {
        Labels spoken = SPOKEN.get();
        return spoken.has(key) ? spoken.say(key, arguments) : english;
    }

    /**
     * A text in this language; in English where this language has no such text yet.
     *
     * @param key which text
     * @param arguments what stands in its places
     * @throws IllegalArgumentException if there is no such text in English either
     */
    public String say(String key, Object... arguments) {
        String pattern = texts.getProperty(key);
        if (pattern == null) {
            pattern = ENGLISH.texts.getProperty(key);
        }
        if (pattern == null) {
            throw new IllegalArgumentException("no label is called " + key);
        }
        return new Pattern(pattern, arguments).filled();
    }

    private boolean has(String key) {
        return texts.getProperty(key) != null;
    }

    /** The language. */
    public Locale locale() {
        return locale;
    }

    /** The keys of all texts of this language. */
    public Set<String> keys() {
        return texts.stringPropertyNames();
    }

    /** A text as it stands in its file, with its places. */
    public Optional<String> raw(String key) {
        return Optional.ofNullable(texts.getProperty(key));
    }

    /** Fills the places of one text. */
    private static final class Pattern {
        private final String pattern;
        private final Object[] arguments;
        private int at;

        Pattern(String pattern, Object[] arguments) {
            this.pattern = pattern;
            this.arguments = arguments;
        }

        String filled() {
            StringBuilder out = new StringBuilder();
            until("", out);
            return out.toString();
        }

        /** Copies up to one of these signs, or to the end, and fills places on the way. */
        private void until(String ends, StringBuilder out) {
            while (at < pattern.length() && ends.indexOf(pattern.charAt(at)) < 0) {
                char c = pattern.charAt(at);
                at++;
                if (c == '{') {
                    place(out);
                } else {
                    out.append(c);
                }
            }
        }

        private void place(StringBuilder out) {
            int start = at;
            while (at < pattern.length() && Character.isDigit(pattern.charAt(at))) {
                at++;
            }
            int number = start < at ? Integer.parseInt(pattern.substring(start, at)) : arguments.length;
            if (number >= arguments.length) {
                throw new IllegalArgumentException("the label \"" + pattern + "\" has a place that nothing stands in");
            }
            Object argument = arguments[number];
            if (at < pattern.length() && pattern.charAt(at) == '|') {
                StringBuilder one = new StringBuilder();
                StringBuilder other = new StringBuilder();
                at++;
                until("|}", one);
                at++;
                until("}", other);
                out.append(isOne(argument) ? one : other);
            } else {
                out.append(argument);
            }
            at++;
        }

        private static boolean isOne(Object argument) {
            return argument instanceof Number number ? number.longValue() == 1 : Boolean.TRUE.equals(argument);
        }
    }
}
