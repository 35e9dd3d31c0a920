package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.InspectionResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.inspection.Reading.Context;
import io.github.firstoff.plan.PlanContradiction;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Study;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.sample.Counts;
import io.github.firstoff.sample.Family;
import io.github.firstoff.sample.Grouping;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.study.capability.CapabilityStudy;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.Baseline;
import io.github.firstoff.study.chart.ChartRequest;
import io.github.firstoff.study.chart.LimitsFrom;
import io.github.firstoff.study.chart.PlannedChart;
import io.github.firstoff.tolerance.CountedRequirement;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Makes the studies that a plan asks for from the readings of a batch. */
final class StudyMaker {
    private static final String IN_STRETCHES =
            "The limits were set anew, so control is shown within stretches alone: the indices describe these readings and do not"
                    + " predict.";

    private final InspectionResult result;
    private final Map<String, Integer> order = new HashMap<>();

    StudyMaker(InspectionResult result) {
        this.result = result;
        for (PartRecord part : result.record().parts()) {
            order.putIfAbsent(part.serial(), order.size());
        }
    }

    /** What in the studies of a plan cannot be done, whatever the readings. */
    static List<PlanFault> impossible(ResolvedPlan plan) {
        List<PlanFault> faults = new ArrayList<>();
        for (ResolvedCharacteristic each : plan.characteristics()) {
            each.characteristic().study().ifPresent(study -> {
                Marks marks = new Marks(study, each.number(), List.of(), List.of());
                try {
                    PlannedChart.tests(study.tests());
                } catch (IllegalArgumentException fault) {
                    faults.addAll(marks.fault("tests", message(fault), "tests as docs/inputs.md lists them")
                            .faults());
                    return;
                }
                try {
                    request(study, each, plan);
                } catch (IllegalArgumentException fault) {
                    String key = study.limits().frozen().isPresent() ? "limits" : "chart";
                    faults.addAll(marks.fault(key, message(fault), "").faults());
                }
                for (String member : study.model().family()) {
                    Optional<ResolvedCharacteristic> found = plan.find(member);
                    if (found.isEmpty()
                            || found.get().isAttribute()
                            || found.get().unit() != each.unit()) {
                        faults.addAll(marks.fault(
                                        "family",
                                        found.isEmpty()
                                                ? "the plan has no characteristic " + member
                                                : "characteristic " + member + " is not measured in "
                                                        + each.unit().word(),
                                        "numbers of characteristics that are measured in one unit")
                                .faults());
                    }
                }
                if (!study.model().family().isEmpty() && !study.model().family().contains(each.number())) {
                    faults.addAll(marks.fault(
                                    "family",
                                    "characteristic " + each.number() + " is not in its own family",
                                    "a list with " + each.number())
                            .faults());
                }
            });
        }
        return faults;
    }

    private static String message(IllegalArgumentException fault) {
        return fault.getMessage() == null ? "it is not possible" : fault.getMessage();
    }

    private static ChartRequest request(Study study, ResolvedCharacteristic characteristic, ResolvedPlan plan) {
        Unit readingUnit = characteristic
                .characteristic()
                .requirement()
                .readingUnit(plan.plan().unit());
        return PlannedChart.request(study, readingUnit, characteristic.unit());
    }

    /**
     * The study of a characteristic that has readings; notes say why there is none.
     *
     * @throws PlanContradiction if the readings lack what the plan's study needs
     */
    Optional<ProcessStudy> study(
            CharacteristicResult characteristic, Optional<Summary> summary, Map<String, String> notes) {
        Optional<Study> asked = characteristic.characteristic().characteristic().study();
        boolean attribute = characteristic.characteristic().isAttribute();
        if (asked.isEmpty()) {
            if (!attribute) {
                notes.put("chart", "The plan asks for no study of this characteristic.");
                notes.put("indices", "The plan asks for no study of this characteristic.");
            }
            return Optional.empty();
        }
        ProcessStudy study;
        if (attribute) {
            study = ofPieces(characteristic, asked.get());
            notes.put("indices", "What passes or fails has no indices.");
        } else if (characteristic.characteristic().characteristic().requirement() instanceof CountedRequirement) {
            study = ofCounts(characteristic, asked.get());
            notes.put("indices", "Counts of nonconformities have no indices.");
        } else if (isFamily(asked.get())) {
            study = ofFamily(characteristic, asked.get(), summary.orElseThrow());
        } else {
            study = ofValues(characteristic, asked.get(), summary.orElseThrow());
        }
        addNotes(characteristic.characteristic(), study, notes);
        return Optional.of(study);
    }

