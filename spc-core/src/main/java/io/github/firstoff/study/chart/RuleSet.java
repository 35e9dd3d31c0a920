package io.github.firstoff.study.chart;

import io.github.firstoff.sample.ControlState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tests that are applied together.
 *
 * @param rules the tests, in the order in which results count them
 */
public record RuleSet(List<RunRule> rules) {
    /** Copies the rules. */
    public RuleSet {
        rules = List.copyOf(rules);
    }

    /** The four zone tests of {@link WesternElectricRule}. */
    public static RuleSet westernElectric() {
        return new RuleSet(List.of(WesternElectricRule.values()));
    }

    /** The same tests but one. */
    public RuleSet without(RunRule rule) {
        List<RunRule> rest = new ArrayList<>(rules);
        rest.remove(rule);
        return new RuleSet(rest);
    }

    /** Starts watching a panel that arrives in chunks. */
    public PanelWatch watch(PanelKind panel) {
        return new PanelWatch(this, panel);
    }

    /**
     * Applies the tests to all panels.
     *
     * <p>The process is out of control if any test signals on any panel, in control if none does; it is not assessed while
     * the chart has no limits, or has fewer points than the longest test spans and no signal.
     */
    public Assessment assess(ControlChart chart) {
        List<Signal> signals = new ArrayList<>();
        Map<String, Integer> counts = new LinkedHashMap<>();
        int longest = 1;
        for (RunRule rule : rules) {
            counts.put(rule.id(), 0);
            longest = Math.max(longest, rule.span());
        }
        for (Panel panel : chart.panels()) {
            PanelWatch watch = watch(panel.kind());
            watch.next(panel);
            signals.addAll(watch.signals());
        }
        for (Signal signal : signals) {
            counts.merge(signal.test(), 1, Integer::sum);
        }
        List<String> notes = new ArrayList<>(chart.notes());
        ControlState state;
        if (!signals.isEmpty()) {
            state = ControlState.OUT_OF_CONTROL;
        } else if (!chart.location().hasLines()) {
            state = ControlState.NOT_ASSESSED;
            notes.add("Control is not assessed: the chart has no limits.");
        } else if (chart.location().count() < longest) {
            state = ControlState.NOT_ASSESSED;
            notes.add("Control is not assessed: the longest test needs " + longest + " points, the chart has "
                    + chart.location().count() + ".");
        } else {
            state = ControlState.IN_CONTROL;
        }
        return new Assessment(chart, state, signals, counts, notes);
    }
}
