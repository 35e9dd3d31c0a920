package io.github.firstoff.report.section;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.IndexMark;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ObservedShare;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Summary;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.capability.Interval;
import io.github.firstoff.study.chart.PanelKind;
import io.github.firstoff.words.Labels;
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

    /** From here on two significant digits are a whole number. */
    private static final double WHOLE = 100;

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
        for (Remark remark : capability.checks().findings()) {
            blocks.add(new Block.Note(Text.of(Labels.text(remark))));
        }
        return blocks;
    }

    private void scale(List<Index> placed, List<Block> blocks) {
        int places = placed.stream().mapToInt(CapabilitySection::places).min().orElse(0);
        List<IndexMark> marks =
                placed.stream().map(index -> mark(index, places)).toList();
        blocks.add(new Block.IndexScale(marks, demanded, Text.of(conditions(placed))));
        if (differs(study)) {
            blocks.add(new Block.Note(Text.of(Labels.text("capability.within-alone"))));
        }
        expected().ifPresent(text -> blocks.add(new Block.Note(Text.of(text))));
    }

    /** The indices that sheets show, those that may not be presented without their value. */
    private List<Index> shown() {
        return capability.presented().stream()
                .filter(index -> SHOWN.contains(index.name()))
                .toList();
    }

    /**
     * The index that stands for all, if it may be presented: Cpk; where the chart takes subgroups apart because they differ, Ppk, since
     * the spread within them is then a part of the process alone.
     */
    static Optional<Index> leading(ProcessStudy study) {
        return presented(study.capability(), differs(study) ? "Ppk" : "Cpk");
    }

    /** Cpk, if it may be presented and holds the whole spread of the process. */
    static Optional<Index> presentedCpk(ProcessStudy study) {
        return differs(study) ? Optional.empty() : presented(study.capability(), "Cpk");
    }

    private static Optional<Index> presented(Capability capability, String name) {
        return capability.presented().stream()
                .filter(index -> index.name().equals(name) && hasPlace(index))
                .findFirst();
    }

    private static boolean differs(ProcessStudy study) {
        return study.chart().panel(PanelKind.BETWEEN).isPresent();
    }

    /** How many pieces outside are to be expected while nothing changes. */
    private Optional<String> expected() {
        Index share = capability.nonconforming().expected();
        if (!hasPlace(share)) {
            return Optional.empty();
        }
        String level = Figures.rounded(capability.level() * 100, 0);
        String interval = share.interval()
                .filter(each -> Double.isFinite(each.upper()))
                .map(each -> " ("
                        + (each.upper() < 1
                                ? Labels.text("expected.below-one", level)
                                : Labels.text(
                                        "expected.interval", level, perMillion(each.lower()), perMillion(each.upper())))
                        + ")")
                .orElse("");
        return Optional.of(Labels.text(
                "expected.outside",
                perMillion(share.value().orElseThrow()),
                interval,
                Wording.distribution(capability.distribution())));
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
                ? Labels.text("observed.none", capability.count())
                : Labels.text(
                        "observed.some",
                        outside,
                        capability.count(),
                        perMillion(share.value().orElseThrow()));
        return Optional.of(keeping(found, interval.lower(), interval.upper(), interval.level(), interval.method()));
    }

    /** How many pieces failed, and what that says of the share in the long run. */
    static String observed(ObservedShare share) {
        String found = share.failed() == 0
                ? Labels.text("observed.pieces.none", share.pieces())
                : Labels.text("observed.pieces.some", share.failed(), share.pieces(), perMillion(share.perMillion()));
        return keeping(found, share.lowerPerMillion(), share.upperPerMillion(), share.level(), ObservedShare.METHOD);
    }

    private static String keeping(String found, double lower, double upper, double level, String method) {
        return Labels.text(
                "observed.keeps",
                found,
                lower == 0 ? "0" : perMillion(lower),
                perMillion(upper),
                Figures.rounded(level * 100, 0),
                Labels.word("interval-method", method));
    }

    private static String perMillion(double value) {
        return value < 1
                ? Labels.text("million.fewer-than-one")
                : value < WHOLE ? Figures.twoDigits(value) : Figures.grouped(value);
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
                Labels.word("index", index.name()),
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
                .map(each -> Labels.text(
                        "index.figures",
                        value,
                        Figures.rounded(each.lower(), places),
                        Figures.rounded(each.upper(), places)))
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
                        .ifPresent(each -> parts.add(Labels.text("conditions.within-sigma", names, sigma(each)))));
        String family = Wording.distribution(capability.distribution());
        boolean normal = capability.distribution().method().isNormal();
        names(placed, "Pp", "Ppk")
                .ifPresent(names -> parts.add(
                        normal
                                ? Labels.text("conditions.overall", names, overall())
                                : Labels.text("conditions.percentiles", names, family)));
        names(placed, "Cpm").ifPresent(names -> parts.add(Labels.text("conditions.overall", names, overall())));
        if (normal) {
            parts.add(Labels.text("conditions.normal"));
        }
        parts.add(Labels.text("conditions.intervals", Figures.rounded(capability.level() * 100, 0), methods(placed)));
        parts.add(Labels.text("conditions.in-control"));
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
                .map(method -> Labels.word("interval-method", method))
                .collect(Collectors.joining(", "));
    }

    private String grouping() {
        if (new ChartWords(study).isSingle()) {
            return Labels.text("grouping.individuals");
        }
        int groups = study.chart().data().count();
        return capability.subgroupSize().isPresent()
                ? Labels.text("grouping.of", groups, capability.subgroupSize().getAsInt())
                : Labels.text("grouping.differing", groups);
    }

    private String sigma(SigmaEstimate estimate) {
        return Labels.text(
                "conditions.sigma-from", Figures.amount(estimate.sigma(), unit), estimator(estimate.estimator()));
    }

    /** The estimator in words: a bar over a letter sits badly in running type. */
    static String estimator(String name) {
        return Labels.word("estimator", name);
    }

    private void past(List<Block> blocks) {
        blocks.add(new Block.Paragraph(Text.bold(whyNone()).plain(" " + was())));
    }

    private String whyNone() {
        return switch (capability.control()) {
            case OUT_OF_CONTROL -> Labels.text("no-index.out-of-control");
            case NOT_ASSESSED ->
                Labels.text(
                        study.assessment().control() == ControlState.IN_CONTROL
                                ? "no-index.stretches"
                                : "no-index.not-assessed");
            case IN_CONTROL ->
                Labels.text(
                        "no-index.other",
                        shown().stream()
                                .map(Index::why)
                                .filter(why -> !why.isEmpty())
                                .findFirst()
                                .orElseGet(Remark::none));
        };
    }

    /** The past in figures: this batch as it was. */
    private String was() {
        Summary summary = finding.summary().orElseThrow();
        Readings readings = new Readings(finding.result());
        StringBuilder text = new StringBuilder(Labels.text(
                "past.figures",
                summary.count(),
                readings.least().map(Readings::withUnit).orElse(Figures.DASH),
                SummaryTable.meanWithUnit(summary, readings),
                readings.greatest().map(Readings::withUnit).orElse(Figures.DASH)));
        summary.standardDeviation().ifPresent(s -> text.append(Labels.text("past.deviation", Figures.amount(s, unit))));
        List<String> performance = new ArrayList<>();
        for (Index index : shown()) {
            if (hasPlace(index) && (index.name().equals("Pp") || index.name().equals("Ppk"))) {
                performance.add(
                        index.name() + " " + Figures.rounded(index.value().orElseThrow(), places(index)));
            }
        }
        if (!performance.isEmpty()) {
            text.append(Labels.text(
                    "past.performance",
                    performance.size(),
                    String.join(" " + Labels.text("list.and") + " ", performance)));
        }
        return text.append('.').toString();
    }

    /** Why an index that a reader looks for is not there, where that is not said already. */
    private void reasons(List<Block> blocks) {
        List<String> sentences = new ArrayList<>();
        if (!finding.result().characteristic().zone().isFixed()) {
            sentences.add(Labels.text("no-index.differing-limits"));
        } else if (shown().stream().anyMatch(CapabilitySection::hasPlace)) {
            Map<Remark, List<String>> missing = new LinkedHashMap<>();
            shown().stream()
                    .filter(each -> each.value().isEmpty())
                    .filter(each -> capability.predicts()
                            || !each.name().startsWith("Cp")
                            || each.name().equals("Cpm"))
                    .forEach(each -> missing.computeIfAbsent(each.why(), why -> new ArrayList<>())
                            .add(each.name()));
            missing.forEach((why, names) ->
                    sentences.add(Labels.text("no-index.names", String.join(", ", names), lower(Labels.text(why)))));
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
