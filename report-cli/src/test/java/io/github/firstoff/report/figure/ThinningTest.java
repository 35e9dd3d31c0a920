package io.github.firstoff.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.report.figure.ControlFigure.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ThinningTest {
    private static List<Point> run(int count, long seed) {
        Random random = new Random(seed);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point point = Point.of(random.nextGaussian(), -3, 0, 3);
            points.add(i % 97 == 5 ? point.marked("1") : i % 131 == 7 ? point.outOfSpecification() : point);
        }
        return points;
    }

    @Test
    void upToThreeHundredPointsAreAllDrawn() {
        assertThat(Thinning.neighbours(300)).isEqualTo(1);
        assertThat(Thinning.drawn(run(300, 1))).doesNotContain(false);
    }

    @Test
    void aLongRunKeepsTheExtremesOfEveryStretchAndEveryPointThatSpeaks() {
        for (int count : new int[] {301, 999, 1000, 5000}) {
            List<Point> points = run(count, count);
            boolean[] drawn = Thinning.drawn(points);
            int neighbours = Thinning.neighbours(count);
            int kept = 0;
            for (int i = 0; i < count; i++) {
                kept += drawn[i] ? 1 : 0;
                if (points.get(i).speaks()) {
                    assertThat(drawn[i]).isTrue();
                }
            }
            for (int from = 0; from < count; from += neighbours) {
                List<Point> stretch = points.subList(from, Math.min(count, from + neighbours));
                double least = stretch.stream().mapToDouble(Point::value).min().orElseThrow();
                double greatest =
                        stretch.stream().mapToDouble(Point::value).max().orElseThrow();
                boolean low = false;
                boolean high = false;
                for (int i = from; i < from + stretch.size(); i++) {
                    low |= drawn[i] && points.get(i).value() == least;
                    high |= drawn[i] && points.get(i).value() == greatest;
                }
                assertThat(low && high).isTrue();
            }
            // about 300, and those that speak besides
            assertThat(kept).isLessThanOrEqualTo(300 + 2 + count / 97 + count / 131 + 2);
        }
    }

    @Test
    void gapsStayGaps() {
        List<Point> points = new ArrayList<>(run(1000, 3));
        points.set(500, Point.NONE);
        assertThat(Thinning.drawn(points)[500]).isTrue();
    }
}
