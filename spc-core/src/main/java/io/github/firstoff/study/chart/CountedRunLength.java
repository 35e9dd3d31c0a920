package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.stats.CountProbabilities;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * How long a chart of attributes runs until a false signal: the probability of every count by the binomial or Poisson distribution
 * of the centre line, put into the cells in which the chart itself would put it, and the chain of {@link InControlRunLength} over
 * these cells. Nothing is normal about it.
 *
 * <p>Where sizes vary, the cells are those of sizes drawn at random from the ones charted. No figure where the limits were
 * widened or narrowed: then the counts do not follow the distribution.
 */
final class CountedRunLength {
    /** More different sizes are not worth their time. */
    private static final int MOST_SIZES = 2000;

    private static final int CELLS = 2 * RunRule.ZoneMemory.BEYOND_LIMIT + 1;

    private CountedRunLength() {}

    /** Points that are judged alike. */
    private record Kind(int size, double centre, double lower, double upper, double sigma) {}

    static Optional<InControlRunLength> of(boolean binomial, boolean shares, ControlChart chart, RuleSet tests) {
        Panel panel = chart.location();
        if (!panel.hasZones()
                || chart.frozen().isEmpty()
                || chart.frozen().get().sigma() != 1) {
            return Optional.empty();
        }
        double rate = chart.frozen().get().centre();
        Map<Kind, Integer> kinds = new LinkedHashMap<>();
        int points = 0;
        for (int i = 0; i < panel.count(); i++) {
            Lines lines = panel.lines(i).orElseThrow();
            Kind kind = new Kind(
                    panel.point(i).size(),
                    lines.centre(),
                    lines.lower(),
                    lines.upper(),
                    lines.sigma().orElseThrow());
            kinds.merge(kind, 1, Integer::sum);
            points++;
            if (!(kind.sigma > 0) || kinds.size() > MOST_SIZES) {
                return Optional.empty();
            }
        }
        double[] probabilities = new double[CELLS];
        for (Map.Entry<Kind, Integer> entry : kinds.entrySet()) {
            Kind kind = entry.getKey();
            double weight = entry.getValue() / (double) points;
            // the size of an area need not be whole and stands in σ² = r/n of a rate, or nr of a count
            double size = binomial ? kind.size : shares ? rate / (kind.sigma * kind.sigma) : kind.centre / rate;
            Optional<CountProbabilities> counts =
                    binomial ? CountProbabilities.binomial(kind.size, rate) : CountProbabilities.poisson(rate * size);
            if (counts.isEmpty()) {
                return Optional.empty();
            }
            for (int k = counts.get().least(); k <= counts.get().most(); k++) {
                double value = shares ? k / size : k;
                int side = LineJudge.compare(value, kind.centre, kind.sigma);
                int cell = Panel.cell(side, LineJudge.zone(value, kind.centre, kind.sigma, side));
                probabilities[cell + RunRule.ZoneMemory.BEYOND_LIMIT] +=
                        weight * counts.get().of(k);
            }
        }
        return Optional.of(InControlRunLength.ofCells(tests, PanelNature.COUNTED, probabilities));
    }

    static Remark remark(InControlRunLength length, boolean binomial, Panel panel) {
        double average = length.runLength().average();
        boolean never = Double.isInfinite(average);
        String figure = never ? "" : FalseSignals.figure(average);
        Remark distribution = Remark.word("distribution-of-counts", binomial ? "binomial" : "Poisson");
        boolean oneSize = panel.commonLines().isPresent();
        return length.isComplete()
                ? Remark.of(
                        "false-signals.counts",
                        "A process in control, with counts by the {0} distribution of the centre line{1|| and sizes mixed as on this"
                                + " chart}, gives {2|no false signal|a false signal once in {3} points on average}.",
                        distribution,
                        oneSize,
                        never,
                        figure)
                : Remark.of(
                        "false-signals.counts-without",
                        "A process in control, with counts by the {0} distribution of the centre line{1|| and sizes mixed as on this"
                                + " chart}, gives {2|no false signal|a false signal once in {3} points on average}, not counting {4};"
                                + " with them it is more often.",
                        distribution,
                        oneSize,
                        never,
                        figure,
                        InControlRunLength.listed(length.leftOut()));
    }
}
