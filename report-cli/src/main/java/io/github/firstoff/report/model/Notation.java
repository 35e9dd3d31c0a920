package io.github.firstoff.report.model;

import java.util.ArrayList;
import java.util.List;

/**
 * A requirement set the way a drawing sets it: pieces that stand side by side on one line.
 *
 * <pre>{@code
 * Notation.of("Ø52 P7");
 * Notation.of("12.5").deviations("+0.02", "−0.01");
 * Notation.frame(GeometricSymbol.POSITION, Cell.of("Ø0.1", Modifier.MAXIMUM_MATERIAL), Cell.of("A"), Cell.of("B"));
 * }</pre>
 *
 * @param pieces what stands side by side, in order; may be empty
 */
public record Notation(List<Piece> pieces) {
    /** Nothing to print. */
    public static final Notation NONE = new Notation(List.of());

    /** Copies the list. */
    public Notation {
        pieces = List.copyOf(pieces);
    }

    /** A notation of plain text only, such as {@code Ø52 P7}. */
    public static Notation of(String text) {
        return new Notation(List.of(new Words(text)));
    }

    /** A feature control frame. */
    public static Notation frame(GeometricSymbol symbol, Cell... cells) {
        return new Notation(List.of(new Frame(symbol, List.of(cells))));
    }

    /** A theoretically exact dimension, in its box. */
    public static Notation exact(String text) {
        return new Notation(List.of(new Exact(text)));
    }

    /** A reference dimension, in round brackets; the brackets are added here. */
    public static Notation bracketed(String text) {
        return new Notation(List.of(new Bracketed(text)));
    }

    /** This notation followed by plain text. */
    public Notation words(String text) {
        return and(new Words(text));
    }

    /** This notation followed by an upper and a lower deviation, one above the other. */
    public Notation deviations(String upper, String lower) {
        return and(new Deviations(upper, lower));
    }

    /** This notation followed by one more piece. */
    public Notation and(Piece piece) {
        List<Piece> longer = new ArrayList<>(pieces);
        longer.add(piece);
        return new Notation(longer);
    }

    /** One piece of a notation. */
    public sealed interface Piece permits Words, Deviations, Frame, Exact, Bracketed, Sign {}

    /**
     * Text as it stands; the character of a {@link Modifier} in it is drawn as that letter in its ring.
     *
     * @param text the text
     */
    public record Words(String text) implements Piece {}

    /**
     * Two deviations, the upper above the lower, smaller than the nominal before them. Aligned on their decimal marks.
     *
     * @param upper upper deviation with its sign, or {@code 0}
     * @param lower lower deviation with its sign, or {@code 0}
     */
    public record Deviations(String upper, String lower) implements Piece {}

    /**
     * A feature control frame: the symbol, then one compartment per cell.
     *
     * @param symbol the characteristic
     * @param cells  tolerance first, then the datums; at least one
     */
    public record Frame(GeometricSymbol symbol, List<Cell> cells) implements Piece {
        /** Copies the list; refuses a frame without a tolerance. */
        public Frame {
            cells = List.copyOf(cells);
            if (cells.isEmpty()) {
                throw new IllegalArgumentException("a geometric frame has at least the compartment of its tolerance");
            }
        }
    }

    /**
     * A theoretically exact dimension.
     *
     * @param text the dimension, set in a box
     */
    public record Exact(String text) implements Piece {}

    /**
     * A reference dimension.
     *
     * @param text the dimension without its brackets
     */
    public record Bracketed(String text) implements Piece {}

    /**
     * A sign before a dimension.
     *
     * @param sign the sign
     */
    public record Sign(DimensionSign sign) implements Piece {}

    /**
     * One compartment of a geometric frame.
     *
     * @param text      tolerance or datum letter; the character of a modifier in it is drawn as that letter in its ring
     * @param modifiers letters in rings after the text
     */
    public record Cell(String text, List<Modifier> modifiers) {
        /** Copies the list. */
        public Cell {
            modifiers = List.copyOf(modifiers);
        }

        /** A compartment with its modifiers. */
        public static Cell of(String text, Modifier... modifiers) {
            return new Cell(text, List.of(modifiers));
        }
    }
}
