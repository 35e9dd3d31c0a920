package io.github.firstoff.report.section;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.model.Block.MarkedItem;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.Panel;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.study.chart.PanelNature;
import io.github.firstoff.study.chart.RuleSet;
import io.github.firstoff.study.chart.RunRule;
import io.github.firstoff.study.chart.Side;
import io.github.firstoff.study.chart.Signal;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The signals of a chart, gathered into episodes: signals of one test on one side of one panel whose patterns overlap tell one
 * story and get one number and one sentence. On a chart with many, the longest are told and the rest counted.
 */
final class SignalList {
    /** So many episodes are told one by one; the rest are counted. */
    private static final int TOLD = 7;

    /** On a chart of more points than this an episode is marked only where it is first complete. */
    private static final int CROWDED = 250;

    /** An episode of more signals than this is ringed at its ends only. */
    /** More points beyond a limit than these are a state of things, not single events. */
    private static final int MOST_APART = 5;

    private static final int RINGED = 8;

    /** Marks the points of the episodes that are only counted. */
    private static final String REST = "+";

    private static final Integer COUNTED = 0;

    private final Assessment assessment;
    private final RuleSet tests;
    private final ChartWords words;
    private final List<Episode> told;
    private final List<Episode> counted;
    private final Map<Point, List<Integer>> marks;
    private final Set<Point> at;

    SignalList(ProcessStudy study, ChartWords words) {
        this.assessment = study.assessment();
        this.tests = study.request().tests();
        this.words = words;
        List<Episode> episodes = episodes(assessment.signals());
        Set<Episode> longest = episodes.stream()
                .sorted(Comparator.comparing(Episode::length).reversed().thenComparing(Episode::test))
                .limit(TOLD)
                .collect(Collectors.toSet());
        told = episodes.stream().filter(longest::contains).toList();
        counted = episodes.stream().filter(each -> !longest.contains(each)).toList();
        marks = marks();
        at = assessment.signals().stream()
                .map(each -> new Point(each.panel(), each.at()))
                .collect(Collectors.toSet());
    }

    /** Overlapping signals of one test, side and panel. */
    record Episode(String test, PanelKind panel, Side side, List<Signal> signals) {
        int first() {
            return signals.get(0).points().get(0);
        }

        int last() {
            return signals.get(signals.size() - 1).at();
        }

        /** How many signals it holds. */
        int length() {
            return signals.size();
        }

        /** The next signal of its kind belongs to it when its pattern overlaps or directly follows the last one. */
        boolean goesOn(Signal signal) {
            return signal.points().get(0) <= last() + 1;
        }
    }

    private record Kind(String test, PanelKind panel, Side side) {}

    private static List<Episode> episodes(List<Signal> signals) {
        Map<Kind, Episode> open = new LinkedHashMap<>();
        List<Episode> all = new ArrayList<>();
        for (Signal signal : signals) {
            Kind kind = new Kind(signal.test(), signal.panel(), signal.side());
            Episode current = open.get(kind);
            if (current == null || !current.goesOn(signal)) {
                current = new Episode(signal.test(), signal.panel(), signal.side(), new ArrayList<>());
                open.put(kind, current);
                all.add(current);
            }
            current.signals().add(signal);
        }
        all.sort(Comparator.comparing(Episode::panel)
                .thenComparing(Episode::first)
                .thenComparing(Episode::test));
        return all;
    }

    /** Whether points stand so close that rings on all of them would hide the chart. */
    boolean isCrowded() {
        return assessment.chart().location().count() > CROWDED;
    }

    /** The episodes on one panel that are told. */
    List<Episode> on(PanelKind panel) {
        return told.stream().filter(each -> each.panel() == panel).toList();
    }

    boolean isEmpty() {
        return told.isEmpty();
    }

    /** Whether a point completes the pattern of any test. */
    boolean isAt(PanelKind panel, int number) {
        return at.contains(new Point(panel, number));
    }

    /** The told episode on a panel with the most signals, in words without a full stop. */
    String longest(PanelKind panel) {
        Episode longest =
                on(panel).stream().max(Comparator.comparing(Episode::length)).orElseThrow();
        String told = sentence(longest);
        return told.substring(0, told.length() - 1);
    }

    /** The marks of a point that completes patterns; empty for any other. */
    String marks(PanelKind panel, int number) {
        List<Integer> told = marks.getOrDefault(new Point(panel, number), List.of());
        return told.contains(COUNTED) ? REST : shortened(told);
    }

    private record Point(PanelKind panel, int number) {}

    /** The numbers of the told episodes that each point completes; a point of counted episodes only has {@link #COUNTED}. */
    private Map<Point, List<Integer>> marks() {
        Map<Point, List<Integer>> marks = new HashMap<>();
        for (int i = 0; i < told.size(); i++) {
            for (Point point : completed(told.get(i))) {
                marks.computeIfAbsent(point, each -> new ArrayList<>()).add(i + 1);
            }
        }
        for (Episode episode : counted) {
            completed(episode).forEach(point -> marks.putIfAbsent(point, List.of(COUNTED)));
        }
        return marks;
    }

    private List<Point> completed(Episode episode) {
        return ringed(episode).stream()
                .map(signal -> new Point(episode.panel(), signal.at()))
                .toList();
    }

    /** A ring on every signal, as long as they are few; else on the first, and on a chart that is not too long on the last. */
    private List<Signal> ringed(Episode episode) {
        List<Signal> all = episode.signals();
        if (isCrowded()) {
            return all.subList(0, 1);
        }
        return all.size() <= RINGED ? all : List.of(all.get(0), all.get(all.size() - 1));
    }

