package io.github.firstoff.sheet;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.RecursiveScores;
import io.github.firstoff.study.chart.FrozenLimits;
import io.github.firstoff.study.chart.Individuals;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.RuleSet;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.study.drift.Drift;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The four zone tests of the Western Electric handbook on what a line leaves over. */
final class DriftTests {
    /** A residual of so many standard deviations is beyond every line; farther ones are cut to it. */
    private static final double FURTHEST = 1000;

    private static final int PLACES = 9;
    private static final long ONE = 1_000_000_000L;

    private DriftTests() {}

    /**
     * Looking back: residuals over the spread about all lines, centre 0, sigma 1; so the limits are three spreads beside the sloping line.
     * Points count readings from 1.
     */
    static List<Signal> lookingBack(Drift drift) {
        if (drift.spread().isEmpty() || drift.spread().getAsDouble() == 0) {
            return List.of();
        }
        double spread = drift.data().sample().scale().steps(drift.spread().getAsDouble());
        double[] scores = drift.residuals().stream()
                .mapToDouble(residual -> residual / spread)
                .toArray();
        return signals(scores, drift);
    }

    /** As readings come: each against the line through those before it, a score that later readings never change. */
    static List<Signal> asTheyCome(Drift drift) {
        int count = drift.data().sample().size();
        boolean[] starts = new boolean[count];
        drift.segments().forEach(segment -> starts[segment.from()] = true);
        return signals(
                RecursiveScores.of(drift.data().pieces(), drift.data().sample().deviations(), starts), drift);
    }

    private static List<Signal> signals(double[] scores, Drift drift) {
        Set<Integer> starts = new HashSet<>();
        drift.segments().forEach(segment -> starts.add(segment.from()));
        List<Integer> readings = new ArrayList<>();
        List<Break> breaks = new ArrayList<>();
        boolean begins = false;
        long[] whole = new long[scores.length];
        for (int i = 0; i < scores.length; i++) {
            begins |= starts.contains(i) && !readings.isEmpty();
            if (Double.isNaN(scores[i])) {
                continue;
            }
            if (begins) {
                breaks.add(new Break(readings.size() + 1, "stretch", "another stretch begins"));
                begins = false;
            }
            whole[readings.size()] = Math.round(Math.max(-FURTHEST, Math.min(FURTHEST, scores[i])) * ONE);
            readings.add(i + 1);
        }
        if (readings.isEmpty()) {
            return List.of();
        }
        Sample sample = Sample.ofDeviations(
                java.util.Arrays.copyOf(whole, readings.size()), new Scale(BigDecimal.ZERO, PLACES, Unit.NONE));
        Subgroups singles = sample.asIndividuals().breakingBefore(breaks);
        FrozenLimits limits =
                new FrozenLimits("individuals", 0, 1, "spread about the lines", Double.MAX_VALUE, Unit.NONE);
        return RuleSet.westernElectric().assess(new Individuals().withLimits(singles, limits)).signals().stream()
                .filter(signal -> signal.panel() == PanelKind.LOCATION)
                .map(signal -> new Signal(
                        signal.test(),
                        signal.panel(),
                        signal.side(),
                        readings.get(signal.at() - 1),
                        signal.points().stream()
                                .map(point -> readings.get(point - 1))
                                .toList()))
                .toList();
    }
}