    private static boolean isFamily(Study study) {
        return study.chart().equals("standardised-deviation")
                || (study.chart().equals("deviation") && !study.model().family().isEmpty());
    }

    /** The readings of one characteristic, as they are to be grouped. */
    private record Series(Sample sample, List<Context> contexts, List<String> parts) {}

    private static Series series(CharacteristicResult characteristic, Sample sample) {
        List<Context> contexts = new ArrayList<>();
        List<String> parts = new ArrayList<>();
        for (Judgement judgement : characteristic.judgements()) {
            if (judgement.reading() instanceof Reading.Measured) {
                contexts.add(judgement.reading().context());
                parts.add(judgement.part());
            }
        }
        return new Series(sample, contexts, parts);
    }

    private ProcessStudy ofValues(CharacteristicResult characteristic, Study study, Summary summary) {
        Series series = series(characteristic, summary.sample());
        Marks marks = new Marks(study, characteristic.number(), series.contexts(), series.parts());
        SubgroupCutter cutter = new SubgroupCutter(study, marks, series.contexts());
        Subgroups cut = cutter.cut(series.sample());
        // before baseline, breaks and exclusions are placed: they speak of points, and these count what is on the chart
        Subgroups groups = cut.withoutSingles();
        ChartRequest request = request(characteristic, study, marks, groups);
        Assessment assessment = assess(marks, () -> request.assess(groups));
        ProcessStudy.Indices indices = new IndicesMaker(characteristic.characteristic(), study, summary)
                .indices(
                        assessment,
                        assessment.chart().sigmaWithin(),
                        study.model().trended() ? Optional.of(marks.toolLives()) : Optional.empty());
        return study(
                study,
                request,
                groups,
                assessment,
                Optional.of(indices),
                Stream.of(cutter.sizeNote(cut), withoutSpread(cut.count() - groups.count()))
                        .flatMap(Optional::stream)
                        .toList(),
                series.parts());
    }

    private static Optional<Remark> withoutSpread(int dropped) {
        return dropped == 0 ? Optional.empty() : Optional.of(ChartRequest.withoutSpread(dropped));
    }

    /** Nonconforming pieces among those of a subgroup; a piece with several results is nonconforming if one of them is. */
    private ProcessStudy ofPieces(CharacteristicResult characteristic, Study study) {
        Map<String, Judgement> first = new LinkedHashMap<>();
        Map<String, Boolean> failed = new HashMap<>();
        for (Judgement judgement : characteristic.judgements()) {
            first.putIfAbsent(judgement.part(), judgement);
            failed.merge(judgement.part(), judgement.verdict() == Verdict.NONCONFORMING, Boolean::logicalOr);
        }
        List<String> parts = List.copyOf(first.keySet());
        List<Context> contexts = first.values().stream()
                .map(judgement -> judgement.reading().context())
                .toList();
        List<BigDecimal> values = parts.stream()
                .map(part -> Boolean.TRUE.equals(failed.get(part)) ? BigDecimal.ONE : BigDecimal.ZERO)
                .toList();
        Marks marks = new Marks(study, characteristic.number(), contexts, parts);
        Subgroups groups =
                new SubgroupCutter(study, marks, contexts).cut(Sample.of(values, BigDecimal.ZERO, Unit.NONE));
        return ofCounted(
                characteristic,
                study,
                marks,
                groups,
                () -> Counts.ofFailures(groups),
                Subgroups.LeftOverOf.PIECES,
                parts);
    }

    private ProcessStudy ofCounts(CharacteristicResult characteristic, Study study) {
        List<BigDecimal> values = Studies.measured(characteristic).stream()
                .map(Reading.Measured::value)
                .toList();
        Series series = series(characteristic, Sample.of(values, BigDecimal.ZERO, Unit.NONE));
        Marks marks = new Marks(study, characteristic.number(), series.contexts(), series.parts());
        Subgroups groups = new SubgroupCutter(study, marks, series.contexts()).cut(series.sample());
        long[] counts = new long[groups.count()];
        List<BigDecimal> sizes = new ArrayList<>(counts.length);
        for (int g = 0; g < counts.length; g++) {
            BigDecimal count = BigDecimal.ZERO;
            BigDecimal size = BigDecimal.ZERO;
            for (int reading : groups.readings(g)) {
                count = count.add(values.get(reading));
                size = size.add(
                        series.contexts().get(reading).production().size().orElse(BigDecimal.ONE));
            }
            counts[g] = count.longValueExact();
            sizes.add(size);
        }
        return ofCounted(
                characteristic,
                study,
                marks,
                groups,
                () -> Counts.of(counts, sizes),
                Subgroups.LeftOverOf.COUNTS,
                series.parts());
    }

