package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Exclusion;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Subgroups;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Everything that can be asked of a chart, as a plan may state it. Immutable; {@link #assess} does what was asked.
 *
 * @param kind the kind of chart, by its name in the {@link ChartCatalogue}
 * @param settings what was chosen of it
 * @param limits where its limits come from
 * @param tests the tests
 * @param breaks where something was done to the process, besides breaks that the data have
 * @param exclusions which points do not count, and why
 */
public record ChartRequest(
        String kind,
        ChartSettings settings,
        LimitsFrom limits,
        RuleSet tests,
        List<Break> breaks,
        List<Exclusion> exclusions) {
    /** Copies the lists. */
    public ChartRequest {
        breaks = List.copyOf(breaks);
        exclusions = List.copyOf(exclusions);
    }

    /** A chart with usual settings, limits from all points, and the four zone tests. */
    public static ChartRequest of(String kind) {
        return new ChartRequest(
                kind, ChartSettings.USUAL, LimitsFrom.allPoints(), RuleSet.westernElectric(), List.of(), List.of());
    }

    /** The same with other settings. */
    public ChartRequest with(ChartSettings other) {
        return new ChartRequest(kind, other, limits, tests, breaks, exclusions);
    }

    /** The same with limits from elsewhere. */
    public ChartRequest with(LimitsFrom other) {
        return new ChartRequest(kind, settings, other, tests, breaks, exclusions);
    }

    /** The same with other tests. */
    public ChartRequest with(RuleSet other) {
        return new ChartRequest(kind, settings, limits, other, breaks, exclusions);
    }

    /** The same with other breaks and exclusions. */
    public ChartRequest with(List<Break> otherBreaks, List<Exclusion> otherExclusions) {
        return new ChartRequest(kind, settings, limits, tests, otherBreaks, otherExclusions);
    }

    /**
     * Charts measured values and applies the tests.
     *
     * @throws IllegalArgumentException if there is no such kind for measured values, a setting is out of range, or a break,
     *     exclusion or phase names what does not exist
     */
    public Assessment assess(Subgroups data) {
        ChartMethod<Subgroups> method =
                ChartCatalogue.measured(kind, settings).orElseThrow(() -> unknown("measured values"));
        if (limits.recalculation().isEmpty() || DriftChart.isSingle(data)) {
            return tests.assess(draw(method, Divisible.MEASURED, data));
        }
        // what no chart of subgroups can plot goes before the stretches are cut, so that all count alike
        Subgroups marked = data.breakingBefore(breaks).excluding(exclusions);
        ControlChart chart = with(List.of(), List.of()).draw(method, Divisible.MEASURED, marked.ofAtLeast(2));
        return tests.assess(chart.withMoreNotes(ChartNotes.of(marked, chart.data())));
    }

    /**
     * Charts attributes and applies the tests.
     *
     * @throws IllegalArgumentException as for measured values
     */
    public Assessment assess(Counts data) {
        ChartMethod<Counts> method = ChartCatalogue.counted(kind, settings).orElseThrow(() -> unknown("attributes"));
        return tests.assess(draw(method, Divisible.COUNTED, data));
    }

    /**
     * Charts a family of part numbers, by deviations or standardised deviations, and applies the tests.
     *
     * @throws IllegalArgumentException as for measured values
     */
    public Assessment assess(Family data) {
        Optional<ChartMethod<Family>> method = ChartCatalogue.families(kind, settings);
        if (method.isPresent()) {
            return tests.assess(draw(method.get(), Divisible.FAMILY, data));
        }
        if (!kind.equals(new Deviation().kind())) {
            throw unknown("families of part numbers");
        }
        Family marked = data.withData(d -> d.breakingBefore(breaks).excluding(exclusions));
        ControlChart chart = draw(new Deviation(settings.spread()), Divisible.MEASURED, data.deviations());
        return tests.assess(chart.withMoreNotes(FamilySpreads.notes(marked)));
    }

    /** What is said of subgroups of one reading that a chart of subgroups leaves off. */
    public static Remark withoutSpread(int dropped) {
        return ChartNotes.withoutSpread(dropped);
    }

    /** How often the tests would signal falsely on the location panel of a process in control. */
    public FalseSignals falseSignals() {
        Optional<ChartMethod<Subgroups>> measured = ChartCatalogue.measured(kind, settings);
        if (measured.isPresent()) {
            return measured.get().falseSignals(tests);
        }
        Optional<ChartMethod<Counts>> counted = ChartCatalogue.counted(kind, settings);
        if (counted.isPresent()) {
            return counted.get().falseSignals(tests);
        }
        return ChartCatalogue.families(kind, settings)
                .orElseThrow(() -> unknown("anything"))
                .falseSignals(tests);
    }

    /**
     * The same with what a chart of this request says of its points: for counts the figure of their distribution and sizes, exact, in
     * place of that of normal points.
     */
    public FalseSignals falseSignals(ControlChart chart) {
        return ChartCatalogue.counted(kind, settings)
                .map(method -> method.falseSignals(tests, chart))
                .orElseGet(this::falseSignals);
    }

    private IllegalArgumentException unknown(String what) {
        return new IllegalArgumentException("no chart of " + what + " is called " + kind);
    }

    private <D> ControlChart draw(ChartMethod<D> method, Divisible<D> divisible, D data) {
        D marked = divisible.marked(data, d -> d.breakingBefore(breaks).excluding(exclusions));
        Subgroups subgroups = divisible.subgroups(marked);
        if (limits.frozen().isPresent()) {
            return method.withLimits(marked, limits.frozen().get());
        }
        if (limits.recalculation().isPresent()) {
            return recalculated(
                    method, divisible, marked, limits.recalculation().get());
        }
        Baseline baseline =
                limits.phase().map(label -> stretch(subgroups, label)).orElse(limits.baseline());
        ControlChart chart = method.fromData(marked, baseline);
        if (baseline.equals(Baseline.ALL)) {
            return chart;
        }
        int points = chart.data().count();
        List<Remark> notes = new ArrayList<>();
        if (chart.limitsFrom() > 0) {
            notes.add(Remark.of(
                    "chart.limits-from-points",
                    "The limits come from points {0} to {1} and are applied to all.",
                    baseline.from(),
                    Math.min(baseline.to(), points)));
        }
        if (baseline.from() > points) {
            notes.add(Remark.of(
                    "chart.limits-from-later-points",
                    "The limits were to come from point {0} on, and the chart has {1}.",
                    baseline.from(),
                    points));
        } else if (baseline.to() > points && limits.phase().isEmpty()) {
            notes.add(Remark.of(
                    "chart.limits-from-more-points",
                    "The limits were to come from points up to {0}, and the chart has {1}.",
                    baseline.to(),
                    points));
        }
        return chart.withMoreNotes(notes);
    }

    private static Baseline stretch(Subgroups data, String label) {
        int from = 0;
        int to = 0;
        for (Break b : data.breaks()) {
            if (from > 0 && to == 0) {
                to = b.number() - 1;
            }
            if (from == 0 && b.label().equals(label)) {
                from = b.number();
            }
        }
        if (from == 0) {
            throw new IllegalArgumentException("no phase is called " + label);
        }
        return new Baseline(from, to == 0 ? Integer.MAX_VALUE : to);
    }

    private static <D> ControlChart recalculated(ChartMethod<D> method, Divisible<D> divisible, D data, String reason) {
        Subgroups all = divisible.subgroups(data);
        if (all.count() == 0) {
            return method.fromData(data);
        }
        List<ControlChart> charts = new ArrayList<>();
        List<Stage> stages = new ArrayList<>();
        List<Remark> notes = new ArrayList<>();
        int from = 0;
        while (from < all.count()) {
            int to = from + 1;
            while (to < all.count() && !all.startsSegment(to)) {
                to++;
            }
            ControlChart chart = method.fromData(divisible.part(data, from, to));
            Remark label = label(all, from);
            int first = all.number(from);
            boolean again = from > 0;
            stages.add(new Stage(
                    label,
                    first,
                    all.number(to - 1),
                    chart.limitsFrom(),
                    chart.frozen(),
                    again ? Optional.of(reason) : Optional.empty()));
            if (again) {
                notes.add(Remark.of(
                        "chart.recalculated",
                        "Limits are recalculated from point {0} on ({1}): {2}.",
                        first,
                        label,
                        reason));
            }
            for (Remark note : chart.remarks()) {
                // marks are named by number and speak for themselves
                notes.add(
                        ChartNotes.isOfOnePoint(note) ? note : Remark.of("chart.of-stretch", "{0}: {1}", label, note));
            }
            charts.add(chart);
            from = to;
        }
        return join(all, charts, stages, notes);
    }

    private static Remark label(Subgroups all, int group) {
        return all.breaks().stream()
                .filter(b -> b.number() == all.number(group))
                .map(Break::name)
                .findFirst()
                .orElseGet(() -> Remark.of("stretch.start", "start"));
    }

    private static ControlChart join(Subgroups all, List<ControlChart> charts, List<Stage> stages, List<Remark> notes) {
        ControlChart last = charts.get(charts.size() - 1);
        List<Panel> panels = new ArrayList<>();
        for (Panel panel : last.panels()) {
            panels.add(Panel.join(
                    charts.stream()
                            .flatMap(chart -> chart.panel(panel.kind()).stream())
                            .toList(),
                    all));
        }
        if (charts.size() > 1) {
            notes.add(Remark.of(
                    "chart.spread-of-last-stretch", "The spread stated for the chart is that of its last stretch."));
        }
        return new ControlChart(
                last.kind(),
                panels,
                last.sigmaWithin(),
                last.sigmaBetween(),
                last.frozen(),
                charts.stream().mapToInt(ControlChart::limitsFrom).sum(),
                all,
                last.dispersionCheck(),
                stages,
                notes);
    }
}
