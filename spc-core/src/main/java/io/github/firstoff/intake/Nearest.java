package io.github.firstoff.intake;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the word that was probably meant. The distance is the least number of letters put in, left out, exchanged or swapped with
 * their neighbour (the restricted distance of F. J. Damerau, Communications of the ACM 7 (1964), 171–176; from memory).
 */
final class Nearest {
    private static final int FURTHEST = 2;

    private Nearest() {}

    /** The known word nearest to the given one, letter case and separators aside, if it is near enough to be meant. */
    static Optional<String> to(String word, Collection<String> known) {
        String best = null;
        int least = Integer.MAX_VALUE;
        String wanted = folded(word);
        for (String candidate : known) {
            String folded = folded(candidate);
            // In a short word two letters are most of it: "note" is no misspelt "name".
            int allowed = Math.min(FURTHEST, folded.length() / 3);
            if (Math.abs(folded.length() - wanted.length()) > allowed) {
                continue;
            }
            int distance = distance(wanted, folded);
            if (distance <= allowed && distance < least) {
                least = distance;
                best = candidate;
            }
        }
        return Optional.ofNullable(best);
    }

    private static String folded(String word) {
        StringBuilder out = new StringBuilder(word.length());
        for (char c : word.toLowerCase(Locale.ROOT).toCharArray()) {
            if (c != ' ' && c != '_' && c != '-') {
                out.append(c);
            }
        }
        return out.toString();
    }

    /** Whether the distance is 1; however long the texts are, they are only gone through once. */
    static boolean isOneStep(String a, String b) {
        int longer = Math.max(a.length(), b.length());
        if (Math.abs(a.length() - b.length()) > 1 || a.equals(b)) {
            return false;
        }
        int at = 0;
        while (at < a.length() && at < b.length() && a.charAt(at) == b.charAt(at)) {
            at++;
        }
        if (a.length() != b.length()) {
            String with = a.length() == longer ? a : b;
            String without = a.length() == longer ? b : a;
            return with.regionMatches(at + 1, without, at, longer - at - 1);
        }
        boolean swapped = at + 1 < longer
                && a.charAt(at) == b.charAt(at + 1)
                && a.charAt(at + 1) == b.charAt(at)
                && a.regionMatches(at + 2, b, at + 2, longer - at - 2);
        return swapped || a.regionMatches(at + 1, b, at + 1, longer - at - 1);
    }

    static int distance(String a, String b) {
        int[] twoBack = new int[b.length() + 1];
        int[] back = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            back[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int exchanged = back[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(exchanged, Math.min(back[j], row[j - 1]) + 1);
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) {
                    row[j] = Math.min(row[j], twoBack[j - 2] + 1);
                }
            }
            int[] free = twoBack;
            twoBack = back;
            back = row;
            row = free;
        }
        return back[b.length()];
    }
}
