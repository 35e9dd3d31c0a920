package io.github.firstoff.tolerance;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * General geometric tolerances by ISO 2768-2:1989 (withdrawn 2021, still named on drawings). All lengths in millimetres, exact.
 *
 * <p>Cylindricity, profiles, angularity, coaxiality, position and total run-out have no general tolerance (5.1.3 and 5.2.5 name
 * cylindricity and coaxiality).
 *
 * @param geometricClass H, K or L
 */
public record GeneralGeometry(GeneralTolerance.GeometricClass geometricClass) {
    private static final SizeTable STRAIGHTNESS_FLATNESS = SizeTable.read("iso-2768-2/1989/straightness-flatness.csv");
    private static final SizeTable PERPENDICULARITY = SizeTable.read("iso-2768-2/1989/perpendicularity.csv");
    private static final SizeTable SYMMETRY = SizeTable.read("iso-2768-2/1989/symmetry.csv");
    private static final SizeTable RUN_OUT = SizeTable.read("iso-2768-2/1989/run-out.csv");

    /**
     * Straightness and flatness (Table 1).
     *
     * @param length of the line, or of the longer side or the diameter of the surface
     * @return empty if the table ends before that length (3000 mm)
     */
    public Optional<BigDecimal> straightnessOrFlatness(BigDecimal length) {
        return STRAIGHTNESS_FLATNESS.value(length, geometricClass.name());
    }

    /**
     * Perpendicularity (Table 2); the longer of the two legs is the datum.
     *
     * @param shorterLeg the length of the shorter leg of the right angle
     * @return empty if the table ends before that length (3000 mm)
     */
    public Optional<BigDecimal> perpendicularity(BigDecimal shorterLeg) {
        return PERPENDICULARITY.value(shorterLeg, geometricClass.name());
    }

    /**
     * Symmetry (Table 3); the longer feature is the datum.
     *
     * @param shorterFeature the length of the shorter feature
     * @return empty if the table ends before that length (3000 mm)
     */
    public Optional<BigDecimal> symmetry(BigDecimal shorterFeature) {
        return SYMMETRY.value(shorterFeature, geometricClass.name());
    }

    /** Circular run-out (Table 4), the same for every size. */
    public BigDecimal runOut() {
        return RUN_OUT.value(BigDecimal.ONE, geometricClass.name()).orElseThrow();
    }

    /** Roundness (5.1.2): the size tolerance of the diameter, but no more than the run-out. */
    public BigDecimal roundness(BigDecimal diameterTolerance) {
        return diameterTolerance.min(runOut());
    }

    /**
     * Parallelism (5.2.2): the size tolerance or the flatness or straightness, whichever is greater.
     *
     * @return empty if Table 1 ends before that length (3000 mm)
     */
    public Optional<BigDecimal> parallelism(BigDecimal sizeTolerance, BigDecimal length) {
        return straightnessOrFlatness(length).map(sizeTolerance::max);
    }
}
