package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.inspection.Reading.Context;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Scale;
import io.github.firstoff.study.capability.TrendedStudy;
import io.github.firstoff.study.drift.Drift;
import io.github.firstoff.study.drift.DriftData;
import io.github.firstoff.study.drift.DriftSettings;
import io.github.firstoff.study.drift.DriftStudy;
import io.github.firstoff.study.drift.Start;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a study of drift from the verdicts on readings: what is followed, through which pieces, in which stretches. */
public final class DriftMaker {
    private static final List<ContextColumn> COLUMNS =
            List.of(ContextColumn.PHASE, ContextColumn.TOOL, ContextColumn.OFFSET);

    private static final int FEWEST = 3;

    private final Sheet sheet;
    private final DriftOptions options;
    private final Map<String, String> batchOfPart = new HashMap<>();
    private final Map<String, Long> numberOfPart = new HashMap<>();
    private final List<String> batches = new ArrayList<>();

    private DriftMaker(Sheet sheet, DriftOptions options) {
        this.sheet = sheet;
        this.options = options;
        number();
    }

    /**
     * The study.
     *
     * @param sheet the verdicts on all readings
     * @param options what is asked; characteristics that it names exist
     * @throws DriftRefused if none of the characteristics can be followed, or one that was asked for cannot
     */
    public static DriftSheet make(Sheet sheet, DriftOptions options) {
        return new DriftMaker(sheet, options).make();
    }

    private DriftSheet make() {
        List<DriftFinding> findings = new ArrayList<>();
        List<DriftSheet.Left> left = new ArrayList<>();
        for (CharacteristicResult result : sheet.result().characteristics()) {
            boolean asked = options.characteristics().contains(result.number());
            if (!options.characteristics().isEmpty() && !asked) {
                continue;
            }
            List<DriftFinding> found = List.of();
            if (result.characteristic().isAttribute()) {
                left.add(new DriftSheet.Left(result.number(), DriftSheet.Why.ATTRIBUTE, List.of()));
            } else {
                found = follow(result, left);
            }
            if (asked && found.isEmpty()) {
                throw new DriftRefused(told(result, left));
            }
            findings.addAll(found);
        }
        if (findings.isEmpty()) {
            throw new DriftRefused("no characteristic can be followed: "
                    + (left.isEmpty() ? "the plan has none" : DriftSheet.told(left)));
        }
        findings.sort(DriftFinding.MOST_URGENT);
        return new DriftSheet(sheet, options, findings, left);
    }

    private static String told(CharacteristicResult result, List<DriftSheet.Left> left) {
        return "characteristic " + result.number() + " ("
                + result.characteristic().characteristic().feature() + ") cannot be followed: it "
                + left.get(left.size() - 1).reason();
    }

    /** Each piece gets its batch, the file that first names it, and its number in that batch. */
    private void number() {
        Map<String, Long> counted = new HashMap<>();
        for (PartRecord part : sheet.result().record().parts()) {
            String source = options.acrossBatches()
                    ? ""
                    : part.readings().values().stream()
                            .flatMap(List::stream)
                            .findFirst()
                            .map(reading -> reading.context().origin().source())
                            .orElse("");
            long before = counted.getOrDefault(source, 0L);
            if (before == 0) {
                batches.add(source);
            }
            counted.put(source, before + 1);
            batchOfPart.put(part.serial(), source);
            numberOfPart.put(part.serial(), 1 + before * options.every());
        }
    }

    private List<DriftFinding> follow(CharacteristicResult result, List<DriftSheet.Left> left) {
        Map<String, List<Judgement>> byBatch = new LinkedHashMap<>();
        batches.forEach(batch -> byBatch.put(batch, new ArrayList<>()));
        for (Judgement judgement : result.judgements()) {
            byBatch.get(batchOfPart.get(judgement.part())).add(judgement);
        }
        List<DriftFinding> findings = new ArrayList<>();
        for (Map.Entry<String, List<Judgement>> batch : byBatch.entrySet()) {
            int count = batch.getValue().size();
            if (count >= FEWEST) {
                findings.add(follow(result, batch.getKey(), batch.getValue()));
            } else if (count > 0) {
                Context first = batch.getValue().get(0).reading().context();
                left.add(new DriftSheet.Left(
                        result.number(),
                        DriftSheet.Why.TOO_FEW,
                        List.of(
                                count,
                                fileName(first.origin().source()),
                                first.origin().line(),
                                FEWEST)));
            }
        }
        if (result.judgements().isEmpty()) {
            left.add(new DriftSheet.Left(result.number(), DriftSheet.Why.NOT_MEASURED, List.of()));
        }
        return findings;
    }

