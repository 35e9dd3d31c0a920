package io.github.firstoff.keyed;

import io.github.firstoff.conformance.Verdict;
import java.io.PrintWriter;
import java.util.Map;

/**
 * Puts lines before a person, in the characters that the terminal has. Every verdict has a sign and words; a colour only comes on top.
 * Control characters never pass.
 */
public final class Screen {
    private static final String RESET = "\u001B[0m";
    private static final Map<Integer, String> IN_ASCII = Map.ofEntries(
            Map.entry((int) 'Ø', "dia "),
            Map.entry((int) '⌀', "dia "),
            Map.entry((int) '±', "+/-"),
            Map.entry((int) '°', " deg"),
            Map.entry((int) 'µ', "u"),
            Map.entry((int) 'μ', "u"),
            Map.entry((int) '×', "x"),
            Map.entry((int) '√', "sqrt "),
            Map.entry((int) '·', "."),
            Map.entry((int) '●', "o"),
            Map.entry((int) '│', "|"),
            Map.entry((int) '┊', ":"),
            Map.entry((int) '◂', "<"),
            Map.entry((int) '▸', ">"),
            Map.entry((int) '✓', "[ok]"),
            Map.entry((int) '✗', "[X]"),
            Map.entry((int) '…', "..."),
            Map.entry((int) '–', "-"),
            Map.entry((int) '−', "-"),
            Map.entry((int) '′', "'"),
            Map.entry((int) '″', "\""),
            Map.entry((int) '≤', "<="),
            Map.entry((int) '≥', ">="),
            Map.entry((int) 'Ⓜ', "(M)"),
            Map.entry((int) 'Ⓛ', "(L)"),
            Map.entry((int) 'ⓔ', "(E)"),
            Map.entry((int) '⌖', "position "),
            Map.entry((int) '⏥', "flatness "),
            Map.entry((int) '□', "sq "));

    private final PrintWriter out;
    private final Abilities abilities;

    /**
     * What a screen can do.
     *
     * @param terminal whether a person sits there who sees what is typed; a pipe's lines are written out instead
     * @param unicode whether it shows more than ASCII
     * @param colour whether it shows colours and they are wanted
     */
    public record Abilities(boolean terminal, boolean unicode, boolean colour) {}

    /** A screen behind a writer. */
    public Screen(PrintWriter out, Abilities abilities) {
        this.out = out;
        this.abilities = abilities;
    }

    /** A line. */
    void line(String text) {
        out.println(shown(text));
        out.flush();
    }

    /** A question that waits on its own line for the answer. */
    void prompt(String text) {
        out.print(shown(text));
        out.flush();
    }

    /** What was answered, where nobody sees it otherwise. */
    void answered(String text) {
        if (!abilities.terminal()) {
            line(text);
        }
    }

    /** A verdict: its sign, its words, and what else belongs on the line. */
    void verdict(Verdict verdict, String words, String more) {
        String sign = sign(verdict) + ' ' + words;
        String coloured = abilities.colour() ? colour(verdict) + shown(sign) + RESET : shown(sign);
        out.println("    " + coloured + (more.isEmpty() ? "" : shown("   " + more)));
        out.flush();
    }

    /** The sign of a verdict, which does not need a colour. */
    static String sign(Verdict verdict) {
        return switch (verdict) {
            case CONFORMING -> "✓";
            case NONCONFORMING -> "✗";
            case INCONCLUSIVE -> "(?)";
            case NOT_MEASURED -> "-";
        };
    }

    private static String colour(Verdict verdict) {
        return switch (verdict) {
            case CONFORMING -> "\u001B[32m";
            case NONCONFORMING -> "\u001B[1;31m";
            case INCONCLUSIVE, NOT_MEASURED -> "\u001B[33m";
        };
    }

    private String shown(String text) {
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            if (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT) {
                shown.append('?');
            } else if (c < 0x7F || abilities.unicode()) {
                shown.appendCodePoint(c);
            } else {
                shown.append(IN_ASCII.getOrDefault(c, "?"));
            }
        });
        return shown.toString();
    }
}
