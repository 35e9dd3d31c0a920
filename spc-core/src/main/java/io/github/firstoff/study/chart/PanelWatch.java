package io.github.firstoff.study.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * A panel under watch by a set of tests; chunks of its points go in in order, signals come out in order of the points that
 * complete them, and of the tests at one point. Has state and belongs to one thread.
 *
 * <p>A break makes all tests begin anew; an excluded point is passed over as if it had not been taken.
 */
public final class PanelWatch {
    private final List<RunRule.Watch> watches = new ArrayList<>();
    private final List<Signal> signals = new ArrayList<>();
    private final Consumer<Signal> found = signals::add;
    private int segment;

    PanelWatch(RuleSet rules, PanelKind panel, PanelNature points) {
        for (RunRule rule : rules.rules()) {
            if (rule.judges(points)) {
                watches.add(rule.watch(panel));
            }
        }
    }

    /** Looks at the points that follow those looked at before; points without lines have nothing to test. */
    public void next(Panel chunk) {
        for (int i = 0; i < chunk.count(); i++) {
            if (chunk.segment(i) != segment) {
                segment = chunk.segment(i);
                watches.forEach(RunRule.Watch::restart);
            }
            if (!chunk.hasLines(i) || chunk.isExcluded(i)) {
                continue;
            }
            for (int w = 0; w < watches.size(); w++) {
                watches.get(w).next(chunk, i, found);
            }
        }
    }

    /** The signals so far. */
    public List<Signal> signals() {
        return List.copyOf(signals);
    }
}
