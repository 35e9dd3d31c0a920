package io.github.firstoff.report.section;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.figure.Thinning;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.Baseline;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.DispersionCheck;
import io.github.firstoff.study.chart.LimitsFrom;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a reader must know to read a chart, in sentences for the notes under it: what is plotted, where its limits come from, where
 * runs begin anew, how often the tests cry wolf, and what is not drawn.
 */
final class ChartConditions {
    /** A remark on one stretch: its name and what is said of it. */
    private static final String OF_STRETCH = "chart.of-stretch";

    /** Remarks on limits, breaks, exclusions and recalculation, of which the sheet speaks in words of its own. */
    private static final Set<String> TOLD_HERE = Set.of(
            "chart.limits-from-points",
            "chart.frozen",
            "chart.break",
            "chart.not-applied",
            "chart.recalculated",
            "chart.excluded",
            "chart.spread-estimated-by");

    private static final Set<String> TOLD_OF_DISPERSION =
            Set.of("chart.counts-adapted", "chart.counts-kept", "chart.counts-by-choice");

    /** So many breaks are named one by one. */
    private static final int NAMED_BREAKS = 6;

    private final ProcessStudy study;
    private final ControlChart chart;
    private final ChartWords words;

    ChartConditions(ProcessStudy study, ChartWords words) {
        this.study = study;
        this.chart = study.chart();
        this.words = words;
    }

