package io.github.firstoff.study.chart;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.stats.ExactRatio;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the four charts of attributes have in common.
 *
 * <p>With the rate r = Σcounts/Σsizes, a count on size n has standard deviation √(n v), v = r(1 − r) for nonconforming pieces
 * (binomial) and v = r for nonconformities (Poisson); limits r ± 3√(v/n) of shares, nr ± 3√(nv) of counts, every point by its own
 * size, cut at 0 (and a share at 1). ASTM E2587; NIST/SEMATECH e-Handbook 6.3.3; Montgomery, chapter 7.
 *
 * <p>The {@link DispersionCheck} compares the spread of the counts with that; limits are then r ± 3σz√(v/n) where the
 * {@link DispersionPolicy} says so (Laney 2002: p' and u').
 */
abstract class AttributeChart implements ChartMethod<Counts> {
    /** With fewer points the check would find anything. */
    private static final int LEAST_FOR_CHECK = 10;
    /** Below this the normal limits of counts are rough (common practice). */
    private static final double LEAST_EXPECTED = 5;

    private final boolean binomial;
    private final boolean shares;
    private final DispersionPolicy policy;

    AttributeChart(boolean binomial, boolean shares, DispersionPolicy policy) {
        this.binomial = binomial;
        this.shares = shares;
        this.policy = policy;
    }

    /** What is plotted. */
    abstract String statistic();

    @Override
    public final ControlChart fromData(Counts counts, Baseline baseline) {
        requireFitting(counts);
        Subgroups data = counts.data();
        Basis basis = Basis.of(data, baseline);
        List<Remark> notes = new ArrayList<>();
        ChartNotes.addMarks(notes, data);
        if (basis.count() == 0) {
            notes.add(Remark.of("chart.no-count", "There is no count that could set limits, so there are none."));
            return ControlChart.of(
                    kind(), List.of(withoutLines(counts)), Optional.empty(), Optional.empty(), 0, data, notes);
        }
        long[] setting = new long[basis.count()];
        long size = 0;
        for (int i = 0; i < setting.length; i++) {
            setting[i] = counts.count(basis.group(i));
            size = Math.addExact(size, counts.sizeInMillionths(basis.group(i)));
        }
        BigInteger sum = DeviationTally.of(setting).sum();
        ExactCentre centre = new ExactCentre(sum, size);
        double rate = ExactRatio.of(sum.multiply(BigInteger.valueOf(1_000_000)), BigInteger.valueOf(size));
        ChartNotes.addProvisional(notes, basis.count(), ChartNotes.Setting.COUNT);
        if (variance(rate) == 0) {
            notes.add(Remark.of(
                    "chart.counts-alike",
                    "The counts that set the limits do not vary: the limits lie on the centre line."));
        } else if (rate * size / 1e6 / basis.count() < LEAST_EXPECTED) {
            notes.add(Remark.of(
                    "chart.counts-rare",
                    "About {0} are expected on one size: below 5 the limits of counts are rough, and false signals more frequent"
                            + " above than below.",
                    String.format(Locale.ROOT, "%.2g", rate * size / 1e6 / basis.count())));
        }
        Optional<DispersionCheck> check = check(counts, basis, rate);
        check.ifPresent(found -> addCheck(notes, found));
        double factor = check.filter(DispersionCheck::applied)
                .map(DispersionCheck::sigmaZ)
                .orElse(1.0);
        String estimator = (binomial ? "binomial" : "Poisson") + (factor == 1 ? "" : " × σz");
        FrozenLimits frozen = new FrozenLimits(kind(), rate, factor, estimator, basis.count(), Unit.NONE);
        ControlChart chart = ControlChart.of(
                kind(),
                List.of(panel(counts, centre, rate, factor)),
                Optional.empty(),
                Optional.of(frozen),
                basis.count(),
                data,
                notes);
        return check.map(chart::withDispersionCheck).orElse(chart);
    }

    @Override
    public final ControlChart withLimits(Counts counts, FrozenLimits limits) {
        ShewhartChart.requireKind(limits, kind());
        requireFitting(counts);
        if (!(limits.centre() >= 0) || (binomial && limits.centre() > 1)) {
            throw new IllegalArgumentException("no rate of counts is " + limits.centre());
        }
        List<Remark> notes = new ArrayList<>();
        ChartNotes.addMarks(notes, counts.data());
        return ControlChart.of(
                kind(),
                List.of(panel(counts, null, limits.centre(), limits.sigma())),
                Optional.empty(),
                Optional.of(limits),
                0,
                counts.data(),
                notes);
    }

    private double variance(double rate) {
        return binomial ? rate * (1 - rate) : rate;
    }

    private void requireFitting(Counts counts) {
        if (binomial) {
            if (!counts.areWhole()) {
                throw new IllegalArgumentException("nonconforming pieces are counted among a whole number of pieces");
            }
            for (int i = 0; i < counts.sizes().size(); i++) {
                if (counts.count(i) > counts.size(i)) {
                    throw new IllegalArgumentException("count " + counts.data().number(i) + ": " + counts.count(i)
                            + " nonconforming among " + counts.sizes().get(i).toPlainString());
                }
            }
        } else if (!shares && !counts.haveOneSize()) {
            throw new IllegalArgumentException(
                    "a chart c takes counts on one size; on sizes that differ use a chart u");
        }
    }

