package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Lines;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.tolerance.Limits;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The control chart as a picture: both panels with their limits, the signal points ringed and numbered. A chart of individuals
 * also carries the limits of the drawing and, on the same scale, the histogram; limits of single pieces have no place on a chart
 * of means.
 */
final class ControlChartSection {
    /** The drawing's limits stay off a chart that they would press into less than this share of its height. */
    private static final double LEAST_SHARE = 0.2;

    /** The share of the axis that the name of a panel takes. */
    private static final double ROOM_FOR_NAME = 0.3;

    private final Finding finding;
    private final ProcessStudy study;
    private final ControlChart chart;
    private final ChartWords words;
    private final SignalList signals;
    private final int places;
    private final String unit;

    ControlChartSection(Finding finding, SignalList signals) {
        this.finding = finding;
        this.study = finding.study().orElseThrow();
        this.chart = study.assessment().chart();
        this.words = new ChartWords(study);
        this.signals = signals;
        this.places = new Readings(finding.result()).places() + 1;
        this.unit = study.subgroups().sample().unit().symbol();
    }

    /** Whether the histogram stands at the chart's side, on its scale. */
    boolean holdsHistogram() {
        return showsSpecification();
    }

    /** The picture; empty where there is no point to show. */
    Optional<ControlFigure> figure() {
        int count = chart.location().count();
        if (count == 0) {
            return Optional.empty();
        }
        List<String> labels =
                IntStream.rangeClosed(1, count).mapToObj(words::label).toList();
        Optional<HistogramFigure> histogram =
                holdsHistogram() ? new HistogramSection(finding).figure() : Optional.empty();
        return Optional.of(new ControlFigure(
                location(),
                chart.dispersion().map(this::dispersion),
                labels,
                words.isIndividuals() ? "piece in production order" : words.noun(),
                breaks(count),
                histogram));
    }

    /** Where the limits that the first points set begin to judge the points after them. */
    private List<ControlFigure.PhaseBreak> breaks(int count) {
        boolean baseline = chart.limitsFrom() > 0 && chart.limitsFrom() < count;
        // A word close to the left end would stand in the name of the panel; the note under the chart says it as well.
        boolean room = chart.limitsFrom() >= count * ROOM_FOR_NAME;
        return baseline
                ? List.of(new ControlFigure.PhaseBreak(
                        chart.limitsFrom() + 1, room ? "limits of 1 to " + chart.limitsFrom() : ""))
                : List.of();
    }

    private ControlFigure.Panel location() {
        Panel panel = chart.location();
        List<LevelLine> lines = new ArrayList<>(lines(panel));
        if (showsSpecification()) {
            lines.addAll(HistogramSection.specification(finding.result()));
        }
        List<ControlFigure.Point> points = new ArrayList<>();
        for (int i = 0; i < panel.count(); i++) {
            ControlFigure.Point point = point(panel, i);
            boolean out = words.isIndividuals() && isOut(panel.value(i));
            points.add(out ? point.outOfSpecification() : point);
        }
        return new ControlFigure.Panel(
                named(panel), unit, points, List.of(), panel.hasZones(), lines, Optional.empty());
    }

    private ControlFigure.Panel dispersion(Panel panel) {
        List<ControlFigure.Point> points = new ArrayList<>();
        // The first moving range belongs to the second piece: the first has none.
        int skipped = chart.location().count() - panel.count();
        for (int i = 0; i < skipped; i++) {
            points.add(ControlFigure.Point.of(Double.NaN, Double.NaN, Double.NaN, Double.NaN));
        }
        for (int i = 0; i < panel.count(); i++) {
            points.add(point(panel, i));
        }
        return new ControlFigure.Panel(named(panel), unit, points, List.of(), false, lines(panel), Optional.empty());
    }

    /** The statistic, and of how many readings where all subgroups have one size. */
    private String named(Panel panel) {
        int size = chart.data().commonSize().orElse(1);
        return size > 1 ? panel.statistic() + " of " + size : panel.statistic();
    }

    private ControlFigure.Point point(Panel panel, int i) {
        Optional<Lines> lines = panel.lines(i);
        ControlFigure.Point point = ControlFigure.Point.of(
                panel.value(i),
                lines.map(each -> lower(panel, each)).orElse(Double.NaN),
                lines.map(Lines::centre).orElse(Double.NaN),
                lines.map(Lines::upper).orElse(Double.NaN));
        String marks = signals.marks(panel.kind(), panel.number(i));
        return marks.isEmpty() ? point : point.marked(marks);
    }

    /** A range, and a value that nature bounds at zero, cannot fall below it: a lower limit there is none. */
    private double lower(Panel panel, Lines lines) {
        boolean bounded = panel.kind() == PanelKind.DISPERSION
                || finding.result().characteristic().limits().naturalLower();
        return bounded && lines.lower() <= 0 ? Double.NaN : lines.lower();
    }

    private List<LevelLine> lines(Panel panel) {
        List<LevelLine> labelled = new ArrayList<>();
        panel.commonLines().ifPresent(lines -> {
            labelled.add(line(LevelLine.Kind.CONTROL_LIMIT, "UCL", lines.upper()));
            labelled.add(line(LevelLine.Kind.CENTRE, "centre", lines.centre()));
            if (!Double.isNaN(lower(panel, lines))) {
                labelled.add(line(LevelLine.Kind.CONTROL_LIMIT, "LCL", lines.lower()));
            }
        });
        return labelled;
    }

    private LevelLine line(LevelLine.Kind kind, String name, double at) {
        return new LevelLine(kind, name, Figures.rounded(at, places), at);
    }

    private boolean isOut(double value) {
        CharacteristicResult result = finding.result();
        Limits limits = result.characteristic().limits();
        boolean below = limits.lower().filter(limit -> value < Places.of(limit)).isPresent();
        return below || limits.upper().filter(limit -> value > Places.of(limit)).isPresent();
    }

    /** Limits of the drawing belong on a chart of single pieces, as long as they do not press it flat. */
    private boolean showsSpecification() {
        Limits limits = finding.result().characteristic().limits();
        if (!words.isIndividuals()
                || limits.isOpen()
                || !finding.result().characteristic().zone().isFixed()) {
            return false;
        }
        Optional<Lines> lines = chart.location().commonLines();
        if (lines.isEmpty()) {
            return true;
        }
        double low = limits.lower().map(Places::of).orElse(lines.get().lower());
        double high = limits.upper().map(Places::of).orElse(lines.get().upper());
        double whole =
                Math.max(high, lines.get().upper()) - Math.min(low, lines.get().lower());
        return (lines.get().upper() - lines.get().lower()) / whole >= LEAST_SHARE;
    }
}
