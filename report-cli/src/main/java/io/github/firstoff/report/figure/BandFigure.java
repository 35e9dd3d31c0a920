package io.github.firstoff.report.figure;

import java.util.List;

/**
 * Quantities over one common axis, each in a panel of its own beside the others: a band from least to greatest with the middle in it.
 *
 * @param axis what runs along, with its unit
 * @param panels from left to right, one to four
 */
public record BandFigure(String axis, List<Panel> panels) implements Figure {
    /** Copies the list; refuses none or more than four. */
    public BandFigure {
        panels = List.copyOf(panels);
        if (panels.isEmpty() || panels.size() > 4) {
            throw new IllegalArgumentException("one to four panels stand beside one another, not " + panels.size());
        }
    }

    /**
     * One quantity.
     *
     * @param name what it is
     * @param unit its unit
     * @param points along the axis, ascending, at least two
     * @param lines levels across, such as a limit
     */
    public record Panel(String name, String unit, List<Point> points, List<LevelLine> lines) {
        /** Copies the lists. */
        public Panel {
            points = List.copyOf(points);
            lines = List.copyOf(lines);
            if (points.size() < 2) {
                throw new IllegalArgumentException("a band needs at least two points");
            }
        }
    }

    /**
     * The band at one place.
     *
     * @param at the place
     * @param low least
     * @param middle middle
     * @param high greatest
     */
    public record Point(double at, double low, double middle, double high) {}
}
