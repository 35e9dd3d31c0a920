package io.github.firstoff.report.model;

/** The characteristic symbols of ISO 1101 and ASME Y14.5, drawn as paths; text extraction gives {@link #character()}. */
public enum GeometricSymbol {
    /** Straightness. */
    STRAIGHTNESS("\u23E4"),
    /** Flatness. */
    FLATNESS("\u23E5"),
    /** Roundness (circularity). */
    ROUNDNESS("\u25CB"),
    /** Cylindricity. */
    CYLINDRICITY("\u232D"),
    /** Profile of a line. */
    PROFILE_OF_LINE("\u2312"),
    /** Profile of a surface. */
    PROFILE_OF_SURFACE("\u2313"),
    /** Parallelism. */
    PARALLELISM("\u2225"),
    /** Perpendicularity. */
    PERPENDICULARITY("\u27C2"),
    /** Angularity. */
    ANGULARITY("\u2220"),
    /** Position. */
    POSITION("\u2316"),
    /** Concentricity and coaxiality. */
    CONCENTRICITY("\u25CE"),
    /** Symmetry. */
    SYMMETRY("\u232F"),
    /** Circular run-out. */
    CIRCULAR_RUN_OUT("\u2197"),
    /** Total run-out. */
    TOTAL_RUN_OUT("\u2330");

    private final String character;

    GeometricSymbol(String character) {
        this.character = character;
    }

    /** The Unicode character that stands for the symbol in extracted text. */
    public String character() {
        return character;
    }
}
