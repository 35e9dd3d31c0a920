package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
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

    /** Whether a remark names a point by its number and so needs no stretch to be understood. */
    static boolean isOfOnePoint(Remark remark) {
        return remark.key().equals("chart.break") || remark.key().equals("chart.excluded");
    }

    /** What sets limits. */
    enum Setting {
        /** Subgroups. */
        SUBGROUP,
        /** Single readings. */
        READING,
        /** Counts. */
        COUNT;

        private Remark provisional(int number) {
            return switch (this) {
                case SUBGROUP ->
                    Remark.of(
                            "chart.provisional.subgroups",
                            "The limits rest on {0} {0|subgroup|subgroups}; with fewer than {1} they are provisional.",
                            number,
                            SETTLED);
                case READING ->
                    Remark.of(
                            "chart.provisional.readings",
                            "The limits rest on {0} {0|reading|readings}; with fewer than {1} they are provisional.",
                            number,
                            SETTLED);
                case COUNT ->
                    Remark.of(
                            "chart.provisional.counts",
                            "The limits rest on {0} {0|count|counts}; with fewer than {1} they are provisional.",
                            number,
                            SETTLED);
            };
        }
    }

    static List<Remark> of(Subgroups given, Subgroups charted) {
        List<Remark> notes = new ArrayList<>();
        given.leftOverNote(Subgroups.LeftOverOf.READINGS).ifPresent(notes::add);
        for (int number : charted.incomplete()) {
            notes.add(Remark.of(
                    "chart.incomplete-kept",
                    "Subgroup {0} is incomplete ({1} {1|reading|readings}) and stays on the chart by choice, with limits of its own"
                            + " size.",
                    number,
                    charted.size(number - charted.number(0))));
        }
        int dropped = given.count() - charted.count();
        if (dropped > 0) {
            notes.add(withoutSpread(dropped));
        }
        addMarks(notes, charted);
        return notes;
    }

    /** Subgroups of one reading that a chart of subgroups cannot plot. */
    static Remark withoutSpread(int dropped) {
        return Remark.of(
                "chart.single-readings",
                "{0|One subgroup has|{0} subgroups have} a single reading and no spread within: left off the chart.",
                dropped);
    }

    static void addMarks(List<Remark> notes, Subgroups charted) {
        for (Break b : charted.breaks()) {
            notes.add(Remark.of(
                    "chart.break",
                    "Patterns and moving ranges begin anew at point {0} ({1}): {2}.",
                    b.number(),
                    b.name(),
                    b.cause()));
        }
        for (Exclusion exclusion : charted.exclusions()) {
            notes.add(Remark.of(
                    "chart.excluded",
                    "Point {0} is excluded, sets no limits and is not tested: {1}.",
                    exclusion.number(),
                    exclusion.reason()));
        }
    }

    static void addProvisional(List<Remark> notes, int subgroups, Setting what) {
        if (subgroups > 0 && subgroups < SETTLED) {
            notes.add(what.provisional(subgroups));
        }
    }

    /** Why the subgroups that were to set limits gave none. */
    static void addNoLimits(List<Remark> notes, Basis basis, Optional<SpreadEstimator> estimator) {
        if (basis.count() > 0 && estimator.isPresent()) {
            Remark none = Remark.of(
                    "chart.no-spread",
                    "The {0} {0|subgroup|subgroups} that were to set the limits give no spread by {1}, so there are no limits.",
                    basis.count(),
                    estimator(estimator.get().name()));
            notes.add(
                    basis.commonSize().isEmpty() && basis.hasSizes(2)
                            ? none.then(Remark.of(
                                    "chart.needs-one-size", "It needs subgroups of one size, and these differ."))
                            : none);
            return;
        }
        notes.add(Remark.of(
                "chart.no-complete-subgroup",
                "There is no complete subgroup that could set limits, so there are none."));
    }

    static void addZeroSpread(List<Remark> notes, double sigma) {
        if (sigma == 0) {
            notes.add(Remark.of(
                    "chart.zero-spread",
                    "The readings that set the limits do not spread within subgroups: the limits lie on the centre line."
                            + " The gauge may be too coarse."));
        }
    }

    static void addEstimator(List<Remark> notes, String estimator) {
        notes.add(Remark.of("chart.spread-estimated-by", "Spread estimated by {0}.", estimator(estimator)));
    }

    /** The name of an estimator of the spread, as results have it. */
    static Remark estimator(String name) {
        return Remark.word("spread-by", name);
    }
}