    /** Whether some signals that are told have a diamond only, no ring. */
    boolean hasUnringed() {
        return told.stream().anyMatch(each -> ringed(each).size() < each.length());
    }

    /** {@code 1}, {@code 1,3}, and {@code 1–4} for a run of three and more. */
    static String shortened(List<Integer> numbers) {
        List<String> parts = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < numbers.size(); i++) {
            boolean runEnds = i + 1 == numbers.size() || numbers.get(i + 1) != numbers.get(i) + 1;
            if (runEnds && i - from >= 2) {
                parts.add(numbers.get(from) + "–" + numbers.get(i));
            } else if (runEnds) {
                numbers.subList(from, i + 1).forEach(number -> parts.add(Integer.toString(number)));
            }
            from = runEnds ? i + 1 : from;
        }
        return String.join(",", parts);
    }

    /** A sentence for each episode, and one for those that are only counted. */
    List<MarkedItem> items() {
        List<MarkedItem> items = new ArrayList<>();
        for (int i = 0; i < told.size(); i++) {
            items.add(new MarkedItem(Integer.toString(i + 1), Text.of(sentence(told.get(i)))));
        }
        if (!counted.isEmpty()) {
            items.add(new MarkedItem(REST, Text.of(rest())));
        }
        return items;
    }

    private String sentence(Episode episode) {
        String what = words.statistic(episode.panel());
        if (isOfLimit(episode.test())) {
            List<Integer> points = episode.signals().stream().map(Signal::at).toList();
            return Labels.text("signal.points", Wording.capital(words.points(points)), what, beyond(episode));
        }
        String rule = Wording.capital(sided(episode));
        Signal first = episode.signals().get(0);
        if (episode.length() == 1 && episode.side() != Side.RISING && episode.side() != Side.FALLING) {
            return Labels.text("signal.pattern", rule, words.points(first.points()));
        }
        return Labels.text("signal.patterns", rule, words.span(episode.first(), episode.last()), episode.length());
    }

    /** What a point beyond its limit is beyond; three sigma only where the limit is one of three sigma. */
    private String beyond(Episode episode) {
        if (episode.panel() == PanelKind.LOCATION && words.isCusum()) {
            return Labels.text(episode.side() == Side.ABOVE ? "signal.upper-decision" : "signal.lower-decision");
        }
        String limit = Labels.text(episode.side() == Side.ABOVE ? "signal.above-limit" : "signal.below-limit");
        Panel panel = assessment.chart().panel(episode.panel()).orElseThrow();
        return panel.nature() == PanelNature.NORMAL ? Labels.text("signal.beyond-three", limit) : limit;
    }

    /** The pattern with the side or direction in which it lies. */
    private String sided(Episode episode) {
        Remark found = rule(episode.test())
                .map(rule -> rule.remark(episode.side()))
                .orElseGet(() -> Remark.verbatim(episode.test()));
        return episode.side() == Side.ABOVE || episode.side() == Side.BELOW
                ? Labels.text("signal.sided", found, ChartWords.side(episode.side()))
                : Labels.text(found);
    }

    /** Whether a test looks at single points beyond a limit. */
    private boolean isOfLimit(String test) {
        return rule(test).filter(rule -> rule.span() == 1).isPresent();
    }

    /**
     * The points that lie beyond a limit one by one, where all of these signals are such; none where another test signals, or where
     * more than two of them follow one another, which is a run.
     */
    List<Integer> pointsApart(List<Signal> signals) {
        List<Integer> points =
                signals.stream().map(Signal::at).distinct().sorted().toList();
        boolean single = points.size() > 1
                && points.size() <= MOST_APART
                && signals.stream().allMatch(each -> isOfLimit(each.test()));
        for (int i = 2; single && i < points.size(); i++) {
            single = points.get(i) - points.get(i - 2) > 2;
        }
        return single ? points : List.of();
    }

    private Optional<RunRule> rule(String test) {
        return tests.rules().stream().filter(rule -> rule.id().equals(test)).findFirst();
    }

    private String rest() {
        Map<String, Integer> byTest = new LinkedHashMap<>();
        counted.forEach(each -> byTest.merge(each.test(), each.signals().size(), Integer::sum));
        int sum = byTest.values().stream().mapToInt(Integer::intValue).sum();
        return Labels.text(
                "signal.rest",
                sum,
                byTest.entrySet().stream()
                        .map(each -> each.getValue() + " × " + counted(each.getKey()))
                        .collect(Collectors.joining("; ")));
    }

    /** A test in words; of a cumulative sum its decision line, which is no line of three sigma. */
    private String counted(String test) {
        return words.isCusum() && isOfLimit(test) ? Labels.text("signal.beyond-decision") : Labels.text(remark(test));
    }

    /** The test in words. */
    private Remark remark(String test) {
        return rule(test).map(RunRule::remark).orElseGet(() -> Remark.verbatim(test));
    }

    /** How many signals on which panel, and where the first is: {@code 12 signals on the means, the first at subgroup 14}. */
    String inShort() {
        List<String> parts = new ArrayList<>();
        for (PanelKind panel : PanelKind.values()) {
            List<Signal> signals = assessment.signals().stream()
                    .filter(each -> each.panel() == panel)
                    .toList();
            if (!signals.isEmpty()) {
                String first = words.point(signals.get(0).at());
                parts.add(Labels.text("signal.in-short", signals.size(), words.statistics(panel), first));
            }
        }
        return String.join("; ", parts);
    }
}
