package io.github.firstoff.plan;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * How a characteristic is followed through a batch, as the plan says it.
 *
 * @param chart the chart's name, for example {@code xbar-r}; names are those of the catalogue of charts
 * @param grouping how readings are cut into subgroups
 * @param limits where the limits of the chart come from
 * @param breaks where runs begin anew
 * @param exclusions what does not count, and why
 * @param tests the tests, in their order; empty if the plan does not choose: the four zone tests then
 * @param settings what else is chosen of the chart
 * @param model how capability and performance are stated
 */
public record Study(
        String chart,
        Subgrouping grouping,
        LimitSource limits,
        Breaks breaks,
        List<Exclusion> exclusions,
        List<TestChoice> tests,
        Settings settings,
        Model model) {
    /** Copies the lists. */
    public Study {
        exclusions = List.copyOf(exclusions);
        tests = List.copyOf(tests);
    }

    /**
     * A study with everything else as is usual.
     *
     * @param chart the chart's name
     * @param subgroup how many consecutive readings make a subgroup, where the chart has subgroups
     * @param baseline how many first points set the limits; empty if all do
     */
    public Study(String chart, OptionalInt subgroup, OptionalInt baseline) {
        this(
                chart,
                new Subgrouping(subgroup, Optional.empty(), Optional.empty(), false),
                baseline.isPresent()
                        ? LimitSource.of(new Baseline(1, baseline.getAsInt(), Optional.empty()))
                        : LimitSource.ALL_POINTS,
                Breaks.USUAL,
                List.of(),
                List.of(),
                Settings.USUAL,
                Model.AUTOMATIC);
    }

    /** The same for a coordinate of opposite sign, as the counterpart of a handed part has it. */
    Study mirrored() {
        return new Study(
                chart,
                grouping,
                new LimitSource(limits.baseline(), limits.frozen().map(Frozen::negated)),
                breaks,
                exclusions,
                tests,
                settings.negated(),
                model);
    }

    /**
     * How readings are cut into subgroups; by one way at most.
     *
     * @param size so many consecutive readings
     * @param column by the column of that name in the readings
     * @param window by windows of time of that length
     * @param keepIncomplete whether an incomplete last subgroup stays on the chart
     */
    public record Subgrouping(
            OptionalInt size, Optional<String> column, Optional<Duration> window, boolean keepIncomplete) {}

    /**
     * Which points set the limits.
     *
     * @param from the number of the first, from 1
     * @param to the number of the last
     * @param phase the phase whose points set them, in place of numbers
     */
    public record Baseline(int from, int to, Optional<String> phase) {}

    /**
     * Where limits come from: all points if neither is stated.
     *
     * @param baseline some of the points
     * @param frozen limits set before
     */
    public record LimitSource(Optional<Baseline> baseline, Optional<Frozen> frozen) {
        /** All points that are not excluded. */
        public static final LimitSource ALL_POINTS = new LimitSource(Optional.empty(), Optional.empty());

        /** Some of the points. */
        public static LimitSource of(Baseline baseline) {
            return new LimitSource(Optional.of(baseline), Optional.empty());
        }
    }

    /**
     * Limits set before, from which every line is drawn.
     *
     * @param kind the chart that set them
     * @param centre the centre line, in {@code unit}; of counts the rate
     * @param sigma the standard deviation of single readings, in {@code unit}; of counts the factor of widening
     * @param estimator how sigma was estimated
     * @param degreesOfFreedom those of sigma
     * @param unit the word of the unit of centre and sigma; {@code none} for counts
     * @param pointSigma the standard deviation of the plotted points, where it does not follow from sigma
     * @param partSigmas the standard deviation of each part number, on standardised charts
     * @param from from which batch or study they come, in words
     */
    public record Frozen(
            String kind,
            BigDecimal centre,
            BigDecimal sigma,
            String estimator,
            BigDecimal degreesOfFreedom,
            String unit,
            Optional<BigDecimal> pointSigma,
            Map<String, BigDecimal> partSigmas,
            String from) {
        /** Copies the map. */
        public Frozen {
            partSigmas = Collections.unmodifiableMap(new TreeMap<>(partSigmas));
        }

        private Frozen negated() {
            return new Frozen(
                    kind, centre.negate(), sigma, estimator, degreesOfFreedom, unit, pointSigma, partSigmas, from);
        }
    }

    /**
     * Where runs begin anew: where one of the columns changes.
     *
     * @param columns the columns; empty where the plan says nothing: the column {@code phase} then, if the readings have one
     * @param recalculate why limits are recalculated at every break; empty if they are kept
     */
    public record Breaks(Optional<List<String>> columns, Optional<String> recalculate) {
        /** At changes of phase; limits are kept. */
        public static final Breaks USUAL = new Breaks(Optional.empty(), Optional.empty());

        /** Copies the list. */
        public Breaks {
            columns = columns.map(List::copyOf);
        }
    }

    /** What an exclusion names. */
    public enum Excluded {
        /** The point of the chart with a piece of that name. */
        PART("part"),
        /** The subgroup with that label. */
        SUBGROUP("subgroup"),
        /** The point with that number. */
        POINT("point");

        private final String word;

        Excluded(String word) {
            this.word = word;
        }

        /** The word in plan files. */
        public String word() {
            return word;
        }
    }

    /**
     * A point that sets no limits and is not tested. Its readings stay in count, verdict and indices.
     *
     * @param what what is named
     * @param name its name, label or number
     * @param reason why, in words
     */
    public record Exclusion(Excluded what, String name, String reason) {}

    /**
     * A test, or a set of tests.
     *
     * @param name its name, for example {@code nelson} or {@code nelson-3}
     * @param points how many points make the pattern; empty for the usual number
     * @param of among how many successive points; the same number, if only {@code points} is stated
     */
    public record TestChoice(String name, OptionalInt points, OptionalInt of) {}

    /**
     * What is chosen of a chart; what is empty is as usual for the chart.
     *
     * @param estimator the name of the estimator of spread
     * @param centre the centre of weighted averages and cumulative sums, in the unit of the characteristic's readings
     * @param weight the weight of the newest point in a weighted average
     * @param width the width of its limits, in standard deviations
     * @param reference the reference value k of cumulative sums, in standard deviations
     * @param decision their decision interval h, in standard deviations
     * @param headStart the share of h at which they start
     * @param dispersion what counts do that spread otherwise than their distribution: {@code distribution}, {@code check} or
     *     {@code observed}
     */
    public record Settings(
            Optional<String> estimator,
            Optional<BigDecimal> centre,
            Optional<BigDecimal> weight,
            Optional<BigDecimal> width,
            Optional<BigDecimal> reference,
            Optional<BigDecimal> decision,
            Optional<BigDecimal> headStart,
            Optional<String> dispersion) {
        /** Everything as is usual. */
        public static final Settings USUAL = new Settings(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());

        private Settings negated() {
            return new Settings(
                    estimator,
                    centre.map(BigDecimal::negate),
                    weight,
                    width,
                    reference,
                    decision,
                    headStart,
                    dispersion);
        }
    }

    /**
     * How capability and performance are stated.
     *
     * @param distribution the word of the distribution; empty if the evidence chooses
     * @param trended whether the process drifts along lines, so that the spread within the trend and the index of the whole tool
     *     life stand beside the usual ones
     * @param family the numbers of the characteristics that one process makes and one chart of short runs shows, this one
     *     included; empty for this one alone
     */
    public record Model(Optional<String> distribution, boolean trended, List<String> family) {
        /** The evidence chooses; no trend. */
        public static final Model AUTOMATIC = new Model(Optional.empty(), false, List.of());

        /** Copies the list. */
        public Model {
            family = List.copyOf(family);
        }
    }
}
