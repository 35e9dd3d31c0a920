package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.VarianceTests;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Whether the part numbers of a family spread alike, so that they may share one chart of deviations: Bartlett's test of the
 * variances within subgroups (of single readings: within the runs of one part number).
 */
final class FamilySpreads {
    private static final double LEVEL = 0.05;

    private FamilySpreads() {}

    /** The test; empty with fewer than two part numbers that have a spread. */
    static Optional<VarianceTests.Result> compare(Family family) {
        Subgroups data = family.deviations();
        Map<String, double[]> squaresAndFreedom = new LinkedHashMap<>();
        DeviationTally run = DeviationTally.EMPTY;
        for (int g = 0; g < data.count(); g++) {
            if (data.isExcluded(g)) {
                continue;
            }
            run = run.merge(Spread.tally(data, g));
            boolean single = data.size(g) == 1;
            boolean goesOn = single
                    && g + 1 < data.count()
                    && data.size(g + 1) == 1
                    && !data.startsSegment(g + 1)
                    && family.parts().get(g + 1).equals(family.parts().get(g));
            if (goesOn) {
                continue;
            }
            if (run.count() > 1) {
                double[] sums = squaresAndFreedom.computeIfAbsent(family.parts().get(g), part -> new double[2]);
                sums[0] += run.variance() * (run.count() - 1);
                sums[1] += run.count() - 1;
            }
            run = DeviationTally.EMPTY;
        }
        List<double[]> spread =
                squaresAndFreedom.values().stream().filter(sums -> sums[0] > 0).toList();
        if (spread.size() < 2) {
            return Optional.empty();
        }
        return Optional.of(VarianceTests.bartlett(
                spread.stream().mapToDouble(sums -> sums[0] / sums[1]).toArray(),
                spread.stream().mapToLong(sums -> (long) sums[1]).toArray()));
    }

    /** What a chart of deviations must say. */
    static List<Remark> notes(Family family) {
        return compare(family)
                .map(result -> Remark.of(
                        "chart.family-spreads",
                        "{0|The part numbers do not spread alike (Bartlett's test, p = {1}): one pair of limits does not fit them; use"
                                + " standardised deviations|Bartlett's test finds no difference between the spreads of the part numbers"
                                + " (p = {1})}.",
                        result.p() < LEVEL,
                        String.format(Locale.ROOT, "%.3g", result.p())))
                .map(List::of)
                .orElse(List.of());
    }
}
