package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.ChartConstants;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Standardised deviations from nominal, for short runs of part numbers whose spreads differ.
 *
 * <p>Every deviation is divided by the standard deviation σⱼ of its own part number: points (x̄ − nominalⱼ)/σⱼ with centre 0 and
 * limits ±3/√n, ranges R/σⱼ with centre d2 and limits D1, D2; of single readings Z = (x − nominalⱼ)/σⱼ with limits ±3 and moving
 * ranges W of successive Z with centre 1.128 and upper limit 3.686 (Farnum 1992, Journal of Quality Technology 24; Montgomery,
 * section 10.1, who divides by R̄ⱼ instead and draws ±A2, D3, D4: the same chart on another scale). σⱼ comes from the subgroups (of
 * single readings: the moving ranges) of that part number among those that set limits, or from limits set before.
 *
 * <p>A part number without a spread of its own (too few readings, or all alike) cannot be standardised and is left off, with a note.
 */
public final class StandardisedDeviation implements ChartMethod<Family> {
    private static final ChartConstants OF_TWO = ChartConstants.of(2);

    private final Optional<SpreadEstimator> estimator;

    /** With R̄/d2 of subgroups, MR̄/d2 of single readings. */
    public StandardisedDeviation() {
        this(Optional.empty());
    }

    /** With another estimate of spread, if given. */
    public StandardisedDeviation(Optional<SpreadEstimator> estimator) {
        this.estimator = estimator;
    }

    @Override
    public String kind() {
        return "standardised-deviation";
    }

    @Override
    public String title() {
        return "Standardised deviation from nominal";
    }

    @Override
    public ControlChart fromData(Family family, Baseline baseline) {
        Subgroups data = family.deviations();
        boolean single = DriftChart.isSingle(data);
        SpreadEstimator chosen =
                estimator.orElse(single ? SpreadEstimators.MEAN_MOVING_RANGE : SpreadEstimators.MEAN_RANGE);
        Basis all = Basis.of(data, baseline);
        Map<String, Double> sigmas = new LinkedHashMap<>();
        double freedom = Double.POSITIVE_INFINITY;
        int setting = 0;
        String name = chosen.name();
        Set<String> members = new LinkedHashSet<>(family.parts());
        boolean inTurn = isInTurn(family.parts());
        for (String part : members) {
            // members that are measured in turn follow their own kind over the others; a run of another part ends a run
            Basis own = all.where(g -> family.parts().get(g).equals(part)).interleaved(inTurn ? members.size() : 1);
            Optional<SigmaEstimate> sigma = chosen.estimate(own).filter(found -> found.sigma() > 0);
            if (sigma.isPresent()) {
                sigmas.put(part, data.sample().scale().length(sigma.get().sigma()));
                freedom = Math.min(freedom, sigma.get().degreesOfFreedom());
                setting += own.count();
                name = sigma.get().estimator();
            }
        }
        Optional<FrozenLimits> frozen = sigmas.isEmpty()
                ? Optional.empty()
                : Optional.of(new FrozenLimits(
                                kind(),
                                0,
                                1,
                                name + " of each part number",
                                freedom,
                                data.sample().unit())
                        .withPartSigmas(sigmas));
        List<Remark> notes = new ArrayList<>();
        ChartNotes.addProvisional(notes, setting, single ? ChartNotes.Setting.READING : ChartNotes.Setting.SUBGROUP);
        return draw(family, sigmas, frozen, setting, notes);
    }

    @Override
    public ControlChart withLimits(Family family, FrozenLimits limits) {
        ShewhartChart.requireKind(limits, kind());
        ShewhartChart.requireUnit(limits, family.deviations());
        return draw(family, limits.partSigmas(), Optional.of(limits), 0, List.of());
    }

