package io.github.firstoff.words;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.remark.TextPattern;
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
 * <p>One rule: every word that a sheet prints is a text of this file. What the sheet says itself it asks for by {@link #text(String,
 * Object...)}; what the library says is a {@link Remark}, which brings its key, its arguments and its English; a code of a closed list goes
 * through {@link #word}. Texts hold places as {@link TextPattern} fills them. What people wrote stands as they wrote it.
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

    Labels(Locale locale, Properties texts) {
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
     * What the library says, in the language that is spoken on this thread.
     *
     * @param remark the remark
     */
    public static String text(Remark remark) {
        return SPOKEN.get().say(remark);
    }

    /**
     * The word for a code of a closed list of the program, such as a kind of chart.
     *
     * @param list with what the keys of such codes begin
     * @param code the code; printed as it is where no language knows it, as only a code from elsewhere can be
     */
    public static String word(String list, String code) {
        return text(Remark.word(list, code));
    }

    /**
     * A text in this language; in English where this language has no such text yet.
     *
     * @param key which text
     * @param arguments what stands in its places
     * @throws IllegalArgumentException if there is no such text in English either
     */
    public String say(String key, Object... arguments) {
        String pattern = pattern(key).orElseThrow(() -> new IllegalArgumentException("no label is called " + key));
        return new TextPattern(pattern)
                .filled(Arrays.stream(arguments)
                        .map(each -> each instanceof Remark remark ? say(remark) : each)
                        .toList());
    }

    /** What the library says, in this language. */
    public String say(Remark remark) {
        return remark.worded(this::pattern);
    }

    private Optional<String> pattern(String key) {
        return raw(key).or(() -> ENGLISH.raw(key));
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
}
