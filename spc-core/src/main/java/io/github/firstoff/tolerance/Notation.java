package io.github.firstoff.tolerance;

import java.util.List;

/**
 * A requirement as a drawing sets it, piece by piece from left to right; a sheet turns the pieces into type.
 *
 * @param elements in reading order
 */
public record Notation(List<Element> elements) {

    /** Copies the list. */
    public Notation {
        elements = List.copyOf(elements);
    }

    /** A notation of these pieces. */
    public static Notation of(Element... elements) {
        return new Notation(List.of(elements));
    }

    /** One piece. */
    public sealed interface Element permits Text, Stacked, Framed, Boxed {}

    /**
     * Plain text such as {@code Ø52 P7} or {@code 12.5 ±0.05}.
     *
     * @param text what is printed
     */
    public record Text(String text) implements Element {}

    /**
     * Two deviations or two limits of which one stands above the other (ISO 129-1).
     *
     * @param upper printed above
     * @param lower printed below
     */
    public record Stacked(String upper, String lower) implements Element {}

    /**
     * A tolerance indicator (ISO 1101): the symbol, then one cell each for the tolerance and the datums.
     *
     * @param symbol the geometric characteristic
     * @param cells the tolerance first, then the datums; modifiers as the characters Ⓜ and Ⓛ
     */
    public record Framed(GeometricCharacteristic symbol, List<String> cells) implements Element {
        /** Copies the list. */
        public Framed {
            cells = List.copyOf(cells);
        }
    }

    /**
     * A theoretically exact dimension in its box.
     *
     * @param text what stands in the box
     */
    public record Boxed(String text) implements Element {}
}
