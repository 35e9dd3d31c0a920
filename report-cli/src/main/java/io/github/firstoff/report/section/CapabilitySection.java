package io.github.firstoff.report.section;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.IndexMark;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.capability.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Indices on their scale while the process is in control. When it is not, or that is not known, there is no scale: one sentence
 * says why, and the figures are told as what was, not as what will be.
 */
final class CapabilitySection {
    private final Finding finding;
    private final ProcessStudy study;
    private final Capability capability;
    private final Unit unit;

    CapabilitySection(Finding finding) {
        this.finding = finding;
        this.study = finding.study().orElseThrow();
        this.capability = study.capability();
        this.unit = study.subgroups().sample().unit();
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        if (capability.predicts()) {
            scale(blocks);
        } else {
            past(blocks);
        }
        reasons(blocks);
        return blocks;
    }

    private void scale(List<Block> blocks) {
        List<Index> placed =
                shown().stream().filter(CapabilitySection::hasPlace).toList();
        int places = placed.stream().mapToInt(CapabilitySection::places).min().orElse(0);
        List<IndexMark> marks =
                placed.stream().map(index -> mark(index, places)).toList();
        if (!marks.isEmpty()) {
            blocks.add(new Block.IndexScale(marks, OptionalDouble.empty(), Text.of(conditions())));
        }
    }

    private List<Index> shown() {
        return List.of(capability.cp(), capability.cpk(), capability.pp(), capability.ppk(), capability.cpm());
    }

    private static boolean hasPlace(Index index) {
        return index.value().isPresent() && Double.isFinite(index.value().getAsDouble());
    }

    private static IndexMark mark(Index index, int places) {
        return new IndexMark(
                index.name(),
                index.value().orElseThrow(),
                end(index.interval().map(Interval::lower)),
                end(index.interval().map(Interval::upper)),
                figures(index, places));
    }

    private static OptionalDouble end(Optional<Double> value) {
        return value.filter(Double::isFinite).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    /** {@code 1.42 (1.18 to 1.66)}. */
    static String figures(Index index) {
        return figures(index, places(index));
    }

    private static String figures(Index index, int places) {
        String value = Figures.rounded(index.value().orElseThrow(), places);
        return bounded(index)
                .map(each -> value + " (" + Figures.rounded(each.lower(), places) + " to "
                        + Figures.rounded(each.upper(), places) + ")")
                .orElse(value);
    }

    /** The decimals that an index is entitled to. */
    private static int places(Index index) {
        double value = index.value().orElseThrow();
        return bounded(index)
                .map(each -> Figures.indexPlaces(value, each.lower(), each.upper()))
                .orElseGet(() -> Figures.indexPlaces(value, value, value));
    }

    private static Optional<Interval> bounded(Index index) {
        return index.interval().filter(each -> Double.isFinite(each.lower()) && Double.isFinite(each.upper()));
    }

    /** n, subgroups, estimators, distribution, level and control state in one line. */
    private String conditions() {
        List<String> parts = new ArrayList<>();
        parts.add("n = " + capability.count() + grouping());
        capability.within().ifPresent(each -> parts.add("Cp, Cpk: within-subgroup sigma " + sigma(each)));
        capability
                .overall()
                .ifPresent(each -> parts.add("Pp, Ppk" + (hasPlace(capability.cpm()) ? ", Cpm" : "") + ": overall s "
                        + Figures.amount(each.sigma(), unit)));
        parts.add("normal distribution assumed, not tested");
        parts.add(Figures.rounded(capability.level() * 100, 0) + " % intervals (" + methods() + ")");
        parts.add("in control");
        return String.join("; ", parts) + ".";
    }

    private String methods() {
        return shown().stream()
                .flatMap(each -> each.interval().stream())
                .map(Interval::method)
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private String grouping() {
        boolean individuals = study.assessment().chart().kind().equals("individuals");
        if (individuals) {
            return ", individuals";
        }
        String size = capability.subgroupSize().isPresent()
                ? " of " + capability.subgroupSize().getAsInt()
                : " of differing size";
        return " in " + study.assessment().chart().data().count() + " subgroups" + size;
    }

    private String sigma(SigmaEstimate estimate) {
        return Figures.amount(estimate.sigma(), unit) + " from the " + estimator(estimate.estimator());
    }

    /** The estimator in words: a bar over a letter sits badly in running type. */
    static String estimator(String name) {
        if (name.equals(SigmaEstimators.MEAN_RANGE)) {
            return "mean range (R-bar/d₂)";
        } else if (name.equals(SigmaEstimators.MEAN_STANDARD_DEVIATION)) {
            return "mean standard deviation (s-bar/c₄)";
        } else if (name.equals(SigmaEstimators.MEAN_MOVING_RANGE)) {
            return "mean moving range (MR-bar/d₂)";
        } else if (name.equals(SigmaEstimators.POOLED)) {
            return "pooled standard deviation";
        }
        return name.replace("\u0304", "-bar");
    }

    private void past(List<Block> blocks) {
        boolean out = capability.control() == ControlState.OUT_OF_CONTROL;
        blocks.add(new Block.Paragraph(Text.bold(
                        out
                                ? "No index of capability: the process was not in control, so indices do not predict."
                                : "No index of capability: whether the process was in control is not known, so indices do not predict.")
                .plain(" " + was())));
    }

    /** The past in figures: this batch as it was. */
    private String was() {
        Summary summary = finding.summary().orElseThrow();
        Readings readings = new Readings(finding.result());
        StringBuilder text = new StringBuilder("Of these ")
                .append(summary.count())
                .append(summary.count() == 1 ? " reading" : " readings")
                .append(" as they were: least ")
                .append(readings.least().map(Readings::withUnit).orElse(Figures.DASH))
                .append(", mean ")
                .append(Figures.with(SummaryTable.mean(summary, readings), unit))
                .append(", greatest ")
                .append(readings.greatest().map(Readings::withUnit).orElse(Figures.DASH));
        summary.standardDeviation()
                .ifPresent(s -> text.append(", standard deviation ").append(Figures.amount(s, unit)));
        List<String> performance = new ArrayList<>();
        for (Index index : List.of(capability.pp(), capability.ppk())) {
            if (hasPlace(index)) {
                performance.add(
                        index.name() + " " + Figures.rounded(index.value().orElseThrow(), places(index)));
            }
        }
        if (!performance.isEmpty()) {
            text.append("; performance ")
                    .append(String.join(" and ", performance))
                    .append(performance.size() == 1 ? ", which describes" : ", which describe")
                    .append(" this batch and no other");
        }
        return text.append('.').toString();
    }

    /** Why an index that a reader looks for is not there. */
    private void reasons(List<Block> blocks) {
        List<String> sentences = new ArrayList<>();
        if (!finding.result().characteristic().zone().isFixed()) {
            sentences.add("The limits differ from piece to piece, so there are no indices.");
        } else {
            List<Index> wanted = List.of(capability.cp(), capability.cpk());
            wanted.stream()
                    .filter(each -> each.value().isEmpty())
                    .forEach(each -> sentences.add("No " + each.name() + ": " + lower(each.reason())));
        }
        if (capability.bounds().naturalLower()) {
            sentences.add("Values bounded by zero are seldom normally distributed; read an index with care.");
        }
        if (!sentences.isEmpty()) {
            blocks.add(new Block.Note(Text.of(String.join(" ", sentences))));
        }
    }

    private static String lower(String sentence) {
        return sentence.isEmpty()
                ? sentence
                : sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
    }
}