    /** What is the same for pieces and for counts; counts that make no chart are told as a fault of the plan, so they are taken late. */
    private ProcessStudy ofCounted(
            CharacteristicResult characteristic,
            Study study,
            Marks marks,
            Subgroups groups,
            Supplier<Counts> counts,
            Subgroups.LeftOverOf what,
            List<String> parts) {
        ChartRequest request = request(characteristic, study, marks, groups);
        Assessment assessment = assess(marks, () -> request.assess(counts.get()));
        return study(study, request, groups, assessment, Optional.empty(), leftOver(groups, what), parts);
    }

    private static List<Remark> leftOver(Subgroups groups, Subgroups.LeftOverOf what) {
        List<Remark> notes = new ArrayList<>();
        groups.leftOverNote(what).ifPresent(notes::add);
        for (int number : groups.incomplete()) {
            notes.add(Remark.of(
                    "chart.incomplete-counted",
                    "Subgroup {0} is incomplete and stays on the chart by choice, with limits of its own size.",
                    number));
        }
        return notes;
    }

    /** Deviations from nominal, of this characteristic or of all those that one process makes, in the order of production. */
    private ProcessStudy ofFamily(CharacteristicResult characteristic, Study study, Summary summary) {
        List<String> numbers = study.model().family().isEmpty()
                ? List.of(characteristic.number())
                : study.model().family();
        List<Group> all = new ArrayList<>();
        for (String number : numbers) {
            all.addAll(groups(member(number), study, characteristic.number()));
        }
        // stable: groups that end with one piece keep the order of the family
        all.sort(Comparator.comparingInt(Group::end));
        List<BigDecimal> deviations = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        List<Context> contexts = new ArrayList<>();
        List<String> parts = new ArrayList<>();
        for (Group group : all) {
            deviations.addAll(group.deviations());
            contexts.addAll(group.contexts());
            parts.addAll(group.parts());
            group.deviations().forEach(each -> labels.add(group.label()));
        }
        Marks marks = new Marks(study, characteristic.number(), contexts, parts);
        Sample sample = Sample.of(
                deviations, BigDecimal.ZERO, characteristic.characteristic().unit());
        Subgroups groups = Grouping.labelled(labels).keepingIncomplete().of(sample);
        Family family = new Family(groups, all.stream().map(Group::number).toList());
        ChartRequest request = request(characteristic, study, marks, groups);
        Assessment assessment = assess(marks, () -> request.assess(family));
        Optional<SigmaEstimate> own = assessment
                .chart()
                .sigmaWithin()
                .or(() -> assessment
                        .chart()
                        .frozen()
                        .flatMap(limits -> Optional.ofNullable(
                                        limits.partSigmas().get(characteristic.number()))
                                .map(sigma ->
                                        new SigmaEstimate(sigma, limits.estimator(), limits.degreesOfFreedom()))));
        ProcessStudy.Indices indices = new IndicesMaker(characteristic.characteristic(), study, summary)
                .indices(assessment, own, Optional.empty());
        List<Remark> notes = numbers.size() == 1
                ? List.of()
                : List.of(Remark.of(
                        "chart.family",
                        "The chart shows the deviations of characteristics {0} from their nominals together, in the order of"
                                + " production.",
                        Phrases.listing(numbers)));
        return study(study, request, groups, assessment, Optional.of(indices), notes, parts);
    }

    /** One subgroup of a family. */
    private record Group(
            String number,
            String label,
            int end,
            List<BigDecimal> deviations,
            List<Context> contexts,
            List<String> parts) {}

