package io.github.firstoff.report.section;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.Lines;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.Side;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A characteristic under study told in sentences: what happened, where, what it means and what it does not mean. */
final class StudyStory {
    /** The last points whose mean says where the process ended: one alone would be chance. */
    private static final int LAST = 3;

    /** Fewer false signals than this are not to be expected on the chart at hand. */
    private static final double LEAST_EXPECTED = 0.5;

    private final CharacteristicResult result;
    private final ProcessStudy study;
    private final ControlChart chart;
    private final ChartWords words;
    private final SignalList signals;

    StudyStory(Finding finding) {
        result = finding.result();
        study = finding.study().orElseThrow();
        chart = study.chart();
        words = new ChartWords(study);
        signals = new SignalList(study, words);
    }

    SignalList signals() {
        return signals;
    }

    String signalsInShort() {
        return signals.inShort();
    }

    /** Whether the readings that set the limits do not differ at all: then the chart can show nothing. */
    private boolean isWithoutSpread() {
        return chart.sigmaWithin().map(estimate -> estimate.sigma() == 0).orElse(false);
    }

    /** Whether the process is shown to be in control, by a chart that could have shown the contrary. */
    boolean isShownInControl() {
        return state() == ControlState.IN_CONTROL && !isWithoutSpread();
    }

    private ControlState state() {
        return study.assessment().control();
    }

    /** The sentence over the chart. */
    String headline() {
        String readings = Wording.conforming(result);
        if (isWithoutSpread()) {
            return Labels.text("story.no-spread", readings);
        }
        return switch (state()) {
            case IN_CONTROL ->
                study.isInStretches()
                        ? Labels.text(
                                "story.in-control.stretches", chart.stages().size(), readings)
                        : Labels.text("story.in-control", index(), readings);
            case OUT_OF_CONTROL ->
                Labels.text("story.out-of-control", Wording.capital(drift().orElseGet(this::change)), readings);
            case NOT_ASSESSED -> Labels.text("story.not-assessed", readings);
        };
    }

    private String index() {
        return leading()
                .map(index -> ", " + index.name() + " " + CapabilitySection.figures(index))
                .orElse("");
    }

    /** The drift of a process that the plan says drifts, in place of the signals that a drift must give. */
    private Optional<String> drift() {
        return study.indices()
                .flatMap(ProcessStudy.Indices::trended)
                .flatMap(trended -> TrendSection.drift(trended, words.readingUnit()));
    }

    private Optional<Index> leading() {
        return study.indices().isEmpty() ? Optional.empty() : CapabilitySection.leading(study);
    }

    /** What changed, from the signals and where the last points lie; no cause, and no trend that the points do not show. */
    private String change() {
        if (on(PanelKind.LOCATION).isEmpty()) {
            return changeOfSpread(on(PanelKind.BETWEEN).isEmpty() ? PanelKind.DISPERSION : PanelKind.BETWEEN);
        }
        List<Signal> location = sided();
        if (location.isEmpty()) {
            return pattern();
        }
        if (words.isCusum()) {
            return sums(location.get(0));
        }
        Side side = location.get(0).side();
        int last = location.stream().mapToInt(Signal::at).max().orElseThrow();
        if (location.stream().anyMatch(each -> each.side() != side)) {
            return bothSides();
        }
        if (location.size() == 1 && location.get(0).points().size() == 1) {
            return words.addsUp()
                    ? Labels.text(
                            "story.leaves-limits",
                            words.theStatistic(PanelKind.LOCATION),
                            words.point(last),
                            offset(last),
                            ChartWords.side(side))
                    : Labels.text("story.stands-out", words.point(last), offset(last), ChartWords.side(side));
        }
        List<Integer> apart = signals.pointsApart(location);
        if (!apart.isEmpty()) {
            return Labels.text("story.beyond-at", subject(), side == Side.ABOVE, words.points(apart));
        }
        int end = chart.location().number(chart.location().count() - 1);
        if (last > end - LAST) {
            return Labels.text(
                    "story.runs-on",
                    subject(),
                    ChartWords.side(side),
                    words.point(startOfLast(last)),
                    ending(),
                    ChartWords.side(side),
                    liesWhollyOn(side, startOfLast(last), end));
        }
        int first =
                location.stream().mapToInt(each -> each.points().get(0)).min().orElseThrow();
        boolean once = startOfLast(last) == first;
        return Labels.text(
                once ? "story.runs-once" : "story.runs-at-times",
                subject(),
                ChartWords.side(side),
                words.point(first),
                words.point(last),
                liesWhollyOn(side, first, last));
    }

