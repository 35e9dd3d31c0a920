package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.ControlFigure.Band;
import io.github.firstoff.report.figure.ControlFigure.PhaseBreak;
import io.github.firstoff.report.figure.ControlFigure.Point;
import io.github.firstoff.report.figure.ControlFigure.Trend;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.figure.LevelLine;
import io.github.firstoff.report.figure.Scale;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Lines;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.PanelNature;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The control chart as a picture: its panels on one axis, each point with the limits that hold for it, the signal points ringed
 * and numbered, gaps where something was done to the process. A chart of individuals also carries the limits of the drawing and,
 * on the same scale, the histogram; limits of single pieces have no place on a chart of means.
 */
final class ControlChartSection {
    /** The drawing's limits stay off a chart that they would press into less than this share of its height. */
    private static final int SHOWN_STEPS = 5;

    private static final double LEAST_SHARE = 0.2;

    /** The share of the axis that the name of a panel takes. */
    private static final double ROOM_FOR_NAME = 0.3;

    /** Panels of spread share a scale unless that would press one into less than this share of its height. */
    private static final double LEAST_SHARED = 0.3;

    /** The decimals of points in sigmas. */
    private static final int PLACES_OF_SIGMAS = 2;

    /** Limits of counts get the decimals that a tenth of their distance fills with two digits. */
    private static final double TENTH = 0.1;

    private final Finding finding;
    private final ProcessStudy study;
    private final ControlChart chart;
    private final ChartWords words;
    private final SignalList signals;
    private final int places;

    ControlChartSection(Finding finding, SignalList signals) {
        this.finding = finding;
        this.study = finding.study().orElseThrow();
        this.chart = study.chart();
        this.words = new ChartWords(study);
        this.signals = signals;
        this.places = places();
    }

    private int places() {
        if (words.isStandardised()) {
            return PLACES_OF_SIGMAS;
        }
        return words.isCounted()
                ? lastLines(chart.location())
                        .map(lines -> Figures.placesOf((lines.upper() - lines.lower()) * TENTH))
                        .orElse(1)
                : new Readings(finding.result()).places() + 1;
    }

    /** Whether the histogram stands at the chart's side, on its scale. */
    boolean holdsHistogram() {
        return showsSpecification();
    }

    /** The picture; empty where there is no point to show. */
    Optional<ControlFigure> figure() {
        if (chart.location().count() == 0) {
            return Optional.empty();
        }
        int first = chart.data().number(0);
        List<String> labels = IntStream.range(first, first + chart.data().count())
                .mapToObj(words::label)
                .toList();
        Optional<HistogramFigure> histogram =
                holdsHistogram() ? new HistogramSection(finding).figure() : Optional.empty();
        List<ControlFigure.Panel> panels = new ArrayList<>();
        for (Panel panel : chart.panels()) {
            panels.add(panel.kind() == PanelKind.LOCATION ? location(panel) : spread(panel));
        }
        return Optional.of(new ControlFigure(onOneScale(panels), labels, words.axis(), breaks(), bands(), histogram));
    }

    /** Where something was done to the process; and where the limits that the first points set begin to judge those after them. */
    private List<PhaseBreak> breaks() {
        List<PhaseBreak> breaks = new ArrayList<>();
        BreakLetters letters = new BreakLetters(chart);
        for (Break each : chart.data().breaks()) {
            breaks.add(new PhaseBreak(words.index(each.number()) + 1, letters.over(each)));
        }
        OptionalInt end = new ChartConditions(study, words).endOfBaseline();
        boolean broken =
                end.isPresent() && breaks.stream().anyMatch(each -> each.before() == words.index(end.getAsInt()) + 2);
        if (end.isPresent() && !broken) {
            int after = words.index(end.getAsInt()) + 2;
            // A word close to the left end would stand in the name of the panel; the note under the chart says it as
            // well.
            boolean room = after > chart.data().count() * ROOM_FOR_NAME && breaks.isEmpty();
            breaks.add(new PhaseBreak(after, room ? Labels.text("chart.limits-up-to-here") : "", false));
        }
        Collections.sort(breaks, (a, b) -> Integer.compare(a.before(), b.before()));
        return breaks;
    }

    /** Stretches of one part number, on the charts of a family. */
    private List<Band> bands() {
        List<Band> bands = new ArrayList<>();
        int first = chart.data().number(0);
        int from = first;
        for (int number = first; number < first + chart.data().count(); number++) {
            Optional<String> part = words.family(number);
            boolean last = number == first + chart.data().count() - 1;
            if (part.isPresent() && (last || !words.family(number + 1).equals(part))) {
                bands.add(new Band(
                        words.index(from) + 1, words.index(number) + 1, Labels.text("chart.band", part.get())));
                from = number + 1;
            }
        }
        return bands;
    }