    /** All of them. */
    List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        plotted().ifPresent(sentences::add);
        limits().ifPresent(sentences::add);
        dispersion().ifPresent(sentences::add);
        breaks().ifPresent(sentences::add);
        study.remarks().stream()
                .filter(remark -> !isToldHere(remark))
                .filter(remark ->
                        !(remark.key().equals(OF_STRETCH) && study.remarks().contains(inStretch(remark))))
                .map(ChartConditions::inWords)
                .forEach(sentences::add);
        idle().ifPresent(sentences::add);
        if (chart.location().hasLines()) {
            sentences.add(Labels.text(study.falseSignals().remark()));
        }
        thinned().ifPresent(sentences::add);
        return sentences;
    }

    /** Whether the subject of a remark stands on the sheet in words of its own. */
    private boolean isToldHere(Remark remark) {
        return TOLD_HERE.contains(remark.key())
                || (chart.dispersionCheck().isPresent() && TOLD_OF_DISPERSION.contains(remark.key()))
                || (words.isCusum() && remark.key().equals("chart.cusum-design"))
                || (chart.kind().equals("ewma") && remark.key().equals("chart.ewma-design"));
    }

    /** What a remark on one stretch says of it. */
    private static Object inStretch(Remark remark) {
        return remark.arguments().get(1);
    }

    private static String inWords(Remark remark) {
        return remark.key().equals(OF_STRETCH)
                ? Labels.text("conditions.stretch", remark.arguments().get(0), inStretch(remark))
                : Labels.text(remark);
    }

    /** The chosen tests that do not apply to the points of this chart, in words. */
    private Optional<String> idle() {
        List<String> idle = study.request().tests().rules().stream()
                .filter(rule -> chart.panels().stream().noneMatch(panel -> rule.judges(panel.nature())))
                .map(rule -> Labels.text(rule.remark()))
                .toList();
        return idle.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        Labels.text("conditions.idle", chart.location().nature().remark(), String.join("; ", idle)));
    }

    /** What a point is, where its name does not say it. */
    private Optional<String> plotted() {
        String k = settings().reference().isPresent()
                ? Figures.twoDigits(settings().reference().getAsDouble())
                : "0.5";
        return switch (chart.kind()) {
            case "cusum" ->
                Optional.of(Labels.text(
                        "conditions.cusum",
                        k,
                        Figures.rounded(settings().interval().orElse(5), 1),
                        settings().headStart().orElse(0) > 0
                                ? Labels.text(
                                        "conditions.head-start",
                                        Figures.rounded(settings().headStart().getAsDouble() * 100, 0))
                                : ""));
            case "ewma" ->
                Optional.of(Labels.text(
                        "conditions.ewma",
                        Figures.of(decimal(settings().lambda().orElse(0.2)))));
            case "between-within" ->
                Optional.of(Labels.text(
                        "conditions.between-within",
                        chart.sigmaBetween()
                                .map(between ->
                                        Labels.text("conditions.between", Figures.amount(between, words.readingUnit())))
                                .orElse("")));
            case "deviation" ->
                Optional.of(Labels.text("conditions.deviation")
                        + (isFamily() ? " " + Labels.text("conditions.deviation-family") : ""));
            case "standardised-deviation" ->
                Optional.of(Labels.text("conditions.standardised")
                        + (isFamily() ? " " + Labels.text("conditions.standardised-family") : ""));
            case "p", "np", "u" ->
                chart.location().commonLines().isPresent()
                        ? Optional.empty()
                        : Optional.of(Labels.text("conditions.own-size", words.noun()));
            default -> Optional.empty();
        };
    }

    private io.github.firstoff.study.chart.ChartSettings settings() {
        return study.request().settings();
    }

    private static java.math.BigDecimal decimal(double value) {
        return java.math.BigDecimal.valueOf(value);
    }

    private boolean isFamily() {
        return chart.data().count() > 0 && words.family(chart.data().number(0)).isPresent();
    }

    /** Names of the lines, who set them, from what. */
    private Optional<String> limits() {
        if (!chart.location().hasLines()) {
            return Optional.empty();
        }
        boolean zones = chart.location().hasZones();
        String names = Labels.text(
                words.isCusum()
                        ? "conditions.decision-lines"
                        : zones ? "conditions.limits-three-sigma" : "conditions.limits");
        String sigma = chart.sigmaWithin()
                .map(estimate -> Labels.text(
                        "conditions.sigma",
                        Figures.amount(estimate.sigma(), words.readingUnit()),
                        CapabilitySection.estimator(estimate.estimator())))
                .orElse("");
        return Optional.of(Labels.text(
                "conditions.all-limits",
                names,
                origin(),
                sigma,
                chart.location().commonLines().isPresent() ? "" : " " + Labels.text("conditions.differ"),
                zones ? " " + Labels.text("conditions.dotted") : ""));
    }

    /** Which points set the limits, or where they come from. */
    private String origin() {
        if (study.frozenFrom().isPresent()) {
            return Labels.text("origin.frozen", study.frozenFrom().get());
        }
        if (chart.stages().size() > 1) {
            return Labels.text("origin.stretches");
        }
        int points = chart.data().count();
        if (chart.limitsFrom() == 0) {
            return Labels.text("origin.before");
        }
        LimitsFrom from = study.request().limits();
        boolean all = from.baseline().equals(Baseline.ALL) && from.phase().isEmpty();
        if (all
                || (from.phase().isEmpty()
                        && endOfBaseline().isEmpty()
                        && from.baseline().from() == 1)) {
            return chart.limitsFrom() == points
                    ? Labels.text("origin.all", points, words.nouns())
                    : Labels.text("origin.some", chart.limitsFrom(), points, words.nouns());
        }
        int first = from.baseline().from();
        if (from.phase().isEmpty() && first == 1) {
            return Labels.text("origin.first", chart.limitsFrom(), points, words.nouns());
        }
        return from.phase()
                .map(phase -> Labels.text("origin.phase", chart.limitsFrom(), words.nouns(), phase))
                .orElseGet(() -> Labels.text(
                        "origin.span",
                        chart.limitsFrom(),
                        words.nouns(),
                        first,
                        Math.min(from.baseline().to(), points)));
    }

    /** The number of the last point that set limits, where others follow that are judged by them. */
    OptionalInt endOfBaseline() {
        LimitsFrom from = study.request().limits();
        int last =
                chart.data().count() == 0 ? 0 : chart.data().number(chart.data().count() - 1);
        return !from.baseline().equals(Baseline.ALL) && from.baseline().to() < last && chart.limitsFrom() > 0
                ? OptionalInt.of(from.baseline().to())
                : OptionalInt.empty();
    }

    /** Whether counts spread as their distribution says, and what was done about it. */
    private Optional<String> dispersion() {
        if (chart.dispersionCheck().isEmpty()) {
            return Optional.empty();
        }
        DispersionCheck check = chart.dispersionCheck().get();
        boolean binomial = chart.kind().equals("p") || chart.kind().equals("np");
        String found = Labels.text(
                "dispersion.found",
                words.noun(),
                Figures.rounded(check.sigmaZ(), 2),
                Labels.text(binomial ? "dispersion.binomial" : "dispersion.poisson"),
                Wording.span(Figures.rounded(check.lower(), 2), Figures.rounded(check.upper(), 2)));
        if (!check.isOver() && !check.isUnder()) {
            return Optional.of(
                    found + " " + Labels.text(check.applied() ? "dispersion.chance-applied" : "dispersion.chance"));
        }
        return Optional.of(found + " " + Labels.text("dispersion.more-or-less", check.isOver()) + " "
                + (check.applied()
                        ? Labels.text(check.isOver() ? "dispersion.widened" : "dispersion.narrowed")
                        : Labels.text("dispersion.kept")));
    }

    /** Where runs begin anew, by what was done. */
    private Optional<String> breaks() {
        List<Break> breaks = chart.data().breaks();
        if (breaks.isEmpty()) {
            return Optional.empty();
        }
        Map<Remark, List<String>> byReason = new LinkedHashMap<>();
        BreakLetters letters = new BreakLetters(chart);
        for (Break each : breaks) {
            byReason.computeIfAbsent(each.cause(), cause -> new ArrayList<>())
                    .add(letters.before(each.number()) + words.point(each.number()) + " (" + Labels.text(each.name())
                            + ")");
        }
        // Letters over the chart are explained one by one, unless the table of stretches does.
        boolean named = breaks.size() <= NAMED_BREAKS
                || (letters.areNeeded() && chart.stages().size() <= 1);
        String told = byReason.entrySet().stream()
                .map(each -> Labels.text(
                        "breaks.where",
                        named
                                ? String.join(", ", each.getValue())
                                : Labels.text("breaks.times", each.getValue().size()),
                        each.getKey()))
                .collect(Collectors.joining("; "));
        return Optional.of(Labels.text("breaks.told", told));
    }

    private Optional<String> thinned() {
        int count = chart.data().count();
        int neighbours = Thinning.neighbours(count);
        return neighbours == 1
                ? Optional.empty()
                : Optional.of(Labels.text("conditions.thinned", Phrases.count(count), neighbours));
    }
}
