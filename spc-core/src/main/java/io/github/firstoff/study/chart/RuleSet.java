package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.ControlState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Tests that are applied together.
 *
 * @param rules the tests, in the order in which results count them; no name twice
 */
public record RuleSet(List<RunRule> rules) {
    /** Fewer points without a signal say nothing, however short the tests are (common practice: the length of the run of eight). */
    private static final int LEAST_POINTS = 8;

    /** Copies the rules and refuses two of one name. */
    public RuleSet {
        rules = List.copyOf(rules);
        if (rules.stream().map(RunRule::id).distinct().count() < rules.size()) {
            throw new IllegalArgumentException("the same test twice");
        }
    }

    /** The four zone tests of {@link WesternElectricRule}. */
    public static RuleSet westernElectric() {
        return new RuleSet(WesternElectricRule.all());
    }

    /** The same tests but one. */
    public RuleSet without(RunRule rule) {
        List<RunRule> rest = new ArrayList<>(rules);
        rest.remove(rule);
        return new RuleSet(rest);
    }

    /** These tests and another. */
    public RuleSet and(RunRule rule) {
        List<RunRule> all = new ArrayList<>(rules);
        all.add(rule);
        return new RuleSet(all);
    }

    /** Starts watching a panel that arrives in chunks. */
    public PanelWatch watch(PanelKind panel, PanelNature points) {
        return new PanelWatch(this, panel, points);
    }

    /** How long a good process runs until one of these tests signals on a chart of normal points. */
    public InControlRunLength inControlRunLength() {
        return InControlRunLength.of(this);
    }

    /**
     * Applies the tests to all panels, each test to those it may judge.
     *
     * <p>The process is out of control if any test signals on any panel, in control if none does; it is not assessed while
     * the chart has no limits or limits without width, or has no signal and no stretch between two breaks of at least eight points and as long as the longest
     * test spans.
     */
    public Assessment assess(ControlChart chart) {
        List<Signal> signals = new ArrayList<>();
        Map<String, Integer> counts = new LinkedHashMap<>();
        Set<String> idle = new LinkedHashSet<>();
        int longest = 1;
        for (RunRule rule : rules) {
            if (chart.panels().stream().anyMatch(panel -> rule.judges(panel.nature()))) {
                counts.put(rule.id(), 0);
                longest = Math.max(longest, rule.span());
            } else {
                idle.add(rule.id());
            }
        }
        for (Panel panel : chart.panels()) {
            PanelWatch watch = watch(panel.kind(), panel.nature());
            watch.next(panel);
            signals.addAll(watch.signals());
        }
        for (Signal signal : signals) {
            counts.merge(signal.test(), 1, Integer::sum);
        }
        List<Remark> notes = new ArrayList<>(chart.remarks());
        if (!idle.isEmpty()) {
            notes.add(Remark.of(
                    "chart.not-applied",
                    "Not applied, because the chart plots {0}: {1}.",
                    chart.location().nature().remark(),
                    String.join(", ", idle)));
        }
        int stretch = longestStretch(chart.location());
        boolean longestRules = longest >= LEAST_POINTS;
        int least = Math.max(longest, LEAST_POINTS);
        ControlState state;
        if (!signals.isEmpty()) {
            state = ControlState.OUT_OF_CONTROL;
        } else if (!chart.location().hasLines()) {
            state = ControlState.NOT_ASSESSED;
            notes.add(Remark.of("chart.control.no-limits", "Control is not assessed: the chart has no limits."));
        } else if (hasNoWidth(chart.location())) {
            state = ControlState.NOT_ASSESSED;
            notes.add(Remark.of(
                    "chart.control.no-width",
                    "Control is not assessed: limits without width cannot tell a steady process from a gauge that shows no"
                            + " difference."));
        } else if (stretch < least) {
            state = ControlState.NOT_ASSESSED;
            notes.add(Remark.of(
                    "chart.control.too-short",
                    "Control is not assessed: {0|the longest test|a statement without a signal} needs {1} points, the chart has"
                            + " {2}{3|| between two breaks}.",
                    longestRules,
                    least,
                    stretch,
                    chart.data().breaks().isEmpty()));
        } else {
            state = ControlState.IN_CONTROL;
        }
        return new Assessment(chart, state, signals, counts, notes);
    }

    /** Whether every limit lies on the centre line, because what was measured did not vary; counts may well be all zero. */
    private static boolean hasNoWidth(Panel panel) {
        if (panel.nature() == PanelNature.COUNTED) {
            return false;
        }
        for (int i = 0; i < panel.count(); i++) {
            Optional<Lines> lines = panel.lines(i);
            if (lines.isPresent() && lines.get().upper() > lines.get().lower()) {
                return false;
            }
        }
        return true;
    }

    private static int longestStretch(Panel panel) {
        int longest = 0;
        int stretch = 0;
        for (int i = 0; i < panel.count(); i++) {
            if (i > 0 && panel.segment(i) != panel.segment(i - 1)) {
                stretch = 0;
            }
            stretch += panel.hasLines(i) && !panel.isExcluded(i) ? 1 : 0;
            longest = Math.max(longest, stretch);
        }
        return longest;
    }
}
