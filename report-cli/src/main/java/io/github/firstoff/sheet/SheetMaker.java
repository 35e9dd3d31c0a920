package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.InspectionResult;
import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.InspectionRecord;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.conformity.GaugeAssessment;
import io.github.firstoff.study.conformity.GaugeCheck;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;

/** Makes a sheet: judges the readings, works out the studies, and finds the reasons that forbid a certificate. */
public final class SheetMaker {
    private final SheetKind kind;
    private final Job job;
    private final List<Remark> notices;
    private final Provenance provenance;
    private IntConsumer watcher = done -> {};

    /**
     * A maker of one sheet.
     *
     * @param kind what kind of sheet
     * @param job which order, batch, material and people
     * @param notices what intake noticed
     * @param provenance what the sheet is made from and by
     */
    public SheetMaker(SheetKind kind, Job job, List<Remark> notices, Provenance provenance) {
        this.kind = kind;
        this.job = job;
        this.notices = List.copyOf(notices);
        this.provenance = provenance;
    }

    /** The same with somebody who hears how many characteristics are worked out. */
    public SheetMaker watchedBy(IntConsumer taker) {
        watcher = taker;
        return this;
    }

    /** What in the studies of a plan cannot be done, such as a test with a length that it cannot have. Ask before readings are read. */
    public static List<PlanFault> impossibleStudies(ResolvedPlan plan) {
        return StudyMaker.impossible(plan);
    }

    /**
     * The sheet on these readings.
     *
     * @throws io.github.firstoff.plan.PlanContradiction if the readings lack what a study of the plan needs
     */
    public Sheet make(InspectionRecord record) {
        InspectionResult result = Judge.of(record.plan()).assess(record, covered());
        List<Finding> findings = new ArrayList<>();
        Map<String, List<GaugeAssessment>> gauges = GaugeCheck.withDefaults().assess(record).stream()
                .collect(Collectors.groupingBy(GaugeAssessment::characteristic));
        Slips slips = new Slips(record);
        Optional<StudyMaker> studies = kind.hasStudies() ? Optional.of(new StudyMaker(result)) : Optional.empty();
        for (CharacteristicResult each : result.characteristics()) {
            findings.add(
                    Studies.finding(each, studies).with(gauges.getOrDefault(each.number(), List.of()), slips.in(each)));
            watcher.accept(findings.size());
        }
        List<Remark> all = new ArrayList<>(notices);
        addQuantity(record, all);
        job.firstArticle()
                .filter(article -> kind == SheetKind.FIRST_ARTICLE && article.kind() == Job.Kind.DELTA)
                .filter(article ->
                        article.baseline().isEmpty() || article.changes().isEmpty())
                .ifPresent(article -> all.add(Remark.of(
                        "notice.delta",
                        "A delta first article names the first article that it starts from and what changed since; the job does not"
                                + " state both.")));
        job.firstArticle()
                .filter(article -> kind == SheetKind.FIRST_ARTICLE && article.kind() != Job.Kind.FULL)
                .filter(article -> article.characteristics().isEmpty())
                .ifPresent(article -> all.add(Remark.of(
                        "notice.all-covered",
                        "The job does not say which characteristics this first article covers, so every one of the plan must be"
                                + " measured.")));
        List<Remark> expired = expiredCalibrations(result);
        if (kind != SheetKind.CERTIFICATE) {
            all.addAll(expired);
        }
        List<String> refusals =
                kind == SheetKind.CERTIFICATE ? refusals(result, findings, Remark.english(expired)) : List.of();
        return new Sheet(kind, result, findings, job, refusals, all, provenance);
    }

    /** The characteristics that a partial or delta first article covers; every other sheet covers all. */
    private List<String> covered() {
        return kind == SheetKind.FIRST_ARTICLE
                ? job.firstArticle()
                        .map(Job.FirstArticleReason::characteristics)
                        .orElse(List.of())
                : List.of();
    }

