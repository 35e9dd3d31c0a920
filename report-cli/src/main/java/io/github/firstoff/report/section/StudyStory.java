package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Lines;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.PanelNature;
import io.github.firstoff.study.chart.RuleSet;
import io.github.firstoff.study.chart.RunRule;
import io.github.firstoff.study.chart.Side;
import io.github.firstoff.study.chart.Signal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A characteristic under study told in sentences: what happened, where, what it means and what it does not mean. */
final class StudyStory {
    /** The last points whose mean says where the process ended: one alone would be chance. */
    private static final int LAST = 3;

    private final CharacteristicResult result;
    private final ProcessStudy study;
    private final ControlChart chart;
    private final ChartWords words;
    private final SignalList signals;

    StudyStory(Finding finding) {
        result = finding.result();
        study = finding.study().orElseThrow();
        chart = study.assessment().chart();
        words = new ChartWords(study);
        signals = new SignalList(study.assessment(), words);
    }

    SignalList signals() {
        return signals;
    }

    String signalsInShort() {
        return signals.inShort();
    }

    /** Whether the readings that set the limits do not differ at all: then the chart can show nothing. */
    private boolean isWithoutSpread() {
        return chart.sigmaWithin().map(estimate -> estimate.sigma() == 0).orElse(false);
    }

    /** Whether the process is shown to be in control, by a chart that could have shown the contrary. */
    boolean isShownInControl() {
        return state() == ControlState.IN_CONTROL && !isWithoutSpread();
    }

    private ControlState state() {
        return study.assessment().control();
    }

    /** The sentence over the chart. */
    String headline() {
        String readings = "; " + Wording.conforming(result) + ".";
        if (isWithoutSpread()) {
            return "The readings show no spread, so the chart shows nothing of control" + readings;
        }
        return switch (state()) {
            case IN_CONTROL -> "Ran in control" + index() + readings;
            case OUT_OF_CONTROL -> Wording.capital(change()) + readings;
            case NOT_ASSESSED -> "Whether it ran in control cannot be told yet" + readings;
        };
    }

    private String index() {
        return CapabilitySection.presentedCpk(study.capability())
                .map(cpk -> ", Cpk " + CapabilitySection.figures(cpk))
                .orElse("");
    }

    /** What changed, from the signals and where the last points lie; no cause, and no trend that the points do not show. */
    private String change() {
        List<Signal> location = on(PanelKind.LOCATION);
        if (location.isEmpty()) {
            List<Signal> dispersion = on(PanelKind.DISPERSION);
            Signal first = dispersion.get(0);
            String where =
                    words.points(dispersion.stream().map(Signal::at).distinct().toList());
            return "the " + words.statistic(PanelKind.DISPERSION) + " leaves its limits at " + where
                    + (dispersion.size() == 1 && !words.pieces(first.at()).isEmpty()
                            ? " (" + words.pieces(first.at()) + ")"
                            : "");
        }
        Side side = location.get(0).side();
        int last = location.stream().mapToInt(Signal::at).max().orElseThrow();
        if (location.stream().anyMatch(each -> each.side() != side)) {
            return bothSides();
        }
        if (location.size() == 1 && location.get(0).points().size() == 1) {
            return words.point(last) + " stands out, " + offset(last) + " " + side.word() + " the centre line";
        }
        String level = subject() + " runs " + side.word() + " the centre line ";
        if (last > chart.location().number(chart.location().count() - 1) - LAST) {
            return level + "from " + words.point(startOfLast(last)) + " on and ends " + ending() + " " + side.word()
                    + " it";
        }
        int first =
                location.stream().mapToInt(each -> each.points().get(0)).min().orElseThrow();
        boolean once = startOfLast(last) == first;
        return level
                + (once ? "from " : "at times between ")
                + words.point(first)
                + (once ? " to " : " and ")
                + words.point(last);
    }

    /** Where the stretch of overlapping episodes begins that ends at the last signal. */
    private int startOfLast(int last) {
        List<Signal> location = on(PanelKind.LOCATION);
        int start = last;
        for (int i = location.size() - 1; i >= 0; i--) {
            Signal signal = location.get(i);
            if (signal.at() >= start - 1) {
                start = Math.min(start, signal.points().get(0));
            }
        }
        return start;
    }

    private String bothSides() {
        Optional<SignalList.Episode> longest = signals.on(PanelKind.LOCATION).stream()
                .max(Comparator.comparing(SignalList.Episode::length))
                .filter(each -> each.length() >= LAST);
        if (longest.isEmpty()) {
            return "single points and short runs signal on both sides of the centre line";
        }
        SignalList.Episode run = longest.get();
        String told = "signals lie on both sides of the centre line, the longest run "
                + run.side().word() + " it, " + words.span(run.first(), run.last());
        return endsOn(run.side())
                ? told + ", ending " + ending() + " " + run.side().word()
                : told;
    }

    /** Whether the last points lie clearly, by more than a sigma of the statistic, on that side. */
    private boolean endsOn(Side side) {
        double sigma = chart.location()
                .lines(chart.location().count() - 1)
                .map(lines -> (lines.upper() - lines.centre()) / 3)
                .orElse(0.0);
        double end = endingOffset();
        return Math.abs(end) > sigma && (end > 0) == (side == Side.ABOVE);
    }

    private String subject() {
        return words.isIndividuals() ? "the level" : "the mean";
    }