    /** Whether every point from one to another lies on that side; of a run with others in between nothing else is said. */
    private boolean liesWhollyOn(Side side, int first, int last) {
        Panel panel = chart.location();
        for (int i = 0; i < panel.count(); i++) {
            double value = panel.value(i);
            double centre = panel.lines(i).map(Lines::centre).orElse(value);
            boolean within = panel.number(i) >= first && panel.number(i) <= last;
            if (within && (side == Side.ABOVE ? value < centre : value > centre)) {
                return false;
            }
        }
        return true;
    }

    private String changeOfSpread(PanelKind kind) {
        List<Signal> spread = on(kind);
        Signal first = spread.get(0);
        String where = words.points(spread.stream().map(Signal::at).distinct().toList());
        return Labels.text(
                "story.spread-leaves",
                words.theStatistic(kind),
                where,
                spread.size() == 1 && !words.pieces(first.at()).isEmpty() ? " (" + words.pieces(first.at()) + ")" : "");
    }

    /** Signals of the location that lie on a side of the centre line. */
    private List<Signal> sided() {
        return on(PanelKind.LOCATION).stream()
                .filter(each -> each.side() == Side.ABOVE || each.side() == Side.BELOW)
                .toList();
    }

    /** A pattern that lies on no side: a trend, an alternation, points that keep to the centre or avoid it. */
    private String pattern() {
        String told = signals.longest(PanelKind.LOCATION);
        return Labels.text(
                "story.pattern",
                words.theStatistics(PanelKind.LOCATION),
                told.substring(0, 1).toLowerCase(java.util.Locale.ROOT) + told.substring(1));
    }

    /** Which sum passed its line first, and since when it had been off zero: about then the change began. */
    private String sums(Signal first) {
        boolean up = first.side() == Side.ABOVE;
        Panel panel = chart.location();
        int i = first.at() - panel.number(0);
        int start = i;
        while (start > 0
                && panel.segment(start - 1) == panel.segment(i)
                && (up ? panel.value(start - 1) > 0 : panel.second(start - 1).orElse(0) < 0)) {
            start--;
        }
        return Labels.text("story.sums", up, words.point(first.at()), words.point(panel.number(start)));
    }

    /** Where the stretch of overlapping episodes begins that ends at the last signal. */
    private int startOfLast(int last) {
        List<Signal> location = sided();
        int start = last;
        for (int i = location.size() - 1; i >= 0; i--) {
            Signal signal = location.get(i);
            if (signal.at() >= start - 1) {
                start = Math.min(start, signal.points().get(0));
            }
        }
        return start;
    }

    private String bothSides() {
        Optional<SignalList.Episode> longest = signals.on(PanelKind.LOCATION).stream()
                .filter(each -> each.side() == Side.ABOVE || each.side() == Side.BELOW)
                .max(Comparator.comparing(SignalList.Episode::length))
                .filter(each -> each.length() >= LAST);
        if (longest.isEmpty()) {
            return Labels.text("story.both-sides");
        }
        SignalList.Episode run = longest.get();
        String told =
                Labels.text("story.longest-run", ChartWords.side(run.side()), words.span(run.first(), run.last()));
        return endsOn(run.side()) ? Labels.text("story.ending", told, ending(), ChartWords.side(run.side())) : told;
    }

    /** Whether the last points lie clearly, by more than a sigma of the statistic, on that side. */
    private boolean endsOn(Side side) {
        double sigma = chart.location()
                .lines(chart.location().count() - 1)
                .map(lines -> (lines.upper() - lines.centre()) / 3)
                .orElse(0.0);
        double end = endingOffset();
        return Math.abs(end) > sigma && (end > 0) == (side == Side.ABOVE);
    }

    private String subject() {
        boolean level = words.isSingle() && !words.isCounted() && !words.addsUp() && !words.isStandardised();
        return level ? Labels.text("story.the-level") : words.theStatistic(PanelKind.LOCATION);
    }

    private List<Signal> on(PanelKind kind) {
        return study.assessment().signals().stream()
                .filter(each -> each.panel() == kind)
                .toList();
    }

