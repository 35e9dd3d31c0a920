package io.github.firstoff.sheet;

import io.github.firstoff.conformance.CharacteristicResult;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.PlanFault;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.plan.Study;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.Sample;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.DeviationTally;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.CapabilityMethod;
import io.github.firstoff.study.capability.CapabilityStudy;
import io.github.firstoff.study.capability.DistributionSetting;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.study.chart.Baseline;
import io.github.firstoff.study.chart.ChartCatalogue;
import io.github.firstoff.study.chart.ChartMethod;
import io.github.firstoff.study.chart.ChartRequest;
import io.github.firstoff.study.chart.ControlChart;
import io.github.firstoff.study.chart.LimitsFrom;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns the verdicts on a characteristic into what a sheet knows of it: summary, charts, indices, and why one is not there. */
final class Studies {
    /** The charts whose sheets are composed; the library has more. */
    private static final List<String> DRAWN =
            List.of("individuals", "xbar-r", "xbar-s", "median-r", "ewma", "deviation");

    /** Decimal places that a value keeps when it has no finite decimal in the unit of the limits: far below any gauge. */
    private static final int CONVERTED_PLACES = 12;

    /** The subgroup size that a plan without one gets (common practice: four or five consecutive pieces). */
    private static final int USUAL_SUBGROUP = 5;

    private Studies() {}

    static Finding finding(CharacteristicResult result, boolean withStudy) {
        Map<String, String> notes = new LinkedHashMap<>();
        ResolvedCharacteristic characteristic = result.characteristic();
        if (!characteristic.isJudged()) {
            notes.put("verdict", "This dimension is for information and is not judged.");
        }
        List<Reading.Measured> values = measured(result);
        if (values.isEmpty()) {
            if (!characteristic.isAttribute()) {
                notes.put("mean", "No value was measured.");
            }
            return new Finding(result, Optional.empty(), Optional.empty(), List.of(), List.of(), notes);
        }
        Summary summary = summarise(characteristic, values, notes);
        if (result.judgements().stream().anyMatch(each -> each.correction().isPresent())) {
            notes.put("temperature", "Values read at another temperature are summed up as judged, at 20 °C.");
        }
        Optional<ProcessStudy> study = Optional.empty();
        if (withStudy) {
            study = study(result, summary, values, notes);
        }
        return new Finding(result, Optional.of(summary), study, List.of(), List.of(), notes);
    }

    private static List<Reading.Measured> measured(CharacteristicResult result) {
        List<Reading.Measured> values = new ArrayList<>();
        for (Judgement judgement : result.judgements()) {
            if (judgement.reading() instanceof Reading.Measured measured) {
                values.add(asJudged(judgement, measured));
            }
        }
        return values;
    }

    /** The reading as it was judged: at 20 °C, where it was brought there, with two places more than it was read to. */
    private static Reading.Measured asJudged(Judgement judgement, Reading.Measured measured) {
        if (judgement.correction().isEmpty()) {
            return measured;
        }
        int places = Math.max(measured.value().scale(), 0) + 2;
        BigDecimal corrected = judgement.correction().get().corrected();
        return new Reading.Measured(
                measured.characteristic(),
                corrected.setScale(places, RoundingMode.HALF_EVEN),
                measured.unit(),
                measured.context());
    }

    private static Summary summarise(
            ResolvedCharacteristic characteristic, List<Reading.Measured> readings, Map<String, String> notes) {
        Unit unit = characteristic.unit();
        List<BigDecimal> values = new ArrayList<>(readings.size());
        BigDecimal least = null;
        BigDecimal greatest = null;
        for (Reading.Measured reading : readings) {
            BigDecimal value = inUnit(reading, unit);
            values.add(value);
            least = least == null || value.compareTo(least) < 0 ? value : least;
            greatest = greatest == null || value.compareTo(greatest) > 0 ? value : greatest;
        }
        BigDecimal reference = characteristic.zone().nominal().orElse(values.get(0));
        Sample sample = Sample.of(values, reference, unit);
        DeviationTally tally = DeviationTally.of(sample.deviations());
        OptionalDouble spread = OptionalDouble.empty();
        if (sample.size() > 1) {
            spread = OptionalDouble.of(sample.scale().length(tally.standardDeviation()));
        } else {
            notes.put("standardDeviation", "One value has no spread.");
        }
        double mean = sample.scale().mean(tally.sum(), tally.count());
        return new Summary(
                sample,
                java.util.Objects.requireNonNull(least),
                java.util.Objects.requireNonNull(greatest),
                mean,
                spread);
    }

    /** The value in the unit of the limits; exact wherever that is a finite decimal. */
    private static BigDecimal inUnit(Reading.Measured reading, Unit unit) {
        if (reading.unit() == unit) {
            return reading.value();
        }
        BigDecimal converted = reading.unit().convert(reading.value(), unit, java.math.MathContext.DECIMAL128);
        return converted.scale() > CONVERTED_PLACES
                ? converted.setScale(CONVERTED_PLACES, RoundingMode.HALF_EVEN)
                : converted;
    }

