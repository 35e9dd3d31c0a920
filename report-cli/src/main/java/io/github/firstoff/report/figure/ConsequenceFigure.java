package io.github.firstoff.report.figure;

import java.util.List;

/**
 * A distribution over a scale that carries all its consequences beneath it: whoever finds a value on the scale reads straight down what it
 * means.
 *
 * @param name what the scale shows
 * @param unit its unit
 * @param scale its ends
 * @param curve the density, in any unit, ascending; may be empty
 * @param marks single values, such as measured pairs
 * @param lines what is marked on the scale
 * @param ladders the consequences, from the top
 */
public record ConsequenceFigure(
        String name,
        String unit,
        Scale scale,
        List<Place> curve,
        List<Double> marks,
        List<LevelLine> lines,
        List<Ladder> ladders)
        implements Figure {
    /** Copies the lists. */
    public ConsequenceFigure {
        curve = List.copyOf(curve);
        marks = List.copyOf(marks);
        lines = List.copyOf(lines);
        ladders = List.copyOf(ladders);
    }

    /**
     * A place on the curve.
     *
     * @param at the value
     * @param height the density there
     */
    public record Place(double at, double height) {}

    /**
     * A consequence that follows the scale in a straight line: {@code start + slope·max(0, x − zero)}.
     *
     * @param name what it is
     * @param unit its unit
     * @param zero the value on the scale up to which it keeps its start
     * @param start where it starts
     * @param slope by how much it changes per unit of the scale, not 0
     * @param limit the value that it should not pass; NaN if there is none
     */
    public record Ladder(String name, String unit, double zero, double start, double slope, double limit) {
        /** Refuses a consequence that follows nothing. */
        public Ladder {
            if (!Double.isFinite(zero) || !Double.isFinite(start) || !Double.isFinite(slope) || slope == 0) {
                throw new IllegalArgumentException("the scale " + name + " follows nothing");
            }
        }
    }
}
