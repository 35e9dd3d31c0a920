package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A tolerance class of ISO 286-1:2010: the letters of the fundamental deviation and the grade, for example {@code H7} or
 * {@code g6}. Capital letters are holes, small letters shafts.
 *
 * @param letters one of the identifiers of ISO 286-1
 * @param grade the standard tolerance grade
 */
public record ToleranceClass(String letters, StandardGrade grade) {

    private static final List<String> LETTERS = List.of(
            "A", "B", "C", "CD", "D", "E", "EF", "F", "FG", "G", "H", "J", "JS", "K", "M", "N", "P", "R", "S", "T", "U",
            "V", "X", "Y", "Z", "ZA", "ZB", "ZC");

    /**
     * Checks the letters.
     *
     * @throws IllegalArgumentException if they are no identifier of ISO 286-1
     */
    public ToleranceClass {
        if (!isIdentifier(letters)) {
            throw new IllegalArgumentException("ISO 286 has no fundamental deviation " + letters);
        }
    }

    /** The class that the text means, such as {@code H7} or {@code js6}; empty if none. */
    public static Optional<ToleranceClass> of(String text) {
        int letters = 0;
        while (letters < text.length() && Character.isLetter(text.charAt(letters))) {
            letters++;
        }
        String identifier = text.substring(0, letters);
        return StandardGrade.of(text.substring(letters))
                .filter(grade -> isIdentifier(identifier))
                .map(grade -> new ToleranceClass(identifier, grade));
    }

    /**
     * The limit deviations at a nominal size in millimetres, both in millimetres (ISO 286-1:2010, Tables 1 to 5).
     *
     * @throws RequirementFault if the standard defines none for that size; the message says for which it does
     */
    public LimitDeviations deviationsAt(BigDecimal nominal) {
        return Iso286.deviations(nominal, this);
    }

    /** Whether the letters are an identifier of ISO 286-1, all capital or all small. */
    static boolean isIdentifier(String letters) {
        String capital = letters.toUpperCase(Locale.ROOT);
        return LETTERS.contains(capital)
                && (letters.equals(capital) || letters.equals(letters.toLowerCase(Locale.ROOT)));
    }

    /** Whether the letters would be an identifier if they were all of one case. */
    static boolean isIdentifierInMixedCase(String letters) {
        return !isIdentifier(letters) && LETTERS.contains(letters.toUpperCase(Locale.ROOT));
    }

    /** Whether it stands for internal features. */
    public boolean isHole() {
        return Character.isUpperCase(letters.charAt(0));
    }

    /** Hole or shaft, as the letters' case says. */
    public Drawing.Form form() {
        return isHole() ? Drawing.Form.HOLE : Drawing.Form.SHAFT;
    }

    /** Letters and grade, for example {@code H7}. */
    public String text() {
        return letters + grade.number();
    }

    @Override
    public String toString() {
        return text();
    }
}