    private DriftFinding follow(CharacteristicResult result, String batch, List<Judgement> judgements) {
        ResolvedCharacteristic characteristic = result.characteristic();
        Unit unit = characteristic.unit();
        List<Reading.Measured> readings = Studies.measured(
                new CharacteristicResult(characteristic, result.rule(), judgements, List.of(), 0, result.verdict()));
        List<BigDecimal> values =
                readings.stream().map(reading -> Studies.inUnit(reading, unit)).toList();
        Sample sample = Sample.of(values, characteristic.zone().nominal().orElse(values.get(0)), unit);
        long[] pieces = judgements.stream()
                .mapToLong(judgement -> numberOfPart.getOrDefault(judgement.part(), 0L))
                .toArray();
        List<Context> contexts =
                readings.stream().map(Reading.Measured::context).toList();
        boolean stated = contexts.stream()
                .anyMatch(context ->
                        COLUMNS.stream().anyMatch(column -> column.of(context).isPresent()));
        List<Remark> notes = new ArrayList<>();
        Bounds drawing = IndicesMaker.bounds(characteristic);
        if (!characteristic.zone().isFixed()) {
            notes.add(Remark.of(
                    "drift.bonus",
                    "The limits differ from piece to piece (bonus), so there is no forecast against them."));
        }
        BigDecimal guard = guard(result, judgements);
        Bounds allowed = allowed(characteristic, drawing, guard, notes);
        Drift drift = new DriftStudy(settings(characteristic))
                .analyse(
                        new DriftData(sample, pieces, starts(contexts), options.detect() && !stated, drawing, allowed));
        notes.addAll(drift.remarks());
        if (judgements.stream().anyMatch(each -> each.correction().isPresent())) {
            notes.add(Remark.of(
                    "drift.temperature", "Values read at another temperature are followed as judged, at 20 °C."));
        }
        return new DriftFinding(
                result,
                name(batch),
                judgements,
                drift,
                TrendedStudy.withDefaults()
                        .analyse(
                                sample,
                                drawing,
                                drift.segments().stream()
                                        .map(Drift.Segment::from)
                                        .filter(from -> from > 0)
                                        .toList()),
                DriftTests.lookingBack(drift),
                guard,
                notes);
    }

    /** The settings, with the index that is asked for, or that the plan demands of the class. */
    private DriftSettings settings(ResolvedCharacteristic characteristic) {
        if (options.index().isPresent()) {
            return options.settings().withRequiredIndex(options.index().getAsDouble());
        }
        Demand demand = sheet.plan()
                .plan()
                .demands()
                .get(characteristic.characteristic().importance());
        Optional<BigDecimal> demanded = demand == null
                ? Optional.empty()
                : Optional.ofNullable(demand.minimumIndices()
                        .getOrDefault("cpk", demand.minimumIndices().get("ppk")));
        return demanded.map(least ->
                        options.settings().withRequiredIndex(new Scale(BigDecimal.ZERO, 0, Unit.NONE).deviation(least)))
                .orElse(options.settings());
    }

    /** The widest guard band of any of the readings: readings of two gauges are all kept inside that of the worse. */
    private static BigDecimal guard(CharacteristicResult result, List<Judgement> judgements) {
        BigDecimal widest = BigDecimal.ZERO;
        for (Judgement judgement : judgements) {
            BigDecimal band = result.rule().guardBand(judgement.uncertainty());
            widest = band.compareTo(widest) > 0 ? band : widest;
        }
        return widest;
    }

    private static Bounds allowed(
            ResolvedCharacteristic characteristic, Bounds drawing, BigDecimal guard, List<Remark> notes) {
        if (guard.signum() == 0 || !characteristic.zone().isFixed()) {
            return drawing;
        }
        Optional<Limits> narrowed = characteristic.limits().narrowedBy(guard);
        if (narrowed.isEmpty()) {
            notes.add(Remark.of(
                    "drift.guard-takes-all",
                    "The guard band leaves nothing between the limits: no reading can be proven to conform, and there is no"
                            + " limit to forecast."));
            return Bounds.NONE;
        }
        return new Bounds(
                narrowed.get().lower(),
                narrowed.get().upper(),
                drawing.target(),
                narrowed.get().naturalLower());
    }

    /** A stretch begins where tool, phase or offset changes; where a cell is blank, what was said before holds. */
    private static List<Start> starts(List<Context> contexts) {
        List<Start> starts = new ArrayList<>();
        Map<ContextColumn, String> state = new LinkedHashMap<>();
        for (int i = 0; i < contexts.size(); i++) {
            List<Remark> names = new ArrayList<>();
            List<Remark> reasons = new ArrayList<>();
            for (ContextColumn column : COLUMNS) {
                Optional<String> now = column.of(contexts.get(i));
                String before = state.get(column);
                if (now.isEmpty() || now.get().equals(before)) {
                    continue;
                }
                state.put(column, now.get());
                names.add(Remark.of("drift.stretch", "{0} {1}", column.remark(), now.get()));
                reasons.add(
                        before == null
                                ? Remark.of("drift.changes-to", "the {0} changes to {1}", column.remark(), now.get())
                                : Remark.of(
                                        "drift.changes",
                                        "the {0} changes from {1} to {2}",
                                        column.remark(),
                                        before,
                                        now.get()));
            }
            Remark name = Remark.joined(", ", names);
            if (i == 0) {
                starts.add(Start.stated(
                        0,
                        Start.Cause.FIRST,
                        names.isEmpty() ? Remark.of("stretch.start", "start") : name,
                        Remark.of("drift.begins", "the readings begin")));
            } else if (!names.isEmpty()) {
                starts.add(Start.stated(i, Start.Cause.STATED, name, Phrases.listing(reasons)));
            }
        }
        return starts;
    }

    /** What a batch is called. */
    private String name(String source) {
        if (batches.size() == 1 && sheet.job().batch().isPresent()) {
            return sheet.job().batch().get();
        }
        return source.isEmpty() ? DriftFinding.ALL_FILES : fileName(source);
    }

    /** A file's own name, without its folders. */
    static String fileName(String source) {
        int slash = Math.max(source.lastIndexOf('/'), source.lastIndexOf('\\'));
        return source.substring(slash + 1);
    }
}
