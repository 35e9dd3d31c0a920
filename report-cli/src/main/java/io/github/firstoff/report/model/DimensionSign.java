package io.github.firstoff.report.model;

/** Signs before a dimension (ISO 129-1, ASME Y14.5) that text faces lack; drawn as paths. */
public enum DimensionSign {
    /** Diameter, where the drawing's sign is wanted rather than the letter. */
    DIAMETER("\u2300"),
    /** Depth of a hole. */
    DEPTH("\u21A7"),
    /** Counterbore or spot face. */
    COUNTERBORE("\u2334"),
    /** Countersink. */
    COUNTERSINK("\u2335"),
    /** Square section. */
    SQUARE("\u25A1");

    private final String character;

    DimensionSign(String character) {
        this.character = character;
    }

    /** The Unicode character that stands for the sign in extracted text. */
    public String character() {
        return character;
    }
}
