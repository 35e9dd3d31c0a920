package io.github.firstoff.study.chart;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.sample.Subgroups;
import io.github.firstoff.stats.SigmaEstimate;
import java.util.List;
import java.util.Optional;

/** What the charts of measured values have in common. */
abstract class ShewhartChart implements ChartMethod<Subgroups> {
    /** The chart of data whose limits could be set, or were. */
    final ControlChart chart(
            List<Panel> panels,
            SigmaEstimate sigma,
            double centre,
            int limitsFrom,
            Subgroups data,
            List<Remark> notes) {
        FrozenLimits frozen = new FrozenLimits(
                kind(),
                centre,
                sigma.sigma(),
                sigma.estimator(),
                sigma.degreesOfFreedom(),
                data.sample().unit());
        return ControlChart.of(kind(), panels, Optional.of(sigma), Optional.of(frozen), limitsFrom, data, notes);
    }

    /** The chart of data too few to set limits. */
    final ControlChart withoutLimits(List<Panel> panels, Subgroups data, List<Remark> notes) {
        return ControlChart.of(kind(), panels, Optional.empty(), Optional.empty(), 0, data, notes);
    }

    final void requireOwn(FrozenLimits limits, Subgroups data) {
        requireKind(limits, kind());
        requireUnit(limits, data);
    }

    static void requireKind(FrozenLimits limits, String kind) {
        if (!limits.kind().equals(kind)) {
            throw new IllegalArgumentException("limits of a chart " + limits.kind() + " do not fit a chart " + kind);
        }
    }

    static void requireUnit(FrozenLimits limits, Subgroups data) {
        if (limits.unit() != data.sample().unit()) {
            throw new IllegalArgumentException("limits in " + limits.unit().word() + " do not fit readings in "
                    + data.sample().unit().word());
        }
    }

    /** The estimate that frozen limits carry, in the unit of the readings. */
    static SigmaEstimate estimate(FrozenLimits limits) {
        return new SigmaEstimate(limits.sigma(), limits.estimator(), limits.degreesOfFreedom());
    }

    /** An estimate in steps as one in the unit. */
    static SigmaEstimate inUnit(SigmaEstimate steps, Subgroups data) {
        return steps.withSigma(data.sample().scale().length(steps.sigma()));
    }
}
