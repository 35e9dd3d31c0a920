package io.github.firstoff.report.section;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.IndexMark;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.stats.SigmaEstimators;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.capability.Interval;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Indices on their scale while the process is in control. When it is not, or that is not known, there is no scale: one sentence
 * says why, and the figures are told as what was, not as what will be.
 */
final class CapabilitySection {
    private static final List<String> SHOWN = List.of("Cp", "Cpk", "Pp", "Ppk", "Cpm");

    /** From here on thousands are set apart. */
    private static final double GROUPED = 10_000;

    private final Finding finding;
    private final ProcessStudy study;
    private final Capability capability;
    private final Unit unit;
    private final OptionalDouble demanded;

    CapabilitySection(Finding finding, OptionalDouble demanded) {
        this.demanded = demanded;
        this.finding = finding;
        this.study = finding.study().orElseThrow();
        this.capability = study.capability();
        this.unit = finding.summary().orElseThrow().sample().unit();
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        List<Index> placed =
                shown().stream().filter(CapabilitySection::hasPlace).toList();
        if (capability.predicts() && !placed.isEmpty()) {
            scale(placed, blocks);
        } else {
            past(blocks);
        }
        observed().ifPresent(text -> blocks.add(new Block.Note(Text.of(text))));
        reasons(blocks);
        for (String remark : capability.checks().remarks()) {
            blocks.add(new Block.Note(Text.of(remark)));
        }
        return blocks;
    }

    private void scale(List<Index> placed, List<Block> blocks) {
        int places = placed.stream().mapToInt(CapabilitySection::places).min().orElse(0);
        List<IndexMark> marks =
                placed.stream().map(index -> mark(index, places)).toList();
        blocks.add(new Block.IndexScale(marks, demanded, Text.of(conditions(placed))));
        expected().ifPresent(text -> blocks.add(new Block.Note(Text.of(text))));
    }

    /** The indices that sheets show, those that may not be presented without their value. */
    private List<Index> shown() {
        return capability.presented().stream()
                .filter(index -> SHOWN.contains(index.name()))
                .toList();
    }

    /** Cpk, if it may be presented. */
    static Optional<Index> presentedCpk(Capability capability) {
        return capability.presented().stream()
                .filter(index -> index.name().equals("Cpk") && hasPlace(index))
                .findFirst();
    }

    /** How many pieces outside are to be expected while nothing changes. */
    private Optional<String> expected() {
        Index share = capability.nonconforming().expected();
        if (!hasPlace(share)) {
            return Optional.empty();
        }
        String text = "Expected outside the limits while nothing changes: "
                + perMillion(share.value().orElseThrow()) + " of a million pieces";
        String level = Figures.rounded(capability.level() * 100, 0) + " % interval ";
        String interval = share.interval()
                .filter(each -> Double.isFinite(each.upper()))
                .map(each -> each.upper() < 1
                        ? " (" + level + "wholly below 1)"
                        : " (" + level + perMillion(each.lower()) + " to " + perMillion(each.upper()) + ")")
                .orElse("");
        return Optional.of(text + interval + ", by the "
                + capability.distribution().method().family().name() + " distribution.");
    }

    /** How many readings lay outside, and what that says of the share in the long run. */
    private Optional<String> observed() {
        Index share = capability.nonconforming().observed();
        if (capability.nonconforming().count().isEmpty() || share.interval().isEmpty()) {
            return Optional.empty();
        }
        int outside = capability.nonconforming().count().getAsInt();
        Interval interval = share.interval().get();
        String found = outside == 0
                ? "Observed outside the limits: none of " + capability.count() + " readings"
                : "Observed outside the limits: " + outside + " of " + capability.count() + " readings, "
                        + perMillion(share.value().orElseThrow()) + " of a million";
        return Optional.of(found + ". If the process keeps its share, that lies between "
                + (interval.lower() == 0 ? "0" : perMillion(interval.lower())) + " and " + perMillion(interval.upper())
                + " of a million, with " + Figures.rounded(interval.level() * 100, 0) + " % confidence ("
                + interval.method() + ").");
    }

    private static String perMillion(double value) {
        return value < 1 ? "fewer than 1" : value < GROUPED ? Figures.twoDigits(value) : Figures.grouped(value);
    }

    private static boolean hasPlace(Index index) {
        return index.value().isPresent() && Double.isFinite(index.value().getAsDouble());
    }

