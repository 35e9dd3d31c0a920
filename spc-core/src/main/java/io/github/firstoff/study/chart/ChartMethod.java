package io.github.firstoff.study.chart;

/**
 * A kind of control chart.
 *
 * <p>Estimating limits and applying limits are different calls: {@link #fromData} for readings that are to say where the
 * limits lie, {@link #withLimits} for readings that are to be judged by limits set before.
 *
 * @param <D> what the chart is made of: {@link io.github.firstoff.sample.Subgroups} for measured values,
 *     {@link io.github.firstoff.sample.Counts} for attributes, {@link io.github.firstoff.sample.Family} for short runs
 */
public interface ChartMethod<D> {
    /** The name in plans and results, for example {@code xbar-r}. */
    String kind();

    /** The name as a sheet prints it. */
    String title();

    /**
     * Charts data by limits that all of them set.
     *
     * <p>Too few data give a chart without lines and a note, never an exception.
     */
    default ControlChart fromData(D data) {
        return fromData(data, Baseline.ALL);
    }

    /**
     * Charts data by limits that the first {@code baseline} subgroups (or individuals) set; all of them, if there are fewer.
     *
     * @throws IllegalArgumentException if {@code baseline} is less than 1
     */
    default ControlChart fromData(D data, int baseline) {
        return fromData(data, Baseline.first(baseline));
    }

    /** Charts data by limits that the subgroups (or individuals) of the baseline set, except those that are excluded. */
    ControlChart fromData(D data, Baseline baseline);

    /**
     * Charts data by limits that were set before.
     *
     * @throws IllegalArgumentException if the limits belong to another kind of chart or another unit
     */
    ControlChart withLimits(D data, FrozenLimits limits);

    /** How often these tests would signal falsely on the location panel of a process in control. */
    default FalseSignals falseSignals(RuleSet tests) {
        InControlRunLength length = tests.inControlRunLength();
        return new FalseSignals(length.runLength().average(), length.isComplete(), length.remark());
    }

    /**
     * How often these tests would signal falsely on the location panel of a process in control, with what a chart of this kind says of
     * the points: for attributes their distribution and sizes.
     */
    default FalseSignals falseSignals(RuleSet tests, ControlChart chart) {
        return falseSignals(tests);
    }
}
