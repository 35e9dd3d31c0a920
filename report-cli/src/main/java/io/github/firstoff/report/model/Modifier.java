package io.github.firstoff.report.model;

import java.util.Arrays;
import java.util.Optional;

/** Letters in a ring that modify a tolerance or a datum (ISO 1101, ISO 2692, ASME Y14.5). */
public enum Modifier {
    /** Maximum material requirement. */
    MAXIMUM_MATERIAL("M", "\u24C2"),
    /** Least material requirement. */
    LEAST_MATERIAL("L", "\u24C1"),
    /** Reciprocity requirement. */
    RECIPROCITY("R", "\u24C7"),
    /** Projected tolerance zone. */
    PROJECTED("P", "\u24C5"),
    /** Free state. */
    FREE_STATE("F", "\u24BB"),
    /** Envelope requirement. */
    ENVELOPE("E", "\u24BA"),
    /** Tangent plane. */
    TANGENT("T", "\u24C9"),
    /** Unequally disposed profile (ASME Y14.5). */
    UNEQUAL("U", "\u24CA");

    private final String letter;
    private final String character;

    Modifier(String letter, String character) {
        this.letter = letter;
        this.character = character;
    }

    /** The modifier that this character stands for; empty for any other text. */
    public static Optional<Modifier> of(String character) {
        return Arrays.stream(values())
                .filter(each -> each.character.equals(character))
                .findFirst();
    }

    /** The letter inside the ring. */
    public String letter() {
        return letter;
    }

    /** The Unicode character that stands for the modifier in extracted text. */
    public String character() {
        return character;
    }
}