    private static Optional<ProcessStudy> study(
            CharacteristicResult result, Summary summary, List<Reading.Measured> readings, Map<String, String> notes) {
        ResolvedCharacteristic characteristic = result.characteristic();
        Optional<Study> asked = characteristic.characteristic().study();
        if (asked.isEmpty()) {
            notes.put("chart", "The plan asks for no study of this characteristic.");
            notes.put("indices", "The plan asks for no study of this characteristic.");
            return Optional.empty();
        }
        ChartMethod<Subgroups> method = ChartCatalogue.measured(asked.get().chart())
                .orElseThrow(() ->
                        new IllegalArgumentException("no chart " + asked.get().chart()));
        Subgroups subgroups = subgroups(asked.get(), summary.sample(), readings);
        ChartRequest request = ChartRequest.of(asked.get().chart())
                .with(asked.get()
                        .limits()
                        .baseline()
                        .map(points -> LimitsFrom.baseline(new Baseline(points.from(), points.to())))
                        .orElseGet(LimitsFrom::allPoints));
        Assessment assessment = request.assess(subgroups);
        Capability capability = capability(characteristic, summary, assessment, DistributionSetting.automatic());
        Capability byDefinition = byDefinition(characteristic, summary, assessment, capability);
        addNotes(characteristic, assessment, byDefinition, notes);
        List<String> parts = new ArrayList<>();
        for (Judgement judgement : result.judgements()) {
            if (judgement.reading() instanceof Reading.Measured) {
                parts.add(judgement.part());
            }
        }
        return Optional.of(new ProcessStudy(
                method.title(),
                request,
                subgroups,
                assessment,
                request.falseSignals(),
                Optional.of(new ProcessStudy.Indices(capability, byDefinition, Optional.empty())),
                Optional.empty(),
                assessment.notes(),
                parts));
    }

    private static void addNotes(
            ResolvedCharacteristic characteristic,
            Assessment assessment,
            Capability capability,
            Map<String, String> notes) {
        if (!assessment.notes().isEmpty()) {
            notes.put("chart", String.join(" ", assessment.notes()));
        }
        List<String> sentences = new ArrayList<>(capability.notes());
        if (!characteristic.zone().isFixed()) {
            sentences.add("The limits differ from part to part (bonus), so there are no indices.");
        }
        if (!sentences.isEmpty()) {
            notes.put("indices", String.join(" ", sentences));
        }
        for (Index index : IndicesJson.missing(capability)) {
            notes.put(IndicesJson.jsonName(index), index.reason());
        }
    }

    private static Capability capability(
            ResolvedCharacteristic characteristic,
            Summary summary,
            Assessment assessment,
            DistributionSetting distribution) {
        ControlChart chart = assessment.chart();
        return CapabilityStudy.withDefaults()
                .with(distribution)
                .analyse(
                        summary.sample(),
                        bounds(characteristic),
                        chart.sigmaWithin(),
                        chart.data().commonSize(),
                        assessment.control());
    }

    /**
     * The indices as their definitions state them, by the normal distribution: what the JSON names promise. A size whose readings
     * refute the normal distribution has those of the better distribution beside them, and the sheet shows only these; what nature
     * bounds at zero has only those of a bounded distribution.
     */
    private static Capability byDefinition(
            ResolvedCharacteristic characteristic, Summary summary, Assessment assessment, Capability chosen) {
        boolean same = chosen.distribution().method().isNormal()
                || characteristic.limits().naturalLower();
        return same
                ? chosen
                : capability(characteristic, summary, assessment, DistributionSetting.fixed(CapabilityMethod.NORMAL));
    }

    /** What the indices are held against; nothing where the limits differ from part to part. */
    private static Bounds bounds(ResolvedCharacteristic characteristic) {
        if (!characteristic.zone().isFixed()) {
            return Bounds.NONE;
        }
        Limits limits = characteristic.limits();
        return new Bounds(limits.lower(), limits.upper(), characteristic.target(), limits.naturalLower());
    }

    private static Subgroups subgroups(Study study, Sample sample, List<Reading.Measured> readings) {
        if (study.chart().equals("individuals")) {
            return sample.asIndividuals();
        }
        boolean labelled = readings.stream()
                .allMatch(reading -> reading.context().subgroup().isPresent());
        if (labelled) {
            return sample.inSubgroups(readings.stream()
                    .map(reading -> reading.context().subgroup().orElseThrow())
                    .toList());
        }
        return sample.inSubgroupsOf(study.grouping().size().orElse(USUAL_SUBGROUP));
    }

    /** The faults of a plan that asks for a chart which this version does not draw. */
    static List<PlanFault> undrawable(ResolvedPlan plan) {
        List<PlanFault> faults = new ArrayList<>();
        for (ResolvedCharacteristic each : plan.characteristics()) {
            Optional<String> chart = each.characteristic().study().map(Study::chart);
            if (chart.isPresent() && !DRAWN.contains(chart.get())) {
                faults.add(PlanFault.of(
                        each.number(),
                        "study",
                        "this version does not draw the chart " + chart.get(),
                        "one of " + String.join(", ", DRAWN)));
            }
        }
        return faults;
    }
}