    private CharacteristicResult member(String number) {
        return result.characteristics().stream()
                .filter(each -> each.number().equals(number))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("a plan was used that names no " + number));
    }

    private List<Group> groups(CharacteristicResult member, Study study, String owner) {
        ResolvedCharacteristic characteristic = member.characteristic();
        List<BigDecimal> values = Studies.measured(member).stream()
                .map(reading -> Studies.inUnit(reading, characteristic.unit()))
                .toList();
        Marks ofOwner = new Marks(study, owner, List.of(), List.of());
        BigDecimal nominal = characteristic
                .zone()
                .nominal()
                .or(characteristic::target)
                .or(() -> IndicesMaker.bounds(characteristic).aim())
                .orElseThrow(() -> ofOwner.fault(
                        "chart",
                        "characteristic " + member.number() + " has no nominal to deviate from",
                        "a requirement with a nominal or two limits, or a target"));
        Series series = series(member, Sample.of(values, nominal, characteristic.unit()));
        Marks marks = new Marks(study, member.number(), series.contexts(), series.parts());
        Subgroups cut = new SubgroupCutter(study, marks, series.contexts()).cut(series.sample());
        List<Group> groups = new ArrayList<>();
        for (int g = 0; g < cut.count(); g++) {
            List<Integer> readings = cut.readings(g);
            groups.add(new Group(
                    member.number(),
                    member.number() + ": " + cut.label(g),
                    order.getOrDefault(series.parts().get(readings.get(readings.size() - 1)), 0),
                    readings.stream().map(i -> values.get(i).subtract(nominal)).toList(),
                    readings.stream().map(series.contexts()::get).toList(),
                    readings.stream().map(series.parts()::get).toList()));
        }
        return groups;
    }

    private ChartRequest request(CharacteristicResult characteristic, Study study, Marks marks, Subgroups groups) {
        ChartRequest request =
                request(study, characteristic.characteristic(), result.record().plan());
        Optional<Baseline> phase = marks.phase(groups);
        if (phase.isPresent()) {
            request = request.with(LimitsFrom.baseline(phase.get()));
        }
        return request.with(marks.breaks(groups), marks.exclusions(groups));
    }

    private static Assessment assess(Marks marks, Supplier<Assessment> assessing) {
        try {
            return assessing.get();
        } catch (IllegalArgumentException fault) {
            throw marks.fault("chart", message(fault), "");
        }
    }

    private static ProcessStudy study(
            Study study,
            ChartRequest request,
            Subgroups groups,
            Assessment assessment,
            Optional<ProcessStudy.Indices> indices,
            List<Remark> ownNotes,
            List<String> parts) {
        Optional<String> from = study.limits().frozen().map(Study.Frozen::from);
        List<Remark> notes = new ArrayList<>();
        from.ifPresent(source ->
                notes.add(Remark.of("chart.frozen", "The limits were set before and are kept: {0}.", source)));
        notes.addAll(ownNotes);
        notes.addAll(assessment.remarks());
        if (!assessment.chart().data().exclusions().isEmpty() && indices.isPresent()) {
            notes.add(Remark.of(
                    "chart.excluded-stay",
                    "Readings of excluded points stay in the count, the verdict and the overall figures."));
        }
        return new ProcessStudy(
                PlannedChart.title(study.chart()),
                request,
                groups,
                assessment,
                request.falseSignals(assessment.chart()),
                indices,
                from,
                notes,
                parts);
    }

    private static void addNotes(ResolvedCharacteristic characteristic, ProcessStudy study, Map<String, String> notes) {
        if (!study.notes().isEmpty()) {
            notes.put("chart", String.join(" ", study.notes()));
        }
        if (study.indices().isEmpty()) {
            return;
        }
        ProcessStudy.Indices indices = study.indices().get();
        boolean inStretches = study.isInStretches() && study.assessment().control() == ControlState.IN_CONTROL;
        List<String> sentences = new ArrayList<>(indices.byDefinition().remarks().stream()
                .map(note -> inStretches && note.equals(CapabilityStudy.NOT_ASSESSED) ? IN_STRETCHES : note.english())
                .toList());
        if (!characteristic.zone().isFixed()) {
            sentences.add("The limits differ from part to part (bonus), so there are no indices.");
        }
        if (!sentences.isEmpty()) {
            notes.put("indices", String.join(" ", sentences));
        }
        for (Index index : IndicesJson.missing(indices.byDefinition())) {
            notes.put(IndicesJson.jsonName(index), index.reason());
        }
    }
}