    private void addQuantity(InspectionRecord record, List<Remark> all) {
        if (kind == SheetKind.FIRST_ARTICLE || job.quantity().isEmpty()) {
            return;
        }
        int quantity = job.quantity().getAsInt();
        int pieces = record.parts().size();
        if (pieces > quantity) {
            all.add(Remark.of(
                    "notice.more-pieces",
                    "The readings name {0} {0|piece|pieces}, but the job states a quantity of {1}.",
                    pieces,
                    quantity));
        } else if (pieces < quantity) {
            all.add(Remark.of(
                    "notice.fewer-pieces",
                    "{0} {0|piece|pieces} of {1} were inspected; the verdict is on those.",
                    pieces,
                    quantity));
        }
    }

    private List<String> refusals(InspectionResult result, List<Finding> findings, List<String> expired) {
        List<String> reasons = new ArrayList<>();
        if (result.verdict() != SheetVerdict.ACCEPTED) {
            for (CharacteristicResult each : result.judged()) {
                if (each.verdict() != Verdict.CONFORMING) {
                    reasons.add("Characteristic " + each.number() + ", "
                            + each.characteristic().characteristic().feature() + " ("
                            + each.characteristic().characteristic().printed() + "): " + reason(each) + ".");
                }
            }
        }
        long refused = result.record().refusedRows();
        if (refused > 0) {
            reasons.add(Phrases.counted(refused, "row", "rows")
                    + " of readings could not be read; what was found on the pieces in them is not known.");
        }
        if (result.record().parts().isEmpty()) {
            reasons.add("No piece was measured.");
        }
        if (result.judged().isEmpty()) {
            reasons.add("The plan requires nothing that can be judged.");
        }
        findings.forEach(finding -> reasons.addAll(unmetDemands(result.record().plan(), finding)));
        reasons.addAll(expired);
        return reasons;
    }

    private static List<String> unmetDemands(ResolvedPlan plan, Finding finding) {
        Characteristic characteristic = finding.result().characteristic().characteristic();
        List<String> unmet = new ArrayList<>();
        for (Shortfall each : Shortfall.of(plan, finding)) {
            Index index = each.index();
            String found = index.value().isPresent()
                    ? "it is "
                            + String.format(Locale.ROOT, "%.2f", index.value().getAsDouble()) + "."
                    : "there is none: " + index.reason();
            unmet.add("Characteristic " + characteristic.number() + ", " + characteristic.feature() + " ("
                    + characteristic.printed() + "): the plan demands " + index.name() + " of at least "
                    + each.least().toPlainString() + " of the class "
                    + characteristic.importance().word() + "; " + found);
        }
        return unmet;
    }

    private static String reason(CharacteristicResult result) {
        List<String> parts = new ArrayList<>();
        for (Verdict verdict : List.of(Verdict.NONCONFORMING, Verdict.INCONCLUSIVE)) {
            List<Judgement> concerned = result.judgements().stream()
                    .filter(each -> each.verdict() == verdict)
                    .toList();
            if (!concerned.isEmpty()) {
                parts.add(Phrases.listed(concerned.stream()
                        .map(each -> each.part() + " " + Phrases.of(each))
                        .toList()));
            }
        }
        if (result.judgements().isEmpty()) {
            parts.add("not measured");
        } else if (!result.missing().isEmpty()) {
            parts.add("not measured on " + Phrases.missing(result));
        }
        return String.join("; ", parts);
    }

    /** Gauges whose calibration had run out on the day of a reading; where a reading has no time, on the job's date. */
    private List<Remark> expiredCalibrations(InspectionResult result) {
        Set<Remark> sentences = new LinkedHashSet<>();
        for (CharacteristicResult each : result.judged()) {
            for (Judgement judgement : each.judgements()) {
                Optional<Gauge> gauge =
                        judgement.gaugeId().flatMap(id -> result.record().plan().gauge(id));
                Optional<LocalDate> day = judgement
                        .reading()
                        .context()
                        .time()
                        .map(time -> time.toLocalDate())
                        .or(job::date);
                if (gauge.isPresent() && day.isPresent() && gauge.get().isOutOfCalibrationOn(day.get())) {
                    sentences.add(Remark.of(
                            "notice.calibration",
                            "The calibration of gauge {0} had run out on {1}; it was used for characteristic {2} on {3}.",
                            gauge.get().id(),
                            gauge.get().calibrationDue().orElseThrow(),
                            each.number(),
                            day.get()));
                    break;
                }
            }
        }
        return List.copyOf(sentences);
    }
}
