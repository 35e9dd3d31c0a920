package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.ControlState;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A chart and what the tests say of it.
 *
 * @param chart the chart
 * @param control in control, out of control, or not assessed
 * @param signals every signal, location panel first, each panel in order of points
 * @param signalCounts for every test of the set, how many signals; in the order of the set
 * @param remarks the chart's notes, and why control was not assessed
 */
public record Assessment(
        ControlChart chart,
        ControlState control,
        List<Signal> signals,
        Map<String, Integer> signalCounts,
        List<Remark> remarks) {
    /** Copies the collections. */
    public Assessment {
        signals = List.copyOf(signals);
        signalCounts = Collections.unmodifiableMap(new LinkedHashMap<>(signalCounts));
        remarks = List.copyOf(remarks);
    }

    /** The same in English. */
    public List<String> notes() {
        return Remark.english(remarks);
    }
}