    private ControlFigure.Panel location(Panel panel) {
        List<LevelLine> lines = new ArrayList<>(lines(panel));
        if (showsSpecification()) {
            lines.addAll(HistogramSection.specification(finding.result()));
        }
        List<Point> points = gaps();
        List<Point> second = panel.hasSecond() ? gaps() : List.of();
        for (int i = 0; i < panel.count(); i++) {
            int at = words.index(panel.number(i));
            Point point = point(panel, i, panel.value(i));
            if (panel.hasSecond()) {
                // a signal belongs to the sum that lies beyond its line
                Point other = point(panel, i, panel.second(i).orElseThrow());
                points.set(at, panel.beyondLimit(i) < 0 ? quiet(point) : point);
                second.set(at, panel.beyondLimit(i) < 0 ? other : quiet(other));
            } else {
                boolean out = words.isIndividuals() && isOut(panel.value(i));
                points.set(at, out ? point.outOfSpecification() : point);
            }
        }
        return new ControlFigure.Panel(
                named(panel), words.unit(), points, second, panel.hasZones(), lines, Optional.empty(), trends());
    }

    private static Point quiet(Point point) {
        return new Point(
                point.value(),
                point.lower(),
                point.centre(),
                point.upper(),
                "",
                point.shape() == ControlFigure.Shape.EXCLUDED ? point.shape() : ControlFigure.Shape.ORDINARY);
    }

    private List<Point> gaps() {
        return new ArrayList<>(Collections.nCopies(chart.data().count(), Point.NONE));
    }

    private ControlFigure.Panel spread(Panel panel) {
        List<Point> points = gaps();
        for (int i = 0; i < panel.count(); i++) {
            points.set(words.index(panel.number(i)), point(panel, i, panel.value(i)));
        }
        return new ControlFigure.Panel(
                named(panel), words.unit(), points, List.of(), false, lines(panel), scaleWithoutSpread());
    }

    /** Where no two readings differ a panel of spread runs over some steps of the readings, and not over figures that nothing has. */
    private Optional<Scale> scaleWithoutSpread() {
        boolean alike = chart.sigmaWithin().filter(each -> each.sigma() == 0).isPresent()
                && finding.summary()
                        .filter(each -> each.standardDeviation().orElse(0) == 0)
                        .isPresent();
        return alike
                ? finding.summary()
                        .map(each -> new Scale(0, SHOWN_STEPS * Math.pow(10, -new Readings(finding.result()).places())))
                : Optional.empty();
    }

    /** Panels of spread in one unit get one scale, so that they can be compared by eye, unless one would be pressed flat. */
    private static List<ControlFigure.Panel> onOneScale(List<ControlFigure.Panel> panels) {
        if (panels.size() < 3) {
            return panels;
        }
        double[] tops =
                panels.stream().skip(1).mapToDouble(ControlChartSection::top).toArray();
        double most = DoubleStream.of(tops).max().orElse(0);
        double least = DoubleStream.of(tops).min().orElse(0);
        if (!(most > 0) || least < LEAST_SHARED * most) {
            return panels;
        }
        List<ControlFigure.Panel> scaled = new ArrayList<>();
        for (ControlFigure.Panel panel : panels) {
            scaled.add(scaled.isEmpty() ? panel : panel.on(new Scale(0, most * 1.08)));
        }
        return scaled;
    }

    private static double top(ControlFigure.Panel panel) {
        return panel.points().stream()
                .flatMapToDouble(point -> DoubleStream.of(point.value(), point.upper()))
                .filter(Double::isFinite)
                .max()
                .orElse(0);
    }

    /** The lines of a process that drifts, where the points are single readings. */
    private List<Trend> trends() {
        if (!words.isIndividuals()) {
            return List.of();
        }
        return study.indices().flatMap(ProcessStudy.Indices::trended).stream()
                .flatMap(trended -> trended.segments().stream())
                .flatMap(segment -> segment.line().stream()
                        .map(line -> new Trend(segment.from() + 1, segment.to(), line.start(), line.end())))
                .filter(trend -> trend.to() <= chart.data().count())
                .toList();
    }

    /** The statistic, and of how many readings where all subgroups have one size. */
    private String named(Panel panel) {
        String statistic = words.statistic(panel.kind());
        if (words.isCounted() || words.isSingle() || words.addsUp() || panel.kind() == PanelKind.BETWEEN) {
            return statistic;
        }
        OptionalInt size = chart.data().commonSize();
        return size.isPresent()
                ? Labels.text("chart.statistic-of", statistic, size.getAsInt())
                : Labels.text("chart.statistic-differing", statistic);
    }

