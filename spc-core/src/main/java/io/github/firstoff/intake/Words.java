package io.github.firstoff.intake;

import java.util.List;

/** Puts words into a sentence. */
final class Words {
    private static final int MOST_LISTED = 16;

    private Words() {}

    /** "a, b or c". */
    static String oneOf(List<String> words) {
        if (words.size() == 1) {
            return words.get(0);
        }
        if (words.size() > MOST_LISTED) {
            return String.join(", ", words.subList(0, MOST_LISTED)) + ", …";
        }
        return String.join(", ", words.subList(0, words.size() - 1)) + " or " + words.get(words.size() - 1);
    }
}
