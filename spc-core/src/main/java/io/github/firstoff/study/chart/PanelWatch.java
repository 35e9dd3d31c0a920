package io.github.firstoff.study.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * A panel under watch by a set of tests; chunks of its points go in in order, signals come out in order of the points that
 * complete them, and of the tests at one point. Has state and belongs to one thread.
 */
public final class PanelWatch {
    private final List<RunRule.Watch> watches = new ArrayList<>();
    private final List<Signal> signals = new ArrayList<>();

    PanelWatch(RuleSet rules, PanelKind panel) {
        for (RunRule rule : rules.rules()) {
            if (rule.judges(panel)) {
                watches.add(rule.watch(panel));
            }
        }
    }

    /** Looks at the points that follow those looked at before; a chunk without lines has nothing to test. */
    public void next(Panel chunk) {
        if (!chunk.hasLines()) {
            return;
        }
        for (int i = 0; i < chunk.count(); i++) {
            for (RunRule.Watch watch : watches) {
                watch.next(chunk, i, signals::add);
            }
        }
    }

    /** The signals so far. */
    public List<Signal> signals() {
        return List.copyOf(signals);
    }
}
