package io.github.firstoff.intake;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The words by which an inspector says that an attribute is as it should be, or is not. Words whose meaning hangs on a question that
 * is not in the file (yes and no, 1 and 0) are refused.
 */
final class PassOrFail {
    static final String EXPECTED =
            "pass or fail (or: ok, nok, go, no-go, good, bad, accept, reject, conforms, nonconforming, "
                    + "i.O., n.i.O.)";
    private static final Map<String, Boolean> WORDS = Map.ofEntries(
            Map.entry("pass", true),
            Map.entry("passed", true),
            Map.entry("ok", true),
            Map.entry("go", true),
            Map.entry("good", true),
            Map.entry("accept", true),
            Map.entry("accepted", true),
            Map.entry("conform", true),
            Map.entry("conforms", true),
            Map.entry("conforming", true),
            Map.entry("io", true),
            Map.entry("fail", false),
            Map.entry("failed", false),
            Map.entry("nok", false),
            Map.entry("notok", false),
            Map.entry("ng", false),
            Map.entry("nogo", false),
            Map.entry("notgo", false),
            Map.entry("notgood", false),
            Map.entry("bad", false),
            Map.entry("reject", false),
            Map.entry("rejected", false),
            Map.entry("nonconform", false),
            Map.entry("nonconforms", false),
            Map.entry("nonconforming", false),
            Map.entry("notconforming", false),
            Map.entry("doesnotconform", false),
            Map.entry("nio", false));

    private PassOrFail() {}

    /** Whether the word says pass; empty if it says neither. */
    static Optional<Boolean> parse(String word) {
        return Optional.ofNullable(WORDS.get(folded(word)));
    }

    private static String folded(String word) {
        StringBuilder out = new StringBuilder(word.length());
        for (char c : word.strip().toLowerCase(Locale.ROOT).toCharArray()) {
            if (c != ' ' && c != '.' && c != '-' && c != '\u00A0' && c != '\u2010' && c != '\u2011') {
                out.append(c);
            }
        }
        return out.toString();
    }

    /** Whether the text names an end of a limit gauge, so that as a result it could be mistaken for the end itself. */
    static boolean namesAnEnd(String text) {
        return switch (folded(text)) {
            case "go", "nogo", "notgo", "goend", "nogoend", "notgoend", "goside", "nogoside", "notgoside" -> true;
            default -> false;
        };
    }

    /** Whether the text is one of the words that are refused because their meaning hangs on the question. */
    static boolean hangsOnTheQuestion(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "yes", "no", "y", "n", "true", "false", "1", "0", "x", "ja", "nein" -> true;
            default -> false;
        };
    }
}
