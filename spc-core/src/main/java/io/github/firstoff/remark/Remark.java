package io.github.firstoff.remark;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * A sentence, or a few words, that the library says: in English, with the key and the arguments of which other languages make the same
 * sentence.
 *
 * <p>Arguments are figures already rounded and written, numbers and truths by which a wording is chosen, what people wrote, and other
 * remarks, which are worded along with this one.
 *
 * @param key by which a translation finds its text; empty for what people wrote, which has none
 * @param pattern the English text with its places, as {@link TextPattern} fills them
 * @param arguments what stands in the places
 */
public record Remark(String key, String pattern, List<Object> arguments) {
    private static final Remark EMPTY = new Remark("", "", List.of());

    /** Copies the list. */
    public Remark {
        arguments = List.copyOf(arguments);
    }

    /**
     * A remark.
     *
     * @param key by which a translation finds its text
     * @param english the English text with its places
     * @param arguments what stands in the places
     * @return the remark
     */
    public static Remark of(String key, String english, Object... arguments) {
        return new Remark(key, english, Arrays.asList(arguments));
    }

    /**
     * A word of a closed list, such as the name of a distribution: its key is that of the list and the word itself.
     *
     * @param list the beginning of the keys of that list
     * @param english the word
     * @return the remark
     */
    public static Remark word(String list, String english) {
        return new Remark(keyOf(list, english), english, List.of());
    }

    /**
     * The key of a word of a closed list.
     *
     * @param list the beginning of the keys of that list
     * @param english the word
     * @return both, the word in small letters, with hyphens for anything that is neither letter nor digit
     */
    public static String keyOf(String list, String english) {
        String slug = english.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{Nd}]+", "-");
        return list + "." + slug.replaceAll("^-|-$", "");
    }

    /**
     * What people wrote, which no language words anew.
     *
     * @param text their text
     * @return the remark
     */
    public static Remark verbatim(String text) {
        return text.isEmpty() ? EMPTY : new Remark("", "{0}", List.of(text));
    }

    /** No remark: an empty text. */
    public static Remark none() {
        return EMPTY;
    }

    /**
     * This sentence and another after it.
     *
     * @param next the other
     * @return both, a space between them
     */
    public Remark then(Remark next) {
        return isEmpty() ? next : next.isEmpty() ? this : new Remark("", "{0} {1}", List.of(this, next));
    }

    /**
     * Several with the same sign between them.
     *
     * @param between the sign, which is no word
     * @param parts the remarks
     * @return one remark
     */
    public static Remark joined(String between, List<Remark> parts) {
        StringBuilder places = new StringBuilder();
        for (int i = 0; i < parts.size(); i++) {
            places.append(i == 0 ? "" : between).append('{').append(i).append('}');
        }
        return new Remark("", places.toString(), List.copyOf(parts));
    }

    /** Whether there is nothing to say. */
    public boolean isEmpty() {
        return pattern.isEmpty();
    }

    /** The sentence in English. */
    public String english() {
        return worded(key -> Optional.empty());
    }

    /**
     * The sentence in another language.
     *
     * @param texts the text of that language for a key; empty where it has none, which leaves the English one
     * @return the sentence
     */
    public String worded(Function<String, Optional<String>> texts) {
        String text = key.isEmpty() ? pattern : texts.apply(key).orElse(pattern);
        return new TextPattern(text)
                .filled(arguments.stream()
                        .map(each -> each instanceof Remark remark ? remark.worded(texts) : each)
                        .toList());
    }

    /**
     * Several in English.
     *
     * @param remarks the remarks
     * @return their sentences in the same order
     */
    public static List<String> english(List<Remark> remarks) {
        return remarks.stream().map(Remark::english).toList();
    }

    /** The sentence in English. */
    @Override
    public String toString() {
        return english();
    }
}