    private Point point(Panel panel, int i, double value) {
        Optional<Lines> lines = panel.lines(i);
        Point point = Point.of(
                value,
                lines.map(each -> lower(panel, each)).orElse(Double.NaN),
                lines.map(Lines::centre).orElse(Double.NaN),
                lines.map(Lines::upper).orElse(Double.NaN));
        if (panel.isExcluded(i)) {
            return point.shaped(ControlFigure.Shape.EXCLUDED);
        }
        String marks = signals.marks(panel.kind(), panel.number(i));
        Point shaped = signals.isAt(panel.kind(), panel.number(i)) ? point.shaped(ControlFigure.Shape.SIGNAL) : point;
        return marks.isEmpty() ? shaped : shaped.marked(marks);
    }

    /** A range, a count, and a value that nature bounds at zero cannot fall below it: a lower limit there is none. */
    private double lower(Panel panel, Lines lines) {
        boolean bounded = panel.kind() != PanelKind.LOCATION
                || panel.nature() == PanelNature.COUNTED
                || (finding.result().characteristic().limits().naturalLower() && !panel.hasSecond());
        return bounded && lines.lower() <= 0 ? Double.NaN : lines.lower();
    }

    private static Optional<Lines> lastLines(Panel panel) {
        for (int i = panel.count() - 1; i >= 0; i--) {
            if (panel.lines(i).isPresent()) {
                return panel.lines(i);
            }
        }
        return Optional.empty();
    }

    /** The names of the lines; where they differ from point to point, those of the last. */
    private List<LevelLine> lines(Panel panel) {
        List<LevelLine> labelled = new ArrayList<>();
        Optional<Lines> last = lastLines(panel);
        if (last.isEmpty()) {
            return labelled;
        }
        Lines lines = last.get();
        if (panel.hasSecond()) {
            labelled.add(line(LevelLine.Kind.CONTROL_LIMIT, Labels.text("line.decision"), lines.upper()));
            labelled.add(line(LevelLine.Kind.CONTROL_LIMIT, Labels.text("line.decision"), lines.lower()));
            int end = panel.count() - 1;
            labelled.add(new LevelLine(LevelLine.Kind.NAME, Labels.text("line.upper-sum"), "", panel.value(end)));
            labelled.add(new LevelLine(
                    LevelLine.Kind.NAME,
                    Labels.text("line.lower-sum"),
                    "",
                    panel.second(end).orElseThrow()));
            return labelled;
        }
        String which = panel.commonLines().isPresent() ? "" : Labels.text("line.last") + " ";
        boolean oneCentre = IntStream.range(0, panel.count())
                .mapToObj(panel::lines)
                .flatMap(Optional::stream)
                .allMatch(each -> each.centre() == lines.centre());
        labelled.add(line(LevelLine.Kind.CONTROL_LIMIT, which + Labels.text("line.ucl"), lines.upper()));
        labelled.add(
                line(LevelLine.Kind.CENTRE, (oneCentre ? "" : which) + Labels.text("line.centre"), lines.centre()));
        if (!Double.isNaN(lower(panel, lines))) {
            labelled.add(line(LevelLine.Kind.CONTROL_LIMIT, which + Labels.text("line.lcl"), lines.lower()));
        }
        return labelled;
    }

    private LevelLine line(LevelLine.Kind kind, String name, double at) {
        return new LevelLine(kind, name, figure(at), at);
    }

    /** A value of the chart with the decimals that it is entitled to. */
    String figure(double value) {
        return Figures.rounded(value, places);
    }

    /** The lower limit in figures; a dash where there is none. */
    String lowerFigure(Panel panel, Lines lines) {
        double lower = lower(panel, lines);
        return Double.isNaN(lower) ? Figures.DASH : figure(lower);
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
        Optional<Lines> lines = lastLines(chart.location());
        if (lines.isEmpty()) {
            return true;
        }
        double low = limits.lower().map(Places::of).orElse(lines.get().lower());
        double high = limits.upper().map(Places::of).orElse(lines.get().upper());
        if (lines.get().upper() == lines.get().lower()) {
            // limits without width look the same on every scale
            return true;
        }
        double whole =
                Math.max(high, lines.get().upper()) - Math.min(low, lines.get().lower());
        return (lines.get().upper() - lines.get().lower()) / whole >= LEAST_SHARE;
    }
}
