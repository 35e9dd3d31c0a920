package io.github.firstoff.report.section;

import io.github.firstoff.sample.Break;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.words.Labels;
import java.util.List;

/** Short names for the breaks of a chart whose own words have no room side by side over it: a, b, … z, aa, ab, … */
final class BreakLetters {
    /** So many breaks, or so many letters of their words together, find room over a chart. */
    private static final int MOST_BREAKS = 6;

    private static final int MOST_LETTERS = 70;
    private static final int ALPHABET = 26;

    private final List<Break> breaks;
    private final boolean needed;

    BreakLetters(ControlChart chart) {
        breaks = chart.data().breaks();
        int letters = breaks.stream()
                .mapToInt(each -> Labels.text(each.name()).length())
                .sum();
        needed = breaks.size() > MOST_BREAKS || (breaks.size() > 2 && letters > MOST_LETTERS);
    }

    /** Whether letters stand over the chart instead of words. */
    boolean areNeeded() {
        return needed;
    }

    /** What stands over the chart at a break. */
    String over(Break each) {
        return needed ? letter(breaks.indexOf(each)) : Labels.text(each.name());
    }

    /** The letter of the break before this point and a space behind it; empty where there is none or none is needed. */
    String before(int number) {
        for (int i = 0; needed && i < breaks.size(); i++) {
            if (breaks.get(i).number() == number) {
                return letter(i) + "\u00a0";
            }
        }
        return "";
    }

    private static String letter(int index) {
        String last = Character.toString((char) ('a' + index % ALPHABET));
        return index < ALPHABET ? last : letter(index / ALPHABET - 1) + last;
    }
}
