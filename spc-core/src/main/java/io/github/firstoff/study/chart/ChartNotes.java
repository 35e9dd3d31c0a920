package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Subgroups;
import java.util.ArrayList;
import java.util.List;

/** The sentences that charts have in common. */
final class ChartNotes {
    /** Fewer than this and limits are provisional (common practice: 20 to 25 subgroups). */
    static final int SETTLED = 20;

    private ChartNotes() {}

    static List<String> of(Subgroups given, Subgroups charted) {
        List<String> notes = new ArrayList<>();
        if (given.leftOver() > 0) {
            notes.add("The last subgroup is incomplete (" + readings(given.leftOver()) + "): it counts in the overall"
                    + " figures and is left off the chart.");
        }
        int dropped = given.count() - charted.count();
        if (dropped > 0) {
            notes.add((dropped == 1 ? "One subgroup has" : dropped + " subgroups have")
                    + " a single reading and no spread within: left off the chart.");
        }
        return notes;
    }

    static void addProvisional(List<String> notes, int subgroups, String what) {
        if (subgroups > 0 && subgroups < SETTLED) {
            notes.add("The limits rest on " + subgroups + " " + what + "; with fewer than " + SETTLED
                    + " they are provisional.");
        }
    }

    static void addZeroSpread(List<String> notes, double sigma) {
        if (sigma == 0) {
            notes.add(
                    "The readings that set the limits do not spread within subgroups: the limits lie on the centre line."
                            + " The gauge may be too coarse.");
        }
    }

    private static String readings(int count) {
        return count == 1 ? "1 reading" : count + " readings";
    }
}