    private String offset(int number) {
        Panel panel = chart.location();
        int index = 0;
        while (panel.number(index) < number) {
            index++;
        }
        double centre = panel.lines(index).map(Lines::centre).orElse(panel.value(index));
        return words.amount(panel.value(index) - centre);
    }

    private String ending() {
        return words.amount(endingOffset());
    }

    /** How far the mean of the last points lies above the centre line. */
    private double endingOffset() {
        Panel panel = chart.location();
        int from = Math.max(0, panel.count() - LAST);
        double sum = 0;
        for (int i = from; i < panel.count(); i++) {
            double value = panel.value(i);
            sum += value - panel.lines(i).map(Lines::centre).orElse(value);
        }
        return sum / (panel.count() - from);
    }

    /** Two or three plain sentences under the headline. */
    String paragraph() {
        return switch (state()) {
            case IN_CONTROL -> inControl();
            case OUT_OF_CONTROL -> outOfControl();
            case NOT_ASSESSED -> notAssessed();
        };
    }

    private String notAssessed() {
        if (isWithoutSpread()) {
            return Labels.text("story.no-spread.more");
        }
        return Labels.text(
                chart.location().hasLines() ? "story.not-assessed.more" : "story.no-limits.more",
                words.theStatistics(PanelKind.LOCATION),
                Wording.points(chart.location().count()));
    }

    private String inControl() {
        if (isWithoutSpread()) {
            return Labels.text("story.no-spread.more");
        }
        if (study.isInStretches()) {
            return Labels.text(
                    "story.in-control.stretches.more",
                    panels(),
                    watched(),
                    chart.stages().size());
        }
        return Labels.text(
                "story.in-control.more",
                panels(),
                watched(),
                chart.location().count(),
                words.nouns(),
                ownLevel(),
                isBelowOne()
                        ? " "
                                + Labels.text(
                                        "story.below-one",
                                        leading().orElseThrow().name())
                        : "");
    }

    private String panels() {
        return switch (chart.panels().size()) {
            case 1 -> Labels.text("panels.one");
            case 2 -> Labels.text("panels.two");
            default -> Labels.text("panels.three");
        };
    }

    private String watched() {
        return Labels.text(
                words.isCounted()
                        ? "watched.counts"
                        : chart.panels().size() == 1 ? "watched.level" : "watched.level-or-spread");
    }

    private String ownLevel() {
        return Labels.text(words.isCounted() ? "own.counts" : "own.spread");
    }

    private boolean isBelowOne() {
        return leading().filter(each -> each.value().orElseThrow() < 1).isPresent();
    }

    private String outOfControl() {
        int first =
                study.assessment().signals().stream().mapToInt(Signal::at).min().orElseThrow();
        String pieces = words.pieces(first);
        String held = pieces.isEmpty()
                ? ""
                : study.assessment().signals().size() == 1
                        ? " " + Labels.text("story.it-holds", pieces)
                        : " " + Labels.text("story.earliest-holds", words.point(first), pieces);
        return Labels.text(
                "story.out-of-control.more",
                chart.panels().size(),
                signals.inShort(),
                held,
                adding(),
                drift().isPresent() ? " " + Labels.text("story.drift-signals") : "");
    }

    private String adding() {
        return words.addsUp() ? " " + Labels.text("story.adds-up") : "";
    }

    /** What may be done about a chart that signals. */
    String proposal() {
        int first = study.assessment().signals().stream()
                .flatMap(each -> each.points().stream())
                .mapToInt(Integer::intValue)
                .min()
                .orElseThrow();
        return Labels.text("story.proposal", words.point(first));
    }

    /** In one sentence for readers who cannot see the chart. */
    String alternative() {
        return Labels.text(
                "story.alternative", Wording.chart(study), chart.location().count(), words.nouns(), headline());
    }

    /** What a reader must know of chart and limits, for the notes under it. */
    List<String> notes() {
        List<String> notes = new ArrayList<>(new ChartConditions(study, words).sentences());
        if (signals.hasUnringed()) {
            notes.add(Labels.text("story.diamonds", signals.isCrowded()));
        }
        double expected = chart.location().count() / study.falseSignals().average();
        if (state() == ControlState.OUT_OF_CONTROL && expected >= LEAST_EXPECTED) {
            notes.add(Labels.text(
                    "story.expected-false",
                    chart.location().count(),
                    Figures.rounded(expected, expected < 10 ? 1 : 0)));
        }
        return notes;
    }
}