    /** An index that has a place on a scale, as a mark there. */
    static IndexMark mark(Index index) {
        return mark(index, places(index));
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
    private String conditions(List<Index> placed) {
        List<String> parts = new ArrayList<>();
        parts.add("n = " + capability.count() + grouping());
        names(placed, "Cp", "Cpk")
                .ifPresent(names -> capability
                        .within()
                        .ifPresent(each -> parts.add(names + ": within-subgroup sigma " + sigma(each))));
        String family = capability.distribution().method().family().name();
        boolean normal = capability.distribution().method().isNormal();
        names(placed, "Pp", "Ppk")
                .ifPresent(names -> parts.add(names + ": "
                        + (normal ? "overall s " + overall() : "percentiles of the " + family + " distribution")));
        names(placed, "Cpm").ifPresent(names -> parts.add("Cpm: overall s " + overall()));
        if (normal) {
            parts.add("normal distribution");
        }
        parts.add(Figures.rounded(capability.level() * 100, 0) + " % intervals (" + methods(placed) + ")");
        parts.add("in control");
        return String.join("; ", parts) + ".";
    }

    private static Optional<String> names(List<Index> placed, String... wanted) {
        List<String> names = placed.stream()
                .map(Index::name)
                .filter(name -> List.of(wanted).contains(name))
                .toList();
        return names.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", names));
    }

    private String overall() {
        return capability
                .overall()
                .map(each -> Figures.amount(each.sigma(), unit))
                .orElse(Figures.DASH);
    }

    private static String methods(List<Index> placed) {
        return placed.stream()
                .flatMap(each -> each.interval().stream())
                .map(Interval::method)
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private String grouping() {
        if (new ChartWords(study).isSingle()) {
            return ", individuals";
        }
        String size = capability.subgroupSize().isPresent()
                ? " of " + capability.subgroupSize().getAsInt()
                : " of differing size";
        return " in " + study.chart().data().count() + " subgroups" + size;
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
        } else if (name.equals(SigmaEstimators.POOLED_UNBIASED)) {
            return "pooled standard deviation (s/c₄)";
        } else if (name.equals(SigmaEstimators.MEDIAN_RANGE)) {
            return "median range (R/d₄)";
        } else if (name.equals(SigmaEstimators.MEDIAN_MOVING_RANGE)) {
            return "median moving range (MR/d₄)";
        } else if (name.equals(SigmaEstimators.SAMPLE)) {
            return "standard deviation of all readings";
        }
        return name.replace("\u0304", "-bar");
    }

    private void past(List<Block> blocks) {
        blocks.add(new Block.Paragraph(Text.bold(whyNone()).plain(" " + was())));
    }

    private String whyNone() {
        return switch (capability.control()) {
            case OUT_OF_CONTROL -> "No index of capability: the process was not in control, so indices do not predict.";
            case NOT_ASSESSED ->
                "No index of capability: whether the process was in control is not known, so indices do not predict.";
            case IN_CONTROL ->
                "No index is shown. "
                        + shown().stream()
                                .map(Index::reason)
                                .filter(reason -> !reason.isEmpty())
                                .findFirst()
                                .orElse("");
        };
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
                .append(SummaryTable.meanWithUnit(summary, readings))
                .append(", greatest ")
                .append(readings.greatest().map(Readings::withUnit).orElse(Figures.DASH));
        summary.standardDeviation()
                .ifPresent(s -> text.append(", standard deviation ").append(Figures.amount(s, unit)));
        List<String> performance = new ArrayList<>();
        for (Index index : shown()) {
            if (hasPlace(index) && (index.name().equals("Pp") || index.name().equals("Ppk"))) {
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

    /** Why an index that a reader looks for is not there, where that is not said already. */
    private void reasons(List<Block> blocks) {
        List<String> sentences = new ArrayList<>();
        if (!finding.result().characteristic().zone().isFixed()) {
            sentences.add("The limits differ from piece to piece, so there are no indices.");
        } else if (shown().stream().anyMatch(CapabilitySection::hasPlace)) {
            Map<String, List<String>> missing = new LinkedHashMap<>();
            shown().stream()
                    .filter(each -> each.value().isEmpty())
                    .filter(each -> capability.predicts()
                            || !each.name().startsWith("Cp")
                            || each.name().equals("Cpm"))
                    .forEach(each -> missing.computeIfAbsent(each.reason(), reason -> new ArrayList<>())
                            .add(each.name()));
            missing.forEach((reason, names) -> sentences.add("No " + String.join(", ", names) + ": " + lower(reason)));
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
