package io.github.firstoff.tolerance;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the word that was probably meant. */
final class Words {
    private Words() {}

    /** The nearest of the known words, if it is at most two slips of the finger away (and fewer than half its letters). */
    static Optional<String> nearest(String written, Collection<String> known) {
        return known.stream()
                .filter(word -> slips(written, word) <= Math.min(2, word.length() / 2))
                .min(Comparator.comparingInt(word -> slips(written, word)));
    }

    /** Letters to change, add or leave out to get from one word to the other (Levenshtein 1966). */
    private static int slips(String from, String to) {
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int above = row[j];
                int change = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[to.length()];
    }
}
