package io.github.firstoff.sheet;

import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.Study;
import io.github.firstoff.sample.Bounds;
import io.github.firstoff.sample.ControlState;
import io.github.firstoff.stats.SigmaEstimate;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.CapabilityMethod;
import io.github.firstoff.study.capability.CapabilityStudy;
import io.github.firstoff.study.capability.DataCheckStudy;
import io.github.firstoff.study.capability.DistributionSetting;
import io.github.firstoff.study.capability.TrendedStudy;
import io.github.firstoff.study.chart.Assessment;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;

/** Works out capability and performance of a characteristic as its plan asks. */
final class IndicesMaker {
    private final ResolvedCharacteristic characteristic;
    private final Study study;
    private final Summary summary;

    IndicesMaker(ResolvedCharacteristic characteristic, Study study, Summary summary) {
        this.characteristic = characteristic;
        this.study = study;
        this.summary = summary;
    }

    /**
     * The indices.
     *
     * @param within the spread within subgroups
     * @param toolLives the readings with which tool lives begin, where a trend is to be taken into account
     */
    ProcessStudy.Indices indices(
            Assessment assessment, Optional<SigmaEstimate> within, Optional<List<Integer>> toolLives) {
        DistributionSetting setting = study.model()
                .distribution()
                .flatMap(CapabilityMethod::named)
                .map(DistributionSetting::fixed)
                .orElseGet(DistributionSetting::automatic);
        Capability chosen = capability(assessment, within, setting);
        return new ProcessStudy.Indices(
                chosen,
                byDefinition(assessment, within, chosen),
                toolLives.map(starts ->
                        TrendedStudy.withDefaults().analyse(summary.sample(), bounds(characteristic), starts)));
    }

    private Capability capability(
            Assessment assessment, Optional<SigmaEstimate> within, DistributionSetting distribution) {
        return CapabilityStudy.withDefaults()
                .with(distribution)
                .with(checks())
                .analyse(
                        summary.sample(),
                        bounds(characteristic),
                        within,
                        assessment.chart().data().commonSize(),
                        control(assessment));
    }

    /** Limits that were set anew show control within stretches; of all readings together nothing is known. */
    private static ControlState control(Assessment assessment) {
        boolean inStretches = assessment.chart().stages().size() > 1;
        return inStretches && assessment.control() == ControlState.IN_CONTROL
                ? ControlState.NOT_ASSESSED
                : assessment.control();
    }

    private DataCheckStudy checks() {
        DataCheckStudy checks = DataCheckStudy.withDefaults();
        Optional<BigDecimal> resolution = characteristic
                .gauge()
                .filter(gauge -> gauge.unit().isComparableWith(characteristic.unit()))
                .flatMap(gauge -> gauge.resolution()
                        .map(step -> gauge.unit().convert(step, characteristic.unit(), MathContext.DECIMAL128)));
        return resolution
                .filter(step -> step.signum() > 0)
                .map(checks::withGaugeResolution)
                .orElse(checks);
    }

    /**
     * The indices as their definitions state them, by the normal distribution: what the JSON names promise. A size whose readings
     * refute the normal distribution has those of the better distribution beside them, and the sheet shows only these; what nature
     * bounds at zero has only those of a bounded distribution.
     */
    private Capability byDefinition(Assessment assessment, Optional<SigmaEstimate> within, Capability chosen) {
        boolean same = chosen.distribution().method().isNormal()
                || characteristic.limits().naturalLower();
        return same ? chosen : capability(assessment, within, DistributionSetting.fixed(CapabilityMethod.NORMAL));
    }

    /** What the indices are held against; nothing where the limits differ from part to part. */
    static Bounds bounds(ResolvedCharacteristic characteristic) {
        if (!characteristic.zone().isFixed()) {
            return Bounds.NONE;
        }
        Limits limits = characteristic.limits();
        return new Bounds(limits.lower(), limits.upper(), characteristic.target(), limits.naturalLower());
    }
}