    private List<Signal> on(PanelKind kind) {
        return study.assessment().signals().stream()
                .filter(each -> each.panel() == kind)
                .toList();
    }

    private String offset(int number) {
        Panel panel = chart.location();
        int index = number - panel.number(0);
        double centre = panel.lines(index).map(Lines::centre).orElse(panel.value(index));
        return Figures.amount(panel.value(index) - centre, unit());
    }

    private String ending() {
        return Figures.amount(endingOffset(), unit());
    }

    /** How far the mean of the last points lies above the centre line. */
    private double endingOffset() {
        Panel panel = chart.location();
        int from = Math.max(0, panel.count() - LAST);
        double sum = 0;
        for (int i = from; i < panel.count(); i++) {
            double value = panel.value(i);
            sum += value - panel.lines(i).map(Lines::centre).orElse(value);
        }
        return sum / (panel.count() - from);
    }

    private Unit unit() {
        return study.subgroups().sample().unit();
    }

    /** Two or three plain sentences under the headline. */
    String paragraph() {
        return switch (state()) {
            case IN_CONTROL -> inControl();
            case OUT_OF_CONTROL -> outOfControl();
            case NOT_ASSESSED ->
                "The chart shows the " + words.statistics(PanelKind.LOCATION) + " as they are, "
                        + Phrases.counted(chart.location().count(), "point", "points")
                        + ": too few for the tests. It neither shows nor excludes a change.";
        };
    }

    private String inControl() {
        if (isWithoutSpread()) {
            return "Within their subgroups the readings that set the limits are all alike. The gauge may be too coarse to show"
                    + " what the process does; a finer one would tell. Each piece is judged by its reading all the same.";
        }
        return "No test signals on either chart: nothing shows that level or spread changed over these "
                + chart.location().count() + " " + words.nouns()
                + ". The spread seen may be taken as the process's own, and as what to expect while nothing changes."
                + (isBelowOne()
                        ? " It is wider than the room from the mean to the nearer limit (Cpk below 1): pieces out of tolerance"
                                + " must be expected while nothing changes."
                        : "")
                + " It does not say that every piece conforms: that is decided by the readings, piece by piece.";
    }

    private boolean isBelowOne() {
        return CapabilitySection.presentedCpk(study.capability())
                .filter(cpk -> cpk.value().orElseThrow() < 1)
                .isPresent();
    }

    private String outOfControl() {
        int first =
                study.assessment().signals().stream().mapToInt(Signal::at).min().orElseThrow();
        String pieces = words.pieces(first);
        return "The charts give " + signals.inShort() + "."
                + (pieces.isEmpty() ? "" : " The earliest, " + words.point(first) + ", holds " + pieces + ".")
                + " A signal says that something probably changed at about that time or before; the chart cannot say what. It"
                + " does not say that a piece is nonconforming: each was judged by its own reading.";
    }

    /** What may be done about a chart that signals. */
    String proposal() {
        int first = study.assessment().signals().stream()
                .flatMap(each -> each.points().stream())
                .mapToInt(Integer::intValue)
                .min()
                .orElseThrow();
        return "Look for what changed at about " + words.point(first)
                + ": tool, offset, material or gauge. Settle it before more pieces are made. These pieces were judged by their"
                + " readings.";
    }

    /** In one sentence for readers who cannot see the chart. */
    String alternative() {
        return study.chartTitle() + " chart of " + chart.location().count() + " " + words.nouns() + ". " + headline();
    }

    /** What a reader must know of chart and limits, for the notes under it. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        conditions().ifPresent(notes::add);
        notes.addAll(study.assessment().notes());
        if (!signals.isEmpty() && signals.isCrowded()) {
            notes.add(
                    "On a chart this long a pattern is ringed where it is first complete, and + rings those that are only"
                            + " counted.");
        }
        if (state() == ControlState.OUT_OF_CONTROL && chart.location().nature() == PanelNature.NORMAL) {
            rules().map(RuleSet::inControlRunLength)
                    .filter(length ->
                            length.runLength().average() < chart.location().count())
                    .ifPresent(length ->
                            notes.add(length.sentence() + " A few signals on a long chart need not have a cause."));
        }
        return notes;
    }

    /** The set of tests that gave the counts, where it is one that the catalogue names. */
    private Optional<RuleSet> rules() {
        List<String> tests = List.copyOf(study.assessment().signalCounts().keySet());
        return Optional.of(RuleSet.westernElectric())
                .filter(set -> set.rules().stream().map(RunRule::id).toList().equals(tests));
    }

    private Optional<String> conditions() {
        if (!chart.location().hasLines()) {
            return Optional.empty();
        }
        int points = chart.location().count();
        String from = chart.limitsFrom() == 0
                ? "set before"
                : chart.limitsFrom() < points
                        ? "set by the first " + chart.limitsFrom() + " of " + points + " " + words.nouns()
                        : "set by all " + points + " " + words.nouns();
        String sigma = chart.sigmaWithin()
                .map(estimate -> "; sigma " + Figures.amount(estimate.sigma(), unit()) + " from the "
                        + CapabilitySection.estimator(estimate.estimator()))
                .orElse("");
        boolean zones = chart.location().hasZones();
        return Optional.of("UCL and LCL: control limits" + (zones ? " at three sigma, " : ", ") + from + sigma
                + (zones ? ". Dotted: one and two sigma" : "")
                + ". Control limits say what the process does, not what the drawing allows.");
    }
}