    private Optional<DispersionCheck> check(Counts counts, Basis basis, double rate) {
        if (basis.count() < LEAST_FOR_CHECK || variance(rate) == 0) {
            return Optional.empty();
        }
        double[] z = new double[basis.count()];
        double squares = 0;
        double moving = 0;
        int ranges = 0;
        for (int i = 0; i < z.length; i++) {
            double n = counts.size(basis.group(i));
            z[i] = (counts.count(basis.group(i)) - n * rate) / Math.sqrt(n * variance(rate));
            squares += z[i] * z[i];
            if (basis.followsAtOnce(i)) {
                moving += Math.abs(z[i] - z[i - 1]);
                ranges++;
            }
        }
        return ranges == 0
                ? Optional.empty()
                : Optional.of(DispersionCheck.of(moving / ranges, ranges, squares, z.length, policy));
    }

    private void addCheck(List<Remark> notes, DispersionCheck check) {
        String sigma = String.format(Locale.ROOT, "%.2f", check.sigmaZ());
        String lower = String.format(Locale.ROOT, "%.2f", check.lower());
        String upper = String.format(Locale.ROOT, "%.2f", check.upper());
        Remark distribution = Remark.word("distribution-of-counts", binomial ? "binomial" : "Poisson");
        boolean wider = check.sigmaZ() > 1;
        if (!check.isOver() && !check.isUnder()) {
            if (check.applied()) {
                notes.add(Remark.of(
                        "chart.counts-by-choice",
                        "By choice the limits are {0|widened|narrowed} by the spread that the counts show (σz {1}, by chance {2} to"
                                + " {3}).",
                        wider,
                        sigma,
                        lower,
                        upper));
            }
            return;
        }
        notes.add(
                check.applied()
                        ? Remark.of(
                                "chart.counts-adapted",
                                "The counts spread {0|more|less} than the {1} distribution says (σz {2}, by chance {3} to {4}): the"
                                        + " limits are {5|widened|narrowed} accordingly (Laney 2002).",
                                check.isOver(),
                                distribution,
                                sigma,
                                lower,
                                upper,
                                wider)
                        : Remark.of(
                                "chart.counts-kept",
                                "The counts spread {0|more|less} than the {1} distribution says (σz {2}, by chance {3} to {4}), and by"
                                        + " choice the limits are those of the distribution all the same.",
                                check.isOver(),
                                distribution,
                                sigma,
                                lower,
                                upper));
    }

    private double value(Counts counts, int i) {
        return shares ? counts.count(i) * 1e6 / counts.sizeInMillionths(i) : (double) counts.count(i);
    }

    private static int wholeSize(Counts counts, int i) {
        // what a sheet prints beside a point; areas of opportunity need not be whole
        return (int) Math.min(Integer.MAX_VALUE, Math.round(counts.size(i)));
    }

    private Panel.Builder builder(Counts counts) {
        return new Panel.Builder(
                PanelKind.LOCATION,
                PanelNature.COUNTED,
                statistic(),
                counts.data(),
                counts.sizes().size());
    }

    private Panel withoutLines(Counts counts) {
        Panel.Builder panel = builder(counts);
        for (int i = 0; i < counts.sizes().size(); i++) {
            panel.add(i, value(counts, i), wholeSize(counts, i));
        }
        return panel.build();
    }

    private Panel panel(Counts counts, @Nullable ExactCentre exact, double rate, double factor) {
        Panel.Builder panel = builder(counts);
        for (int i = 0; i < counts.sizes().size(); i++) {
            double n = counts.size(i);
            double scale = shares ? 1 : n;
            double sigma = factor * Math.sqrt(variance(rate) / n) * scale;
            double centre = rate * scale;
            double lower = Math.max(0, centre - 3 * sigma);
            double upper = centre + 3 * sigma;
            if (binomial) {
                upper = Math.min(scale, upper);
            }
            double value = value(counts, i);
            int side = exact != null
                    ? exact.side(counts.count(i), counts.sizeInMillionths(i))
                    : LineJudge.compare(value, centre, sigma);
            panel.ruled(centre, lower, upper)
                    .addZoned(i, value, wholeSize(counts, i), sigma, side, LineJudge.zone(value, centre, sigma, side));
        }
        return panel.build();
    }

    @Override
    public final FalseSignals falseSignals(RuleSet tests) {
        RuleSet judging = new RuleSet(tests.rules().stream()
                .filter(rule -> rule.judges(PanelNature.COUNTED))
                .toList());
        InControlRunLength length = judging.inControlRunLength();
        return new FalseSignals(
                length.runLength().average(),
                false,
                length.remark()
                        .then(
                                Remark.of(
                                        "false-signals.of-normal-points",
                                        "The figure is of normal points; counts differ from it, the more the rarer they are.")));
    }

    /** Exact from the distribution of the counts, sizes mixed as on the chart; of normal points where limits were widened. */
    @Override
    public final FalseSignals falseSignals(RuleSet tests, ControlChart chart) {
        return CountedRunLength.of(binomial, shares, chart, tests)
                .map(length -> new FalseSignals(
                        length.runLength().average(),
                        length.isComplete(),
                        CountedRunLength.remark(length, binomial, chart.location())))
                .orElseGet(() -> falseSignals(tests));
    }
}
