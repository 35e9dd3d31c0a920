package io.github.firstoff.report.model;

import java.util.ArrayList;
import java.util.List;

/**
 * Running text with light markup, as data.
 *
 * <p>{@code Text.of("Mean climbs ").strong("1.2 µm").plain(" from subgroup 14 on.")}
 *
 * <p>A line feed in a run starts a new line. A no-break space keeps its neighbours together.
 *
 * @param runs what follows one another; may be empty
 */
public record Text(List<Run> runs) {
    /** No text. */
    public static final Text NONE = new Text(List.of());

    /** Copies the list. */
    public Text {
        runs = List.copyOf(runs);
    }

    /** Text in the ordinary weight. */
    public static Text of(String text) {
        return text.isEmpty() ? NONE : new Text(List.of(new Plain(text)));
    }

    /** Text in the strong weight. */
    public static Text bold(String text) {
        return new Text(List.of(new Strong(text)));
    }

    /** A requirement alone. */
    public static Text of(Notation notation) {
        return new Text(List.of(new Inline(notation)));
    }

    /** This text followed by text in the ordinary weight. */
    public Text plain(String text) {
        return and(new Plain(text));
    }

    /** This text followed by text in the strong weight. */
    public Text strong(String text) {
        return and(new Strong(text));
    }

    /** This text followed by a requirement set as on the drawing. */
    public Text notation(Notation notation) {
        return and(new Inline(notation));
    }

    /** This text followed by a number in a ring, as charts number their signals. */
    public Text ringed(String mark) {
        return and(new Ringed(mark));
    }

    /** This text followed by one more run. */
    public Text and(Run run) {
        List<Run> longer = new ArrayList<>(runs);
        longer.add(run);
        return new Text(longer);
    }

    /** Whether there is nothing to print. */
    public boolean isEmpty() {
        return runs.isEmpty();
    }

    /** One run of text. */
    public sealed interface Run permits Plain, Strong, Inline, Ringed {}

    /**
     * Ordinary weight.
     *
     * @param text the text
     */
    public record Plain(String text) implements Run {}

    /**
     * Strong weight.
     *
     * @param text the text
     */
    public record Strong(String text) implements Run {}

    /**
     * A requirement inside a sentence.
     *
     * @param notation the requirement; never broken over lines
     */
    public record Inline(Notation notation) implements Run {}

    /**
     * A number in a ring.
     *
     * @param mark one to three characters
     */
    public record Ringed(String mark) implements Run {}
}
