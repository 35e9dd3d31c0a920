package io.github.firstoff.study.chart;

import java.util.List;

/**
 * A test that found its pattern.
 *
 * @param test the test, for example {@code western-electric-3}
 * @param panel the panel on which
 * @param side on which side of the centre line, or in which direction, the pattern lies
 * @param at the number of the point that completes the pattern, from 1
 * @param points the numbers of exactly the points that lie in the zone and make the pattern, ascending, {@code at} the last
 */
public record Signal(String test, PanelKind panel, Side side, int at, List<Integer> points) {
    /** Copies the points. */
    public Signal {
        points = List.copyOf(points);
    }
}
