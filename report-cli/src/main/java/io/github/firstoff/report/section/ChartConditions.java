package io.github.firstoff.report.section;

import io.github.firstoff.report.figure.Thinning;
import io.github.firstoff.sample.Break;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.study.chart.Baseline;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.DispersionCheck;
import io.github.firstoff.study.chart.LimitsFrom;
import io.github.firstoff.study.chart.RunRule;
import io.github.firstoff.study.chart.Stage;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * What a reader must know to read a chart, in sentences for the notes under it: what is plotted, where its limits come from, where
 * runs begin anew, how often the tests cry wolf, and what is not drawn.
 */
final class ChartConditions {
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
        study.notes().stream()
                .filter(note -> !isToldHere(note))
                .filter(note ->
                        study.notes().stream().noneMatch(other -> !other.equals(note) && note.endsWith(": " + other)))
                .map(this::ofStretch)
                .forEach(sentences::add);
        idle().ifPresent(sentences::add);
        if (chart.location().hasLines()) {
            sentences.add(study.falseSignals().sentence());
        }
        thinned().ifPresent(sentences::add);
        return sentences;
    }

    /** Notes whose subject stands on the sheet in words of its own: limits, breaks, exclusions, recalculation, dispersion. */
    private boolean isToldHere(String note) {
        return note.startsWith("The limits come from points ")
                || note.startsWith("The limits were set before and are kept")
                || note.startsWith("Patterns and moving ranges begin anew at point ")
                || note.startsWith("Not applied, because the chart plots ")
                || note.startsWith("Limits are recalculated from point ")
                || (note.startsWith("Point ") && note.contains(" is excluded, sets no limits and is not tested: "))
                || (chart.dispersionCheck().isPresent() && note.startsWith("The counts spread "))
                || (chart.dispersionCheck().isPresent() && note.startsWith("By choice the limits are "))
                || note.startsWith("Spread estimated by ")
                || (words.isCusum() && note.startsWith("Reference value k "))
                || (chart.kind().equals("ewma") && note.startsWith("Weight lambda "));
    }

    /** A note on one stretch, which its label opens. */
    private String ofStretch(String note) {
        return chart.stages().stream()
                .map(Stage::label)
                .filter(label -> note.startsWith(label + ": "))
                .findFirst()
                .map(label -> "Stretch " + label + note.substring(label.length()))
                .orElse(note);
    }

    /** The chosen tests that do not apply to the points of this chart, in words. */
    private Optional<String> idle() {
        List<String> idle = study.request().tests().rules().stream()
                .filter(rule -> chart.panels().stream().noneMatch(panel -> rule.judges(panel.nature())))
                .map(RunRule::description)
                .toList();
        return idle.isEmpty()
                ? Optional.empty()
                : Optional.of("Not looked for, because the chart plots "
                        + chart.location().nature().words() + ": " + String.join("; ", idle) + ".");
    }

    /** What a point is, where its name does not say it. */
    private Optional<String> plotted() {
        String k = settings().reference().isPresent()
                ? Figures.twoDigits(settings().reference().getAsDouble())
                : "0.5";
        return switch (chart.kind()) {
            case "cusum" ->
                Optional.of("The upper sum adds up by how much points lie more than " + k
                        + " sigma of a point above the centre, the lower sum by how much below; each falls back to zero, and"
                        + " either signals beyond its decision line, "
                        + Figures.rounded(settings().interval().orElse(5), 1) + " sigma from zero"
                        + (settings().headStart().orElse(0) > 0
                                ? ". Both start at "
                                        + Figures.rounded(settings().headStart().getAsDouble() * 100, 0)
                                        + " % of it, so that a start that is off shows early."
                                : "."));
            case "ewma" ->
                Optional.of(
                        "Each point is the mean of all points up to it, weighted: the newest counts "
                                + Figures.of(decimal(settings().lambda().orElse(0.2)))
                                + ", every earlier one that much less than the one after it. The limits widen as the average settles.");
            case "between-within" ->
                Optional.of(
                        "The limits of the means come from how far successive means differ, so that ordinary movement"
                                + " from one subgroup to the next is no signal"
                                + chart.sigmaBetween()
                                        .map(between -> "; spread between subgroups, sigma "
                                                + Figures.amount(between, words.readingUnit()))
                                        .orElse("")
                                + ".");
            case "deviation" ->
                Optional.of("Points count from the nominal: 0 is on nominal."
                        + (isFamily()
                                ? " Under the axis: the number of the characteristic that each point is of; one process makes them all."
                                : ""));
            case "standardised-deviation" ->
                Optional.of(
                        "Points count from the nominal of their own characteristic, in standard deviations of its own"
                                + " readings (sigmas), so that parts that spread differently share one chart: 0 is on nominal."
                                + (isFamily() ? " Under the axis: the number of that characteristic." : ""));
            case "p", "np", "u" ->
                chart.location().commonLines().isPresent()
                        ? Optional.empty()
                        : Optional.of("Each " + words.noun() + " is judged by limits of its own size.");
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
        String names = words.isCusum()
                ? "Decision lines and centre, "
                : "UCL and LCL: control limits" + (zones ? " at three sigma, " : ", ");
        String sigma = chart.sigmaWithin()
                .map(estimate -> "; sigma " + Figures.amount(estimate.sigma(), words.readingUnit()) + " from the "
                        + CapabilitySection.estimator(estimate.estimator()))
                .orElse("");
        String last = chart.location().commonLines().isPresent()
                ? ""
                : ". They differ from point to point: the values at the right are those of the last";
        return Optional.of(names + origin() + sigma + last + (zones ? ". Dotted: one and two sigma" : "")
                + ". Control limits say what the process does, not what the drawing allows.");
    }

    /** Which points set the limits, or where they come from. */
    private String origin() {
        if (study.frozenFrom().isPresent()) {
            return "set before and kept: limits from " + study.frozenFrom().get();
        }
        if (chart.stages().size() > 1) {
            return "set anew by every stretch, as the table says";
        }
        int points = chart.data().count();
        if (chart.limitsFrom() == 0) {
            return "set before";
        }
        LimitsFrom from = study.request().limits();
        boolean all = from.baseline().equals(Baseline.ALL) && from.phase().isEmpty();
        if (all
                || (from.phase().isEmpty()
                        && endOfBaseline().isEmpty()
                        && from.baseline().from() == 1)) {
            return chart.limitsFrom() == points
                    ? "set by all " + points + " " + words.nouns()
                    : "set by " + chart.limitsFrom() + " of " + points + " " + words.nouns();
        }
        String which = from.phase().map(phase -> " of phase " + phase).orElse("");
        int first = from.baseline().from();
        if (from.phase().isEmpty() && first == 1) {
            return "set by the first " + chart.limitsFrom() + " of " + points + " " + words.nouns();
        }
        return "set by " + chart.limitsFrom() + " " + words.nouns() + which
                + (from.phase().isEmpty()
                        ? ", " + first + " to " + Math.min(from.baseline().to(), points)
                        : "");
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
        String distribution = chart.kind().equals("p") || chart.kind().equals("np") ? "binomial" : "Poisson";
        String ratio = Figures.rounded(check.sigmaZ(), 2);
        String chance =
                " (by chance " + Figures.rounded(check.lower(), 2) + " to " + Figures.rounded(check.upper(), 2) + ")";
        String found = "From one " + words.noun() + " to the next the counts differ " + ratio
                + " times as widely as the " + distribution + " distribution says" + chance + ": ";
        if (!check.isOver() && !check.isUnder()) {
            return Optional.of(
                    found
                            + (check.applied()
                                    ? "no more and no less than chance explains; by choice the limits have that width all the same."
                                    : "no more and no less than chance explains, so the limits are those of that distribution."));
        }
        String more = check.isOver() ? "more" : "less";
        String changed = check.isOver() ? "widened" : "narrowed";
        return Optional.of(found + "they spread " + more + " than chance explains. "
                + (check.applied()
                        ? "The limits are " + changed + " by that factor (Laney 2002)"
                                + (check.isOver()
                                        ? "; what makes the counts differ so is worth knowing."
                                        : "; look whether pieces were counted as they came.")
                        : "By choice the limits are those of the distribution all the same."));
    }

    /** Where runs begin anew, by what was done. */
    private Optional<String> breaks() {
        List<Break> breaks = chart.data().breaks();
        if (breaks.isEmpty()) {
            return Optional.empty();
        }
        Map<String, List<String>> byReason = new LinkedHashMap<>();
        for (Break each : breaks) {
            byReason.computeIfAbsent(each.reason(), reason -> new ArrayList<>())
                    .add(words.point(each.number()) + " (" + each.label() + ")");
        }
        String told = byReason.entrySet().stream()
                .map(each -> (breaks.size() > NAMED_BREAKS
                                ? Phrases.counted(each.getValue().size(), "time", "times")
                                : String.join(", ", each.getValue()))
                        + ", where " + each.getKey())
                .collect(Collectors.joining("; "));
        return Optional.of(
                "At a gap something was done to the process, and patterns and moving ranges begin anew: " + told + ".");
    }

    private Optional<String> thinned() {
        int count = chart.data().count();
        int neighbours = Thinning.neighbours(count);
        return neighbours == 1
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "Of these %,d points the picture draws, of every %d neighbours, the highest and the lowest, and every"
                                + " point that signals, is excluded or lies out of tolerance; limits and tests use them all.",
                        count,
                        neighbours));
    }
}
