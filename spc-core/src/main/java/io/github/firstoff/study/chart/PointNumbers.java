package io.github.firstoff.study.chart;

import java.util.ArrayList;
import java.util.List;

/** The numbers of the last points looked at, in a ring; because of exclusions they need not be successive. */
final class PointNumbers {
    private final int[] ring;
    private int newest = -1;

    PointNumbers(int span) {
        ring = new int[span];
    }

    void add(int number) {
        newest = newest + 1 == ring.length ? 0 : newest + 1;
        ring[newest] = number;
    }

    /** The numbers of those points whose bit is set; the lowest bit is the newest point. */
    List<Integer> of(long bits) {
        List<Integer> numbers = new ArrayList<>(ring.length);
        for (int back = ring.length - 1; back >= 0; back--) {
            if ((bits >> back & 1) != 0) {
                numbers.add(ring[Math.floorMod(newest - back, ring.length)]);
            }
        }
        return numbers;
    }

    /** The numbers of the last {@code count} points. */
    List<Integer> last(int count) {
        return of((1L << count) - 1);
    }
}
