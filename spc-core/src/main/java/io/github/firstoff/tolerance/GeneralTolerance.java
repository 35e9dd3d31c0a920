package io.github.firstoff.tolerance;

import java.util.Optional;

/**
 * The general tolerance of a title block, for example {@code ISO 2768-mK}.
 *
 * @param linear the class of ISO 2768-1 for sizes and angles
 * @param geometric the class of ISO 2768-2, if the title block names one
 */
public record GeneralTolerance(LinearClass linear, Optional<GeometricClass> geometric) {

    /** The classes of ISO 2768-1. */
    public enum LinearClass {
        /** Fine. */
        F,
        /** Medium. */
        M,
        /** Coarse. */
        C,
        /** Very coarse. */
        V
    }

    /** The classes of ISO 2768-2. */
    public enum GeometricClass {
        /** Finest. */
        H,
        /** Middle. */
        K,
        /** Widest. */
        L
    }
}