    private ControlChart draw(
            Family family, Map<String, Double> sigmas, Optional<FrozenLimits> frozen, int setting, List<Remark> more) {
        Subgroups data = family.deviations();
        boolean single = DriftChart.isSingle(data);
        List<Remark> notes = new ArrayList<>(ChartNotes.of(data, data));
        notes.addAll(more);
        Set<String> missing = new LinkedHashSet<>(family.parts());
        missing.removeAll(sigmas.keySet());
        for (String part : missing) {
            notes.add(Remark.of(
                    "chart.part-without-spread",
                    "Part number {0} has no spread of its own to be standardised by: its points are left off.",
                    part));
        }
        double[] z = new double[data.count()];
        for (int g = 0; g < z.length; g++) {
            // 0 where the part has no spread: those groups are skipped below
            double sigma = data.sample()
                    .scale()
                    .steps(sigmas.getOrDefault(family.parts().get(g), 0.0));
            z[g] = sigma > 0 ? DriftChart.mean(data, g) / sigma : Double.NaN;
        }
        List<Panel> panels = new ArrayList<>();
        panels.add(location(data, z, single));
        panels.add(single ? moving(data, z) : ranges(family, sigmas, z));
        return ControlChart.of(kind(), panels, Optional.empty(), frozen, setting, data, notes);
    }

    private static boolean isInTurn(List<String> parts) {
        for (int g = 1; g < parts.size(); g++) {
            if (parts.get(g).equals(parts.get(g - 1))) {
                return false;
            }
        }
        return true;
    }

    private static int plotted(double[] z) {
        int count = 0;
        for (double value : z) {
            count += Double.isNaN(value) ? 0 : 1;
        }
        return count;
    }

    private static Panel location(Subgroups data, double[] z, boolean single) {
        Panel.Builder panel = new Panel.Builder(
                PanelKind.LOCATION,
                PanelNature.NORMAL,
                single ? "standardised deviation" : "standardised mean deviation",
                data,
                plotted(z));
        for (int g = 0; g < z.length; g++) {
            if (Double.isNaN(z[g])) {
                continue;
            }
            double sigma = 1 / Math.sqrt(data.size(g));
            // a mean of deviations is exactly 0 or it is not: no tolerance at the centre
            int side = (int) Math.signum(z[g]);
            panel.ruled(0, -3 * sigma, 3 * sigma)
                    .addZoned(g, z[g], data.size(g), sigma, side, LineJudge.zone(z[g], 0, sigma, side));
        }
        return panel.build();
    }

    private static Panel moving(Subgroups data, double[] z) {
        int count = 0;
        for (int g = 1; g < z.length; g++) {
            count += isMoving(data, z, g) ? 1 : 0;
        }
        Panel.Builder panel = new Panel.Builder(
                PanelKind.DISPERSION, PanelNature.DEPENDENT, "standardised moving range", data, count);
        Lines lines = new Lines(OF_TWO.d2(), 0, OF_TWO.bigD2(), OptionalDouble.empty());
        for (int g = 1; g < z.length; g++) {
            if (isMoving(data, z, g)) {
                double range = Math.abs(z[g] - z[g - 1]);
                panel.add(
                        g,
                        range,
                        2,
                        lines,
                        LineJudge.compare(range, lines.centre(), 1),
                        LineJudge.beyond(range, 0, lines.upper(), 1));
                if (data.isExcluded(g - 1)) {
                    panel.exclude();
                }
            }
        }
        return panel.build();
    }

    private static boolean isMoving(Subgroups data, double[] z, int g) {
        return !data.startsSegment(g) && !Double.isNaN(z[g]) && !Double.isNaN(z[g - 1]);
    }

    private static Panel ranges(Family family, Map<String, Double> sigmas, double[] z) {
        Subgroups data = family.deviations();
        Panel.Builder panel = new Panel.Builder(
                PanelKind.DISPERSION, PanelNature.SPREAD, "standardised range", data, plottedRanges(data, z));
        for (int g = 0; g < z.length; g++) {
            int n = data.size(g);
            if (Double.isNaN(z[g]) || n < 2) {
                continue;
            }
            ChartConstants c = ChartConstants.of(n);
            double sigma = data.sample()
                    .scale()
                    .steps(sigmas.getOrDefault(family.parts().get(g), Double.NaN));
            double range = Spread.range(data, g) / sigma;
            panel.ruled(c.d2(), c.bigD1(), c.bigD2())
                    .addJudged(
                            g,
                            range,
                            n,
                            LineJudge.compare(range, c.d2(), 1),
                            LineJudge.beyond(range, c.bigD1(), c.bigD2(), 1));
        }
        return panel.build();
    }

    private static int plottedRanges(Subgroups data, double[] z) {
        int count = 0;
        for (int g = 0; g < z.length; g++) {
            count += Double.isNaN(z[g]) || data.size(g) < 2 ? 0 : 1;
        }
        return count;
    }
}
