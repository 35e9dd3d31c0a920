package io.github.firstoff.keyed;

import io.github.firstoff.conformance.Verdict;
import java.io.PrintWriter;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.IntSupplier;

/**
 * Puts lines before a person, in the characters that the terminal has. Every verdict has a sign and words; a colour only comes on top.
 * Control characters never pass.
 */
public final class Screen {
    private static final String RESET = "\u001B[0m";

    /** What is left behind a question for the answer, where the line is broken. */
    private static final int FOR_THE_ANSWER = 14;

    private static final String INDENT = "    ";
    private final PrintWriter out;
    private final Abilities abilities;
    private int width;

    /**
     * What a screen can do.
     *
     * @param terminal whether a person sits there who sees what is typed; a pipe's lines are written out instead
     * @param unicode whether it shows more than ASCII
     * @param colour whether it shows colours and they are wanted
     * @param columns how wide it is now; {@link Integer#MAX_VALUE} where lines need not be broken
     */
    public record Abilities(boolean terminal, boolean unicode, boolean colour, IntSupplier columns) {}

    /** A screen behind a writer. */
    public Screen(PrintWriter out, Abilities abilities) {
        this.out = out;
        this.abilities = abilities;
        this.width = abilities.columns().getAsInt();
    }

    /** A line, broken where the screen is too narrow for it. */
    public void line(String text) {
        Wrapping.lines(shown(text), width).forEach(out::println);
        out.flush();
    }

    /** How many columns there are for a line; a window may be drawn wider or narrower between two questions. */
    int width() {
        return width;
    }

    /** A question that waits on its own line for the answer. */
    void prompt(String text) {
        width = abilities.columns().getAsInt();
        String question = shown(text);
        boolean fits = Wrapping.columns(question) <= width - FOR_THE_ANSWER;
        List<String> broken =
                fits ? List.of(question) : Wrapping.lines(question.stripTrailing(), width - FOR_THE_ANSWER);
        int last = broken.size() - 1;
        broken.subList(0, last).forEach(out::println);
        out.print(broken.get(last).stripTrailing() + ' ');
        out.flush();
    }

    /** The input ended where an answer was awaited: what follows begins on a line of its own. */
    void endOfInput(String rest) {
        out.println(abilities.terminal() ? "" : shown(rest));
        out.flush();
    }

    /** What was answered, where nobody sees it otherwise. */
    void answered(String text) {
        if (!abilities.terminal()) {
            line(text);
        }
    }

    /**
     * A verdict: its sign, its words, and behind them a strip, which comes on the next line where there is no room for it.
     *
     * @param strip the strip in so many columns at most; empty text for none
     */
    void verdict(Verdict verdict, String words, IntFunction<String> strip) {
        String said = INDENT + shown(sign(verdict) + ' ' + words);
        String whole = shown(strip.apply(Integer.MAX_VALUE));
        String between = "   ";
        boolean onOneLine = !whole.isEmpty() && Wrapping.columns(said) + Wrapping.columns(between + whole) <= width;
        for (String line : Wrapping.lines(said, width)) {
            int indent = line.length() - line.stripLeading().length();
            out.print(abilities.colour() ? line.substring(0, indent) + colour(verdict) + line.strip() + RESET : line);
            out.println(onOneLine ? between + whole : "");
        }
        String below = onOneLine ? "" : shown(strip.apply(width - INDENT.length()));
        if (!below.isEmpty()) {
            out.println(INDENT + below);
        }
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
        StringBuilder harmless = new StringBuilder(text.length());
        text.codePoints()
                .forEach(c -> harmless.appendCodePoint(
                        Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? '?' : c));
        return abilities.unicode() ? harmless.toString() : AsciiText.of(harmless.toString());
    }
}
