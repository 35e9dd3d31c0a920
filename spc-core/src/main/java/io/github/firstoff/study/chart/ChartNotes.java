package io.github.firstoff.study.chart;

import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Subgroups;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The sentences that charts have in common. */
final class ChartNotes {
    /** Fewer than this and limits are provisional (common practice: 20 to 25 subgroups). */
    static final int SETTLED = 20;

    private ChartNotes() {}

    static List<String> of(Subgroups given, Subgroups charted) {
        List<String> notes = new ArrayList<>();
        given.leftOverNote("reading", "the overall figures").ifPresent(notes::add);
        for (int number : charted.incomplete()) {
            notes.add("Subgroup " + number + " is incomplete ("
                    + Words.count(charted.size(number - charted.number(0)), "reading")
                    + ") and stays on the chart by choice, with limits of its own size.");
        }
        int dropped = given.count() - charted.count();
        if (dropped > 0) {
            notes.add((dropped == 1 ? "One subgroup has" : dropped + " subgroups have")
                    + " a single reading and no spread within: left off the chart.");
        }
        addMarks(notes, charted);
        return notes;
    }

    static void addMarks(List<String> notes, Subgroups charted) {
        for (Break b : charted.breaks()) {
            notes.add("Patterns and moving ranges begin anew at point " + b.number() + " (" + b.label() + "): "
                    + b.reason() + ".");
        }
        for (Exclusion exclusion : charted.exclusions()) {
            notes.add("Point " + exclusion.number() + " is excluded, sets no limits and is not tested: "
                    + exclusion.reason() + ".");
        }
    }

    static void addProvisional(List<String> notes, int subgroups, String what) {
        if (subgroups > 0 && subgroups < SETTLED) {
            notes.add("The limits rest on " + Words.count(subgroups, what) + "; with fewer than " + SETTLED
                    + " they are provisional.");
        }
    }

    /** Why the subgroups that were to set limits gave none. */
    static void addNoLimits(List<String> notes, Basis basis, Optional<SpreadEstimator> estimator) {
        if (basis.count() > 0 && estimator.isPresent()) {
            notes.add("The " + basis.count() + (basis.count() == 1 ? " subgroup" : " subgroups")
                    + " that were to set the limits give no spread by "
                    + estimator.get().name() + ", so there are no limits."
                    + (basis.commonSize().isEmpty() && basis.hasSizes(2)
                            ? " It needs subgroups of one size, and these differ."
                            : ""));
            return;
        }
        notes.add("There is no complete subgroup that could set limits, so there are none.");
    }

    static void addZeroSpread(List<String> notes, double sigma) {
        if (sigma == 0) {
            notes.add(
                    "The readings that set the limits do not spread within subgroups: the limits lie on the centre line."
                            + " The gauge may be too coarse.");
        }
    }

    static void addEstimator(List<String> notes, String estimator) {
        notes.add("Spread estimated by " + estimator + ".");
    }
}
