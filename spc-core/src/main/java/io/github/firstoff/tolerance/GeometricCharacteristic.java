package io.github.firstoff.tolerance;

/** The geometric characteristics of ISO 1101:2017, Table 2, with the symbol that stands in the tolerance indicator. */
public enum GeometricCharacteristic {
    /** Straightness. */
    STRAIGHTNESS("straightness", "⏤"),
    /** Flatness. */
    FLATNESS("flatness", "⏥"),
    /** Roundness (circularity). */
    ROUNDNESS("roundness", "○"),
    /** Cylindricity. */
    CYLINDRICITY("cylindricity", "⌭"),
    /** Profile of a line. */
    LINE_PROFILE("line profile", "⌒"),
    /** Profile of a surface. */
    SURFACE_PROFILE("surface profile", "⌓"),
    /** Parallelism. */
    PARALLELISM("parallelism", "∥"),
    /** Perpendicularity. */
    PERPENDICULARITY("perpendicularity", "⟂"),
    /** Angularity. */
    ANGULARITY("angularity", "∠"),
    /** Position. */
    POSITION("position", "⌖"),
    /** Concentricity or coaxiality. */
    COAXIALITY("coaxiality", "◎"),
    /** Symmetry. */
    SYMMETRY("symmetry", "⌯"),
    /** Circular run-out. */
    RUN_OUT("run-out", "↗"),
    /** Total run-out. */
    TOTAL_RUN_OUT("total run-out", "⌰");

    private final String word;
    private final String symbol;

    GeometricCharacteristic(String word, String symbol) {
        this.word = word;
        this.symbol = symbol;
    }

    /** The trade's word, for example {@code run-out}. */
    public String word() {
        return word;
    }

    /** The symbol as one Unicode character. */
    public String symbol() {
        return symbol;
    }
}
