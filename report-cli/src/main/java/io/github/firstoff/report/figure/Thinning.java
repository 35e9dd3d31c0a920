package io.github.firstoff.report.figure;

import java.util.List;

/**
 * Which points of a run are drawn when there are more than a picture can show apart: of so many neighbours the highest and the
 * lowest, and every point that says something by itself. The run keeps its outline and loses no extreme.
 */
public final class Thinning {
    /** Up to so many points are all drawn. */
    static final int MOST = 300;

    private Thinning() {}

    /**
     * Of how many neighbours the highest and the lowest are drawn.
     *
     * @param count how many points there are
     * @return 1 where all are drawn
     */
    public static int neighbours(int count) {
        return count <= MOST ? 1 : (2 * count + MOST - 1) / MOST;
    }

    /**
     * Whether each point is drawn.
     *
     * @param points the points, in order
     * @return as many decisions; gaps are always kept
     */
    public static boolean[] drawn(List<ControlFigure.Point> points) {
        int count = points.size();
        int neighbours = neighbours(count);
        boolean[] drawn = new boolean[count];
        for (int from = 0; from < count; from += neighbours) {
            int least = -1;
            int greatest = -1;
            for (int i = from; i < Math.min(count, from + neighbours); i++) {
                double value = points.get(i).value();
                if (Double.isNaN(value)) {
                    drawn[i] = true;
                    continue;
                }
                drawn[i] = points.get(i).speaks();
                least = least < 0 || value < points.get(least).value() ? i : least;
                greatest = greatest < 0 || value > points.get(greatest).value() ? i : greatest;
            }
            if (least >= 0) {
                drawn[least] = true;
                drawn[greatest] = true;
            }
        }
        return drawn;
    }
}
